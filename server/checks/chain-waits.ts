// How long a chain of links keeps one step after another at the least: its waits, and the work that lies between. Only what
// cannot shrink counts, so nights do only where the work in between must span them, and weekends never.
import { DAY_MINUTES } from '#kit/dates';
import { type Calendar, workBetween } from '#schedule/calendar';
import { FINISH_FINISH, FINISH_START, type Network, START_START } from '#schedule/network';
import type { Timeline } from '#schedule/timeline';
import { WORKING } from '#schedule/waits';
import { keptFor } from './kept.ts';
import { mayReachFinish, type Order } from './order.ts';
import type { Wait } from './outcomes.ts';

/** The longest sums along any chain, each for itself, in minutes. */
export interface ChainWaits {
  /** Waits in working time, and by the calendar or the clock. */
  readonly workingWait: number;
  readonly calendarWait: number;
  /** Waits in working time, and what those by the clock surely hold of it, with the work of the steps between. */
  readonly working: number;
  /** What surely passes: all waits and all work. */
  readonly plain: number;
  /** The same with each full day of work as a day and a night. */
  readonly days: number;
}

/** Whether the waits on some chain of links from `a`'s finish to `b`'s start make up a wait: by the links alone. */
export function waitsHold(a: number, b: number, needed: Wait, order: Order): boolean {
  if (needed.lag <= 0) return true;
  const waits = chainWaits(order, a, b, undefined, DAY_MINUTES);
  return (needed.clock === WORKING ? waits.workingWait : waits.calendarWait) >= needed.lag;
}

/** Whether the waits on such a chain do with the working time of the steps between, as long as they are now. */
export function workHolds(a: number, b: number, needed: Wait, { timing }: Timeline, order: Order): boolean {
  const hours = longestDay(timing.calendars);
  const plan = timing.calendars[timing.planCalendar]!;
  const { working, plain, days } = chainWaits(order, a, b, timing.durations, hours, (lag) => leastWork(plan, lag));
  if (needed.clock === WORKING) return working >= needed.lag;
  // The first of the days may be a part of one, and that night need not lie between.
  return Math.max(plain, days - (DAY_MINUTES - hours)) >= needed.lag;
}

/**
 * `hours` are the most working minutes of any day; `holds` says how much working time a wait by the clock has at the least.
 * Nothing but zeros where no chain leads from `a` to `b`.
 */
export function chainWaits(
  order: Order,
  a: number,
  b: number,
  durations: Int32Array | undefined,
  hours: number,
  holds: (lag: number) => number = () => 0,
): ChainWaits {
  const { network } = order;
  const between = stepsBetween(network, order, a, b);
  // Five sums for the start of a step and five for its finish, by its place in the list; below zero: not on a chain.
  const sums = new Float64Array(between.length * 10).fill(-1);
  const at = new Map(between.map((step, index) => [step, index]));
  between.forEach((step, index) => {
    const start = index * 10;
    const finish = start + 5;
    if (step === a) {
      sums.fill(0, finish, finish + 5);
      if (order.instant?.[a] === 1) sums.fill(0, start, start + 5);
      return;
    }
    for (let slot = network.incomingStart[step]!; slot < network.incomingStart[step + 1]!; slot++) {
      const link = network.incoming[slot]!;
      const from = at.get(network.linkFrom[link]!);
      const lag = network.linkLag[link]!;
      if (from === undefined || lag < 0) continue;
      const kind = network.linkKind[link]!;
      const source = from * 10 + (kind === FINISH_START || kind === FINISH_FINISH ? 5 : 0);
      const to = kind === FINISH_START || kind === START_START ? start : finish;
      const isWork = network.linkClock[link] === WORKING;
      raise(sums, source, to, lag, isWork, hours, isWork || lag === 0 ? lag : holds(lag));
    }
    if (order.instant?.[step] === 1) raise(sums, finish, start, 0, true, hours);
    const work = durations === undefined ? 0 : durations[step]!;
    if (sums[start + 1]! >= 0) {
      raise(sums, start, finish, 0, true, hours);
      for (const [sum, length] of [
        [2, work],
        [3, work],
        [4, (work * DAY_MINUTES) / hours],
      ] as const)
        sums[finish + sum] = Math.max(sums[finish + sum]!, sums[start + sum]! + length);
    }
  });
  const last = at.get(b)! * 10;
  const sum = (which: number): number => Math.max(0, sums[last + which]!);
  return { workingWait: sum(0), calendarWait: sum(1), working: sum(2), plain: sum(3), days: sum(4) };
}

/** Lets the sums at `to` be no less than those at `from` and the wait between. */
function raise(sums: Float64Array, from: number, to: number, lag: number, isWork: boolean, hours: number, surely = lag): void {
  if (sums[from]! < 0) return;
  const work = isWork ? lag : 0;
  const clock = isWork ? 0 : lag;
  const added = [work, clock, surely, lag, clock + (work * DAY_MINUTES) / hours];
  for (let sum = 0; sum < 5; sum++) sums[to + sum] = Math.max(sums[to + sum]!, sums[from + sum]! + added[sum]!);
}

/**
 * The least working time of any stretch of so many minutes by the clock, over all the days that a calendar was made for:
 * five calendar days hold two working days at the least in a week of five, and fewer where holidays fall.
 */
export function leastWork(calendar: Calendar, minutes: number): number {
  const known = leastOf(calendar);
  let least = known.get(minutes);
  if (least === undefined) known.set(minutes, (least = leastIn(calendar, minutes)));
  return least;
}

const leastOf = keptFor((_: Calendar): Map<number, number> => new Map());

/** A stretch holds least where it begins with the end of a shift, or ends with the beginning of one. */
function leastIn(calendar: Calendar, minutes: number): number {
  const { start, end } = calendar.table;
  const [first, last] = [calendar.first * DAY_MINUTES, (calendar.last + 1) * DAY_MINUTES];
  let least = Number.POSITIVE_INFINITY;
  for (let shift = 0; shift < start.length; shift++) {
    const [opens, closes] = [start[shift]!, end[shift]!];
    if (opens < first || closes > last) continue;
    for (const from of [closes, opens - minutes])
      if (from >= first && from + minutes <= last) least = Math.min(least, workBetween(calendar, from, from + minutes));
  }
  return least === Number.POSITIVE_INFINITY ? 0 : least;
}

/** The steps on chains from `a` to `b`, those two included, each after all it hangs on. */
function stepsBetween(network: Network, order: Order, a: number, b: number): readonly number[] {
  const places = placesOf(network);
  const found = new Set([a, b]);
  const open = [b];
  for (let step = open.pop(); step !== undefined; step = open.pop()) {
    for (let slot = network.incomingStart[step]!; slot < network.incomingStart[step + 1]!; slot++) {
      const from = network.linkFrom[network.incoming[slot]!]!;
      if (found.has(from) || places[from]! < places[a]! || !mayReachFinish(order, a, from)) continue;
      found.add(from);
      open.push(from);
    }
  }
  return [...found].sort((one, other) => places[one]! - places[other]!);
}

const placesOf = keptFor(({ count, order }: Network): Int32Array => {
  const places = new Int32Array(count);
  order.forEach((step, place) => {
    places[step] = place;
  });
  return places;
});

/** The most working minutes that any of the calendars has in a day. */
function longestDay(calendars: readonly Calendar[]): number {
  return calendars.reduce((most, each) => Math.max(most, longestOf(each)), 1);
}

/** The most working minutes of any day of a calendar's week. */
export const longestOf = keptFor(({ week }: Calendar): number =>
  week.shifts.reduce(
    (most, shifts) =>
      Math.max(
        most,
        shifts.reduce((sum, [from, to]) => sum + to - from, 0),
      ),
    1,
  ),
);
