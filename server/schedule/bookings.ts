// When each trade, machine and firm of a plan is on site, for others who count on the same: a trade that two plans include from
// one file is one set of people, and a machine one machine.
import { DAY_MINUTES } from '#kit/dates';
import { type Calendar, workBetween } from './calendar.ts';
import { recordedStart } from './early-dates.ts';
import type { Limit } from './limits.ts';
import { nextMorning } from './progress.ts';
import type { Timeline } from './timeline.ts';
import { hasFinished, hasStarted } from './timing.ts';

export interface Booking {
  readonly step: string;
  /** Moments: from when to when its crew is there. */
  readonly start: number;
  readonly finish: number;
}

/** What two plans may share: people, a firm that says how many crews it has, a machine. A room is of one house. */
export type Shared = Exclude<Limit, { kind: 'room' }>;

/** A plan as its neighbours see it. */
export interface House {
  /** Path of its root. */
  readonly root: string;
  readonly label: string;
  /** By trade, machine or firm, as `sharedKey` names it; in plan order. */
  readonly bookings: ReadonlyMap<string, readonly Booking[]>;
}

/** The file and name: the same for two plans that include it from one file. */
export function sharedKey({ slot }: Shared): string {
  return `${slot.file} ${slot.name}`;
}

/** What is still to do of the steps that take each; nothing of a plan without dates. */
export function bookingsOf(timeline: Timeline, isShared: (limit: Shared) => boolean): ReadonlyMap<string, readonly Booking[]> {
  const bookings = new Map<string, Booking[]>();
  if (!timeline.dated) return bookings;
  timeline.steps.list.forEach(({ kind, name }, step) => {
    const taken = kind === 'task' ? takenBy(step, timeline).filter(isShared) : [];
    const span = taken.length === 0 ? undefined : spanOf(step, timeline);
    if (span === undefined) return;
    for (const limit of taken) {
      const key = sharedKey(limit);
      let list = bookings.get(key);
      if (list === undefined) bookings.set(key, (list = []));
      list.push({ step: name, ...span });
    }
  });
  return bookings;
}

/** What a step takes that others may ask for, too. */
export function takenBy(step: number, { taken, limits }: Timeline): readonly Shared[] {
  const found: Shared[] = [];
  for (let at = taken.taskStart[step]!; at < taken.taskStart[step + 1]!; at++) {
    const limit = limits[taken.crew[at]!]!;
    if (limit.kind !== 'room') found.push(limit);
  }
  return found;
}

/** From when to when a step's crew is still to be there; undefined for what is done, or takes no time. */
export function spanOf(step: number, { timing, crews, progress }: Timeline): { start: number; finish: number } | undefined {
  if (hasFinished(timing, step)) return undefined;
  const finish = crews.finish[step]!;
  const begun = hasStarted(timing, step) ? Math.max(recordedStart(timing, step), timing.notBefore[step]!) : crews.start[step]!;
  const start = progress.asOf === undefined ? begun : Math.max(begun, nextMorning(progress.asOf));
  return finish > start ? { start, finish } : undefined;
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
