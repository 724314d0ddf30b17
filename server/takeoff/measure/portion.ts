// How every file of this folder gives its result, and a way to write a portion without naming what it has not.
import type { Finding } from '#kit/finding';
import { constant, type Quantity } from '#kit/quantity';
import type { Goods } from '#model/model';
import type { Literal, Measure, NamedGoods, Portion, Where } from '../lines.ts';

export interface Measured {
  readonly portions: readonly Portion[];
  readonly findings: readonly Finding[];
}

type More = { readonly [K in Exclude<keyof Portion, 'measure' | 'where' | 'quantity'>]?: Portion[K] | undefined };

/** A portion; parts of `more` that are undefined are left away. */
export function portion(measure: Measure, where: Where, quantity: Quantity, more?: More): Portion {
  const made: { -readonly [K in keyof Portion]: Portion[K] } = { measure, where, quantity };
  if (more === undefined) return made;
  // Written out, in one order: portions are made by the thousand, and are quick to read where they are built alike.
  if (more.gross !== undefined) made.gross = more.gross;
  if (more.openings !== undefined) made.openings = more.openings;
  if (more.surfaces !== undefined) made.surfaces = more.surfaces;
  if (more.faces !== undefined) made.faces = more.faces;
  if (more.goods !== undefined) made.goods = more.goods;
  if (more.sizes !== undefined) made.sizes = more.sizes;
  if (more.closes !== undefined) made.closes = more.closes;
  if (more.coats !== undefined) made.coats = more.coats;
  if (more.otherwise !== undefined) made.otherwise = more.otherwise;
  if (more.pieces !== undefined) made.pieces = more.pieces;
  if (more.face !== undefined) made.face = more.face;
  if (more.depth !== undefined) made.depth = more.depth;
  if (more.times !== undefined) made.times = more.times;
  if (more.onlyIfDone !== undefined) made.onlyIfDone = more.onlyIfDone;
  return made;
}

/** Goods that a plan names; `none` and `bare` say that there are none. */
export function isNothing(goods: NamedGoods): boolean {
  return goods.of === undefined && (goods.name === 'none' || goods.name === 'bare');
}

export function laidOf(goods: Goods): string | undefined {
  return goods.of?.kind === 'material' ? goods.of.given.laid?.value : undefined;
}

/** A whole number as written. */
export function counted(label: string, count: number): Quantity<'number'> {
  return constant(label, count, 'number');
}

/** A length as the size of goods. */
export function asSize({ value, unit }: Quantity<'length'>): Literal {
  return { kind: 'quantity', dimension: 'length', value, unit: unit ?? 'in' };
}

/** A part of a thing, at the thing's own place. Written out: thousands of them stay, and a copy would have a shape of its own. */
export function inPart({ element, room, level }: Where, part: string): Where {
  if (room === undefined) return level === undefined ? { element, part } : { element, part, level };
  return level === undefined ? { element, part, room } : { element, part, room, level };
}
