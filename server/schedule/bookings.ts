// When each trade of a plan is on site, for others who count on the same people: a trade that two plans include from one
// file is one set of people.
import { DAY_MINUTES } from '#kit/dates';
import type { Trade } from '#model/model';
import { type Calendar, workBetween } from './calendar.ts';
import { recordedStart } from './early-dates.ts';
import { nextMorning } from './progress.ts';
import type { Timeline } from './timeline.ts';
import { hasFinished, hasStarted } from './timing.ts';

export interface Booking {
  readonly step: string;
  /** Moments: from when to when its crew is there. */
  readonly start: number;
  readonly finish: number;
}

/** A plan as its neighbours see it. */
export interface House {
  /** Path of its root. */
  readonly root: string;
  readonly label: string;
  /** By trade, as `sharedKey` names it; in plan order. */
  readonly bookings: ReadonlyMap<string, readonly Booking[]>;
}

/** A trade's file and name: the same for two plans that include it from one file. */
export function sharedKey({ slot }: Trade): string {
  return `${slot.file} ${slot.name}`;
}

/** What is still to do of each trade's steps; nothing of a plan without dates. */
export function bookingsOf(timeline: Timeline, isShared: (trade: Trade) => boolean): ReadonlyMap<string, readonly Booking[]> {
  const bookings = new Map<string, Booking[]>();
  if (!timeline.dated) return bookings;
  timeline.steps.list.forEach(({ kind, name }, step) => {
    const trade = timeline.trades[step];
    if (kind !== 'task' || trade === undefined || !isShared(trade)) return;
    const span = spanOf(step, timeline);
    if (span === undefined) return;
    const key = sharedKey(trade);
    let list = bookings.get(key);
    if (list === undefined) bookings.set(key, (list = []));
    list.push({ step: name, ...span });
  });
  return bookings;
}

/** From when to when a step's crew is still to be there; undefined for what is done, or takes no time. */
export function spanOf(step: number, { timing, crews, progress }: Timeline): { start: number; finish: number } | undefined {
  if (hasFinished(timing, step)) return undefined;
  const finish = crews.finish[step]!;
  const begun = hasStarted(timing, step) ? Math.max(recordedStart(timing, step), timing.notBefore[step]!) : crews.start[step]!;
  const start = progress.asOf === undefined ? begun : Math.max(begun, nextMorning(progress.asOf));
  return finish > start ? { start, finish } : undefined;
}

/** How many crews a trade has. */
export function crewsOf(trade: Trade): number {
  return Math.max(1, trade.given.crews?.value ?? 1);
}

/** The days of a span on which a calendar works within it. */
export function workedDays(start: number, finish: number, calendar: Calendar): readonly number[] {
  const days: number[] = [];
  for (let day = Math.floor(start / DAY_MINUTES); day * DAY_MINUTES < finish; day++) {
    const [from, to] = [Math.max(start, day * DAY_MINUTES), Math.min(finish, (day + 1) * DAY_MINUTES)];
    if (workBetween(calendar, from, to) > 0) days.push(day);
  }
  return days;
}
