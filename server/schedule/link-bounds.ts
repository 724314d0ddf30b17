// When a link lets the step it leads to go on, and the other way about: by when the step it comes from must be so far. Both
// passes, and whoever asks afterwards which link was tight, ask here.
import { DAY_MINUTES, dayOfFinish } from '#kit/dates';
import { advance, type Calendar, canBegin, closingOf, nextWork, previousWork, retreat, workBetween } from './calendar.ts';
import { FINISH_FINISH, FINISH_START, type Network } from './network.ts';
import { hasFinished, hasStarted, isSpan, type Timing } from './timing.ts';
import { afterFinish, afterStart, beforeFinish, WORKING } from './waits.ts';

interface Dates {
  readonly start: Float64Array;
  readonly finish: Float64Array;
}

/** The moment from which a link lets its step begin, or by which it lets it be done, once the step it comes from has dates. */
export function linkBound(network: Network, timing: Timing, link: number, { start, finish }: Dates): number {
  const { linkFrom, linkKind, linkLag, linkClock, linkShare } = network;
  const from = linkFrom[link]!;
  const kind = linkKind[link]!;
  const plan = timing.calendars[timing.planCalendar]!;
  const lag = linkLag[link]!;
  const clock = linkClock[link]!;
  if (kind === FINISH_START || kind === FINISH_FINISH) return afterFinish(plan, finish[from]!, lag, clock);
  const share = linkShare[link]!;
  if (!(share > 0)) return afterStart(plan, start[from]!, lag, clock);
  // A share that is done is an end, as a finish is: a wait in days begins with the day after it.
  return afterFinish(plan, shareDone(timing, from, share, start[from]!, finish[from]!), lag, clock);
}

/** When a share of a step is done, on the step's own calendar; of begun work, when as much of it as is lacking is done. */
export function shareDone(timing: Timing, step: number, share: number, start: number, finish: number): number {
  const own = timing.calendars[timing.calendarOf[step]!]!;
  if (hasFinished(timing, step) || isSpan(timing, step)) return advance(own, start, part(workBetween(own, start, finish), share));
  const lacking = lackingOf(timing, step, share);
  if (!hasStarted(timing, step)) return advance(own, start, Math.max(0, lacking));
  const goesOn = Math.max(start, timing.notBefore[step]!);
  // It was reached already, by the diary: after as much work as the share takes, and by the diary's day at the latest.
  if (lacking <= 0) return Math.min(goesOn, advance(own, start, (timing.done?.[step] ?? 0) + lacking));
  return advance(own, goesOn, lacking);
}

/**
 * When work is done that a link lets be done from a moment: at that moment, on a day on which those who do it work. A day off is
 * nobody's last day: then it is the end of the next day that they work. What dries, or waits by the clock, may end on any day.
 */
export function worksUntil({ linkTo, linkClock }: Network, timing: Timing, link: number, moment: number): number {
  const to = linkTo[link]!;
  if (linkClock[link] !== WORKING || !(timing.durations[to]! > 0)) return moment;
  const own = timing.calendars[timing.calendarOf[to]!]!;
  if (canBegin(own, moment)) return moment;
  const day = dayOfFinish(moment);
  const first = nextWork(own, day * DAY_MINUTES);
  return first < (day + 1) * DAY_MINUTES ? moment : closingOf(own, first);
}

/** The latest moment from which a link may let its step be done, for it to be done by a bound: the way back of `worksUntil`. */
export function untilWorked({ linkTo, linkClock }: Network, timing: Timing, link: number, bound: number): number {
  const to = linkTo[link]!;
  if (linkClock[link] !== WORKING || !(timing.durations[to]! > 0)) return bound;
  const own = timing.calendars[timing.calendarOf[to]!]!;
  const day = dayOfFinish(bound);
  if (canBegin(own, bound) || nextWork(own, day * DAY_MINUTES) < (day + 1) * DAY_MINUTES) return bound;
  return (dayOfFinish(previousWork(own, day * DAY_MINUTES)) + 1) * DAY_MINUTES;
}

/** The latest start and finish of a step. */
export interface Bounds {
  start: number;
  finish: number;
}

/** Narrows the bounds of a step, a share of which must be done, and `lag` over, by a moment. */
export function boundShare(
  timing: Timing,
  step: number,
  share: number,
  plan: Calendar,
  bound: number,
  lag: number,
  clock: number,
  bounds: Bounds,
): void {
  const own = timing.calendars[timing.calendarOf[step]!]!;
  const done = beforeFinish(plan, bound, lag, clock);
  const lacking = lackingOf(timing, step, share);
  if (!hasStarted(timing, step)) bounds.start = Math.min(bounds.start, retreat(own, done, Math.max(0, lacking)));
  else if (lacking > 0)
    bounds.finish = Math.min(bounds.finish, advance(own, retreat(own, done, lacking), Math.max(0, timing.durations[step]!)));
}

/** Working minutes until so great a share is done; below zero where more of it is done already. */
function lackingOf(timing: Timing, step: number, share: number): number {
  const done = timing.done?.[step] ?? 0;
  return part(done + Math.max(0, timing.durations[step]!), share) - done;
}

function part(minutes: number, share: number): number {
  return Math.round(minutes * Math.min(1, share));
}
