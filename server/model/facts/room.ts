// Facts of a room: floor area, perimeter, height, wall and window area, volume; under a sloped ceiling too.
import { constant, form, measure, type Quantity, quantityIn, total } from '#kit/quantity';
import { type WithBays, withBays } from '../bays.ts';
import type { Facts } from '../facts.ts';
import { type FloorShape, floorShape } from '../floor-shape.ts';
import type { Room } from '../model.ts';
import { type Sloped, slopedRoom } from './sloped.ts';

const shapes = new WeakMap<Room, { readonly whole: WithBays | undefined }>();

function wholeOf(room: Room): WithBays | undefined {
  let kept = shapes.get(room);
  if (kept === undefined) {
    const given = room.given.size?.value ?? room.given.outline?.value;
    const body = given === undefined ? undefined : floorShape(given);
    shapes.set(room, (kept = { whole: body === undefined ? undefined : withBays(body, room.given.bay) }));
  }
  return kept.whole;
}

export function roomShape(room: Room): FloorShape | undefined {
  return wholeOf(room)?.shape;
}

/** The numbers of its bays that fit on no wall. */
export function roomBayMisfits(room: Room): readonly number[] {
  return wholeOf(room)?.misfits ?? [];
}

const wallArea = form('wall area', 'perimeter × height', (perimeter = 0, height = 0) => perimeter * height);
const volume = form('volume', 'floor area × height', (area = 0, height = 0) => area * height);
const windowArea = form('window area', 'count × width × height', (count = 0, width = 0, height = 0) => count * width * height);

/** The room's own height, or else that of its level. */
export function roomHeight(room: Room): Quantity<'length'> | undefined {
  return room.given.height?.value ?? room.given.on?.value.given.height?.value;
}

const slopes = new WeakMap<Room, { readonly sloped: Sloped | undefined }>();

/** What its sloped ceiling makes of it. */
export function roomSlope(room: Room): Sloped | undefined {
  let kept = slopes.get(room);
  if (kept === undefined) {
    const shape = roomShape(room);
    slopes.set(room, (kept = { sloped: shape === undefined ? undefined : slopedRoom(room, shape) }));
  }
  return kept.sloped;
}

export function roomFacts(room: Room): Facts {
  const shape = roomShape(room);
  const height = roomHeight(room);
  const sloped = roomSlope(room);
  const windows = room.given.windows
    .flatMap((line) => line.value)
    .flatMap(({ value }) => {
      const size = value.type.takes;
      return size === undefined
        ? []
        : [measure('area', windowArea, constant('count', value.count ?? 1, 'number'), size.left, size.right)];
    });
  const air =
    sloped?.volume ?? (shape === undefined || height === undefined ? undefined : measure('volume', volume, shape.area, height));
  return {
    'floor-area': shape?.area,
    perimeter: shape?.perimeter,
    width: shape?.width,
    depth: shape?.depth,
    height,
    'wall-area':
      sloped?.walls ??
      (shape === undefined || height === undefined ? undefined : measure('area', wallArea, shape.perimeter, height)),
    // Air is spoken of in cubic feet, not in the yards of concrete; a metric plan shows its own.
    volume: air === undefined ? undefined : quantityIn(air, 'cf'),
    'window-area': total('window area', 'area', windows),
  };
}
