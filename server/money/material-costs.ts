// What goods cost over the whole plan; and, when somebody asks, whose cost each line is.
import { DAY_MINUTES } from '#kit/dates';
import { shareCents } from '#kit/money';
import type { Price } from '#model/model';
import type { Timeline } from '#schedule/timeline';
import type { Line, Purchase } from '#takeoff/lines';
import type { CostLine, Missing } from './cost-lines.ts';
import { type MaterialCost, materialCost } from './material.ts';
import { type Prices, priceFor } from './prices.ts';
import { placeOf } from './step-costs.ts';

export interface Materials {
  readonly costs: readonly MaterialCost[];
  /** Of goods that no bid, price for the work or allowance covers. */
  readonly cents: number;
  readonly missing: readonly Missing[];
}

const kept = new WeakMap<Purchase, { readonly price: Price; readonly cost: MaterialCost | undefined }>();

export function materialsOf(
  purchases: readonly Purchase[],
  covered: ReadonlySet<Line>,
  timeline: Timeline,
  prices: Prices,
): Materials {
  const costs: MaterialCost[] = [];
  const missing: Missing[] = [];
  const owners = prices.dated ? ownersOf(timeline) : undefined;
  let cents = 0;
  const items = new Set<string>();
  for (const line of covered) items.add(line.item);
  for (const purchase of purchases) {
    const open = items.has(purchase.lines[0]?.item ?? '') ? purchase.lines.filter((line) => !covered.has(line)) : purchase.lines;
    const [first] = open;
    if (first === undefined) continue;
    const owner = owners?.get(first)?.[0]?.step;
    const day = owner === undefined || !timeline.dated ? undefined : Math.floor(timeline.crews.start[owner]! / DAY_MINUTES);
    const price = priceFor(purchase.goods, day, prices);
    const cost = price === undefined ? undefined : keptCost(purchase, price);
    if (cost === undefined) {
      missing.push({ kind: 'price', what: purchase.label, line: first });
      continue;
    }
    costs.push(cost);
    if (open.length === purchase.lines.length) cents += cost.cents;
    else
      cost.byLine().forEach((part, at) => {
        if (!covered.has(purchase.lines[at]!)) cents += part;
      });
  }
  return { costs, cents, missing };
}

function keptCost(purchase: Purchase, price: Price): MaterialCost | undefined {
  const before = kept.get(purchase);
  if (before?.price === price) return before.cost;
  const cost = materialCost(purchase, price);
  kept.set(purchase, { price, cost });
  return cost;
}

/** Each cost shared out among the steps that use the goods, to the cent. */
export function materialLines(
  costs: readonly MaterialCost[],
  covered: ReadonlySet<Line>,
  timeline: Timeline,
): readonly CostLine[] {
  const owners = ownersOf(timeline);
  const lines: CostLine[] = [];
  for (const { purchase, byLine, working } of costs) {
    byLine().forEach((part, at) => {
      const line = purchase.lines[at]!;
      if (covered.has(line) || part === 0) return;
      const base = { kind: 'material', rung: 'rate', label: purchase.label, line, working, ...placeOf(line) } as const;
      const steps = owners.get(line) ?? [];
      if (steps.length === 0) {
        lines.push({ ...base, cents: part });
        return;
      }
      const shares = shareCents(
        part,
        steps.map(({ share }) => share),
      );
      steps.forEach(({ step }, nth) => {
        const trade = timeline.trades[step];
        lines.push({ ...base, cents: shares[nth]!, step, ...(trade === undefined ? {} : { trade: trade.slot }) });
      });
    });
  }
  return lines;
}

/** The steps that claim each line. */
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
