// What would come out again, where work is done over something that nobody has looked at: the amounts of the step that
// covers it, from the take-off.
import { NONE } from '#kit/differing';
import type { Model } from '#model/resolve';
import type { Claim } from '#schedule/claims';
import type { Timeline } from '#schedule/timeline';
import { keptFor } from './kept.ts';
import { quantityText } from './show.ts';

/** More goods than these are only counted. */
const NAMED = 2;

/** '1,204 sf of Drywall and 310 sf of Tile backer board'; empty where nothing that the step installs is measured. */
export function tornOutText(step: number, works: ReadonlySet<string>, { claims }: Timeline, model: Model): string {
  const sums = together([...sumsOf(claims.byStep[step] ?? NONE)].flatMap(([work, own]) => (works.has(work) ? own : [])));
  const named = sums.slice(0, NAMED).map((sum) => amountText(sum, model));
  const others = sums.length - named.length;
  if (others > 0) return `${named.join(', ')} and ${others} more ${others === 1 ? 'thing' : 'things'}`;
  return named.join(' and ');
}

interface Sum {
  readonly first: Claim['line'];
  value: number;
}

/** The same goods by several works are one amount. */
function together(sums: readonly Sum[]): readonly Sum[] {
  const all: Sum[] = [];
  for (const { first, value } of sums) {
    const same = all.find((each) => each.first.item === first.item);
    if (same === undefined) all.push({ first, value });
    else if (same.first.measure === first.measure) same.value += value;
  }
  return all;
}

/** Of each work of a step, by what is installed; screws and glue go with it. */
const sumsOf = keptFor((claims: readonly Claim[]): ReadonlyMap<string, readonly Sum[]> => {
  const byWork = new Map<string, Map<string, Sum>>();
  for (const { line, share } of claims) {
    if (line.work === undefined || line.onlyIfDone !== undefined || !(line.net.value > 0) || !isInstalled(line)) continue;
    let byItem = byWork.get(line.work.name);
    if (byItem === undefined) byWork.set(line.work.name, (byItem = new Map()));
    const sum = byItem.get(line.item);
    if (sum === undefined) byItem.set(line.item, { first: line, value: line.net.value * share });
    else if (line.measure === sum.first.measure) sum.value += line.net.value * share;
  }
  return new Map([...byWork].map(([work, byItem]) => [work, [...byItem.values()]]));
});

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
