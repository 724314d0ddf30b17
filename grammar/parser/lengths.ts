// Feet and inches in every spelling that drawings use: 12', 12'-6", 12' 6 1/2", 4'2-1/4", 12ft 6in, 3′-0½″, 107”.
import { FOOT, INCH, MILLIMETRE } from '#kit/dimension';
import type { Literal } from '../tree.ts';
import { type Magnitude, scanMagnitude } from './magnitudes.ts';
import { inchesTooMany } from './messages.ts';
import { isBlank, isHyphen, literalScan, matchAt, type Scan, wrongScan } from './reading.ts';

/** The length whose number is `number`, if a foot or inch mark follows it. */
export function scanFeetInches(text: string, from: number, number: Magnitude): Scan | undefined {
  const inchTo = inchMark(text, number.to);
  if (inchTo !== undefined) {
    const tidy = `${number.tidy}"`;
    return literalScan(length((number.over * INCH) / number.under, 'in'), inchTo, changed(text, from, inchTo, tidy));
  }
  const feetTo = footMark(text, number.to);
  if (feetTo === undefined) return undefined;
  const feet = (number.over * FOOT) / number.under;
  const inches = inchesAfter(text, feetTo);
  if (inches === undefined) {
    // 12 ft is as good as 12'; only odd marks are rewritten.
    const written = text.slice(number.to, feetTo);
    const tidy = isWordUnit(written) ? undefined : `${number.tidy}'`;
    return literalScan(length(feet, 'ft'), feetTo, tidy === undefined ? undefined : changed(text, from, feetTo, tidy));
  }
  const { magnitude, to } = inches;
  const tidy = `${number.tidy}'-${magnitude.tidy}"`;
  const whole = text.slice(from, to);
  if (magnitude.over >= 12 * magnitude.under && number.whole) {
    return wrongScan(inchesTooMany, to, undefined, whole, carried(number.over, magnitude));
  }
  return literalScan(
    length(feet + (magnitude.over * INCH) / magnitude.under, 'ft-in'),
    to,
    SPACED.test(whole) ? undefined : changed(text, from, to, tidy),
  );
}

/** A length literal in whole base units (films, below a millimetre, keep their fraction). */
export function length(value: number, unit: string): Literal {
  const whole = Math.abs(value) < MILLIMETRE ? value : Math.round(value);
  return { kind: 'quantity', dimension: 'length', value: whole, unit };
}

/** Where the inch mark glued to a number ends: ", ″, ” or two single ones. */
export function inchMark(text: string, at: number): number | undefined {
  const mark = text.charAt(at);
  if (mark === '"' || mark === '″' || mark === '”' || mark === '“' || mark === '„') return at + 1;
  return mark === "'" && text.charAt(at + 1) === "'" ? at + 2 : undefined;
}

interface Inches {
  readonly magnitude: Magnitude;
  readonly to: number;
}

/** The inches that go on a number of feet: after a hyphen, one blank or nothing. The mark may be left out where no doubt is. */
function inchesAfter(text: string, at: number): Inches | undefined {
  const code = text.charCodeAt(at);
  const hyphen = isHyphen(code);
  const start = hyphen ? (isBlank(text.charCodeAt(at + 1)) ? at + 2 : at + 1) : isBlank(code) ? at + 1 : at;
  const magnitude = scanMagnitude(text, start);
  if (magnitude === undefined || magnitude.comma !== undefined) return undefined;
  const marked = inchMark(text, magnitude.to) ?? matchAt(INCH_WORD, text, magnitude.to)?.[0].length;
  if (marked !== undefined) return { magnitude, to: inchMark(text, magnitude.to) ?? magnitude.to + marked };
  const clear = hyphen ? start === at + 1 && magnitude.over < 12 * magnitude.under : !magnitude.whole && start > at;
  return clear && matchAt(NOTHING_MORE, text, magnitude.to) !== undefined ? { magnitude, to: magnitude.to } : undefined;
}

function footMark(text: string, at: number): number | undefined {
  const mark = text.charAt(at);
  if (mark === '′' || mark === '’' || mark === '‘' || (mark === "'" && text.charAt(at + 1) !== "'")) return at + 1;
  const word = matchAt(FOOT_WORD, text, at);
  return word === undefined ? undefined : at + word[0].length;
}

function isWordUnit(written: string): boolean {
  return /^ ?f/.test(written);
}

function changed(text: string, from: number, to: number, tidy: string): string | undefined {
  return text.slice(from, to) === tidy ? undefined : tidy;
}

/** 3'-14" as 4'-2". */
function carried(feet: number, inches: Magnitude): string {
  const more = Math.floor(inches.over / inches.under / 12);
  const left = (inches.over - more * 12 * inches.under) / inches.under;
  return `${feet + more}'-${left}"`;
}

const INCH_WORD = /(?: ?(?:in|inch|inches))(?![\p{L}\p{N}_]|-\p{L})/iuy;
const FOOT_WORD = /(?: ?(?:ft|feet|foot)\.?)(?![\p{L}\p{N}_./]|-\p{L}|\s*per\b)/iuy;
// Nothing follows that would make the number something else: another foot mark, a size, a unit, a time.
const NOTHING_MORE = /(?![\p{L}\p{N}_'′’"“”″:/%.°]| ?(?:['′’]|(?:ft|feet|mm|cm|m|sf|lf|h|d|w|days|weeks)\b))/uy;
// 12' 6 1/2" with straight marks is as usual as 12'-6 1/2".
const SPACED = /^[\d,.]+' [\d.]+(?: \d+\/\d+)?"$/;
