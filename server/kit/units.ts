// Units of measure: reading a unit word, turning amounts into base units and back, and printing quantities.
// What a unit is stands in units/table.ts; how each dimension prints, in units/print.ts.
import { type Base, type Dimension, overDimension } from './dimension.ts';
import { printQuantity } from './units/print.ts';
import { CURRENCIES, UNITS, type Unit } from './units/table.ts';
import { tangent } from './units/tangent.ts';

/** Feet, inches, pounds and degrees Fahrenheit; or metres and kilograms. */
export type System = 'feet' | 'metric';

/** The unit a word spells, if any. Case counts only where it tells units apart: W and w, m and M, mPa and MPa. */
export function readUnit(word: string): Unit | undefined {
  const exact = exactWords.get(word);
  if (exact !== undefined || word.length < 2 || word === 'mPa') return exact;
  return lowerWords.get(word.toLowerCase());
}

/** The spelling the formatter writes, where `word` is one that it rewrites. */
export function usualSpelling(word: string): string | undefined {
  if (word.length === 1 || keptWords.has(word)) return undefined;
  const unit = readUnit(word);
  if (unit === undefined) return undefined;
  const kept = unit.words.find((one) => one.toLowerCase() === word.toLowerCase());
  return kept ?? unit.words[0];
}

/** The unit of a canonical word; money signs are units with the factor 100. */
export function unitNamed(unit: string): Unit | undefined {
  return named.get(unit) ?? exactWords.get(unit);
}

/** `amount` of a unit ('ft', '$/sf', 'h/cy'; '' for a bare number) in base units; undefined for no unit of ours. */
export function toBase(amount: number, unit: string): number | undefined {
  if (unit === '') return amount;
  if (unit === 'deg') return tangent(amount);
  const whole = unitNamed(unit);
  if (whole !== undefined) return whole.zero === undefined ? amount * whole.factor : (amount - whole.zero) * whole.factor;
  const rate = rateNamed(unit);
  return rate === undefined ? undefined : (amount * rate.top.factor) / (rate.bottom?.factor ?? 1);
}

/** The dimension a unit measures: 'money/area' for '$/sf', 'money' for '$/sheet', 'bare' for ''. */
export function dimensionOf(unit: string): Dimension | 'bare' | undefined {
  if (unit === '') return 'bare';
  if (unit === 'deg') return 'slope';
  return unitNamed(unit)?.dimension ?? rateNamed(unit)?.dimension;
}

/** A value in base units as an amount of the unit. The degrees of a slope are for print only. */
export function fromBase(value: number, unit: string): number | undefined {
  if (unit === '') return value;
  const whole = unitNamed(unit);
  if (whole !== undefined) return value / whole.factor + (whole.zero ?? 0);
  const rate = rateNamed(unit);
  return rate === undefined ? undefined : value / rate.factor;
}

/**
 * A quantity as a person reads it: 12'-6 1/2", 433.3 sf, $1,234.56, 6:12, 2.6 h.
 * It is printed in the quantity's own unit where it has one, else in the usual one of the system.
 */
export function formatQuantity(
  quantity: { readonly value: number; readonly dimension: Dimension | 'bare'; readonly unit?: string },
  system: System,
): string {
  return printQuantity(quantity.value, quantity.dimension, quantity.unit, system);
}

export interface Rate {
  readonly dimension: Dimension;
  readonly factor: number;
  readonly top: Unit;
  /** Absent where the bottom only counts things: '$/sheet'. */
  readonly bottom?: Unit;
}

/** Reads '$/sf', 'h/cy', 'in/ft', '$/sheet': a unit over a unit, or over a word for something counted. */
export function rateNamed(unit: string): Rate | undefined {
  const kept = rates.get(unit);
  if (kept !== undefined) return kept;
  const slash = unit.indexOf('/');
  const top = slash < 0 ? undefined : (unitNamed(unit.slice(0, slash)) ?? (slash === 0 ? ONE : undefined));
  if (top === undefined) return undefined;
  const bottom = readUnit(unit.slice(slash + 1));
  const made = bottom === undefined ? { dimension: top.dimension, factor: top.factor, top } : rateOf(top, bottom);
  if (made !== undefined && bottom !== undefined) rates.set(unit, made);
  return made;
}

/** A unit over a unit; length over length is a slope. Undefined where the quotient means nothing. */
export function rateOf(top: Unit, bottom: Unit): Rate | undefined {
  const dimension =
    top.dimension === 'length' && bottom.dimension === 'length' ? 'slope' : overDimension(top.dimension, bottom.dimension);
  return dimension === undefined ? undefined : { dimension, factor: top.factor / bottom.factor, top, bottom };
}

/** Number over something: 2/sf. */
const ONE: Unit = { unit: '', dimension: 'number', factor: 1, system: 'both', words: [] };

const exactWords = new Map<string, Unit>();
const lowerWords = new Map<string, Unit>();
const keptWords = new Set<string>();
const named = new Map<string, Unit>();
const rates = new Map<string, Rate>();

for (const unit of UNITS) {
  named.set(unit.unit, unit);
  if (unit.one !== undefined) named.set(unit.one, unit);
  for (const word of unit.words) keptWords.add(word);
  for (const word of [...unit.words, ...(unit.also ?? [])]) {
    exactWords.set(word, unit);
    if (word.length > 1) lowerWords.set(word.toLowerCase(), unit);
  }
}
// Single letters whose case tells nothing apart. W is a watt and w a week; M stands for nothing.
for (const [letter, word] of [
  ['H', 'h'],
  ['D', 'd'],
  ['a', 'A'],
  ['v', 'V'],
  ['f', 'F'],
  ['c', 'C'],
  ['L', 'l'],
] as const) {
  exactWords.set(letter, exactWords.get(word) as Unit);
}
for (const [sign, unit] of CURRENCIES) {
  const money: Unit = { unit, dimension: 'money' satisfies Base, factor: 100, system: 'both', words: [] };
  if (sign === unit) named.set(unit, money);
}
