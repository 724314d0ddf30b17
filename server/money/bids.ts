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

/** A bid is one price: shared among the steps it holds by their length, so that every grouping closes. */
export function bidLines(bid: Bid, steps: readonly number[], timeline: Timeline, lines: CostLine[]): void {
  const { money, trades } = bid.given.for!.value;
  const whole = Math.round(money.value);
  const trade = trades[0]?.value;
  const base = { kind: 'work', rung: 'bid', label: bid.label, working: () => money } as const;
  if (steps.length === 0) {
    lines.push({ ...base, cents: whole, ...(trade === undefined ? {} : { trade }) });
    return;
  }
  const shares = shareCents(
    whole,
    steps.map((number) => Math.max(1, timeline.durations[number]!.minutes)),
  );
  steps.forEach((step, at) => {
    lines.push({ ...base, cents: shares[at]!, step, ...(trade === undefined ? {} : { trade }) });
  });
}
