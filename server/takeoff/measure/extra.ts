// Goods counted by hand: so many, of a length each where they are cut; or an amount as it was reckoned.
import { form, measure, type Quantity } from '#kit/quantity';
import type { ElementOf } from '#model/model';
import type { Measure } from '../lines.ts';
import { counted, type Measured, portion } from './portion.ts';

const lengthOfAll = form('length of the pieces', 'pieces × length', (count = 0, length = 0) => count * length);

export function measureExtra(extra: ElementOf<'extra'>): Measured {
  if (extra.takes === undefined) return { portions: [], findings: [] };
  const { amount, of: goods, each } = extra.takes;
  const where = { element: extra.slot };
  if (typeof amount !== 'number')
    return { portions: [portion(measures[amount.dimension], where, amount, { goods })], findings: [] };
  const count = counted(goods.name, amount);
  if (each === undefined) return { portions: [portion('extra-count', where, count, { goods })], findings: [] };
  const length: Quantity<'length'> = measure('length', lengthOfAll, count, each);
  return { portions: [portion('extra-length', where, length, { goods, pieces: [{ count, length: each }] })], findings: [] };
}

const measures = {
  area: 'extra-area',
  length: 'extra-length',
  volume: 'extra-volume',
  weight: 'extra-weight',
} as const satisfies { readonly [dimension: string]: Measure };
