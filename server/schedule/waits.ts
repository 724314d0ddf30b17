// How long a link waits: from the moment it hangs on to the moment it lets the next step go, and back again. The way
// back gives the latest moment whose way forth does not pass a bound, so the two passes mirror each other.
import { DAY_MINUTES, dayOfFinish } from '#kit/dates';
import { advance, type Calendar, canBegin, nextWork, retreat } from './calendar.ts';

/** Working minutes on the plan's calendar (`2d`). */
export const WORKING = 0;
/** Whole calendar days (`2 days`), given in minutes. */
export const CALENDAR_DAYS = 1;
/** Minutes by the clock, day and night (`24h`). */
export const AROUND = 2;
export type WaitClock = typeof WORKING | typeof CALENDAR_DAYS | typeof AROUND;

/**
 * The moment a wait is over that begins with a start. Below zero it is a lead. Days are counted by the clock from a
 * start (begun Monday at eight, one day later is Tuesday at eight).
 */
export function afterStart(calendar: Calendar, moment: number, lag: number, clock: number): number {
  if (lag === 0) return moment;
  return clock === WORKING ? advance(calendar, moment, lag) : moment + lag;
}

/** The moment a wait is over that begins with a finish. Whole days end at the end of that date: poured on Friday, two days end with Sunday. */
export function afterFinish(calendar: Calendar, moment: number, lag: number, clock: number): number {
  if (lag === 0 || clock !== CALENDAR_DAYS) return afterStart(calendar, moment, lag, clock);
  return (dayOfFinish(moment) + 1) * DAY_MINUTES + lag;
}

/** The latest start whose wait is over by `bound`. */
export function beforeStart(calendar: Calendar, bound: number, lag: number, clock: number): number {
  if (lag === 0) return bound;
  if (clock !== WORKING) return bound - lag;
  if (lag > 0) return retreat(calendar, bound, lag);
  // A lead ends at an opening, never at a closing. So where the bound lies in a pause it must end a minute of work before.
  return nextWork(calendar, advance(calendar, bound, canBegin(calendar, bound) ? -lag : -lag - 1));
}

/** The latest finish whose wait is over by `bound`. */
export function beforeFinish(calendar: Calendar, bound: number, lag: number, clock: number): number {
  if (lag === 0 || clock !== CALENDAR_DAYS) return beforeStart(calendar, bound, lag, clock);
  return Math.floor((bound - lag) / DAY_MINUTES) * DAY_MINUTES;
}
