// What comes by the truck is ordered pour by pour: the lines that a step takes, or that several steps share; where no step
// takes them, those of one kind of work. Each pour is rounded up for itself, since the rest of a truck does not wait for the next.
import { addTo } from '#kit/gathered';
import type { Line, Purchase } from '#takeoff/lines';
import type { TakeOff } from '#takeoff/take-off';
import type { Claims } from './claims.ts';
import type { Timeline } from './timeline.ts';

type PouredBy = Pick<Timeline, 'claims' | 'steps'>;
type BoughtFor = TakeOff['boughtFor'];

const kept = new WeakMap<Purchase, { readonly claims: Claims; readonly pours: readonly Purchase[] }>();

/** The purchases, with one for each pour in place of what comes by the truck; the same objects while pours are the same. */
export function pouredApart(purchases: readonly Purchase[], by: PouredBy, boughtFor: BoughtFor): readonly Purchase[] {
  if (!purchases.some(({ truck }) => truck !== undefined)) return purchases;
  return purchases.flatMap((purchase) => poursOf(purchase, by, boughtFor));
}

/** The purchase itself where it does not come by the truck. */
export function poursOf(purchase: Purchase, by: PouredBy, boughtFor: BoughtFor): readonly Purchase[] {
  if (purchase.truck === undefined) return [purchase];
  const known = kept.get(purchase);
  if (known?.claims === by.claims) return known.pours;
  const fresh = apart(purchase, by, boughtFor);
  const same =
    known !== undefined && known.pours.length === fresh.length && fresh.every((pour, at) => isSame(pour, known.pours[at]!));
  const pours = same ? known.pours : fresh;
  kept.set(purchase, { claims: by.claims, pours });
  return pours;
}

function isSame(a: Purchase, b: Purchase): boolean {
  return (
    a.pour?.label === b.pour?.label &&
    a.pour?.days.length === b.pour?.days.length &&
    (a.pour?.days ?? []).every(
      ({ label, share }, at) => label === b.pour!.days[at]!.label && share === b.pour!.days[at]!.share,
    ) &&
    a.lines.length === b.lines.length &&
    a.lines.every((line, at) => line === b.lines[at])
  );
}

interface Pour {
  readonly label: string;
  readonly steps: readonly number[];
  readonly lines: Line[];
}

function apart(purchase: Purchase, { claims, steps }: PouredBy, boughtFor: BoughtFor): readonly Purchase[] {
  const takers = takersOf(purchase, claims, steps);
  const pours = new Map<string, Pour>();
  for (const line of purchase.lines) {
    const own = [...new Set(takers.get(line)?.map(({ step }) => step))];
    const key = own.length > 0 ? own.join(' ') : (line.work?.name ?? '');
    const pour = pours.get(key);
    if (pour !== undefined) pour.lines.push(line);
    else {
      const label = own.map((step) => steps.list[step]!.label).join(', ');
      pours.set(key, { label: label === '' ? (line.work?.label ?? purchase.label) : label, steps: own, lines: [line] });
    }
  }
  return [...pours.values()].flatMap(({ label, steps: own, lines }) => {
    const needed = lines.reduce((sum, line) => sum + (line.needed?.value ?? 0), 0);
    const days = own.map((step) => {
      const taken = lines.reduce((sum, line) => {
        const share = takers.get(line)?.reduce((all, each) => (each.step === step ? all + each.share : all), 0) ?? 0;
        return sum + share * (line.needed?.value ?? 0);
      }, 0);
      return { label: steps.list[step]!.label, share: needed > 0 ? taken / needed : 0 };
    });
    return boughtFor(lines)
      .filter(({ item }) => item === purchase.item)
      .map((each): Purchase => Object.assign(each, { pour: { label, days } }));
  });
}

interface Taker {
  readonly step: number;
  readonly share: number;
}

/** The steps that take each line. */
function takersOf(
  { lines }: Purchase,
  { byStep, byWork }: Claims,
  { index }: Timeline['steps'],
): ReadonlyMap<Line, readonly Taker[]> {
  const wanted = new Set(lines);
  const takers = new Map<Line, Taker[]>();
  const seen = new Set<number>();
  for (const work of new Set(lines.map((line) => line.work?.name ?? '')))
    for (const task of byWork.get(work)?.tasks ?? []) {
      const step = index.get(task.slot)!;
      if (seen.has(step)) continue;
      seen.add(step);
      for (const { line, share } of byStep[step]!) if (wanted.has(line)) addTo(takers, line, { step, share });
    }
  return takers;
}
