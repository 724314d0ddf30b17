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
  const lines: CostLine[] = [];
  shareOut(costs, covered, timeline, ({ purchase, working }, line, cents, step) => {
    const base = { kind: 'material', rung: 'rate', label: purchase.label, line, working, cents, ...placeOf(line) } as const;
    const trade = step === undefined ? undefined : timeline.trades[step];
    if (step === undefined) lines.push(base);
    else lines.push({ ...base, step, ...(trade === undefined ? {} : { trade: trade.slot }) });
  });
  return lines;
}

/** Adds what goods cost each step to `sums`, by number of the step. */
export function addMaterials(
  costs: readonly MaterialCost[],
  covered: ReadonlySet<Line>,
  timeline: Timeline,
  sums: Float64Array,
): void {
  shareOut(costs, covered, timeline, (_, _line, cents, step) => {
    if (step !== undefined) sums[step]! += cents;
  });
}

function shareOut(
  costs: readonly MaterialCost[],
  covered: ReadonlySet<Line>,
  timeline: Timeline,
  give: (cost: MaterialCost, line: Line, cents: number, step: number | undefined) => void,
): void {
  const owners = ownersOf(timeline);
  for (const cost of costs) {
    const { lines } = cost.purchase;
    cost.byLine().forEach((part, at) => {
      const line = lines[at]!;
      if (part === 0 || covered.has(line)) return;
      const steps = owners.get(line);
      if (steps === undefined) give(cost, line, part, undefined);
      else if (steps.length === 1) give(cost, line, part, steps[0]!.step);
      else {
        const shares = shareCents(
          part,
          steps.map(({ share }) => share),
        );
        steps.forEach(({ step }, nth) => {
          give(cost, line, shares[nth]!, step);
        });
      }
    });
  }
}

/** The steps that claim each line. */
function ownersOf(timeline: Timeline): ReadonlyMap<Line, readonly { step: number; share: number }[]> {
  const owners = new Map<Line, { step: number; share: number }[]>();
  for (const [step, claims] of timeline.claims.byStep.entries()) {
    for (const { line, share } of claims) {
      const list = owners.get(line);
      if (list === undefined) owners.set(line, [{ step, share }]);
      else list.push({ step, share });
    }
  }
  return owners;
}
