// A magnitude with its unit: 120 sf, 3d, 10%, 7 deg, 40 F, 46 €/h, 1.5 h/cy, 1/4" per foot. A number without one is bare.
import { nearest } from '#kit/did-you-mean';
import { toBase, unitNamed } from '#kit/units';
import { UNITS, type Unit } from '#kit/units/table';
import { tangent } from '#kit/units/tangent';
import type { Literal } from '../tree.ts';
import { length, scanFeetInches } from './lengths.ts';
import { type Magnitude, scanMagnitude } from './magnitudes.ts';
import { decimalComma, numberTooLong, unitCase, unknownUnit, yards } from './messages.ts';
import { currencyAfter, scanAmount } from './money.ts';
import { withRate } from './rates.ts';
import { isLetter, isWordPart, literalScan, matchAt, type Scan, wrongScan } from './reading.ts';
import { scanUnit, scanUnitWord } from './unit-words.ts';

/** The quantity that begins with a number at `from`. */
export function scanMeasure(text: string, from: number): Scan | undefined {
  const number = scanMagnitude(text, from);
  if (number === undefined) return undefined;
  if (number.tooLong) return wrongScan(numberTooLong, number.to, undefined);
  const scan = measure(text, from, number);
  if (number.comma === undefined) return scan;
  // The whole piece with its unit, so that the rest of the line reads as if the comma were right.
  const written = text.slice(from, scan.to);
  if (number.comma === 'muddled') return wrongScan(decimalComma, scan.to, undefined, written, undefined);
  const rewrite = number.tidy + text.slice(number.to, scan.to);
  return wrongScan(decimalComma, scan.to, rewrite, written, rewrite);
}

function measure(text: string, from: number, number: Magnitude): Scan {
  const money = currencyAfter(text, number.to);
  if (money !== undefined) return scanAmount(text, from, number, money);
  const special =
    scanFeetInches(text, from, number) ??
    scanSign(text, from, number) ??
    scanHyphened(text, number) ??
    scanUnusual(text, from, number);
  if (special !== undefined) return special.kind === 'wrong' ? special : withRate(text, from, special);
  const word = scanUnit(text, number.to, number.whole);
  if (word !== undefined) {
    const written = text.slice(number.to, word.to);
    // 3d and 3 d stay as they are; a spelling that is rewritten gets its blank, or loses it before d, w and h.
    const same = written.trimStart() === word.tidy;
    const blank = same ? written.slice(0, written.length - word.tidy.length) : GLUED.has(word.tidy) ? '' : ' ';
    const tidy = `${number.tidy}${blank}${word.tidy}`;
    return withRate(text, from, literalScan(quantity(number, word.unit), word.to, changed(text, from, word.to, tidy)));
  }
  const glued = gluedLetters(text, number.to);
  if (glued !== undefined) {
    const near = nearest(glued.unit, UNIT_WORDS, 2);
    return wrongScan(unknownUnit, glued.to, undefined, text.slice(from, glued.to), glued.unit, near);
  }
  const bare: Literal = { kind: 'quantity', dimension: 'bare', value: number.over / number.under, unit: '' };
  return withRate(text, from, literalScan(bare, number.to, changed(text, from, number.to, number.tidy)));
}

/** Percent and degrees, whose signs are glued on. */
function scanSign(text: string, from: number, number: Magnitude): Scan | undefined {
  const percent = matchAt(PERCENT, text, number.to);
  if (percent !== undefined) {
    const to = number.to + percent[0].length;
    const value = number.over / (number.under * 100);
    return literalScan(
      { kind: 'quantity', dimension: 'number', value, unit: '%' },
      to,
      changed(text, from, to, `${number.tidy}${percent[0]}`),
    );
  }
  const degrees = matchAt(DEGREES, text, number.to);
  if (degrees === undefined) return undefined;
  const to = number.to + degrees[0].length;
  const scale = degrees[1]?.toUpperCase();
  if (scale === undefined) {
    const value = tangent(number.over / number.under);
    return literalScan(
      { kind: 'quantity', dimension: 'slope', value, unit: 'deg' },
      to,
      changed(text, from, to, `${number.tidy} deg`),
    );
  }
  return literalScan(quantity(number, unitNamed(scale) as Unit), to, changed(text, from, to, `${number.tidy} ${scale}`));
}

/** 6-mil poly, 3-ply, 16-ft: a hyphen before the unit. A number of plies is a count. */
function scanHyphened(text: string, number: Magnitude): Scan | undefined {
  if (text.charCodeAt(number.to) !== 45 || !isLetter(text.charCodeAt(number.to + 1))) return undefined;
  const ply = matchAt(PLY, text, number.to);
  if (ply !== undefined) {
    return literalScan(
      { kind: 'quantity', dimension: 'bare', value: number.over / number.under, unit: '' },
      number.to + ply[0].length,
      undefined,
    );
  }
  const word = scanUnitWord(text, number.to + 1);
  if (word === undefined || word.to - number.to < 3) return undefined;
  return literalScan(quantity(number, word.unit), word.to, `${number.tidy} ${word.tidy}`);
}

/** Units that have two readings, or one in the wrong case. */
function scanUnusual(text: string, from: number, number: Magnitude): Scan | undefined {
  const yard = matchAt(YARDS, text, number.to);
  if (yard !== undefined) {
    const to = number.to + yard[0].length;
    const feet = `${(number.over * 3) / number.under}'`;
    return wrongScan(yards, to, undefined, text.slice(from, to), `${number.tidy} cy`, feet);
  }
  const odd = matchAt(WRONG_CASE, text, number.to);
  if (odd === undefined) return undefined;
  const to = number.to + odd[0].length;
  const right = odd[1] === 'mPa' ? `${number.tidy} MPa` : `${number.tidy} m`;
  return wrongScan(unitCase, to, right, text.slice(from, to), right);
}

function quantity(number: Magnitude, unit: Unit): Literal {
  if (unit.dimension === 'length') return length((number.over * unit.factor) / number.under, unit.unit);
  const value =
    unit.zero === undefined
      ? (number.over * unit.factor) / number.under
      : (toBase(number.over / number.under, unit.unit) as number);
  return { kind: 'quantity', dimension: unit.dimension, value, unit: unit.unit };
}

/** Letters and digits glued to a number that no unit explains: 2nd, 9x21a, 3-tab. */
function gluedLetters(text: string, at: number): { readonly unit: string; readonly to: number } | undefined {
  const code = text.charCodeAt(at);
  if (matchAt(JOINT, text, at) !== undefined) return undefined;
  if (!isWordPart(code) && !(code === 45 && isLetter(text.charCodeAt(at + 1)))) return undefined;
  const run = (matchAt(LETTERS, text, at) as RegExpExecArray)[0];
  return { unit: run.replace(/^-/, ''), to: at + run.length };
}

function changed(text: string, from: number, to: number, tidy: string): string | undefined {
  return text.slice(from, to) === tidy ? undefined : tidy;
}

const GLUED: ReadonlySet<string> = new Set(['d', 'w', 'h']);
// One letter is near to any other; it is no help to offer it.
const UNIT_WORDS: readonly string[] = UNITS.flatMap((unit) => unit.words).filter((word) => word.length > 1);
const PERCENT = / ?%/y;
const DEGREES = / ?(?:°|deg\b|degrees?\b)(?: ?([CFcf])(?![\p{L}\p{N}_-]))?/uy;
const PLY = /-ply(?![\p{L}\p{N}_-])/iuy;
const YARDS = / ?(?:yds?|yards?)(?![\p{L}\p{N}_-])/iuy;
const WRONG_CASE = / ?(mPa|M)(?![\p{L}\p{N}_-])/uy;
const LETTERS = /-?[\p{L}\p{M}\p{N}_]+(?:[-./][\p{L}\p{M}\p{N}_]+)*/uy;
const JOINT = /[x×X](?=[\d.$½¼¾])/y;
