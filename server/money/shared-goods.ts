// Whose cost goods are: each purchase is shared out among its lines, and each line among the steps that take it, to the cent.
// Sums are made for all steps at once; the lines themselves for all, or for those alone that somebody asks about.
import { shareCents } from '#kit/money';
import type { Timeline } from '#schedule/timeline';
import type { Line } from '#takeoff/lines';
import type { CostLine } from './cost-lines.ts';
import type { MaterialCost } from './material.ts';
import { type Owners, ownersOf } from './owners.ts';
import { placeOf } from './step-costs.ts';

export interface Goods {
  readonly costs: readonly MaterialCost[];
  /** Lines that cost nothing more. */
  readonly covered: ReadonlySet<Line>;
  readonly timeline: Timeline;
}

/** Every cost of goods with whose it is. */
export function goodsLines(goods: Goods): readonly CostLine[] {
  const lines: CostLine[] = [];
  const owners = ownersOf(goods.timeline);
  for (const cost of goods.costs)
    for (let at = 0; at < cost.purchase.lines.length; at++)
      give(cost, at, goods, owners, (cents, step) => lines.push(costLine(cost, at, cents, step, goods)));
  return lines;
}

/** Adds what goods cost each step to `sums`, by number of the step. */
export function addGoods(goods: Goods, sums: Float64Array): void {
  const owners = ownersOf(goods.timeline);
  const add = (cents: number, step: number | undefined): void => {
    if (step !== undefined) sums[step]! += cents;
  };
  for (const cost of goods.costs) for (let at = 0; at < cost.purchase.lines.length; at++) give(cost, at, goods, owners, add);
}

/** The costs of goods of one step, in the order of all. */
export function goodsOfStep(step: number, goods: Goods): readonly CostLine[] {
  const own = goods.timeline.claims.byStep[step]!.map(({ line }) => line);
  return goodsOf(own, goods).filter((line) => line.step === step);
}

/** The costs of some lines of the take-off, in the order of all. */
export function goodsOf(asked: readonly Line[], goods: Goods): readonly CostLine[] {
  const byItem = new Map<string, Set<Line>>();
  for (const line of asked) {
    const known = byItem.get(line.item);
    if (known === undefined) byItem.set(line.item, new Set([line]));
    else known.add(line);
  }
  const lines: CostLine[] = [];
  const owners = ownersOf(goods.timeline);
  for (const cost of goods.costs) {
    const { purchase } = cost;
    const places = [...(byItem.get(purchase.item) ?? [])].map((line) => purchase.lines.indexOf(line)).filter((at) => at >= 0);
    for (const at of places.sort((a, b) => a - b))
      give(cost, at, goods, owners, (cents, step) => lines.push(costLine(cost, at, cents, step, goods)));
  }
  return lines;
}

function give(
  cost: MaterialCost,
  at: number,
  { covered }: Goods,
  owners: Owners,
  to: (cents: number, step: number | undefined) => void,
): void {
  const cents = cost.byLine()[at]!;
  const line = cost.purchase.lines[at]!;
  if (cents === 0 || covered.has(line)) return;
  const owner = owners(line);
  if (owner === undefined || typeof owner === 'number') {
    to(cents, owner);
    return;
  }
  const shares = shareCents(
    cents,
    owner.map(({ share }) => share),
  );
  owner.forEach(({ step }, nth) => {
    to(shares[nth]!, step);
  });
}

function costLine(
  { purchase, working }: MaterialCost,
  at: number,
  cents: number,
  step: number | undefined,
  { timeline }: Goods,
): CostLine {
  const line = purchase.lines[at]!;
  const base = { kind: 'material', rung: 'rate', label: purchase.label, line, working, cents, ...placeOf(line) } as const;
  if (step === undefined) return base;
  const trade = timeline.trades[step];
  return { ...base, step, ...(trade === undefined ? {} : { trade: trade.slot }) };
}
