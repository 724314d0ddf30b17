// The strip between two placed rooms, or between a room and the outside wall, that is the width of no wall there.
import { INCH } from '#kit/dimension';
import { finding, findingSort } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import { wallThickness } from '#takeoff/measure/layers';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { byLevel, type LevelRooms, readsRooms } from '../../level-rooms.ts';
import { type Gap, gapsOf } from '../../room-gaps.ts';
import { lengthText } from '../../show.ts';

export const wrongGap = findingSort<[room: string, other: string, gap: string, wall: string]>({
  code: 'rooms/gap',
  severity: 'warning',
  say: (room, other, gap, wall) =>
    `Between "${room}" and ${other} ${gap} are left, and the wall there is ${wall}. One of the sizes on the drawing is off. Move the room, or name the wall that stands there: "wall … between … of …".`,
});

export const offWall = findingSort<[room: string, side: string, gap: string]>({
  code: 'rooms/gap',
  severity: 'warning',
  say: (room, side, gap) =>
    `"${room}" stops ${gap} short of the framing of the ${side} wall, though rooms are measured to the framing. One of the sizes on the drawing is off. Check them, or accept with what fills the gap.`,
});

export const noWall = findingSort<[room: string, other: string, wall: string]>({
  code: 'rooms/gap',
  severity: 'warning',
  say: (room, other, wall) =>
    `"${room}" and ${other} touch, so there is no room for the ${wall} wall between them. Move one of them, or write "open to" where no wall stands.`,
});

export const gap: Check = {
  code: 'rooms/gap',
  about:
    'Rooms are clear from framing to framing, so the gap between two of them is the wall and must be as thick as its framing. The face of a room must lie on the outside wall’s framing, too.',
  wrong: `level main
  footprint 20' x 24'
  partitions int-2x4
room bed on main at 0', 0'
  size 10' x 10'
room bath on main at 10'-3 1/4", 0'
  size 6' x 8'
`,
  right: `level main
  footprint 20' x 24'
  partitions int-2x4
room bed on main at 0', 0'
  size 10' x 10'
room bath on main at 10'-3 1/2", 0'
  size 6' x 8'
`,
  reads: readsRooms,
  run: byLevel((level, model) => {
    const own = ownWalls(model.list('wall'));
    return gapsOf(level).flatMap((strip) => gapFinding(strip, level, own, model));
  }),
};

/** Slanted walls are drawn to an eighth of an inch at best. */
const SLACK = INCH / 8;

function gapFinding(strip: Gap, level: LevelRooms, own: ReadonlyMap<string, number | undefined>, model: Model) {
  const { room, other, looks } = strip;
  const like = (size: number): boolean => strip.slanted === true && Math.abs(strip.width - size) <= SLACK;
  const width = like(0) ? 0 : strip.width;
  const place = (room.room.given.at ?? room.room).place;
  if (other === undefined) {
    if (width === 0) return [];
    return [finding(offWall, place, room.room.name, looks, lengthText(width, model))];
  }
  const thickness = (own.size === 0 ? undefined : own.get(pairKey(room.room.slot, other.room.slot))) ?? partition(level);
  if (thickness === undefined || width === thickness || like(thickness)) return [];
  if (width === 0 && (isOpenTo(room.room, other.room.slot) || isOpenTo(other.room, room.room.slot))) return [];
  const later = (other.room.given.at ?? other.room).place;
  const made =
    width === 0
      ? finding(noWall, later, other.room.name, `"${room.room.name}"`, lengthText(thickness, model))
      : finding(wrongGap, later, other.room.name, `"${room.room.name}"`, lengthText(width, model), lengthText(thickness, model));
  return [{ ...made, related: [{ place: room.room.place, note: `"${room.room.name}"` }] }];
}

const partition = keptFor(({ level }: LevelRooms): number | undefined => {
  const assembly = level.given.partitions?.value;
  return assembly === undefined ? undefined : wallThickness(assembly)?.value;
});

/** Thickness of the walls that a plan names between two rooms. */
const ownWalls = keptFor((walls: readonly ElementOf<'wall'>[]): ReadonlyMap<string, number | undefined> => {
  const found = new Map<string, number | undefined>();
  for (const { given } of walls) {
    const [first, second] = given.between?.value ?? [];
    if (first === undefined || second === undefined || given.of === undefined) continue;
    found.set(pairKey(first.value, second.value), wallThickness(given.of.value)?.value);
  }
  return found;
});

function pairKey(a: Slot, b: Slot): string {
  return a.name < b.name ? `${a.name} ${b.name}` : `${b.name} ${a.name}`;
}

function isOpenTo(room: ElementOf<'room'>, other: Slot): boolean {
  return room.given['open to']?.value.some(({ value }) => value === other) ?? false;
}
