// Person-hours of a kind of work for a portion, and what it uses up beside the goods it installs.
import { type Dimension, overDimension } from '#kit/dimension';
import { form, measure, type Quantity, roundUp, total } from '#kit/quantity';
import type { WorkKind } from '#model/model';
import { weighsOf } from './goods.ts';
import type { Measure, NamedGoods } from './lines.ts';
import type { Labour, Rows, Uses } from './rows.ts';

const byQuantity = form('person-hours', 'quantity × hours for each', (quantity = 0, rate = 0) => quantity * rate);
const byWeight = form(
  'person-hours',
  'quantity × weight × hours for each',
  (quantity = 0, weight = 0, rate = 0) => quantity * weight * rate,
);
const usedUp = form('used up', 'quantity × amount ÷ for each', (quantity = 0, amount = 0, each = 1) =>
  each > 0 ? (quantity * amount) / each : 0,
);

const usedUpBegun = form('used up', 'quantity ÷ for each, rounded up × amount', (quantity = 0, amount = 0, each = 1) =>
  each > 0 ? roundUp(quantity / each) * amount : 0,
);

/**
 * Undefined where the work gives no rate by this measure. Hours for the whole of it stand once for an element: `once` holds
 * those that it has already.
 */
export function hoursOf(
  rows: Rows,
  work: WorkKind,
  by: Measure,
  net: Quantity,
  goods: NamedGoods | undefined,
  once: Set<Labour>,
): Quantity<'time'> | undefined {
  const labour = rows.labour.get(work)?.get(by);
  if (labour === undefined) return undefined;
  let only: Quantity<'time'> | undefined;
  const parts: Quantity<'time'>[] = [];
  for (const row of labour) {
    const hours = hoursAt(row, net, goods);
    if (hours === undefined || once.has(row)) continue;
    if (hours === row.rate) once.add(row);
    only ??= hours;
    parts.push(hours);
  }
  return parts.length <= 1 ? only : total('person-hours', 'time', parts);
}

function hoursAt({ rate, each, by }: Labour, net: Quantity, goods: NamedGoods | undefined): Quantity<'time'> | undefined {
  if (rate.dimension === 'time') {
    if (each !== undefined) return net.dimension === 'number' ? measure('time', byQuantity, net, rate) : undefined;
    // Hours without "each" are for the whole of it, and only where the row says by which measure.
    return by === undefined ? undefined : (rate as Quantity<'time'>);
  }
  if (rate.dimension === ratePer(net.dimension)) return measure('time', byQuantity, net, rate);
  if (rate.dimension !== 'time/weight' || goods === undefined) return undefined;
  const weight = weighsOf(goods);
  return weight?.dimension === `weight/${net.dimension}` ? measure('time', byWeight, net, weight, rate) : undefined;
}

function ratePer(dimension: Dimension): Dimension | undefined {
  return dimension === 'number' ? 'time/number' : overDimension('time', dimension);
}

/** What a work uses up of one of its goods; undefined where that is said for each of something else. */
export function usedUpOf(uses: Uses, net: Quantity): Quantity | undefined {
  return uses.per.amount.dimension === net.dimension
    ? measure(uses.amount.dimension, uses.per.begun === undefined ? usedUp : usedUpBegun, net, uses.amount, uses.per.amount)
    : undefined;
}
