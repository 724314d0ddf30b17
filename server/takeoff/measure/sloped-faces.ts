// The walls and the ceiling of a room under a slope, as what is laid on them lies: walls that rise along it, and the ceiling
// as long as it is up the slope.
import type { Outline, Point } from '#kit/shapes/outline';
import { roomShape } from '#model/facts/room';
import { ceilingOver } from '#model/facts/sloped';
import type { Room } from '#model/model';
import type { Face } from '../lines.ts';
import { shapedFace } from './faces.ts';
import { sidesOfFloor } from './wall-parts.ts';

export function slopedWallFaces(room: Room): readonly Face[] {
  const shape = roomShape(room);
  const over = shape === undefined ? undefined : ceilingOver(room, shape);
  if (shape === undefined || over === undefined) return [];
  return sidesOfFloor(shape).map(({ label, from, to, length }) => {
    const [one, other] = [over.along(from), over.along(to)];
    const top: Point[] = [{ x: length, y: over.height(other) }];
    const { crest } = over;
    if (crest !== undefined && one < crest !== other < crest && one !== crest && other !== crest)
      top.push({ x: (length * (crest - one)) / (other - one), y: over.height(crest) });
    top.push({ x: 0, y: over.height(one) });
    return shapedFace(label, [[{ x: 0, y: 0 }, { x: length, y: 0 }, ...top]]);
  });
}

export function slopedCeilingFaces(room: Room): readonly Face[] {
  const shape = roomShape(room);
  const over = shape === undefined ? undefined : ceilingOver(room, shape);
  if (over === undefined) return [];
  const longer = Math.sqrt(1 + over.pitch * over.pitch);
  const level = over.low === 'east' || over.low === 'west';
  const onSlope = (outline: Outline): Outline => outline.map(({ x, y }) => (level ? { x: x * longer, y } : { x, y: y * longer }));
  return over.halves.map((half, nth) =>
    shapedFace(over.halves.length > 1 ? `ceiling, slope ${nth + 1}` : 'ceiling', [onSlope(half)]),
  );
}
