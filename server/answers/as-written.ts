// Numbers that somebody wrote down, as they stand there and not rounded for the eye: the working comes out when it is done again.
import type { Dimension } from '#kit/dimension';
import type { Quantity } from '#kit/quantity';
import { fromBase, unitNamed } from '#kit/units';
import { formatNumber } from '#kit/units/numbers';

/** 0.19 h for what was written as 0.19 h; undefined for what is computed, or prints as it was written anyway. */
export function asWritten({
  value,
  dimension,
  unit = dimension === 'time' ? 'h' : '',
  place,
  inputs,
}: Quantity): string | undefined {
  if (place === undefined || inputs.length > 0 || !MEASURED.has(dimension)) return undefined;
  const amount = unitNamed(unit)?.dimension === dimension ? fromBase(value, unit) : undefined;
  return amount === undefined || unit === 'd' || unit === 'w' ? undefined : `${formatNumber(amount, 6)} ${unit}`;
}

/** Dimensions whose units are words after a plain number. */
const MEASURED: ReadonlySet<Dimension> = new Set<Dimension>(['time', 'weight', 'volume', 'area']);
