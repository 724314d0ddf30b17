// How much, without a unit: 12, 185,000, 12.5, .20, 7/16, 2 1/2, 775-1/2, 1½. Kept as a fraction of whole numbers, so that
// turning it into base units rounds at most once.
import { isBlank, isDigit, isHyphen, matchAt } from './reading.ts';

export interface Magnitude {
  readonly to: number;
  readonly over: number;
  readonly under: number;
  /** Digits only: 12. It may count things. */
  readonly whole: boolean;
  /** The usual spelling, always. */
  readonly tidy: string;
  /** A comma for a decimal mark, or commas and points in no order at all (then `tidy` is as written). */
  readonly comma: 'decimal' | 'muddled' | undefined;
  readonly tooLong: boolean;
}

interface Fraction {
  readonly to: number;
  readonly over: number;
  readonly under: number;
  readonly tidy: string;
}

/** The magnitude that begins at `at`, if one does. */
export function scanMagnitude(text: string, at: number): Magnitude | undefined {
  const alone = scanFraction(text, at);
  if (alone !== undefined) return magnitude(alone.to, alone.over, alone.under, false, alone.tidy);
  const number = scanNumeral(text, at);
  if (number === undefined || !number.whole || number.comma !== undefined) return number;
  const part = fractionAfter(text, number.to);
  if (part === undefined) return number;
  const over = number.over * part.under + part.over;
  return magnitude(part.to, over, part.under, false, `${number.tidy} ${part.tidy}`);
}

/** 7/16 or ½. What stands below may not be zero: 3/0 is a door. */
export function scanFraction(text: string, at: number): Fraction | undefined {
  const vulgar = VULGAR.get(text.charAt(at));
  if (vulgar !== undefined) return { to: at + 1, over: vulgar[0], under: vulgar[1], tidy: `${vulgar[0]}/${vulgar[1]}` };
  const found = matchAt(FRACTION, text, at);
  const under = Number(found?.[2]);
  return found === undefined || under === 0
    ? undefined
    : { to: at + found[0].length, over: Number(found[1]), under, tidy: found[0] };
}

/** The fraction that belongs to a whole number before it: after one blank, a hyphen, or directly for ½. */
function fractionAfter(text: string, at: number): Fraction | undefined {
  const code = text.charCodeAt(at);
  if (code > 127 && !isBlank(code) && !isHyphen(code)) return scanFraction(text, at);
  if (!isBlank(code) && !isHyphen(code)) return undefined;
  const part = scanFraction(text, at + 1);
  // 5/4 is no part of a whole, and in "2 2/8 x 6/8" the 2 counts doors.
  return part === undefined || part.over >= part.under || matchAt(DOOR_REST, text, part.to) !== undefined ? undefined : part;
}

function scanNumeral(text: string, at: number): Magnitude | undefined {
  const first = text.charCodeAt(at);
  if (!isDigit(first) && !(first === 46 && isDigit(text.charCodeAt(at + 1)))) return undefined;
  const run = (matchAt(RUN, text, at) as RegExpExecArray)[0];
  const to = at + run.length;
  if (!run.includes(',')) return numeral(run, to);
  if (GROUPED.test(run)) return numeral(run.replaceAll(',', ''), to, run);
  const point = DECIMAL_COMMA.test(run)
    ? run.replace(',', '.')
    : EUROPEAN.test(run)
      ? run.replaceAll('.', '').replace(',', '.')
      : undefined;
  if (point === undefined) return { ...magnitude(to, 0, 1, false, run), comma: 'muddled' };
  return { ...numeral(point, to), comma: 'decimal', whole: false };
}

function numeral(digits: string, to: number, written = digits): Magnitude {
  const point = digits.indexOf('.');
  const decimals = point < 0 ? 0 : digits.length - point - 1;
  const tidy = written.startsWith('.') ? `0${written}` : written;
  if (digits.length > 16) return { ...magnitude(to, 0, 1, false, tidy), tooLong: true };
  const over = Number(point < 0 ? digits : digits.slice(0, point) + digits.slice(point + 1));
  return magnitude(to, over, Number(`1e${decimals}`), point < 0, tidy);
}

function magnitude(to: number, over: number, under: number, whole: boolean, tidy: string): Magnitude {
  return { to, over, under, whole, tidy, comma: undefined, tooLong: false };
}

const FRACTION = /(\d{1,4})\/(\d{1,4})(?![\d/])/y;
const DOOR_REST = /\s*[x×X]\s*\d{1,2}\/\d/y;
const RUN = /(?:\d+|\.\d+)(?:\.\d+)?(?:,\d+(?:\.\d+)?)*/y;
const GROUPED = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/;
const DECIMAL_COMMA = /^\d+,\d+$/;
const EUROPEAN = /^[1-9]\d{0,2}(?:\.\d{3})+,\d+$/;
const VULGAR: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['½', [1, 2]],
  ['¼', [1, 4]],
  ['¾', [3, 4]],
  ['⅛', [1, 8]],
  ['⅜', [3, 8]],
  ['⅝', [5, 8]],
  ['⅞', [7, 8]],
  ['⅓', [1, 3]],
  ['⅔', [2, 3]],
]);
