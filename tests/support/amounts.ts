// Quantities as plain numbers of a unit, for tests that compare with printed figures.
import type { Quantity } from '#kit/quantity';
import { fromBase } from '#kit/units';

/** A quantity in a unit: amount(line.net, 'cy'). */
export function amount(quantity: Quantity | undefined, unit: string): number {
  if (quantity === undefined) return Number.NaN;
  return fromBase(quantity.value, unit) ?? Number.NaN;
}
