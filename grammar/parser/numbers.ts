// Whatever begins with a digit: the most particular reading first (date, time, door, pitch, size), a measure last.
// Two numbers with a hyphen between them and no marks are never guessed at.
import { scanFraction } from './magnitudes.ts';
import { scanMeasure } from './measures.ts';
import { divisionByZero, hyphenNumbers, hyphenRange, resistanceForm } from './messages.ts';
import { moneyBegins, scanMoney } from './money.ts';
import { type Context, isDigit, isHyphen, matchAt, type Scan, wrongScan } from './reading.ts';
import { scanDoor, scanNominal, scanPitch, scanRatio } from './sizes.ts';
import { scanClock, scanDate, scanNamedMonth } from './times.ts';

/** The literal that begins at `from` with a digit, a fraction or a money sign. */
export function scanNumber(text: string, from: number, context: Context): Scan | undefined {
  const scan = scanAlone(text, from, context);
  if (scan === undefined || !isHyphen(text.charCodeAt(scan.to)) || !numberBegins(text, scan.to + 1)) return scan;
  if (scan.kind === 'literal' && scan.literal.kind === 'clock') return scan;
  const other = scanAlone(text, scan.to + 1, context);
  return other === undefined ? scan : hyphened(text, from, scan, other);
}

/** Whether a digit, a fraction or money begins at `at`. */
export function numberBegins(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (isDigit(code)) return true;
  if (code === 46) return isDigit(text.charCodeAt(at + 1));
  return moneyBegins(text, at) || (code > 127 && scanFraction(text, at) !== undefined);
}

/** The letter behind the first digits tells which readings are possible; most numbers are plain measures. */
function scanAlone(text: string, from: number, context: Context): Scan | undefined {
  if (!isDigit(text.charCodeAt(from))) return scanMoney(text, from) ?? scanMeasure(text, from);
  let at = from + 1;
  while (isDigit(text.charCodeAt(at))) at += 1;
  return scanParticular(text, from, text.charAt(at), context) ?? scanMeasure(text, from);
}

function scanParticular(text: string, from: number, next: string, context: Context): Scan | undefined {
  switch (next) {
    case '-':
      return scanDate(text, from);
    case ':':
      return scanClock(text, from, context) ?? scanRatio(text, from);
    case '/':
      return scanSlashed(text, from, context);
    case 'x':
    case 'X':
    case '×':
      return scanNominal(text, from);
    case '.':
      return scanDate(text, from) ?? scanRatio(text, from) ?? scanPitch(text, from, context) ?? insulationSum(text, from);
    case '+':
      return insulationSum(text, from);
    case ' ':
      return scanNamedMonth(text, from);
    default:
      return undefined;
  }
}

/** 7/16", 6/12, 3/0 x 6/8, 5/4x6, 10/5/26: what stands behind the second number tells. */
function scanSlashed(text: string, from: number, context: Context): Scan | undefined {
  let at = text.indexOf('/', from) + 1;
  const quarters = text.charAt(at) === '4';
  while (isDigit(text.charCodeAt(at))) at += 1;
  const next = text.charAt(at);
  if (next === '/') return scanDate(text, from);
  if (next !== '"') {
    const size =
      scanPitch(text, from, context) ?? scanDoor(text, from, context) ?? (quarters ? scanNominal(text, from) : undefined);
    if (size !== undefined) return size;
  }
  return zeroBelow(text, from);
}

function insulationSum(text: string, from: number): Scan | undefined {
  const sum = matchAt(INSULATION_SUM, text, from);
  return sum === undefined ? undefined : wrongScan(resistanceForm, from + sum[0].length, undefined, sum[0]);
}

/** 12-6, 2-3 days, $15,000-25,000: said to be a range where one end has a unit, and nothing at all where none has. */
function hyphened(text: string, from: number, scan: Scan, other: Scan): Scan {
  const rest = matchAt(MORE, text, other.to);
  const to = rest === undefined ? other.to : other.to + rest[0].length;
  const written = text.slice(from, to);
  const first = text.slice(from, scan.to);
  const second = text.slice(scan.to + 1, other.to);
  if (rest !== undefined || scan.kind === 'wrong' || other.kind === 'wrong') {
    return wrongScan(hyphenRange, to, undefined, written, `${first}..${second}`);
  }
  if (isBare(scan) && (isBare(other) || isInches(other))) {
    const mark = isBare(other) ? '"' : '';
    return wrongScan(
      hyphenNumbers,
      to,
      undefined,
      written,
      `${first}'-${second}${mark}`,
      `${first}..${second}`,
      `${first} - ${second}`,
    );
  }
  const sign = /^[$€£]/.exec(first)?.[0];
  const range = `${first}..${sign !== undefined && isBare(other) ? sign : ''}${second}`;
  return wrongScan(hyphenRange, to, range, written, range);
}

function isBare(scan: Scan): boolean {
  return scan.kind === 'literal' && scan.literal.kind === 'quantity' && scan.literal.dimension === 'bare';
}

function isInches(scan: Scan): boolean {
  return scan.kind === 'literal' && scan.literal.kind === 'quantity' && scan.literal.unit === 'in';
}

function zeroBelow(text: string, from: number): Scan | undefined {
  const found = matchAt(ZERO_BELOW, text, from);
  return found === undefined ? undefined : wrongScan(divisionByZero, from + found[0].length, undefined, found[0]);
}

const INSULATION_SUM = /\d+(?:\.\d+)?\+\d+(?:\.\d+)?ci(?![\p{L}\p{N}_])/iuy;
const ZERO_BELOW = /\d+\/0+(?![\d.\p{L}])["″”]?/uy;
const MORE = /(?:[-–—][\d.,]+[\p{L}'"]*)+/uy;
