// Who does each step and how long it takes, kept by step: a length is worked out again only where the step, its claims,
// its trade or the working day changed.
import { NONE } from '#kit/differing';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Step, Trade } from '#model/model';
import type { Model } from '#model/resolve';
import type { Claims } from './claims.ts';
import { type Duration, durationOf } from './durations.ts';
import { endsOf } from './risk/ranges.ts';

type StepTrades = readonly (Trade | undefined)[];

export interface Lengths {
  readonly steps: readonly Step[];
  /** The same list while the trades are, as are those below. */
  readonly trades: StepTrades;
  /** What the name of a trade led to. */
  readonly bySlot: ReadonlyMap<Slot, Trade | undefined>;
  readonly claims: Claims['byStep'];
  readonly minutesPerDay: number;
  readonly durations: readonly Duration[];
  /** Working minutes of each. */
  readonly minutes: Int32Array;
  readonly findings: readonly Finding[];
}

export const noDuration = findingSort<[name: string]>({
  code: 'schedule/no-duration',
  severity: 'note',
  say: (name) =>
    `"${name}" has no length: it says neither how long it takes nor any work with a rate, so its dates are those of a moment. Add "takes 2d".`,
});

export const likelyOutside = findingSort<[name: string, likely: number, least: number, most: number]>({
  code: 'schedule/likely-outside',
  severity: 'warning',
  say: (name, likely, least, most) =>
    least === most
      ? `"${name}" takes ${dayCount(least)} and is likely to take ${dayCount(likely)}: one of the two is meant. The dates go by what is likely; write a range, "takes 3d..6d likely 4d", or leave "likely" out.`
      : `"${name}" is likely to take ${dayCount(likely)}, which does not lie between ${dayCount(least)} and ${dayCount(most)}. The dates go by what is likely, the risk by the range. Widen the range, or mend what is likely.`,
});

/** '4.5d', of days as the plan has them; counts are what the message is given. */
function dayCount(days: number): string {
  return `${Math.round(days * 10) / 10}d`;
}

export function lengthsOf(steps: readonly Step[], claims: Claims['byStep'], model: Model, before: Lengths | undefined): Lengths {
  const { minutesPerDay } = model.settings;
  const { trades, bySlot } = tradesOf(steps, model, before);
  const durations = new Array<Duration>(steps.length);
  let same = before !== undefined && before.steps === steps;
  for (let number = 0; number < steps.length; number++) {
    const old = before === undefined ? -1 : placeBefore(steps, number, before.steps);
    const isKept =
      old >= 0 &&
      before!.claims[old] === claims[number] &&
      before!.trades[old] === trades[number] &&
      before!.minutesPerDay === minutesPerDay;
    durations[number] = isKept
      ? before!.durations[old]!
      : durationOf(steps[number]!, claims[number]!, trades[number], minutesPerDay);
    same &&= durations[number] === before!.durations[number];
  }
  if (same) return { ...before!, trades, bySlot, claims, minutesPerDay };
  const minutes = new Int32Array(steps.length);
  const findings: Finding[] = [];
  let sameMinutes = before?.minutes.length === steps.length;
  for (let number = 0; number < steps.length; number++) {
    const { minutes: own, basis } = durations[number]!;
    minutes[number] = own;
    sameMinutes &&= own === before!.minutes[number];
    if (basis === 'none') findings.push(finding(noDuration, steps[number]!.place, steps[number]!.name));
    findings.push(...oddRange(steps[number]!, minutesPerDay));
  }
  return { steps, trades, bySlot, claims, minutesPerDay, durations, minutes: sameMinutes ? before!.minutes : minutes, findings };
}

/** What is likely lies within its range. */
function oddRange(step: Step, minutesPerDay: number): readonly Finding[] {
  const takes = step.kind === 'task' || step.kind === 'inspection' ? step.given.takes : undefined;
  const likely = takes?.value.likely?.value;
  if (likely === undefined) return NONE;
  const { time } = takes!.value;
  const [least, most] = endsOf(time) ?? [time.value, time.value];
  if (likely >= least && likely <= most) return NONE;
  return [finding(likelyOutside, takes!.place, step.name, likely / minutesPerDay, least / minutesPerDay, most / minutesPerDay)];
}

/** Where a step stood before, if it is the same: at its number, or as much further up as there are more steps now; else -1. */
function placeBefore(steps: readonly Step[], number: number, before: readonly Step[]): number {
  if (before[number] === steps[number]) return number;
  const moved = number + before.length - steps.length;
  return before[moved] === steps[number] ? moved : -1;
}

function tradesOf(steps: readonly Step[], model: Model, before: Lengths | undefined): Pick<Lengths, 'trades' | 'bySlot'> {
  let known = before;
  for (const [slot, trade] of before?.bySlot ?? []) if (tradeIn(slot, model) !== trade) known = undefined;
  if (known?.steps === steps) return known;
  const bySlot = new Map(known?.bySlot);
  const trades = new Array<Trade | undefined>(steps.length);
  let same = before?.trades.length === steps.length;
  for (let number = 0; number < steps.length; number++) {
    const old = known === undefined ? -1 : placeBefore(steps, number, known.steps);
    trades[number] = old >= 0 ? known!.trades[old] : tradeOf(steps[number]!, bySlot, model);
    same &&= trades[number] === before!.trades[number];
  }
  return { trades: same ? before!.trades : trades, bySlot };
}

function tradeOf(step: Step, bySlot: Map<Slot, Trade | undefined>, model: Model): Trade | undefined {
  const slot = step.kind === 'task' || step.kind === 'inspection' ? step.given.by?.value : undefined;
  if (slot === undefined) return undefined;
  if (!bySlot.has(slot)) bySlot.set(slot, tradeIn(slot, model));
  return bySlot.get(slot);
}

function tradeIn(slot: Slot, model: Model): Trade | undefined {
  const trade = model.element(slot);
  return trade?.kind === 'trade' ? trade : undefined;
}
