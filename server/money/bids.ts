// What bids come to: an accepted bid holds the steps of its trade, is one price, and is shared among them to the cent.
import { shareCents } from '#kit/money';
import type { Slot } from '#kit/place';
import type { ElementOf, Task } from '#model/model';
import type { Timeline } from '#schedule/timeline';
import type { CostLine } from './cost-lines.ts';

export type Bid = ElementOf<'bid'>;

/** A bid holds a step of its trade, but for what it leaves out; where it says what it includes, only that. */
export function holdsStep(bid: Bid, task: Task, trade: Slot | undefined): boolean {
  if (trade === undefined || !bid.given.for!.value.trades.some(({ value }) => value === trade)) return false;
  const names = [task.name, ...(task.given.does?.value ?? []).map(({ value }) => value.work.name)];
  const out = bid.given['leaves out']?.value.map(({ value }) => value.name) ?? [];
  if (names.some((name) => out.includes(name))) return false;
  const included = bid.given.includes?.value.map(({ value }) => value.name);
  return included === undefined || names.some((name) => included.includes(name));
}

/** A bid is one price: shared among the steps it holds by their length, so that every grouping closes. `held` goes by step. */
export function bidLines(bids: readonly Bid[], held: readonly (Bid | undefined)[], timeline: Timeline): readonly CostLine[] {
  return bids.flatMap((bid): CostLine[] => {
    const { money, trades } = bid.given.for!.value;
    const whole = Math.round(money.value);
    const trade = trades[0]?.value;
    const base = {
      kind: 'work',
      rung: 'bid',
      label: bid.label,
      working: () => money,
      ...(trade === undefined ? {} : { trade }),
    } as const;
    const steps = held.flatMap((each, step) => (each === bid ? [step] : []));
    if (steps.length === 0) return [{ ...base, cents: whole }];
    const shares = shareCents(
      whole,
      steps.map((step) => Math.max(1, timeline.durations[step]!.minutes)),
    );
    return steps.map((step, at) => ({ ...base, cents: shares[at]!, step }));
  });
}
