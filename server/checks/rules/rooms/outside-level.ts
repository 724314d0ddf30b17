// Rooms that do not fit into their level: placed ones that reach into or past its outside wall, others wider than it.
import { type Finding, finding, findingSort } from '#kit/finding';
import { boundsOf, differenceArea, isRectangle, type Rectangle } from '#kit/shapes/region';
import { roomShape } from '#model/facts/room';
import type { Room } from '#model/model';
import type { Model } from '#model/resolve';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { byLevel, type LevelRooms, readsRooms } from '../../level-rooms.ts';
import { areaText, lengthText } from '../../show.ts';

export const reachesOut = findingSort<[room: string, level: string, far: string, ends: string, walled: boolean]>({
  code: 'rooms/outside-level',
  severity: 'error',
  say: (room, level, far, ends, walled) =>
    `"${room}" reaches ${far}: ${walled ? `clear of the outside wall, "${level}" ends at ${ends}` : `"${level}" ends at ${ends}`}. It cannot be built as drawn. Make the room smaller, or move it.`,
});

export const partlyOut = findingSort<[room: string, level: string, area: string]>({
  code: 'rooms/outside-level',
  severity: 'error',
  say: (room, level, area) =>
    `${area} of "${room}" lie in or beyond the outside wall of "${level}". It cannot be built as drawn. Make the room smaller, or move it.`,
});

export const tooLarge = findingSort<[room: string, level: string, room: string, level: string, way: string]>({
  code: 'rooms/outside-level',
  severity: 'error',
  say: (room, level, own, clear, way) =>
    `"${room}" is ${own} from ${way}, and "${level}" has ${clear} clear. It cannot be built as drawn. Check which size comes first: east, then north.`,
});

interface Trouble {
  readonly room: Room;
  readonly kind: 'beyond' | 'partly' | 'wide' | 'deep';
  /** How far, or how much, in base units. */
  readonly by: number;
  readonly side?: keyof Rectangle;
}

export const outsideLevel: Check = {
  code: 'rooms/outside-level',
  about:
    'Every room must lie within its level, clear of the outside wall’s framing. A room that reaches past it cannot be built, and every quantity of it is too large.',
  wrong: `level main
  footprint 20' x 24'
room living on main at 0', 0'
  size 20'-6" x 10'
`,
  right: `level main
  footprint 20' x 24'
room living on main at 0', 0'
  size 20' x 10'
`,
  reads: readsRooms,
  run: byLevel((level, model) => troubles(level).map((trouble) => told(trouble, level, model))),
};

function told({ room, kind, by, side }: Trouble, { level, wall, inside }: LevelRooms, model: Model): Finding {
  const place = (room.given.size ?? room.given.outline ?? room).place;
  const limits = boundsOf(inside!);
  if (kind === 'partly') return finding(partlyOut, place, room.name, level.name, areaText(by, model));
  if (kind === 'beyond') {
    const far = `${lengthText(by, model)} too far ${side}`;
    return finding(reachesOut, place, room.name, level.name, far, lengthText(limits[side!], model), wall !== undefined);
  }
  const clear = kind === 'wide' ? limits.east - limits.west : limits.north - limits.south;
  const way = kind === 'wide' ? 'west to east' : 'south to north';
  return finding(tooLarge, place, room.name, level.name, lengthText(clear + by, model), lengthText(clear, model), way);
}

const troubles = keptFor(({ rooms, byRoom, inside }: LevelRooms): readonly Trouble[] => {
  if (inside === undefined) return [];
  const limits = boundsOf(inside);
  return rooms.flatMap((room): readonly Trouble[] => {
    const placed = byRoom.get(room);
    if (placed === undefined) {
      const shape = roomShape(room);
      if (shape === undefined) return [];
      const wide = shape.width.value - (limits.east - limits.west);
      const deep = shape.depth.value - (limits.north - limits.south);
      if (wide > 0) return [{ room, kind: 'wide', by: wide }];
      return deep > 0 ? [{ room, kind: 'deep', by: deep }] : [];
    }
    const own = boundsOf(placed.ground);
    const beyond = [
      { side: 'east', by: own.east - limits.east },
      { side: 'north', by: own.north - limits.north },
      { side: 'west', by: limits.west - own.west },
      { side: 'south', by: limits.south - own.south },
    ] as const;
    const worst = beyond.reduce((most, each) => (each.by > most.by ? each : most));
    if (worst.by > 0) return [{ room, kind: 'beyond', by: worst.by, side: worst.side }];
    if (isRectangle(inside)) return [];
    const area = differenceArea([placed.ground], [inside]);
    return area > 0 ? [{ room, kind: 'partly', by: area }] : [];
  });
});
