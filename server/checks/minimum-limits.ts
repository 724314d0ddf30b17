// How the limit of a row and a value are compared and told: 70 sf, plan.frost, room.floor-area * 8%, 1/150.
import type { Dimension } from '#kit/dimension';
import { type Quantity, quantityIn } from '#kit/quantity';
import type { Model } from '#model/resolve';
import type { Bound } from './minimum-kinds.ts';
import { quantityText } from './show.ts';

export function comparable(a: Quantity, b: Quantity): boolean {
  return asNumber(a.dimension) === asNumber(b.dimension);
}

/** A slope is a share like another: 6 inches in 10 feet are 5%. */
function asNumber(dimension: Dimension): Dimension {
  return dimension === 'slope' ? 'number' : dimension;
}

/**
 * Lengths are exact. An area may be short by what reading its sides took: 41.04" is no whole number of 1/320 mm, so half of
 * that on each side, far less than a sixty-fourth of an inch. Other measures get a billionth in the plan's favour.
 */
export function fits(value: Quantity, limit: Quantity, bound: Bound): boolean {
  const grace = graceOf(limit);
  return bound === 'at least' ? value.value >= limit.value - grace : value.value <= limit.value + grace;
}

function graceOf({ dimension, value }: Quantity): number {
  if (dimension === 'length') return 0;
  return dimension === 'area' ? Math.sqrt(Math.abs(value)) : Math.abs(value) * 1e-9;
}

/** Units that say more than the usual one would: a sill of 44", not of 3'-8". */
const TELLING: ReadonlySet<string> = new Set(['%', 'in/ft', 'in', 'sq in']);

/** As the row writes it. Plans in metres read their own lengths. */
export function amountText(value: Quantity, model: Model, unit = value.unit): string {
  const { dimension } = value;
  if (unit !== undefined && TELLING.has(unit) && !(unit === 'in' && model.settings.units !== 'feet'))
    return told(quantityIn(value, unit), model);
  // Vents are told as the code writes them.
  if (dimension === 'number' && value.value > 0 && value.value < 0.05) return `1/${Math.round(1 / value.value)}`;
  return quantityText(value, model);
}

function told(value: Quantity, model: Model): string {
  return quantityText(value, model, value.unit);
}

/** The value beside its limit: a hair under it is not told as the limit. */
export function valueText(value: Quantity, limit: Quantity, model: Model): string {
  const text = amountText(value, model, limit.unit ?? value.unit);
  if (value.value === limit.value || text !== amountText(limit, model)) return text;
  return `${value.value < limit.value ? 'just under' : 'just over'} ${text}`;
}
