// DOOR: take-off + timeline + prices → the budget: cost lines in whole cents, tax and contingency, and what no money stands
// for yet. One ladder decides which money counts for a step.
import type { Finding } from '#kit/finding';
import type { Model } from '#model/resolve';
import type { Timeline } from '#schedule/timeline';
import type { Line } from '#takeoff/lines';
import type { TakeOff } from '#takeoff/take-off';
import type { Budget, CostLine, Missing } from './cost-lines.ts';
import { materialCosts } from './material-costs.ts';
import { pricesOf } from './prices.ts';
import { stepCosts } from './step-costs.ts';

export function budgetOf(
  model: Model,
  takeOff: TakeOff,
  timeline: Timeline,
): { readonly value: Budget; readonly findings: readonly Finding[] } {
  const prices = pricesOf(model.list('price'));
  const bids = model.list('bid').filter((bid) => bid.given.accepted !== undefined && bid.given.for !== undefined);
  const priced =
    prices.byName.size > 0 ||
    bids.length > 0 ||
    model.list('trade').some((trade) => trade.given.at !== undefined) ||
    timeline.steps.list.some((step) => step.given.costs !== undefined);
  const lines: CostLine[] = [];
  const missing: Missing[] = [];
  if (priced) {
    const covered = new Set<Line>();
    stepCosts(model, timeline, prices, bids, lines, missing, covered);
    allowances(model, takeOff, lines, covered);
    materialCosts(takeOff.purchases(), covered, timeline, prices, lines, missing);
  }
  const net = sum(lines);
  const taxed = model.plan?.given.tax?.value;
  const base = taxed === undefined ? 0 : taxed.on === 'all' ? net : sum(lines.filter((line) => line.kind === 'material'));
  const tax = taxed === undefined ? 0 : Math.round(base * taxed.rate.value);
  const contingency = Math.round((net + tax) * (model.plan?.given.contingency?.value.value ?? 0));
  const value: Budget = { lines, net, tax, contingency, total: net + tax + contingency, missing, priced };
  // What is missing is data: the checks tell it.
  return { value, findings: [] };
}

function sum(lines: readonly CostLine[]): number {
  return lines.reduce((total, line) => total + line.cents, 0);
}

/** Money kept for goods not yet chosen: what it stands for has no price of its own. */
function allowances(model: Model, takeOff: TakeOff, lines: CostLine[], covered: Set<Line>): void {
  for (const allowance of model.list('allowance')) {
    const money = allowance.takes;
    if (money === undefined) continue;
    const names = allowance.given.for?.value.map(({ value }) => value.name) ?? [allowance.name];
    for (const line of takeOff.lines) if (line.goods !== undefined && names.includes(line.goods.name)) covered.add(line);
    lines.push({
      kind: 'allowance',
      rung: 'given',
      label: allowance.label,
      cents: Math.round(money.value),
      element: allowance.slot,
      working: () => money,
    });
  }
}
