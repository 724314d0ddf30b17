// The house as one: for work that is done once whatever its size.
import type { Plan } from '#model/model';
import { counted, type Measured, portion } from './portion.ts';

const once = counted('house', 1);

export function measureHouse(plan: Plan): Measured {
  return { portions: [portion('house', { element: plan.slot }, once)], findings: [] };
}
