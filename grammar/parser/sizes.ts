// Sizes that have no unit of their own: lumber and sheets (2x6, 5/4x6, 2x10x14, 2400x1200x10mm), doors (3/0 x 6/8),
// bars (#4, T12), ratios and pitches (6:12, 1:50).
import { FOOT, INCH } from '#kit/dimension';
import type { Literal } from '../tree.ts';
import { type Context, endsHere, literalScan, matchAt, type Scan } from './reading.ts';

/** 2x6, 90x45, 5/4x6; of three numbers the last is feet where the first two are nominal inches. */
export function scanNominal(text: string, from: number): Scan | undefined {
  const found = matchAt(NOMINAL, text, from) ?? matchAt(FIVE_QUARTER, text, from);
  if (found === undefined) return undefined;
  const groups = found.groups as { first: string; second: string; third?: string; foot?: string; unit?: string };
  const to = from + found[0].length;
  if (!endsHere(text, to)) return undefined;
  const quarters = groups.first.endsWith('/4');
  const first = quarters ? Number(groups.first.slice(0, -2)) / 4 : Number(groups.first);
  if (quarters && first < 1) return undefined;
  const across = [first, Number(groups.second)];
  const third = groups.third === undefined ? undefined : Number(groups.third);
  const unit = groups.unit?.toLowerCase();
  const inFeet =
    third !== undefined && unit === undefined && (groups.foot !== undefined || across.every((side) => NOMINAL_INCHES.has(side)));
  if (groups.foot !== undefined && !inFeet) return undefined;
  const tidy = [groups.first, groups.second, groups.third].filter((part) => part !== undefined).join('x') + (unit ?? '');
  return literalScan(nominal(across, third, inFeet, unit), to, tidy === found[0] ? undefined : tidy);
}

function nominal(across: readonly number[], third: number | undefined, inFeet: boolean, unit: string | undefined): Literal {
  if (third !== undefined && inFeet) return { kind: 'nominal', across, feet: third };
  const sides = third === undefined ? across : [...across, third];
  return unit === undefined ? { kind: 'nominal', across: sides } : { kind: 'nominal', across: sides, unit };
}

/** 3/0 x 6/8: feet and inches of width and height. Alone after a door or window word, or with a zero below: one length. */
export function scanDoor(text: string, from: number, context: Context): Scan | undefined {
  const both = matchAt(DOOR, text, from);
  if (both !== undefined) {
    const [written, a, b, c, d] = both as unknown as readonly [string, string, string, string, string];
    if (Number(b) > 11 || Number(d) > 11) return undefined;
    const tidy = `${a}/${b} x ${c}/${d}`;
    const literal: Literal = { kind: 'door', width: feetInches(a, b), height: feetInches(c, d) };
    return literalScan(literal, from + written.length, tidy === written ? undefined : tidy);
  }
  const one = matchAt(HALF_DOOR, text, from);
  if (one === undefined) return undefined;
  const [written, feet, inches] = one as unknown as readonly [string, string, string];
  if (Number(inches) !== 0 && !(context.opening && Number(feet) >= 2 && Number(inches) <= 11)) return undefined;
  const literal: Literal = { kind: 'quantity', dimension: 'length', value: feetInches(feet, inches), unit: 'ft-in' };
  return literalScan(literal, from + written.length, `${feet}'-${Number(inches)}"`);
}

/** 6/12 where a roof word stands before it, or "pitch" behind it. */
export function scanPitch(text: string, from: number, context: Context): Scan | undefined {
  const found = matchAt(PITCH, text, from);
  if (found === undefined || !(context.pitch || found[3] !== undefined)) return undefined;
  const terms = [Number(found[1]), Number(found[2])];
  const written = `${found[1]}/${found[2]}`;
  return literalScan({ kind: 'ratio', terms }, from + written.length, `${found[1]}:${found[2]}`);
}

/** 6:12, 1.5:1, 1:2:3. */
export function scanRatio(text: string, from: number): Scan | undefined {
  const found = matchAt(RATIO, text, from);
  if (found === undefined || !endsHere(text, from + found[0].length)) return undefined;
  return literalScan({ kind: 'ratio', terms: found[0].split(':').map(Number) }, from + found[0].length, undefined);
}

/** #4 in eighths of an inch, T12 in millimetres. */
export function scanBar(text: string, from: number): Scan | undefined {
  const found = matchAt(BAR, text, from);
  if (found !== undefined) return literalScan({ kind: 'bar', number: Number(found[1]) }, from + found[0].length, undefined);
  const metric = matchAt(METRIC_BAR, text, from);
  if (metric === undefined) return undefined;
  return literalScan({ kind: 'bar', number: Number(metric[1]), metric: true }, from + metric[0].length, undefined);
}

function feetInches(feet: string, inches: string): number {
  return Number(feet) * FOOT + Number(inches) * INCH;
}

const NOMINAL_INCHES: ReadonlySet<number> = new Set([1, 1.25, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 14, 16]);
const NOMINAL =
  /(?<first>\d{1,5}(?:\/4)?)[x×X](?<second>\d{1,5})(?:[x×X](?<third>\d{1,5})(?<foot>['′’])?)?(?: ?(?<unit>mm|cm)(?![\p{L}\p{N}_-]))?(?![\d'"′″’”½¼¾⅛⅜⅝⅞]|[.,]\d|\/\d|[x×X][\d.]|[ -]\d+\/\d+["″”]| ?(?:in|ft|m)\b(?! [\p{L}]))/iuy;
const FIVE_QUARTER = /(?<first>\d\/4)\s+[x×X]\s+(?<second>\d{1,2})(?!['"′″’”.:/\d]|\s+\d+\/)/uy;
const DOOR = /(\d{1,2})\/(\d{1,2})\s*[x×X]\s*(\d{1,2})\/(\d{1,2})(?![\p{L}\p{N}_'"′″’”/])/uy;
const HALF_DOOR = /(\d{1,2})\/(\d{1,2})(?![\p{L}\p{N}_'"′″’”/.:%]|-\p{L})/uy;
const PITCH = /(\d{1,2}(?:\.\d+)?)\/(\d{1,2})(?![\p{L}\p{N}_'"′″’”/.:%])(\s+pitch\b)?/uy;
const RATIO = /\d{1,5}(?:\.\d{1,5})?(?::\d{1,5}(?:\.\d{1,5})?){1,3}(?![:\d])/y;
const BAR = /#(\d{1,2})(?![\p{L}\p{N}_])/uy;
const METRIC_BAR = /T(6|8|10|12|16|20|25|32|40)(?![\p{L}\p{N}_]|-[\p{L}\p{N}]|\.\p{L})/uy;
