// What lies between neighbouring rooms of a level, and between a room and the outside wall: straight strips of a width that
// should be that of a wall. Geometry alone, kept with the level's rooms.
import { FOOT } from '#kit/dimension';
import { type Facing, facings, type Side, sidesOf } from '#kit/shapes/facing';
import { alongEachOther, isSlantedSide, sidesLooking, slantedFacings } from '#kit/shapes/headings';
import { boundsOf, isRectangle, type Rectangle, regionContains } from '#kit/shapes/region';
import type { Heading } from '#kit/shapes/walk';
import { keptFor } from './kept.ts';
import type { LevelRooms, PlacedRoom } from './level-rooms.ts';

export interface Gap {
  readonly room: PlacedRoom;
  /** Undefined where the outside wall is on the other side. */
  readonly other: PlacedRoom | undefined;
  /** Which way one looks from the room. */
  readonly looks: Heading;
  readonly width: number;
  readonly length: number;
  /** Between slanted sides, whose places are rounded. */
  readonly slanted?: true;
}

/** Wider strips are taken for a space that is not drawn, not for a wall: the thickest usual wall is well under a foot. */
const REACH = FOOT;
/** Rooms that meet over less than this only pass each other at a corner. */
const CORNER = FOOT;

/** Strips up to a foot wide, those of no width included, with nothing else between. In plan order of the first room. */
export const gapsOf = keptFor((level: LevelRooms): readonly Gap[] => {
  const { placed } = level;
  const boxes = placed.map(({ ground }) => boundsOf(ground));
  const byWest = boxes.map((_, at) => at).sort((a, b) => boxes[a]!.west - boxes[b]!.west || a - b);
  const found: { readonly first: number; readonly second: number; readonly gap: Gap }[] = [];
  byWest.forEach((one, nth) => {
    const near = byWest.slice(nth + 1).filter((other) => boxes[other]!.west <= boxes[one]!.east + REACH);
    for (const other of near) {
      if (boxes[other]!.south > boxes[one]!.north + REACH || boxes[one]!.south > boxes[other]!.north + REACH) continue;
      const [first, second] = one < other ? [one, other] : [other, one];
      const [room, beyond] = [placed[first]!, placed[second]!];
      for (const facing of facings(room.ground, beyond.ground, REACH)) {
        if (facing.to - facing.from < CORNER || isFilled(stripOf(facing), boxes, first, second)) continue;
        found.push({
          first,
          second,
          gap: { room, other: beyond, looks: facing.looks, width: facing.gap, length: facing.to - facing.from },
        });
      }
      for (const { looks, gap, length, middle } of slantedFacings(room.ground, beyond.ground, REACH))
        if (length >= CORNER && !placed.some((each, at) => at !== first && at !== second && regionContains(each.ground, middle)))
          found.push({ first, second, gap: { room, other: beyond, looks, width: gap, length, slanted: true } });
    }
  });
  placed.forEach((room, first) => {
    for (const facing of towardsOutside(room, level))
      if (!isFilled(stripOf(facing), boxes, first, first))
        found.push({
          first,
          second: placed.length,
          gap: { room, other: undefined, looks: facing.looks, width: facing.gap, length: facing.to - facing.from },
        });
    for (const gap of slantsTowardsOutside(room, level)) found.push({ first, second: placed.length, gap });
  });
  return found.sort((a, b) => a.first - b.first || a.second - b.second).map(({ gap }) => gap);
});

/** The sides of a room against the inner face of the outside wall; none where nobody says how thick that wall is. */
function towardsOutside({ ground }: PlacedRoom, { inside, wall }: LevelRooms): readonly Facing[] {
  if (inside === undefined || wall === undefined) return [];
  const limits: readonly Side[] = sidesOf(inside);
  return sidesOf(ground).flatMap(({ looks, at, from, to }) =>
    limits.flatMap((limit) => {
      if (limit.looks !== looks) return [];
      const gap = looks === 'east' || looks === 'north' ? limit.at - at : at - limit.at;
      const [start, end] = [Math.max(from, limit.from), Math.min(to, limit.to)];
      return gap >= 0 && gap <= REACH && end - start >= CORNER ? [{ looks, at, from: start, to: end, gap }] : [];
    }),
  );
}

/** The same for slanted sides: against those of the wall that look the same way. */
function slantsTowardsOutside(room: PlacedRoom, { inside, wall }: LevelRooms): readonly Gap[] {
  const { ground } = room;
  if (inside === undefined || wall === undefined || isRectangle(inside) || isRectangle(ground)) return [];
  const limits = sidesLooking(inside).filter(isSlantedSide);
  return sidesLooking(ground)
    .filter(isSlantedSide)
    .flatMap((side) =>
      limits.flatMap((limit): readonly Gap[] => {
        const found = limit.looks === side.looks ? alongEachOther(side, limit, REACH) : undefined;
        if (found === undefined || found.length < CORNER) return [];
        return [{ room, other: undefined, looks: side.looks, width: found.gap, length: found.length, slanted: true }];
      }),
    );
}

function stripOf({ looks, at, from, to, gap }: Facing): Rectangle {
  const [near, far] = looks === 'east' || looks === 'north' ? [at, at + gap] : [at - gap, at];
  return looks === 'east' || looks === 'west'
    ? { west: near, east: far, south: from, north: to }
    : { west: from, east: to, south: near, north: far };
}

/** Whether a third room lies in the strip. */
function isFilled(strip: Rectangle, boxes: readonly Rectangle[], first: number, second: number): boolean {
  if (strip.west === strip.east || strip.south === strip.north) return false;
  return boxes.some(
    (box, at) =>
      at !== first &&
      at !== second &&
      box.west < strip.east &&
      box.east > strip.west &&
      box.south < strip.north &&
      box.north > strip.south,
  );
}
