// Attics: how much of the floor below is open to the air, how much of that is high up, and the way in.
import { form, measure, type Quantity } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Roof } from '#model/model';
import { thicknessOf } from '#takeoff/goods';
import { shareWritten } from './ground.ts';
import { type FactTable, greatest, number, shareOf, smallest } from './tables.ts';

const planOf = form('plan of the roof', 'length × width', (length = 0, width = 0) => length * width);

/** Of the attic floor: a share as written, or an area over the level below or the roof's own plan. */
function ventShare({ given }: Roof): Quantity | undefined {
  const open = given.vents?.value.open;
  if (open === undefined) return undefined;
  if (typeof open === 'string') return shareWritten(open);
  const floor = atticFloor(given);
  return floor === undefined ? undefined : shareOf(open, floor);
}

function atticFloor({ over, size }: Roof['given']): Quantity | undefined {
  return (
    (over === undefined ? undefined : factsOf(over.value)['floor-area']) ??
    (size === undefined ? undefined : measure('area', planOf, size.value.left, size.value.right))
  );
}

/** Whether there is a space between roof and ceiling: a roof that runs into another shares that one's. */
function hasAttic({ over, into, dormer, vents }: Roof['given']): boolean {
  if (into !== undefined || dormer !== undefined || over?.value.given.attic !== undefined) return false;
  const ceiling = over?.value.given.ceiling?.value.given;
  return ceiling === undefined ? vents !== undefined : ceiling.for?.value === 'ceiling' && ceiling.layer.length > 0;
}

const underRidge = form(
  'height of the attic',
  'pitch × half the lesser side − framing of roof and ceiling',
  (pitch = 0, side = 0, depth = 0) => (pitch * side) / 2 - 2 * depth,
);
const underShed = form(
  'height of the attic',
  'pitch × the lesser side − framing of roof and ceiling',
  (pitch = 0, side = 0, depth = 0) => pitch * side - 2 * depth,
);

/** At its highest, above what frames the ceiling; that is taken to be as deep as what frames the roof, and trusses to be thin. */
function atticHeight(roof: Roof): Quantity | undefined {
  const { given } = roof;
  const { pitch } = factsOf(roof);
  const facts = given.over === undefined ? undefined : factsOf(given.over.value);
  const side = smallest(
    given.size === undefined ? [facts?.width ?? [], facts?.depth ?? []].flat() : [given.size.value.left, given.size.value.right],
  );
  if (!hasAttic(given) || pitch === undefined || side === undefined) return undefined;
  const depth = given.framed === undefined ? undefined : thicknessOf(given.framed.value.of);
  const how = given.shape?.value.form === 'shed' ? underShed : underRidge;
  return measure('length', how, pitch, side, depth ?? number('framing', 0));
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
    'attic-height': atticHeight,
    'attic-area': ({ given }) => (hasAttic(given) ? atticFloor(given) : undefined),
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
