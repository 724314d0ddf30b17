// Sums of money as reasons: the lines that add up to them, each with its own working.
import { addTo } from '#kit/gathered';
import type { CostLine } from '#money/cost-lines';
import { groupCosts } from './cost-groups.ts';
import { type ListedReason, listedReason, pruned } from './listed-reason.ts';
import { type View, writeMoney } from './view.ts';

/** The cost of some lines; those of one label together. Undefined where there are none. */
export function costReason(lines: readonly CostLine[], view: View, label = 'costs'): ListedReason | undefined {
  if (lines.length === 0) return undefined;
  // What is bought at once has one working, whichever of its places the lines are for.
  const alike = new Map<unknown, CostLine[]>();
  for (const line of lines) {
    const key = line.working ?? line.label;
    addTo(alike, key, line);
  }
  const inputs = [...alike.values()].map((list) => labelled(list[0]!.label, list, view));
  return moneyReason(label, totalOf(lines), view, inputs);
}

/** What the whole plan costs: by trade, then tax and contingency. */
export function planCostReason(view: View): ListedReason | undefined {
  const { budget } = view.plan;
  if (!budget.priced) return undefined;
  const trades = groupCosts('trade', view).map(({ label, total }) => moneyReason(label, total, view, []));
  const extras = [
    ...(budget.tax === 0 ? [] : [moneyReason('tax', budget.tax, view, [])]),
    ...(budget.contingency === 0 ? [] : [moneyReason('contingency', budget.contingency, view, [])]),
  ];
  return moneyReason('costs', budget.total, view, [...trades, ...extras]);
}

export function totalOf(lines: readonly CostLine[]): number {
  return lines.reduce((sum, line) => sum + line.cents, 0);
}

function labelled(label: string, lines: readonly CostLine[], view: View): ListedReason {
  const cents = totalOf(lines);
  const [first] = lines;
  const working = first?.working?.();
  if (working === undefined) return moneyReason(label, cents, view, []);
  const reason = pruned(listedReason(working, view), 1);
  if (working.value === cents) return { ...reason, label };
  // Bought, or bid, for more than this: a share of it.
  return {
    ...moneyReason(label, cents, view, [{ ...reason, label: 'for the whole plan' }]),
    formula: 'its share, by need',
  };
}

function moneyReason(label: string, cents: number, view: View, inputs: readonly ListedReason[]): ListedReason {
  return {
    label,
    value: cents,
    unit: 'cents',
    text: writeMoney(cents, view.style),
    ...(inputs.length > 1 ? { formula: 'the sum of' } : {}),
    inputs,
  };
}
