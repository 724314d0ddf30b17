// Dates, times of day and days of the week: 2027-04-05, 7:00-15:30, mon-fri. Other forms of a date are answered with it.
import { dateForm, noSuchDate, noSuchTime } from './messages.ts';
import { type Context, isDigit, isWordPart, literalScan, matchAt, type Scan, wrongScan } from './reading.ts';

/** A date, or a number that looks like one, at `from`. */
export function scanDate(text: string, from: number): Scan | undefined {
  const code = text.charCodeAt(from + 4);
  if (code === 45 || code === 47) {
    const iso = matchAt(YEAR_FIRST, text, from);
    if (iso !== undefined) return yearFirst(from, iso);
  }
  const other = matchAt(DAY_OR_MONTH_FIRST, text, from);
  if (other === undefined || isWordPart(text.charCodeAt(from + other[0].length))) return undefined;
  const [written, one, , two, three] = other as unknown as readonly [string, string, string, string, string];
  const to = from + written.length;
  const year = three.length === 4 ? Number(three) : 2000 + Number(three);
  if (three.length !== 2 && three.length !== 4) return wrongScan(dateForm, to, undefined, written, undefined, undefined);
  const readings = [iso(year, Number(one), Number(two)), iso(year, Number(two), Number(one))].filter(
    (reading) => reading !== undefined,
  );
  const first = readings[0];
  const second = readings[1] === first ? undefined : readings[1];
  return wrongScan(dateForm, to, second === undefined ? first : undefined, written, first, second);
}

/** Oct 15, 2026 or 15 Oct 2026: no doubt which day, so it is read, and rewritten. */
export function scanNamedMonth(text: string, from: number): Scan | undefined {
  const day = isDigit(text.charCodeAt(from));
  // Where the month begins: behind one or two digits and a blank, or here.
  const month = day ? text.indexOf(' ', from) + 1 : from;
  if (month > from + 3 || !MONTHS.includes(text.slice(month, month + 3).toLowerCase())) return undefined;
  const found = matchAt(day ? DAY_FIRST : MONTH_FIRST, text, from);
  if (found === undefined) return undefined;
  const groups = found.groups as { month: string; day: string; year: string };
  const number = MONTHS.indexOf(groups.month.toLowerCase().slice(0, 3)) + 1;
  const tidy = iso(Number(groups.year), number, Number(groups.day));
  const to = from + found[0].length;
  if (tidy === undefined) return wrongScan(noSuchDate, to, undefined, found[0]);
  return literalScan({ kind: 'date', day: dayNumber(Number(groups.year), number, Number(groups.day)) }, to, tidy);
}

/** A time of day: two times with something between them, or one where the line has shown that it is about time. */
export function scanClock(text: string, from: number, context: Context): Scan | undefined {
  const found = matchAt(CLOCK, text, from);
  if (found === undefined) return undefined;
  const [written, hours, minutes, half] = found as unknown as readonly [string, string, string, string | undefined];
  const to = from + written.length;
  const afternoon = Number(hours) > 12 && minutes !== '12' && !context.pitch;
  const sure =
    half !== undefined ||
    afternoon ||
    minutes.startsWith('0') ||
    context.calendar ||
    TIME_WORDS.has(context.word) ||
    clockRange(text, to) !== undefined ||
    (minutes !== '12' && AFTER_CLOCK.test(text.slice(0, from)));
  if (!sure) return undefined;
  const hour = half === undefined ? Number(hours) : (Number(hours) % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  const total = hour * 60 + Number(minutes);
  if (Number(minutes) > 59 || total > 24 * 60 || (half !== undefined && Number(hours) > 12))
    return wrongScan(noSuchTime, to, undefined, written);
  return literalScan({ kind: 'clock', minutes: total }, to, half === undefined ? undefined : `${hour}:${minutes}`);
}

/** The hyphen between two times of day: where it begins and ends. */
export function clockRange(text: string, at: number): { readonly from: number; readonly to: number } | undefined {
  const found = matchAt(CLOCK_RANGE, text, at);
  if (found === undefined) return undefined;
  const mark = at + found[0].search(/[-–—.]/);
  return { from: mark, to: mark + (text.charAt(mark) === '.' ? 2 : 1) };
}

/** mon, mon-fri, sat-sun; mon..fri is rewritten. */
export function scanWeekdays(text: string, from: number): Scan | undefined {
  if (!DAYS.includes(text.slice(from, from + 3).toLowerCase())) return undefined;
  const found = matchAt(WEEKDAYS, text, from);
  if (found === undefined) return undefined;
  const [written, one, mark, other] = found as unknown as readonly [string, string, string | undefined, string | undefined];
  const first = DAYS.indexOf(one.toLowerCase());
  const last = other === undefined ? first : DAYS.indexOf(other.toLowerCase());
  const days = Array.from({ length: ((last - first + 7) % 7) + 1 }, (_, step) => (first + step) % 7);
  const tidy = mark === undefined || mark === '-' ? undefined : `${one}-${other}`;
  return literalScan({ kind: 'weekdays', days }, from + written.length, tidy);
}

/** Days from 1970-01-01 in the Gregorian calendar. */
export function dayNumber(year: number, month: number, day: number): number {
  // Count from 1 March, so that the leap day comes last; 719,468 days lie between 1 March of year 0 and 1970-01-01.
  const shifted = month > 2 ? year : year - 1;
  const monthsFromMarch = (month + 9) % 12;
  const leapDays = Math.floor(shifted / 4) - Math.floor(shifted / 100) + Math.floor(shifted / 400);
  return shifted * 365 + leapDays + Math.floor((153 * monthsFromMarch + 2) / 5) + day - 1 - 719_468;
}

function yearFirst(from: number, found: RegExpExecArray): Scan {
  const [written, year, , month, day] = found as unknown as readonly [string, string, string, string, string];
  const to = from + written.length;
  const right = iso(Number(year), Number(month), Number(day));
  if (right === undefined) return wrongScan(noSuchDate, to, undefined, written);
  if (right !== written) return wrongScan(dateForm, to, right, written, right, undefined);
  return literalScan({ kind: 'date', day: dayNumber(Number(year), Number(month), Number(day)) }, to, undefined);
}

function iso(year: number, month: number, day: number): string | undefined {
  if (month < 1 || month > 12 || day < 1 || day > monthLength(year, month)) return undefined;
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

function monthLength(year: number, month: number): number {
  if (month !== 2) return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
}

const DAYS: readonly string[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const MONTHS: readonly string[] = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const TIME_WORDS: ReadonlySet<string> = new Set(['by', 'until', 'before', 'from']);
const YEAR_FIRST = /(\d{4})([-/])(\d{1,2})\2(\d{1,2})(?![\p{L}\p{N}_])/uy;
const DAY_OR_MONTH_FIRST = /(\d{1,2})([./])(\d{1,2})\2(\d{1,4})(?![.]?\d)/y;
const CLOCK = /(\d{1,2}):(\d\d)(?![\d:]|\.\d)(?: ?(am|pm|AM|PM)(?![\p{L}\p{N}_-]))?/uy;
const CLOCK_RANGE = /(?:\.\.|\s*[-–—]\s*)(?=\d{1,2}:\d\d(?![\d:]))/y;
/** The first time of a span, and its hyphen: what follows is a time, too. */
const AFTER_CLOCK = /\b\d{1,2}:\d\d(?: ?(?:am|pm))?(?:\.\.|\s*[-–—]\s*)$/i;
const WEEKDAYS =
  /(mon|tue|wed|thu|fri|sat|sun)(?:(-|–|—|\.\.)(mon|tue|wed|thu|fri|sat|sun))?(?![\p{L}\p{N}_]|-[\p{L}\p{N}]|\.\p{L})/iuy;
const MONTH =
  '(?<month>jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|january|february|march|april|june|july|august|september|sept|october|november|december)';
const MONTH_FIRST = new RegExp(`${MONTH}\\.? (?<day>\\d{1,2}),? (?<year>\\d{4})(?![\\p{L}\\p{N}_-])`, 'iuy');
const DAY_FIRST = new RegExp(`(?<day>\\d{1,2})\\.? ${MONTH}\\.?,? (?<year>\\d{4})(?![\\p{L}\\p{N}_-])`, 'iuy');
