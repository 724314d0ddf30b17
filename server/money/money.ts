// DOOR: take-off + timeline + prices → the budget: totals in whole cents, tax and contingency, and what no money stands for
// yet. One ladder decides which money counts for a step.
import type { Finding } from '#kit/finding';
import type { Model } from '#model/resolve';
import type { Timeline } from '#schedule/timeline';
import type { Purchase } from '#takeoff/lines';
import type { TakeOff } from '#takeoff/take-off';
import { type Bid, bidLines } from './bids.ts';
import type { Budget, CostLine, Missing, PaidFor } from './cost-lines.ts';
import { type Allowance, type CoveredMemory, coveredLines, linesOfAllowance } from './covered.ts';
import { type GoodsMemory, goodsMemory, materialLines, materialsOf } from './material-costs.ts';
import { partOfCosts } from './part-of-costs.ts';
import { type PlanCosts, type PlanCostsMemory, planCosts } from './plan-costs.ts';
import { type Prices, pricesOf } from './prices.ts';

const NOTHING: Budget = {
  lines: [],
  linesOfStep: () => [],
  centsOfStep: () => 0,
  centsAt: () => 0,
  net: 0,
  tax: 0,
  contingency: 0,
  total: 0,
  missing: [],
  goods: [],
  paidFor: [],
  priced: false,
};

export interface MoneyMemory {
  readonly steps: PlanCostsMemory;
  readonly covered: CoveredMemory;
  readonly goods: GoodsMemory;
}
export function moneyMemory(): MoneyMemory {
  return { steps: { last: undefined }, covered: { last: undefined }, goods: goodsMemory() };
}

/** What is missing is data: the checks tell it, so there are no findings. */
export function budgetOf(
  model: Model,
  takeOff: TakeOff,
  timeline: Timeline,
  memory: MoneyMemory = moneyMemory(),
): { readonly value: Budget; readonly findings: readonly Finding[] } {
  const prices = pricesOf(model.list('price'));
  const bids = acceptedBids(model.list('bid'));
  if (!speaksOfMoney(model, timeline, prices, bids)) return { value: NOTHING, findings: [] };
  const work = planCosts(model, timeline, prices, bids, memory.steps);
  const purchases = takeOff.purchases();
  const covered = coveredLines(work.covers, model.list('allowance'), purchases, memory.covered);
  const kept = allowances(model);
  const bidden =
    bids.length === 0
      ? []
      : bidLines(
          bids,
          work.costs.map((cost) => cost.bid),
          timeline,
        );
  const materials = materialsOf(purchases, covered, timeline, prices, takeOff.boughtFor, memory.goods);
  const net = work.cents + sum(bidden) + sum(kept) + materials.cents;
  const taxed = model.plan?.given.tax?.value;
  const tax = taxed === undefined ? 0 : Math.round((taxed.on === 'all' ? net : materials.cents) * taxed.rate.value);
  const contingency = Math.round((net + tax) * (model.plan?.given.contingency?.value.value ?? 0));
  const missing: Missing[] = [];
  work.missing.forEach((list, step) => {
    for (const each of list) missing.push({ ...each, step });
  });
  for (const each of materials.missing) missing.push(each);
  let lines: readonly CostLine[] | undefined;
  let paidFor: readonly PaidFor[] | undefined;
  const value: Budget = {
    net,
    tax,
    contingency,
    total: net + tax + contingency,
    missing,
    goods: materials.goods,
    get paidFor() {
      paidFor ??= paidForOf(work, model.list('allowance'), purchases);
      return paidFor;
    },
    priced: true,
    ...partOfCosts({ costs: work.costs, bidden, kept, materials: materials.costs, covered: covered.lines, timeline, takeOff }),
    get lines() {
      lines ??= [
        ...work.costs.flatMap((cost, step) => cost.lines.map((line) => ({ ...line, step }))),
        ...bidden,
        ...kept,
        ...materialLines(materials.costs, covered.lines, timeline),
      ];
      return lines;
    },
  };
  return { value, findings: [] };
}

const bidsKept = new WeakMap<readonly Bid[], readonly Bid[]>();
/** The same list for the same bids. */
function acceptedBids(bids: readonly Bid[]): readonly Bid[] {
  let list = bidsKept.get(bids);
  if (list === undefined) {
    list = bids.filter((bid) => bid.given.accepted !== undefined && bid.given.for !== undefined);
    bidsKept.set(bids, list);
  }
  return list;
}

function speaksOfMoney(model: Model, timeline: Timeline, prices: Prices, bids: readonly Bid[]): boolean {
  return (
    prices.byName.size > 0 ||
    bids.length > 0 ||
    model.list('trade').some((trade) => trade.given.at !== undefined) ||
    timeline.steps.list.some((step) => step.given.costs !== undefined)
  );
}

function sum(lines: readonly CostLine[]): number {
  return lines.reduce((total, line) => total + line.cents, 0);
}

/** Lines whose goods are paid for with a bid, with a step, or out of money kept for them. */
function paidForOf(work: PlanCosts, allowances: readonly Allowance[], purchases: readonly Purchase[]): readonly PaidFor[] {
  const steps = work.covers.flatMap((lines, step): PaidFor[] => {
    const bid = work.costs[step]!.bid?.slot;
    return lines.length === 0 ? [] : [bid === undefined ? { lines, step } : { lines, step, bid }];
  });
  return [
    ...steps,
    ...allowances.map((allowance) => ({ lines: linesOfAllowance(allowance, purchases).flat(), allowance: allowance.slot })),
  ];
}

/** Money kept for goods not yet chosen: what it stands for needs no price of its own. */
function allowances(model: Model): readonly CostLine[] {
  return model.list('allowance').flatMap((allowance): CostLine[] => {
    const money = allowance.takes;
    if (money === undefined) return [];
    const cents = Math.round(money.value);
    return [{ kind: 'allowance', rung: 'given', label: allowance.label, cents, element: allowance.slot, working: () => money }];
  });
}
