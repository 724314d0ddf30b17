// Rooms and walls of a level against its floor: together they must fill it, and no more than fill it.
import { finding, findingSort } from '#kit/finding';
import { area as outlineArea } from '#kit/shapes/outline';
import { isRectangle, type Region } from '#kit/shapes/region';
import { roomShape } from '#model/facts/room';
import { wallThickness } from '#takeoff/measure/layers';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { byLevel, type LevelRooms, readsRooms } from '../../level-rooms.ts';
import { gapsOf } from '../../room-gaps.ts';
import { areaText } from '../../show.ts';

export const tooMuch = findingSort<[level: string, rooms: string, walls: string | undefined, inside: string, over: string]>({
  code: 'rooms/area-balance',
  severity: 'error',
  say: (level, rooms, walls, inside, over) =>
    `The rooms of "${level}" have ${rooms}${walls === undefined ? '' : ` and its partitions stand on ${walls}`}, but inside its outside walls there are ${inside}: ${over} too much. Some size is wrong, and every floor, ceiling and wall is counted too large. Check the sizes against the drawing.`,
});

export const unclaimed = findingSort<[level: string, rooms: string, walls: string | undefined, inside: string, left: string]>({
  code: 'rooms/area-balance',
  severity: 'note',
  say: (level, rooms, walls, inside, left) =>
    `The rooms of "${level}" have ${rooms}${walls === undefined ? '' : `, its partitions stand on ${walls}`}, and inside its outside walls there are ${inside}: ${left} belong to no room, so nothing there gets a floor, a ceiling or paint. Add the room that is missing, or check the sizes.`,
});

/** Where the partitions are not measured: they usually stand on a twentieth to a tenth of a floor (common practice). */
const UNMEASURED_WALLS = 0.15;
/** Where they are: ends, corners and chases that the lengths leave out. */
const MEASURED_WALLS = 0.04;

export const areaBalance: Check = {
  code: 'rooms/area-balance',
  about:
    'The areas of a level’s rooms and the ground its walls stand on must add up to its floor. More cannot be built; much less means that a room is missing from the plan.',
  wrong: `level main
  footprint 20' x 24'
room living on main
  size 20' x 14'
room bed on main
  size 20' x 12'
`,
  right: `level main
  footprint 20' x 24'
room living on main
  size 20' x 12'
room bed on main
  size 20' x 11'-8 1/2"
`,
  reads: readsRooms,
  run: byLevel((level, model) => {
    const balance = balanceOf(level);
    if (balance === undefined) return [];
    const { rooms, walls, inside, complete, measured } = balance;
    const text = (value: number): string => areaText(value, model);
    const wallsText = walls === 0 ? undefined : text(walls);
    const left = inside - rooms - walls;
    const place = (level.level.given.footprint ?? level.level).place;
    const { name } = level.level;
    if (left < 0) {
      // Placed rooms that are too large overlap or reach outside, which other checks say better.
      if (level.placed.length === level.rooms.length) return [];
      return [finding(tooMuch, place, name, text(rooms), wallsText, text(inside), text(-left))];
    }
    if (!complete || left <= inside * (measured ? MEASURED_WALLS : UNMEASURED_WALLS)) return [];
    return [finding(unclaimed, place, name, text(rooms), wallsText, text(inside), text(left))];
  }),
};

interface Balance {
  readonly rooms: number;
  readonly walls: number;
  readonly inside: number;
  /** Every room has a size. */
  readonly complete: boolean;
  /** The length of the partitions is known, or can be seen between the rooms. */
  readonly measured: boolean;
}

const balanceOf = keptFor((level: LevelRooms): Balance | undefined => {
  if (level.inside === undefined) return undefined;
  const shapes = level.rooms.map(roomShape);
  const rooms = shapes.reduce((sum, shape) => sum + (shape?.area.value ?? 0), 0);
  const complete = shapes.every((shape) => shape !== undefined);
  const inside = areaOf(level.inside);
  const allPlaced = level.placed.length === level.rooms.length;
  const partitions = level.level.given.partitions;
  const thickness = partitions === undefined ? undefined : wallThickness(partitions.value)?.value;
  const long = partitions?.deeper.long?.value.value;
  const walls = allPlaced
    ? gapsOf(level).reduce((sum, { other, width, length }) => sum + (other === undefined ? 0 : width * length), 0)
    : (long ?? 0) * (thickness ?? 0);
  return { rooms, walls, inside, complete, measured: allPlaced || long !== undefined };
});

function areaOf(region: Region): number {
  return isRectangle(region) ? (region.east - region.west) * (region.north - region.south) : outlineArea(region);
}
