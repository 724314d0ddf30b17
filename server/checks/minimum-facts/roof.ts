// Attics: how much of the floor below is open to the air, how much of that is high up, and the way in.
import { form, measure, type Quantity } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Roof } from '#model/model';
import { shareWritten } from './ground.ts';
import { type FactTable, greatest, number, shareOf, smallest } from './tables.ts';

const planOf = form('plan of the roof', 'length × width', (length = 0, width = 0) => length * width);

/** Of the attic floor: a share as written, or an area over the level below or the roof's own plan. */
function ventShare({ given }: Roof): Quantity | undefined {
  const open = given.vents?.value.open;
  if (open === undefined) return undefined;
  if (typeof open === 'string') return shareWritten(open);
  const level = given.over?.value;
  const size = given.size?.value;
  const floor =
    (level === undefined ? undefined : factsOf(level)['floor-area']) ??
    (size === undefined ? undefined : measure('area', planOf, size.left, size.right));
  return floor === undefined ? undefined : shareOf(open, floor);
}

export const factsOfRoof: FactTable<Roof> = {
  lines: {
    'vent-share': 'vents',
    'high-share': 'vents',
    'air-impermeable': 'unvented',
    'access-headroom': 'access',
    'access-least': 'access',
    'access-most': 'access',
    'vent-above-roof': 'plumbing-vent',
    'vent-from-openings': 'plumbing-vent',
  },
  own: {
    'vent-share': ventShare,
    'high-share': ({ given }) => given.vents?.value.high,
    retarder: ({ given }) => number('retarders under the attic', given.vents?.deeper['over retarder'] === undefined ? 0 : 1),
    'air-impermeable': ({ given }) => given.unvented?.value,
    'access-headroom': ({ given }) => given.access?.deeper.headroom?.value,
    'vent-above-roof': ({ given }) => given['plumbing-vent']?.value,
    'vent-from-openings': ({ given }) => given['plumbing-vent']?.deeper['from openings']?.value,
    'vent-over-openings': ({ given }) => given['plumbing-vent']?.deeper['over openings']?.value,
    'access-least': ({ given }) =>
      smallest(given.access === undefined ? [] : [given.access.value.left, given.access.value.right]),
    'access-most': ({ given }) => greatest(given.access === undefined ? [] : [given.access.value.left, given.access.value.right]),
  },
};
