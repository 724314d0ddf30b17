// The forward pass: each step as early as its links, its dates and the plan's start allow. `placeEarly` is the one
// place that says what links, dates and records do to a step; the crew pass asks it too.
import { DAY_MINUTES, dayOfFinish } from '#kit/dates';
import { advance, type Calendar, closingOf, firstOpening, nextWork, previousWork, retreat } from './calendar.ts';
import { linkBound, worksUntil } from './link-bounds.ts';
import { FINISH_START, type Network, START_START } from './network.ts';
import { hasFinished, hasStarted, isSpan, type Timing, takesDay } from './timing.ts';

/** What set a step's early start: the number of a link, or one of these. */
export const HELD_BY_PLAN = -1;
export const HELD_BY_DATE = -2;
export const HELD_BY_RECORD = -3;

/** Moments by step, as far as steps are placed. */
export interface Placed {
  readonly start: Float64Array;
  readonly finish: Float64Array;
  readonly heldBy: Int32Array;
}

export interface EarlyDates extends Placed {
  /** The latest finish; the plan's start where there is nothing to do. */
  readonly end: number;
}

export function earlyDates(network: Network, timing: Timing): EarlyDates {
  const placed = unplaced(network.count);
  let end = timing.start;
  for (const task of network.order) {
    placeEarly(network, timing, task, placed);
    end = Math.max(end, placed.finish[task]!);
  }
  return { ...placed, end };
}

export function unplaced(count: number): Placed {
  return { start: new Float64Array(count), finish: new Float64Array(count), heldBy: new Int32Array(count) };
}

/** Puts one step where the steps it hangs on, all placed, let it begin. Fills its entries of `placed`. */
export function placeEarly(network: Network, timing: Timing, task: number, placed: Placed): void {
  const { incomingStart, incoming, linkKind } = network;
  const { start, finish, heldBy } = placed;
  const own = timing.calendars[timing.calendarOf[task]!]!;
  const length = Math.max(0, timing.durations[task]!);
  if (hasFinished(timing, task)) {
    start[task] = recordedStart(timing, task);
    finish[task] = recordedEnd(timing, task);
    heldBy[task] = HELD_BY_RECORD;
    return;
  }

  const spans = isSpan(timing, task);
  let tightest = -1;
  let linked = Number.NEGATIVE_INFINITY;
  let finishBound = Number.NEGATIVE_INFINITY;
  for (let slot = incomingStart[task]!; slot < incomingStart[task + 1]!; slot++) {
    const link = incoming[slot]!;
    const kind = linkKind[link]!;
    let bound = linkBound(network, timing, link, placed);
    if (kind !== FINISH_START && kind !== START_START) {
      bound = worksUntil(network, timing, link, bound);
      finishBound = Math.max(finishBound, bound);
      if (spans) continue;
      bound = retreat(own, bound, length);
    }
    if (bound > linked) {
      linked = bound;
      tightest = link;
    }
  }

  if (hasStarted(timing, task)) {
    start[task] = recordedStart(timing, task);
    finish[task] = Math.max(recordedEnd(timing, task), finishBound);
    heldBy[task] = HELD_BY_RECORD;
    return;
  }
  const dated = timing.notBefore[task]!;
  const given = Math.max(timing.start, dated);
  const bound = Math.max(linked, given);
  const isWhole = takesDay(timing, task);
  const opens = isWhole ? firstOpening : nextWork;
  const begin = length === 0 ? bound : opens(own, bound);
  start[task] = begin;
  const end = isWhole ? visitsEnd(timing, task, own, begin) : advance(own, begin, length);
  finish[task] = length === 0 && !spans ? begin : Math.max(end, finishBound);
  // Where a link and a date lead to the same first working moment, the link is the better reason.
  const isLinked = tightest >= 0 && (linked >= given || (length > 0 && opens(own, linked) === begin));
  heldBy[task] = isLinked ? tightest : dated > timing.start ? HELD_BY_DATE : HELD_BY_PLAN;
}

/** The closing of the day on which a visit passes that first comes at `begin`. */
function visitsEnd(timing: Timing, task: number, own: Calendar, begin: number): number {
  let end = closingOf(own, begin);
  for (let failed = timing.failures?.[task] ?? 0; failed > 0; failed--) {
    const midnight = dayOfFinish(end) * DAY_MINUTES;
    end = closingOf(own, firstOpening(own, midnight + timing.comesAgain![task]!));
  }
  return end;
}

/** When work that has begun began: as recorded, else as its recorded finish says. */
export function recordedStart(timing: Timing, task: number): number {
  const began = timing.fixedStart?.[task] ?? Number.NaN;
  const ended = timing.fixedFinish?.[task] ?? Number.NaN;
  if (!Number.isNaN(began)) return Number.isNaN(ended) ? began : Math.min(began, ended);
  return retreat(timing.calendars[timing.calendarOf[task]!]!, ended, Math.max(0, timing.durations[task]!));
}

/** When work that has begun ended, or will when what is left of it goes on from `notBefore`. */
export function recordedEnd(timing: Timing, task: number): number {
  const ended = timing.fixedFinish?.[task] ?? Number.NaN;
  if (!Number.isNaN(ended)) return ended;
  const began = timing.fixedStart?.[task] ?? Number.NaN;
  const left = Math.max(0, timing.durations[task]!);
  // Nothing is left of it, and nobody says when it was done: by the last working day that the diary stands at.
  const own = timing.calendars[timing.calendarOf[task]!]!;
  if (left === 0) return isSpan(timing, task) ? began : Math.max(began, lastWork(own, timing.notBefore[task]!));
  return advance(own, Math.max(began, timing.notBefore[task]!), left);
}

function lastWork(own: Calendar, moment: number): number {
  return Number.isFinite(moment) ? previousWork(own, moment) : moment;
}
