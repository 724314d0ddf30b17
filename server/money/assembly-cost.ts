// What a unit of a wall's area costs in materials, bought in whole packages for a long stretch of it, by the plan's prices.
import { form, measure, type Quantity, total } from '#kit/quantity';
import type { Model } from '#model/resolve';
import type { Sample } from '#takeoff/assembly-sample';
import { purchasesOf } from '#takeoff/purchase';
import { materialCost } from './material.ts';
import { pricesFor, pricesOf } from './prices.ts';

export interface AssemblyCost {
  readonly each: Quantity<'money/area'>;
  /** Goods that have no price, and are not in it. */
  readonly without: readonly string[];
}

const perArea = form('materials', 'cost of a long stretch ÷ its area', (cost = 0, area = 1) => cost / area);
const NOTHING_ELSE: ReadonlySet<string> = new Set();

/** Undefined where none of its goods has a price. */
export function assemblyCost({ area, lines }: Sample, model: Model): AssemblyCost | undefined {
  const prices = pricesOf(model.list('price'));
  const system = model.settings.units === 'feet' ? 'feet' : 'metric';
  const costs: Quantity<'money'>[] = [];
  const without: string[] = [];
  for (const purchase of purchasesOf([lines], NOTHING_ELSE, system)) {
    const cost = materialCost(purchase, pricesFor(purchase, undefined, prices));
    if (cost === undefined) without.push(purchase.label);
    else costs.push({ ...cost.working(), form: { ...cost.working().form, label: purchase.label } });
  }
  if (costs.length === 0) return undefined;
  return { each: measure('money/area', perArea, total('cost of the stretch', 'money', costs), area), without };
}
