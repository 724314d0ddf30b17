// What goods cost, line by line, given to the steps that use them; and what has no price.
import { DAY_MINUTES } from '#kit/dates';
import { shareCents } from '#kit/money';
import type { Timeline } from '#schedule/timeline';
import type { Line, Purchase } from '#takeoff/lines';
import type { CostLine, Missing } from './cost-lines.ts';
import { materialCost } from './material.ts';
import { type Prices, priceFor } from './prices.ts';
import { placeOf } from './step-costs.ts';

export function materialCosts(
  purchases: readonly Purchase[],
  covered: ReadonlySet<Line>,
  timeline: Timeline,
  prices: Prices,
  lines: CostLine[],
  missing: Missing[],
): void {
  const owners = ownersOf(timeline);
  for (const purchase of purchases) {
    const open = purchase.lines.filter((line) => !covered.has(line));
    const [first] = open;
    if (first === undefined) continue;
    const owner = owners.get(first)?.[0]?.step;
    const day = owner === undefined || !timeline.dated ? undefined : Math.floor(timeline.crews.start[owner]! / DAY_MINUTES);
    const price = priceFor(purchase.goods, day, prices);
    const cost = price === undefined ? undefined : materialCost(purchase, price);
    if (cost === undefined) {
      missing.push({ kind: 'price', what: purchase.label, line: first });
      continue;
    }
    for (const { line, cents: part } of cost.byLine) {
      if (covered.has(line) || part === 0) continue;
      const steps = owners.get(line) ?? [];
      const shares = shareCents(part, steps.length === 0 ? [1] : steps.map(({ share }) => share));
      shares.forEach((each, at) => {
        const step = steps[at]?.step;
        const trade = step === undefined ? undefined : timeline.trades[step]?.slot;
        lines.push({
          kind: 'material',
          rung: 'rate',
          label: purchase.label,
          cents: each,
          line,
          working: cost.working,
          ...placeOf(line),
          ...(step === undefined ? {} : { step }),
          ...(trade === undefined ? {} : { trade }),
        });
      });
    }
  }
}

/** The step that claims the greater part of each line. */
function ownersOf(timeline: Timeline): ReadonlyMap<Line, readonly { step: number; share: number }[]> {
  const owners = new Map<Line, { step: number; share: number }[]>();
  for (const [task, claims] of timeline.claims.byTask) {
    const step = timeline.steps.index.get(task.slot)!;
    for (const { line, share } of claims) {
      const list = owners.get(line);
      if (list === undefined) owners.set(line, [{ step, share }]);
      else list.push({ step, share });
    }
  }
  return owners;
}
