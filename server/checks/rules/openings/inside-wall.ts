// Windows and outside doors in a wall of a placed room that is no outside wall.
import { FOOT } from '#kit/dimension';
import { finding, findingSort } from '#kit/finding';
import { sidesOf } from '#kit/shapes/facing';
import { alongEachOther, sidesLooking } from '#kit/shapes/headings';
import { isRectangle } from '#kit/shapes/region';
import type { Room } from '#model/model';
import type { Check } from '../../check.ts';
import { byLevel, type LevelRooms, readsRooms } from '../../level-rooms.ts';
import { roomOpenings, type SideWord } from '../../room-openings.ts';

export const notOutside = findingSort<[name: string, side: string, room: string]>({
  code: 'openings/inside-wall',
  severity: 'error',
  say: (name, side, room) =>
    `"${name}" stands in the ${side} wall of "${room}", and that is an inside wall: it gives no light and leads nowhere outside. Name the side that looks out, or check where the room is placed.`,
});

export const insideWall: Check = {
  code: 'openings/inside-wall',
  about: 'A window, or an outside door that names no other room, must stand in a wall that looks out.',
  wrong: `level main
  footprint 20' x 24'
window w-3050 3' x 5'
room bed on main at 0', 0'
  size 10' x 10'
  windows 1 w-3050 in north
`,
  right: `level main
  footprint 20' x 24'
window w-3050 3' x 5'
room bed on main at 0', 0'
  size 10' x 10'
  windows 1 w-3050 in south
`,
  reads: readsRooms,
  run: byLevel((level) =>
    level.placed.flatMap(({ room }) =>
      roomOpenings(room).flatMap(({ name, side, to, exterior, place }) =>
        side === undefined || to !== undefined || !exterior || looksOut(room, side, level)
          ? []
          : [finding(notOutside, place, name, side, room.name)],
      ),
    ),
  ),
};

/** Whether some wall of that side lies within a foot of the outside wall's inner face. */
function looksOut(room: Room, side: SideWord, level: LevelRooms): boolean {
  const ground = level.byRoom.get(room)?.ground;
  if (ground === undefined || level.inside === undefined) return true;
  if (isSlantedWay(side)) {
    if (isRectangle(ground) || isRectangle(level.inside)) return false;
    const limits = sidesLooking(level.inside);
    return sidesLooking(ground).some(
      (own) =>
        own.looks === side && limits.some((limit) => limit.looks === side && alongEachOther(own, limit, FOOT) !== undefined),
    );
  }
  return sidesOf(ground).some(
    (own) =>
      own.looks === side &&
      sidesOf(level.inside!).some(
        (limit) =>
          limit.looks === side &&
          Math.abs(limit.at - own.at) <= FOOT &&
          Math.min(own.to, limit.to) > Math.max(own.from, limit.from),
      ),
  );
}

function isSlantedWay(side: SideWord): boolean {
  return side !== 'north' && side !== 'east' && side !== 'south' && side !== 'west';
}
