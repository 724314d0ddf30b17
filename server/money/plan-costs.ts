// What every step of a plan costs, by its number, kept from look to look: a step is priced again only when its length, its
// claims, its trade or what it is priced by changed. Sums are of whole cents, so that their order does not matter.
import { sameList } from '#kit/differing';
import type { Step, Trade } from '#model/model';
import type { Model } from '#model/resolve';
import type { Claim } from '#schedule/claims';
import type { Duration } from '#schedule/durations';
import type { Timeline } from '#schedule/timeline';
import type { Line } from '#takeoff/lines';
import { actualCosts, asPaid } from './actual.ts';
import type { Bid } from './bids.ts';
import type { Missing } from './cost-lines.ts';
import type { Prices } from './prices.ts';
import { othersOf, priced, type StepCost } from './step-costs.ts';

export interface PlanCosts {
  readonly costs: readonly StepCost[];
  /** Cents of all lines. */
  readonly cents: number;
  /** Take-off lines whose goods are paid for with steps, by step; and what has no price, by step. Mostly the same empty list. */
  readonly covers: readonly (readonly Line[])[];
  readonly missing: readonly (readonly Missing[])[];
}

export interface PlanCostsMemory {
  last: Last | undefined;
}

interface Last {
  readonly from: From;
  /** As planned, before what was paid; with what else each was priced by. */
  readonly planned: readonly StepCost[];
  readonly others: readonly (readonly unknown[])[];
  readonly actual: ReadonlyMap<number, number>;
  readonly value: PlanCosts;
}

/** What steps are priced by. The first three go by step. */
interface From {
  readonly steps: readonly Step[];
  readonly trades: readonly (Trade | undefined)[];
  readonly durations: readonly Duration[];
  readonly claims: readonly (readonly Claim[])[];
  readonly prices: Prices;
  readonly machines: readonly unknown[];
  readonly diary: readonly unknown[];
  readonly bids: readonly Bid[];
}

const NO_LINES: readonly Line[] = [];
const NOTHING_MISSING: readonly Missing[] = [];

export function planCosts(
  model: Model,
  timeline: Timeline,
  prices: Prices,
  bids: readonly Bid[],
  memory: PlanCostsMemory,
): PlanCosts {
  const { steps, trades, durations, claims } = timeline;
  const from: From = {
    steps: steps.list,
    trades,
    durations,
    claims: claims.byStep,
    prices,
    machines: model.list('machine'),
    diary: model.list('progress'),
    bids,
  };
  const last = memory.last?.from.bids === bids ? memory.last : undefined;
  const sameOthers = last?.from.prices === prices && last.from.machines === from.machines && last.from.diary === from.diary;
  const actual = actualCosts(model, timeline);
  const count = steps.list.length;
  const planned: StepCost[] = new Array(count);
  const others: (readonly unknown[])[] = new Array(count);
  const costs: StepCost[] = new Array(count);
  const covers: (readonly Line[])[] = new Array(count);
  const missing: (readonly Missing[])[] = new Array(count);
  let cents = last?.value.cents ?? 0;
  const paid = actual.size > 0 || (last?.actual.size ?? 0) > 0;
  for (let at = 0; at < count; at++) {
    const same =
      last !== undefined &&
      last.from.steps[at] === from.steps[at] &&
      last.from.trades[at] === trades[at] &&
      last.from.durations[at] === durations[at] &&
      last.from.claims[at] === from.claims[at];
    others[at] = same && sameOthers ? last.others[at]! : othersOf(from.steps[at]!, model, prices);
    planned[at] =
      same && (sameOthers || sameList(last.others[at]!, others[at]!))
        ? last.planned[at]!
        : priced({
            step: from.steps[at]!,
            trade: trades[at],
            duration: durations[at]!,
            claims: from.claims[at]!,
            prices,
            bids,
            model,
          });
    const spent = paid ? actual.get(at) : undefined;
    if (planned[at] === last?.planned[at] && (!paid || spent === last?.actual.get(at))) {
      costs[at] = last!.value.costs[at]!;
      covers[at] = last!.value.covers[at]!;
      missing[at] = last!.value.missing[at]!;
      continue;
    }
    const cost = spent === undefined ? planned[at]! : asPaid(planned[at]!, spent, from.steps[at]!.label);
    costs[at] = cost;
    covers[at] = cost.covers.length === 0 ? NO_LINES : cost.covers;
    missing[at] = cost.missing.length === 0 ? NOTHING_MISSING : cost.missing;
    cents += sumOf(cost) - sumOf(last?.value.costs[at]);
  }
  for (let at = count; at < (last?.value.costs.length ?? 0); at++) cents -= sumOf(last!.value.costs[at]);
  const value: PlanCosts = { costs, cents, covers, missing };
  memory.last = { from, planned, others, actual, value };
  return value;
}

function sumOf(cost: StepCost | undefined): number {
  let cents = 0;
  if (cost !== undefined) for (const line of cost.lines) cents += line.cents;
  return cents;
}
