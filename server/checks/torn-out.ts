// What would come out again, where work is done over something that nobody has looked at: the amounts of the step that
// covers it, from the take-off.
import type { Model } from '#model/resolve';
import type { Claim } from '#schedule/claims';
import type { Timeline } from '#schedule/timeline';
import { quantityText } from './show.ts';

/** More goods than these are only counted. */
const NAMED = 2;

/** '1,204 sf of Drywall and 310 sf of Tile backer board'; empty where nothing that the step installs is measured. */
export function tornOutText(step: number, works: ReadonlySet<string>, { claims }: Timeline, model: Model): string {
  const own = claims.byStep[step] ?? [];
  const sums = sumsOf(own.filter(({ line }) => line.work !== undefined && works.has(line.work.name)));
  const named = sums.slice(0, NAMED).map((sum) => amountText(sum, model));
  const others = sums.length - named.length;
  if (others > 0) return `${named.join(', ')} and ${others} more ${others === 1 ? 'thing' : 'things'}`;
  return named.join(' and ');
}

interface Sum {
  readonly first: Claim['line'];
  value: number;
}

/** By what is installed; screws and glue go with it. */
function sumsOf(claims: readonly Claim[]): readonly Sum[] {
  const byItem = new Map<string, Sum>();
  for (const { line, share } of claims) {
    if (line.onlyIfDone !== undefined || !(line.net.value > 0) || !isInstalled(line)) continue;
    const sum = byItem.get(line.item);
    if (sum === undefined) byItem.set(line.item, { first: line, value: line.net.value * share });
    else if (line.measure === sum.first.measure) sum.value += line.net.value * share;
  }
  return [...byItem.values()];
}

function isInstalled({ goods, work }: Claim['line']): boolean {
  return (
    goods !== undefined &&
    work?.given.installs.some((each) => each.value.goods.some(({ value }) => value.name === goods.name)) === true
  );
}

function amountText({ first, value }: Sum, model: Model): string {
  const { dimension } = first.net;
  return dimension === 'number'
    ? `${Math.round(value * 100) / 100} × ${first.label}`
    : `${quantityText({ value, dimension }, model)} of ${first.label}`;
}
