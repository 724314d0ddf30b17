// What a quantity is per: "/sf" or "/sheet" glued to it, or "per foot" behind it.
import { rateOf, unitNamed } from '#kit/units';
import type { Unit } from '#kit/units/table';
import { isBlank, type LiteralScan, literalScan, matchAt } from './reading.ts';
import { scanUnitWord } from './unit-words.ts';

/** Adds the "/sf", "per foot" or "/sheet" that follows a quantity, if one does. */
export function withRate(text: string, from: number, scan: LiteralScan): LiteralScan {
  const { literal, to } = scan;
  if (literal.kind !== 'quantity') return scan;
  const bottom = scanBottom(text, to, literal.dimension === 'bare');
  if (bottom === undefined) return scan;
  const usual = (scan.tidy ?? text.slice(from, to)) + bottom.tidy;
  const tidy = text.slice(from, bottom.to) === usual ? undefined : usual;
  const unit = `${literal.unit}/${bottom.word}`;
  if (bottom.unit === undefined) return literalScan({ ...literal, unit }, bottom.to, tidy);
  const rate = rateOf(unitNamed(literal.unit) ?? BARE, bottom.unit);
  if (rate === undefined || rate.dimension.split('/').length > 2) return scan;
  const value = literal.value / bottom.unit.factor;
  return literalScan({ kind: 'quantity', dimension: rate.dimension, value, unit }, bottom.to, tidy);
}

export interface Bottom {
  readonly to: number;
  /** Absent for a word that only counts. */
  readonly unit?: Unit;
  readonly word: string;
  readonly tidy: string;
}

/** What stands below the line of a rate: "/sf", "per sf", "/sheet". */
export function scanBottom(text: string, at: number, unitOnly: boolean): Bottom | undefined {
  const slash = text.charCodeAt(at) === 47;
  if (!slash && !isBlank(text.charCodeAt(at))) return undefined;
  const start = slash ? at + 1 : at + (matchAt(PER, text, at)?.[0].length ?? 0);
  if (start === at) return undefined;
  const found = scanUnitWord(text, start);
  if (found !== undefined) {
    const word = found.unit.one ?? found.unit.unit;
    return { to: found.to, unit: found.unit, word, tidy: slash ? `/${found.tidy}` : `${text.slice(at, start)}${found.tidy}` };
  }
  const counted = slash && !unitOnly ? matchAt(COUNTED, text, start)?.[0] : undefined;
  return counted === undefined ? undefined : { to: start + counted.length, word: counted.toLowerCase(), tidy: `/${counted}` };
}

const BARE: Unit = { unit: '', dimension: 'number', factor: 1, system: 'both', words: [] };
const PER = /\s+per\s+/y;
const COUNTED = /\p{L}[\p{L}\p{N}]*(?:-[\p{L}\p{N}]+)*/uy;
