// Placed rooms of one level that lie on one another.
import { finding, findingSort } from '#kit/finding';
import { boundsOf, isRectangle, sharedArea } from '#kit/shapes/region';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { byLevel, type LevelRooms, type PlacedRoom, readsRooms } from '../../level-rooms.ts';
import { areaText } from '../../show.ts';

export const overlapping = findingSort<[room: string, other: string, area: string]>({
  code: 'rooms/overlap',
  severity: 'error',
  say: (room, other, area) =>
    `"${room}" and "${other}" share ${area} of floor: both cannot be built, and the floor is counted twice. Move or shrink one of them.`,
});

interface Pair {
  readonly room: PlacedRoom;
  readonly other: PlacedRoom;
  readonly area: number;
}

export const overlap: Check = {
  code: 'rooms/overlap',
  about: 'Two rooms of a level must not lie on one another.',
  wrong: `level main
  footprint 20' x 24'
room bed on main at 0', 0'
  size 10' x 10'
room bath on main at 9'-6", 0'
  size 6' x 8'
`,
  right: `level main
  footprint 20' x 24'
room bed on main at 0', 0'
  size 10' x 10'
room bath on main at 10'-3 1/2", 0'
  size 6' x 8'
`,
  reads: readsRooms,
  run: byLevel((level, model) =>
    pairs(level).map(({ room, other, area }) => {
      const { given, place, name } = room.room;
      return {
        ...finding(overlapping, (given.at ?? { place }).place, name, other.room.name, areaText(area, model)),
        related: [{ place: other.room.place, note: `"${other.room.name}"` }],
      };
    }),
  ),
};

/** One sweep from west to east, so that only neighbours are compared; the finding stands at the room further down the plan. */
const pairs = keptFor(({ placed }: LevelRooms): readonly Pair[] => {
  const boxes = placed.map(({ ground }) => boundsOf(ground));
  const byWest = boxes.map((_, at) => at).sort((a, b) => boxes[a]!.west - boxes[b]!.west || a - b);
  const found: (Pair & { readonly at: number; readonly under: number })[] = [];
  byWest.forEach((one, nth) => {
    const box = boxes[one]!;
    for (let next = nth + 1; next < byWest.length; next++) {
      const two = byWest[next]!;
      const other = boxes[two]!;
      if (other.west >= box.east) break;
      if (other.south >= box.north || box.south >= other.north) continue;
      const [at, under] = one > two ? [one, two] : [two, one];
      const [room, below] = [placed[at]!, placed[under]!];
      const area =
        isRectangle(room.ground) && isRectangle(below.ground)
          ? (Math.min(box.east, other.east) - other.west) * (Math.min(box.north, other.north) - Math.max(box.south, other.south))
          : sharedArea([room.ground], [below.ground]);
      if (area > 0) found.push({ room, other: below, area, at, under });
    }
  });
  return found.sort((a, b) => a.at - b.at || a.under - b.under);
});
