// Earliest and latest dates and the float between them. Each step's work is one unbroken run of minutes on its own
// calendar; it begins when work can begin, ends at the closing of a shift, and is finished then, or later in the same
// pause where a link to its finish says so. A step without length keeps the moment it falls on.
import {
  advance,
  type Calendar,
  canBegin,
  closingOf,
  lastOpening,
  nextWork,
  openingBy,
  previousWork,
  retreat,
  workBetween,
} from './calendar.ts';
import { type EarlyDates, earlyDates } from './early-dates.ts';
import { type Bounds, boundShare, untilWorked } from './link-bounds.ts';
import { FINISH_FINISH, FINISH_START, type Network, START_START } from './network.ts';
import { hasFinished, hasStarted, isSpan, type Timing, takesDay } from './timing.ts';
import { beforeFinish, beforeStart } from './waits.ts';

export interface LateDates {
  /** Moments. */
  readonly lateStart: Float64Array;
  readonly lateFinish: Float64Array;
  /**
   * Working minutes on the step's own calendar from its early to its late start (of begun work: from early to late
   * finish); below zero where a deadline cannot be met.
   */
  readonly totalFloat: Float64Array;
  /** 1 where there is no total float and work is still to do. */
  readonly critical: Uint8Array;
}

export interface LinkDates extends EarlyDates, LateDates {}

export interface CriticalPath extends LinkDates {
  /** Working minutes on its own calendar by which a step can slip while all that hangs on it keeps its early dates. */
  readonly freeFloat: Float64Array;
}

/**
 * Both passes over the network (Kelley & Walker's critical path method, with the four kinds of link and calendars).
 * A loop has no answer: the links that close it, told in `network.loops`, do not count.
 */
export function criticalPath(network: Network, timing: Timing): CriticalPath {
  const early = earlyDates(network, timing);
  const late = lateDates(network, timing, early);
  return { ...early, ...late, freeFloat: freeFloats(network, timing, early) };
}

/** The backward pass: each step as late as the plan's end, the deadlines and all that hangs on it allow. */
export function lateDates(network: Network, timing: Timing, early: EarlyDates): LateDates {
  const { count, order } = network;
  const lateStart = new Float64Array(count);
  const lateFinish = new Float64Array(count);
  const totalFloat = new Float64Array(count);
  const critical = new Uint8Array(count);
  /** How late each finish itself may be: past the closing, as long as its calendar pauses. */
  const latest = new Float64Array(count);
  const bounds: Bounds = { start: 0, finish: 0 };
  for (let at = order.length - 1; at >= 0; at--) {
    const task = order[at]!;
    if (hasFinished(timing, task)) {
      lateStart[task] = early.start[task]!;
      lateFinish[task] = latest[task] = early.finish[task]!;
      continue;
    }
    const own = timing.calendars[timing.calendarOf[task]!]!;
    bindBy(network, timing, task, lateStart, latest, early.end, bounds);
    const due = timing.deadline?.[task] ?? Number.NaN;
    if (due < bounds.finish) bounds.finish = due;
    const begins = timing.startBy?.[task] ?? Number.NaN;
    if (begins < bounds.start) bounds.start = begins;
    const length = Math.max(0, timing.durations[task]!);
    if (hasStarted(timing, task)) {
      lateStart[task] = early.start[task]!;
      latest[task] = bounds.finish;
      lateFinish[task] = length === 0 ? bounds.finish : closing(own, bounds.finish, early.finish[task]!);
      totalFloat[task] = workBetween(own, early.finish[task]!, lateFinish[task]!);
    } else if (isSpan(timing, task)) {
      // What it stands for is never held by it; it slips as far as what waits for it lets its end slip.
      latest[task] = lateFinish[task] = bounds.finish;
      lateStart[task] = Math.min(bounds.start, bounds.finish);
      totalFloat[task] = workBetween(own, early.finish[task]!, bounds.finish);
    } else if (length === 0) {
      lateStart[task] = lateFinish[task] = latest[task] = Math.min(bounds.finish, bounds.start);
      totalFloat[task] = workBetween(own, early.start[task]!, lateStart[task]!);
    } else if (takesDay(timing, task)) {
      lateStart[task] = lastWholeDay(own, bounds);
      latest[task] = lateFinish[task] = closingOf(own, lateStart[task]!);
      totalFloat[task] = workBetween(own, early.start[task]!, lateStart[task]!);
    } else {
      const begin = retreat(own, bounds.finish, length);
      const last = bounds.start >= begin ? begin : lastBegin(own, bounds.start);
      lateStart[task] = last;
      if (last < begin) bounds.finish = nextWork(own, advance(own, last, length));
      latest[task] = bounds.finish;
      lateFinish[task] = closing(own, bounds.finish, early.finish[task]!);
      totalFloat[task] = workBetween(own, early.start[task]!, last);
    }
    critical[task] = totalFloat[task]! <= 0 ? 1 : 0;
  }
  return { lateStart, lateFinish, totalFloat, critical };
}

/** How far each step can slip while all that hangs on it, and the plan's end, keep their early dates. */
function freeFloats(network: Network, timing: Timing, early: EarlyDates): Float64Array {
  const freeFloat = new Float64Array(network.count);
  const bounds: Bounds = { start: 0, finish: 0 };
  for (let task = 0; task < network.count; task++) {
    if (hasFinished(timing, task)) continue;
    const own = timing.calendars[timing.calendarOf[task]!]!;
    bindBy(network, timing, task, early.start, early.finish, early.end, bounds);
    // A day on which it must start leaves none, if that day is met.
    const begins = timing.startBy?.[task] ?? Number.NaN;
    if (begins < bounds.start && begins >= early.start[task]!) bounds.start = begins;
    if (takesDay(timing, task) && !hasStarted(timing, task)) {
      freeFloat[task] = workBetween(own, early.start[task]!, lastWholeDay(own, bounds));
      continue;
    }
    let slack = workBetween(own, early.finish[task]!, bounds.finish);
    if (bounds.start < Number.POSITIVE_INFINITY && !hasStarted(timing, task)) {
      const last = timing.durations[task]! > 0 ? lastBegin(own, bounds.start) : bounds.start;
      slack = Math.min(slack, workBetween(own, early.start[task]!, last));
    }
    freeFloat[task] = slack;
  }
  return freeFloat;
}

/** The latest start and finish of a step that keep the plan's end and the given dates of all that hangs on it. */
export function bindBy(
  network: Network,
  timing: Timing,
  task: number,
  starts: Float64Array,
  finishes: Float64Array,
  end: number,
  bounds: Bounds,
): void {
  const { outgoingStart, outgoing, linkTo, linkKind, linkLag, linkClock, linkShare } = network;
  const plan = timing.calendars[timing.planCalendar]!;
  bounds.start = Number.POSITIVE_INFINITY;
  bounds.finish = end;
  for (let slot = outgoingStart[task]!; slot < outgoingStart[task + 1]!; slot++) {
    const link = outgoing[slot]!;
    const to = linkTo[link]!;
    const kind = linkKind[link]!;
    const toStart = kind === FINISH_START || kind === START_START;
    // What is finished, or has begun, no longer waits for anything; unless what is left of it does.
    const isOver = toStart ? hasStarted(timing, to) : hasFinished(timing, to);
    if (isOver && (timing.begunWaits !== true || hasFinished(timing, to))) continue;
    const bound = isOver
      ? goesOnBy(timing, to, finishes[to]!)
      : toStart
        ? starts[to]!
        : untilWorked(network, timing, link, finishes[to]!);
    if (kind === FINISH_START || kind === FINISH_FINISH) {
      bounds.finish = Math.min(bounds.finish, beforeFinish(plan, bound, linkLag[link]!, linkClock[link]!));
    } else if (linkShare[link]! > 0) {
      boundShare(timing, task, linkShare[link]!, plan, bound, linkLag[link]!, linkClock[link]!, bounds);
    } else {
      bounds.start = Math.min(bounds.start, beforeStart(plan, bound, linkLag[link]!, linkClock[link]!));
    }
  }
}

/** The moment from which what is left of begun work must go on to be done by a finish. */
function goesOnBy(timing: Timing, task: number, finish: number): number {
  return retreat(timing.calendars[timing.calendarOf[task]!]!, finish, Math.max(0, timing.durations[task]!));
}

/** The opening of the last day that keeps both bounds. */
export function lastWholeDay(own: Calendar, { start, finish }: Bounds): number {
  return Math.min(lastOpening(own, finish), start === Number.POSITIVE_INFINITY ? start : openingBy(own, start));
}

/** The last moment by `bound` at which work can begin: in a pause, a minute before its closing. */
export function lastBegin(own: Calendar, bound: number): number {
  return canBegin(own, bound) ? bound : retreat(own, bound, 1);
}

/** The closing before a bound; the early finish where that stands in the same pause, between the two. */
function closing(own: Calendar, bound: number, earlyFinish: number): number {
  const closed = previousWork(own, bound);
  return earlyFinish > closed && earlyFinish <= bound ? earlyFinish : closed;
}
