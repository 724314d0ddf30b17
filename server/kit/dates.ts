// Civil dates and moments as plain whole numbers. A day counts from 1970-01-01 (day 0, a Thursday); a moment counts
// minutes from 1970-01-01T00:00 on the site's own clock. No time zone, no leap second, no Date object anywhere.

export const DAY_MINUTES = 1440;

export interface CivilDate {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31. */
  readonly day: number;
}

/**
 * The day number of a date of the Gregorian calendar, also before it was adopted. Months beyond 12 or below 1 run into
 * the next or last year, days beyond the month into the next month.
 */
export function dayOf(year: number, month: number, day: number): number {
  const months = year * 12 + month - 1;
  // The year is counted from March, so that the leap day is its last day and month lengths follow one formula.
  const marchMonths = months - 2;
  const marchYear = Math.floor(marchMonths / 12);
  const marchMonth = marchMonths - marchYear * 12;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * marchMonth + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * ERA_DAYS + dayOfEra - EPOCH;
}

/** The date of a day number: the inverse of `dayOf`. */
export function civil(day: number): CivilDate {
  const shifted = day + EPOCH;
  const era = Math.floor(shifted / ERA_DAYS);
  const dayOfEra = shifted - era * ERA_DAYS;
  const leaps = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leaps) / 365);
  const dayOfYear = dayOfEra - (yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: era * 400 + yearOfEra + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

/** 0 for Monday to 6 for Sunday. */
export function weekday(day: number): number {
  return day + 3 - Math.floor((day + 3) / 7) * 7;
}

export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

export function daysInMonth(year: number, month: number): number {
  return dayOf(year, month + 1, 1) - dayOf(year, month, 1);
}

/** The same date some months later or earlier; the last of the month where that month is too short. */
export function addMonths(day: number, months: number): number {
  const from = civil(day);
  const first = dayOf(from.year, from.month + months, 1);
  const target = civil(first);
  return first + Math.min(from.day, daysInMonth(target.year, target.month)) - 1;
}

/** The day on which work that begins at this moment begins: midnight belongs to the day it opens. */
export function dayOfStart(moment: number): number {
  return Math.floor(moment / DAY_MINUTES);
}

/** The day on which what ends at this moment ends: midnight belongs to the day it closes. */
export function dayOfFinish(moment: number): number {
  return Math.ceil(moment / DAY_MINUTES) - 1;
}

/** '2027-04-05'. */
export function isoDate(day: number): string {
  const { year, month, day: dayOfMonth } = civil(day);
  return `${padYear(year)}-${pad(month)}-${pad(dayOfMonth)}`;
}

/** '2027-04-05T08:00'. */
export function isoMoment(moment: number): string {
  const whole = Math.floor(moment);
  const day = Math.floor(whole / DAY_MINUTES);
  return `${isoDate(day)}T${clock(whole - day * DAY_MINUTES)}`;
}

/** '08:00' from minutes of the day; 1440 is '24:00'. */
export function clock(minuteOfDay: number): string {
  const hours = Math.floor(minuteOfDay / 60);
  return `${pad(hours)}:${pad(minuteOfDay - hours * 60)}`;
}

/** The day number of 'YYYY-MM-DD', or undefined where that is not how it is written or no such date exists. */
export function readIsoDate(text: string): number | undefined {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (parts === null) return undefined;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return undefined;
  return dayOf(year, month, day);
}

/** 'Mon 5 Apr 2027'. */
export function shortDate(day: number): string {
  const { year, month, day: dayOfMonth } = civil(day);
  return `${shortWeekday(weekday(day))} ${dayOfMonth} ${shortMonth(month)} ${year}`;
}

/** '5 Apr', for places where the year is plain. */
export function dayAndMonth(day: number): string {
  const { month, day: dayOfMonth } = civil(day);
  return `${dayOfMonth} ${shortMonth(month)}`;
}

/** 'April' for 4; '' outside 1 to 12. */
export function monthName(month: number): string {
  return MONTHS[month - 1] ?? '';
}

/** 'Apr' for 4. */
export function shortMonth(month: number): string {
  return monthName(month).slice(0, 3);
}

/** 'Monday' for 0; '' outside 0 to 6. */
export function weekdayName(number: number): string {
  return WEEKDAYS[number] ?? '';
}

/** 'Mon' for 0. */
export function shortWeekday(number: number): string {
  return weekdayName(number).slice(0, 3);
}

const ERA_DAYS = 146_097;
/** Days from 0000-03-01 to 1970-01-01. */
const EPOCH = 719_468;

const MONTHS: readonly string[] = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
const WEEKDAYS: readonly string[] = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

function pad(number: number): string {
  return number < 10 ? `0${number}` : `${number}`;
}

function padYear(year: number): string {
  return year < 0 ? `-${`${-year}`.padStart(4, '0')}` : `${year}`.padStart(4, '0');
}
