// Working time: from moments to amounts of work and back. A calendar is a week of shifts without the days closed.
// Every question is answered from a prefix table of working minutes, in a few steps whatever the distance.
import { DAY_MINUTES } from '#kit/dates';
import { type Closed, layOut, type OwnHours, type Shift, type ShiftTable, tidyShifts } from './calendar-table.ts';

export interface WorkWeek {
  /** For each weekday, Monday first: shifts in minutes of the day, breaks already cut out. A shift ends by midnight. */
  readonly shifts: readonly (readonly Shift[])[];
}

export interface Calendar {
  readonly week: WorkWeek;
  readonly closed: Closed;
  /** Days with other hours than those of their weekday. */
  readonly own: OwnHours;
  /** The first and last day that were asked for. */
  readonly first: number;
  readonly last: number;
  /** Replaced by a longer one when a moment beyond it is met; what it says about a day never changes. */
  table: ShiftTable;
}

/** A calendar never looks further than this beyond the days it was made for; see `isBeyond`. */
export const REACH_DAYS = 36_525;

/** Every minute of every day. */
export const AROUND_THE_CLOCK: WorkWeek = { shifts: [0, 1, 2, 3, 4, 5, 6].map(() => [[0, DAY_MINUTES] as const]) };

/**
 * The calendar of a week without its closed days, laid out from day `first` to day `last`. It extends itself when asked
 * for later or earlier moments, up to a hundred years either way; beyond that every minute counts as work, so that even
 * a calendar without a working minute gives an answer. Ask `isBeyond` whether an answer is of that kind.
 */
export function calendar(week: WorkWeek, closed: Closed, first: number, last: number, own: OwnHours = NONE_OTHER): Calendar {
  const tidy: WorkWeek = { shifts: [0, 1, 2, 3, 4, 5, 6].map((day) => tidyShifts(week.shifts[day] ?? [])) };
  const to = Math.max(first, Math.min(last, first + REACH_DAYS));
  return { week: tidy, closed, own, first, last: to, table: layOut(tidy.shifts, closed, first, to, first, own) };
}

const NONE_OTHER: OwnHours = () => undefined;

/** Whether a moment lies further off than the calendar can tell: the work has no end in working time. */
export function isBeyond(calendar: Calendar, moment: number): boolean {
  const day = Math.floor(moment / DAY_MINUTES);
  return !(day >= calendar.first - REACH_DAYS && day <= calendar.last + REACH_DAYS);
}

/** The first moment at or after `moment` at which work can begin. */
export function nextWork(calendar: Calendar, moment: number): number {
  const shift = shiftFrom(calendar, moment);
  return Math.max(moment, calendar.table.start[shift]!);
}

/** The last moment at or before `moment` at which work can end. */
export function previousWork(calendar: Calendar, moment: number): number {
  const shift = shiftFrom(calendar, moment);
  if (moment > calendar.table.start[shift]!) return moment;
  const before = shiftBefore(calendar, shift);
  return calendar.table.end[before]!;
}

/** The opening of the first whole day of work that begins at or after a moment. */
export function firstOpening(calendar: Calendar, moment: number): number {
  const first = nextWork(calendar, moment);
  const midnight = midnightBefore(first);
  return nextWork(calendar, midnight) === first ? first : nextWork(calendar, midnight + DAY_MINUTES);
}

/** The opening of the last day of work that is over by a moment. */
export function lastOpening(calendar: Calendar, moment: number): number {
  const closed = previousWork(calendar, moment);
  const midnight = midnightBefore(closed - 1);
  return closed === closingOf(calendar, midnight)
    ? nextWork(calendar, midnight)
    : nextWork(calendar, midnightBefore(previousWork(calendar, midnight) - 1));
}

/** The last opening at or before a moment. */
export function openingBy(calendar: Calendar, moment: number): number {
  const today = nextWork(calendar, midnightBefore(moment));
  return today <= moment ? today : lastOpening(calendar, moment);
}

/** When the working day is over in which a moment lies. */
export function closingOf(calendar: Calendar, moment: number): number {
  return previousWork(calendar, midnightBefore(moment) + DAY_MINUTES);
}

function midnightBefore(moment: number): number {
  return Math.floor(moment / DAY_MINUTES) * DAY_MINUTES;
}

/**
 * The end of `minutes` of work begun at or after `moment`: at the closing of a shift, never at the opening of the next.
 * No work ends at the moment itself. Less than none runs backward.
 */
export function advance(calendar: Calendar, moment: number, minutes: number): number {
  if (minutes <= 0) return minutes < 0 ? retreat(calendar, moment, -minutes) : moment;
  const shift = shiftFrom(calendar, moment);
  return momentAfter(calendar, shift, workAt(calendar, shift, moment) + minutes);
}

/** The latest beginning of `minutes` of work that ends at or before `moment`: never at the closing of a shift. */
export function retreat(calendar: Calendar, moment: number, minutes: number): number {
  if (minutes <= 0) return minutes < 0 ? advance(calendar, moment, -minutes) : moment;
  const shift = shiftFrom(calendar, moment);
  return momentBefore(calendar, shift, workAt(calendar, shift, moment) - minutes);
}

/** Working minutes from one moment to another; negative where the second is the earlier. */
export function workBetween(calendar: Calendar, from: number, to: number): number {
  if (from === to) return 0;
  return workAt(calendar, shiftFrom(calendar, to), to) - workAt(calendar, shiftFrom(calendar, from), from);
}

/** Whether work can begin at this very moment. */
export function canBegin(calendar: Calendar, moment: number): boolean {
  const shift = shiftFrom(calendar, moment);
  return calendar.table.start[shift]! <= moment;
}

/** Work done by `moment`, counted from the calendar's first day. `shift` is the first that ends after it. */
function workAt(calendar: Calendar, shift: number, moment: number): number {
  const table = calendar.table;
  return table.before[shift]! + Math.max(0, moment - table.start[shift]!);
}

/** The number of the first shift that ends after `moment`. */
function shiftFrom(calendar: Calendar, moment: number): number {
  const day = Math.floor(moment / DAY_MINUTES);
  for (;;) {
    const table = calendar.table;
    let shift = day < table.firstDay ? 0 : day > table.lastDay ? table.count - 1 : table.firstShift[day - table.firstDay]!;
    while (shift < table.count - 1 && table.end[shift]! <= moment) shift++;
    const isBound = shift === 0 || shift === table.count - 1;
    if (!isBound || !grown(calendar, shift === 0 ? -1 : 1)) return shift;
  }
}

/** The shift before one that `shiftFrom` gave. Its number may have moved when the table grew. */
function shiftBefore(calendar: Calendar, shift: number): number {
  let at = shift;
  while (at === 1) {
    const count = calendar.table.count;
    if (!grown(calendar, -1)) break;
    at += calendar.table.count - count;
  }
  return Math.max(0, at - 1);
}

/** The earliest moment by which `work` is done, at or after shift `from`: leaps forward, then halves. */
function momentAfter(calendar: Calendar, from: number, work: number): number {
  while (calendar.table.before[calendar.table.count - 1]! < work && grown(calendar, 1));
  const { before, start, count } = calendar.table;
  let low = from;
  let leap = 1;
  while (low + leap < count && before[low + leap]! < work) {
    low += leap;
    leap *= 2;
  }
  let high = Math.min(count, low + leap);
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (before[middle]! < work) low = middle;
    else high = middle;
  }
  return start[low]! + work - before[low]!;
}

/** The latest moment by which no more than `work` is done, at or before shift `from`. */
function momentBefore(calendar: Calendar, from: number, work: number): number {
  let high = from + 1;
  while (calendar.table.before[1]! > work) {
    const count = calendar.table.count;
    if (!grown(calendar, -1)) break;
    high += calendar.table.count - count;
  }
  const { before, start } = calendar.table;
  let leap = 1;
  while (high - leap > 0 && before[high - leap]! > work) {
    high -= leap;
    leap *= 2;
  }
  let low = Math.max(0, high - leap);
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (before[middle]! <= work) low = middle;
    else high = middle;
  }
  return start[low]! + work - before[low]!;
}

/** Doubles the table backward (-1) or forward (1); false where it reaches as far as it ever will. */
function grown(calendar: Calendar, direction: -1 | 1): boolean {
  const { firstDay, lastDay } = calendar.table;
  const span = Math.max(366, lastDay - firstDay + 1);
  const from = direction < 0 ? Math.max(calendar.first - REACH_DAYS, firstDay - span) : firstDay;
  const to = direction > 0 ? Math.min(calendar.last + REACH_DAYS, lastDay + span) : lastDay;
  if (from === firstDay && to === lastDay) return false;
  calendar.table = layOut(calendar.week.shifts, calendar.closed, from, to, calendar.first, calendar.own);
  return true;
}
