// The shifts of a working calendar laid out in time, with the working minutes before each: what calendar.ts looks up
// moments and amounts of work in. It covers a stretch of days and grows when asked beyond it.
import { DAY_MINUTES, weekday } from '#kit/dates';

/** Closed days from the first number to the second, both included. */
export type DayRange = readonly [first: number, last: number];
export type Closed = ((day: number) => boolean) | readonly DayRange[];
/** One shift: minutes of the day, from 0 to 1440. */
export type Shift = readonly [start: number, end: number];
/** The shifts of a day that has other hours than its weekday; undefined for all others. */
export type OwnHours = (day: number) => readonly Shift[] | undefined;

/**
 * Shifts in order of time. The first and the last one are bounds without limit: before and after the days the table
 * covers every minute counts as work, so that no sum is ever endless.
 */
export interface ShiftTable {
  readonly firstDay: number;
  readonly lastDay: number;
  readonly count: number;
  /** Moments at which each shift begins and ends. */
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** Working minutes before each shift, counted from the calendar's own first day; negative ahead of it. */
  readonly before: Float64Array;
  /** For each day: the first shift that begins on it or later. */
  readonly firstShift: Int32Array;
}

/** Lays out the days from `firstDay` to `lastDay`, with work counted from the opening of `origin`, a day in or next to them. */
export function layOut(
  week: readonly (readonly Shift[])[],
  closed: Closed,
  firstDay: number,
  lastDay: number,
  origin: number,
  own: OwnHours,
): ShiftTable {
  const days = lastDay - firstDay + 1;
  const isClosed = closedTest(closed);
  const shiftsOn = (day: number): readonly Shift[] => own(day) ?? week[weekday(day)] ?? [];
  const firstShift = new Int32Array(days + 1);
  let count = 1;
  for (let index = 0; index < days; index++) {
    firstShift[index] = count;
    const day = firstDay + index;
    if (!isClosed(day)) count += shiftsOn(day).length;
  }
  firstShift[days] = count;

  const start = new Float64Array(count + 1);
  const end = new Float64Array(count + 1);
  const before = new Float64Array(count + 1);
  for (let index = 0; index < days; index++) {
    if (firstShift[index] === firstShift[index + 1]) continue;
    const shifts = shiftsOn(firstDay + index);
    const midnight = (firstDay + index) * DAY_MINUTES;
    for (let at = firstShift[index]!; at < firstShift[index + 1]!; at++) {
      const shift = shifts[at - firstShift[index]!]!;
      start[at] = midnight + shift[0];
      end[at] = midnight + shift[1];
    }
  }
  end[0] = firstDay * DAY_MINUTES;
  start[0] = end[0] - BOUNDLESS;
  start[count] = (lastDay + 1) * DAY_MINUTES;
  end[count] = start[count]! + BOUNDLESS;

  const zero = firstShift[origin - firstDay] ?? count;
  for (let at = zero; at < count; at++) before[at + 1] = before[at]! + end[at]! - start[at]!;
  for (let at = zero - 1; at >= 0; at--) before[at] = before[at + 1]! - end[at]! + start[at]!;
  return { firstDay, lastDay, count: count + 1, start, end, before, firstShift };
}

/** Shifts of a day in order, inside the day, without overlap or emptiness. */
export function tidyShifts(shifts: readonly Shift[]): readonly Shift[] {
  const inside = shifts
    .map(([start, end]): Shift => [Math.max(0, Math.round(start)), Math.min(DAY_MINUTES, Math.round(end))])
    .filter(([start, end]) => end > start)
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const tidy: Shift[] = [];
  for (const shift of inside) {
    const last = tidy.at(-1);
    if (last !== undefined && shift[0] <= last[1]) tidy[tidy.length - 1] = [last[0], Math.max(last[1], shift[1])];
    else tidy.push(shift);
  }
  return tidy;
}

/** Longer than any table, and small enough that sums of a few stay exact. */
const BOUNDLESS = 1e14;

function closedTest(closed: Closed): (day: number) => boolean {
  if (typeof closed === 'function') return closed;
  const ranges = [...closed].sort((a, b) => a[0] - b[0]);
  // Where each range reaches at most, so that long ranges are not hidden behind short ones that begin later.
  const reach: number[] = [];
  for (const range of ranges) reach.push(Math.max(reach.at(-1) ?? range[1], range[1]));
  return (day) => {
    let [low, high] = [0, ranges.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (ranges[middle]![0] <= day) low = middle + 1;
      else high = middle;
    }
    return low > 0 && reach[low - 1]! >= day;
  };
}
