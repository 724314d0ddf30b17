// Whether the whole plan of a foundation is dug out, or a trench along its walls: as its `dig` line says; else the whole
// where there is a room inside, which a trench would leave full of earth.
import { MILLIMETRE } from '#kit/dimension';
import type { Foundation } from '../model.ts';

/** From memory: International Residential Code, R305.1: the least headroom of a basement, 6 ft 8 in. A wall as high closes a room. */
const ROOM_HIGH = 80 * 25.4 * MILLIMETRE;

/** Room inside: under a level that says `basement`, or a wall as high as a room, half in the ground, with a slab inside. */
export function dugWhole({ given: { dig, under, long, wall, slab, bottom } }: Foundation): boolean {
  if (dig !== undefined) return dig.value === 'all';
  if (wall === undefined || long !== undefined || bottom === undefined) return false;
  if (under?.value.given.basement !== undefined) return true;
  const high = wall.value.size.right.value;
  return slab !== undefined && high >= ROOM_HIGH && 2 * bottom.value.value >= high;
}
