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
export function portion(measure: Measure, where: Where, quantity: Quantity, more: More = {}): Portion {
  const present = Object.fromEntries(Object.entries(more).filter(([, value]) => value !== undefined)) as Omit<
    Portion,
    'measure' | 'where' | 'quantity'
  >;
  return { measure, where, quantity, ...present };
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
