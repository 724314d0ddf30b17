// What is given of each step's time: its calendar, its length, the dates it is held by and what is recorded of it. Kept as
// long as those are; where only lengths changed and nothing is recorded, the rest of it stays.
import { DAY_MINUTES } from '#kit/dates';
import { sameList } from '#kit/differing';
import type { Step } from '#model/model';
import type { Model } from '#model/resolve';
import { type Calendar, nextWork, previousWork, workBetween } from './calendar.ts';
import type { Lengths } from './lengths.ts';
import { waiting } from './links.ts';
import { FINISH_START, type Network } from './network.ts';
import { type CalendarMemory, calendarMemory, holidaysOf, planCalendars } from './plan-calendars.ts';
import { nextMorning, type Progress, type Record } from './progress.ts';
import { followWhatTheyStandFor, reachMilestones } from './recorded-moments.ts';
import { sameNumbers } from './same-numbers.ts';
import { isStanding, windowOf } from './step-windows.ts';
import type { Steps } from './steps.ts';
import type { Timing } from './timing.ts';
import { AROUND, afterStart, CALENDAR_DAYS } from './waits.ts';

export interface TimingMemory {
  readonly calendars: CalendarMemory;
  kept:
    | { readonly from: readonly unknown[]; readonly network: Network; readonly timing: Timing; readonly minutes: Int32Array }
    | undefined;
}
export function timingMemory(): TimingMemory {
  return { calendars: calendarMemory(), kept: undefined };
}

export function stepTimes(
  model: Model,
  steps: Steps,
  lengths: Lengths,
  progress: Progress,
  startDay: number,
  network: Network,
  memory: TimingMemory,
): Timing {
  const { trades, minutes } = lengths;
  const from = [steps, trades, model.plan, model.settings, startDay, progress, ...holidaysOf(model)];
  const { kept } = memory;
  if (kept !== undefined && sameList(from, kept.from)) {
    const isRecorded = progress.asOf !== undefined;
    if (kept.minutes === minutes && (!isRecorded || kept.network === network)) return kept.timing;
    if (!isRecorded) {
      memory.kept = { from, network, minutes, timing: { ...kept.timing, durations: minutes } };
      return memory.kept.timing;
    }
  }
  const timing = timingOf(model, steps, lengths, progress, startDay, network, memory.calendars);
  memory.kept = { from, network, minutes, timing: kept !== undefined && sameTiming(timing, kept.timing) ? kept.timing : timing };
  return memory.kept.timing;
}

function sameTiming(a: Timing, b: Timing): boolean {
  return (
    a.start === b.start &&
    sameList(a.calendars, b.calendars) &&
    sameNumbers(a.calendarOf, b.calendarOf) &&
    sameNumbers(a.durations, b.durations) &&
    sameNumbers(a.done, b.done) &&
    sameNumbers(a.wholeDays, b.wholeDays) &&
    sameNumbers(a.notBefore, b.notBefore) &&
    sameNumbers(a.fixedStart, b.fixedStart) &&
    sameNumbers(a.fixedFinish, b.fixedFinish) &&
    sameNumbers(a.deadline, b.deadline) &&
    sameNumbers(a.startBy, b.startBy) &&
    sameNumbers(a.spans, b.spans)
  );
}

function timingOf(
  model: Model,
  steps: Steps,
  { trades, minutes, durations }: Lengths,
  progress: Progress,
  startDay: number,
  network: Network,
  memory: CalendarMemory,
): Timing {
  const calendars = planCalendars(model, startDay, progress.asOf, memory);
  const count = steps.list.length;
  const calendarOf = new Int32Array(count);
  const notBefore = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  const fixedStart = new Float64Array(count).fill(Number.NaN);
  const fixedFinish = new Float64Array(count).fill(Number.NaN);
  const wholeDays = new Uint8Array(count);
  const deadline = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const startBy = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const spans = new Uint8Array(count);
  const lengths = minutes.slice();
  const done = new Int32Array(count);
  const morning = progress.asOf === undefined ? Number.NEGATIVE_INFINITY : nextMorning(progress.asOf);
  steps.list.forEach((step, at) => {
    calendarOf[at] = calendars.of(step, trades[at]);
    const calendar = calendars.calendars[calendarOf[at]!]!;
    if (durations[at]!.basis === 'visit') wholeDays[at] = 1;
    const record = progress.records.get(at);
    const window = windowOf(step, calendar);
    notBefore[at] = window.notBefore;
    deadline[at] = window.deadline;
    startBy[at] = window.startBy;
    if (isStanding(step)) {
      spans[at] = 1;
      lengths[at] = 0;
    }
    if (step.kind === 'delivery')
      notBefore[at] = Math.max(notBefore[at]!, arrival(step, orderableFrom(at, startDay, progress), calendars.calendars[0]!));
    if (step.kind === 'milestone' && step.given.on !== undefined)
      notBefore[at] = Math.max(notBefore[at]!, step.given.on.value * DAY_MINUTES);
    if (record === undefined) {
      // What stands for others follows them, whatever the diary's day.
      if (spans[at] === 1) return;
      if (morning > notBefore[at]!) notBefore[at] = morning;
      return;
    }
    if (record.notBefore !== undefined) notBefore[at] = Math.max(notBefore[at]!, record.notBefore * DAY_MINUTES);
    const lastFailed = record.failed[record.failed.length - 1];
    if (record.finished !== undefined) {
      fixedFinish[at] =
        lengths[at] === 0
          ? record.finished * DAY_MINUTES + DAY_MINUTES / 2
          : previousWork(calendar, nextMorning(record.finished));
      const began = record.started === undefined ? Number.NaN : nextWork(calendar, record.started * DAY_MINUTES);
      fixedStart[at] = Number.isNaN(began) ? Number.NaN : Math.min(began, fixedFinish[at]!);
    } else if (record.started !== undefined) {
      fixedStart[at] = nextWork(calendar, record.started * DAY_MINUTES);
      // Since somebody last said how far it is, or since it began, it has gone on.
      const since = record.saidOn === undefined ? fixedStart[at]! : nextMorning(record.saidOn);
      const gone = Math.max(0, workBetween(calendar, since, morning));
      lengths[at] = Math.max(0, (remaining(record, lengths[at]!) ?? lengths[at]!) - gone);
      done[at] = Math.max(0, minutes[at]! - lengths[at]!);
      notBefore[at] = Math.max(notBefore[at]!, morning);
    } else if (spans[at] === 1) {
      // How far it is, is how far what it stands for is.
    } else if (lengths[at]! > 0 && remaining(record, lengths[at]!) === 0) {
      // Nothing is left of it, and nobody says when it was done: by the diary's day.
      fixedFinish[at] = previousWork(calendar, morning);
      done[at] = lengths[at]!;
      lengths[at] = 0;
    } else if (remaining(record, lengths[at]!) !== undefined) {
      // How far it is, but not when it began: what is left of it is still to do.
      lengths[at] = remaining(record, lengths[at]!)!;
      done[at] = Math.max(0, minutes[at]! - lengths[at]!);
      notBefore[at] = Math.max(notBefore[at]!, morning);
    } else if (lastFailed !== undefined) {
      notBefore[at] = Math.max(notBefore[at]!, lastFailed * DAY_MINUTES + comesAgain(step), morning);
    } else notBefore[at] = Math.max(notBefore[at]!, morning);
  });
  const doneBy = (at: number, moment: number): number =>
    lengths[at]! > 0 ? previousWork(calendars.calendars[calendarOf[at]!]!, moment) : moment;
  assumeDone(network, fixedStart, fixedFinish, progress, doneBy);
  const recordedTimes = { lengths, fixedStart, fixedFinish, notBefore, calendarOf, calendars: calendars.calendars };
  followWhatTheyStandFor(steps, network, progress, recordedTimes);
  reachMilestones(steps, network, progress, recordedTimes);
  const recorded = progress.asOf === undefined ? {} : { fixedStart, fixedFinish, done };
  return {
    durations: lengths,
    wholeDays,
    spans,
    calendarOf,
    calendars: calendars.calendars,
    planCalendar: 0,
    start: startDay * DAY_MINUTES,
    notBefore,
    ...recorded,
    deadline,
    startBy,
  };
}

/** Working minutes left as the diary says, in time or by the share that is done; undefined where it says neither. */
function remaining({ left, done }: Record, length: number): number | undefined {
  if (left !== undefined) return Math.max(0, Math.round(left));
  return done === undefined ? undefined : Math.max(0, Math.round(length * (1 - done)));
}

/** A failed visit opens a second, with its notice again: so many minutes after the midnight that begins its day. */
export function comesAgain(step: Step): number {
  const { lag, clock } =
    step.kind === 'inspection' && step.given.call !== undefined
      ? waiting(step.given.call.value)
      : { lag: DAY_MINUTES, clock: CALENDAR_DAYS };
  return clock === AROUND ? DAY_MINUTES / 2 + lag : Math.max(DAY_MINUTES, lag);
}

/** A step without a record all of whose followers have begun was done, or they could not have. */
function assumeDone(
  network: Network,
  fixedStart: Float64Array,
  fixedFinish: Float64Array,
  progress: Progress,
  doneBy: (at: number, moment: number) => number,
): void {
  if (progress.asOf === undefined) return;
  for (let nth = network.order.length - 1; nth >= 0; nth--) {
    const at = network.order[nth]!;
    if (progress.records.has(at) || !Number.isNaN(fixedFinish[at]!)) continue;
    const from = network.outgoingStart[at]!;
    const to = network.outgoingStart[at + 1]!;
    let earliest = Number.POSITIVE_INFINITY;
    for (let slot = from; slot < to; slot++) {
      // What begins with it, or ends with it, says nothing of its end.
      if (network.linkKind[network.outgoing[slot]!] !== FINISH_START) continue;
      const next = network.linkTo[network.outgoing[slot]!]!;
      const began = Number.isNaN(fixedStart[next]!) ? fixedFinish[next]! : fixedStart[next]!;
      earliest = Number.isNaN(began) ? Number.NaN : Math.min(earliest, began);
      if (Number.isNaN(earliest)) break;
    }
    if (from < to && Number.isFinite(earliest)) fixedFinish[at] = doneBy(at, earliest);
  }
}

/** The day on which what is not ordered can be at the earliest: the diary's, unless the diary expects it, or the plan's first. */
export function orderableFrom(step: number, startDay: number, { asOf, records }: Progress): number {
  return asOf === undefined || records.get(step)?.notBefore !== undefined ? startDay : Math.max(startDay, asOf);
}

/** Ordered and so long on the way; or, not yet ordered, no sooner than its lead after `from`, a day. */
export function arrival(step: Extract<Step, { kind: 'delivery' }>, from: number, plan: Calendar, minutes?: number): number {
  const { lead, ordered } = step.given;
  if (lead === undefined || step.given['measured after'] !== undefined) return Number.NEGATIVE_INFINITY;
  const { lag, clock } = waiting(minutes === undefined ? lead.value : { ...lead.value, value: minutes });
  return afterStart(plan, (ordered?.value ?? from) * DAY_MINUTES, lag, clock);
}
