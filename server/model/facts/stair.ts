// Facts of a stair: its rise, how many risers, the height of one, how far it runs.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Facts } from '../facts.ts';
import type { Stair } from '../model.ts';

const eachRiser = form('riser', 'rise ÷ risers', (rise = 0, risers = 1) => rise / risers);
const runOf = form('run', '(risers − 1) × tread', (risers = 0, tread = 0) => Math.max(0, risers - 1) * tread);

export function stairFacts({ given }: Stair): Facts {
  const rise = given.rise?.value;
  const risers = riserCount(given.risers?.value);
  const tread = given.tread?.value;
  return {
    rise,
    risers,
    riser:
      given.riser?.value ?? (rise === undefined || risers === undefined ? undefined : measure('length', eachRiser, rise, risers)),
    run: risers === undefined || tread === undefined ? undefined : measure('length', runOf, risers, tread),
  };
}

function riserCount(count: number | undefined): Quantity<'number'> | undefined {
  return count === undefined || count < 1 ? undefined : constant('risers', count, 'number');
}
