// Windows, doors and cased openings of a room: how many of each, how large, whether they stand in an outside wall, and
// which other room a door leads to.
import type { Slot } from '#kit/place';
import { form, measure, type Quantity } from '#kit/quantity';
import type { Heading } from '#kit/shapes/walk';
import type { Opening, Room } from '#model/model';
import { counted } from './portion.ts';

export interface Held {
  /** Absent for a cased opening. */
  readonly type: Opening | undefined;
  readonly count: Quantity<'number'>;
  readonly width: Quantity<'length'> | undefined;
  readonly height: Quantity<'length'> | undefined;
  /** Of one. */
  readonly area: Quantity<'area'> | undefined;
  readonly outside: boolean;
  readonly side: Heading | undefined;
  /** Of each, from the left end of its wall seen from inside; empty where the plan does not say. */
  readonly at: readonly Quantity<'length'>[];
  readonly to: Slot | undefined;
  /** In the front of a closet inside the room. */
  readonly inCloset: boolean;
}

const oneArea = form('opening', 'width × height', (width = 0, height = 0) => width * height);
const kept = new WeakMap<Room, readonly Held[]>();

/** The openings that a room's own lines give, in their order. */
export function openingsOf(room: Room): readonly Held[] {
  let list = kept.get(room);
  if (list === undefined) {
    list = asBefore(held(room), before.get(room.slot));
    kept.set(room, list);
    before.set(room.slot, list);
  }
  return list;
}

/** An opening that says the same as before stays the same object, so that a wall is not measured anew for a changed floor. */
const before = new WeakMap<Slot, readonly Held[]>();
function asBefore(list: readonly Held[], old: readonly Held[] | undefined): readonly Held[] {
  return old === undefined
    ? list
    : list.map((each, index) => (old[index] !== undefined && saysTheSame(each, old[index]) ? old[index] : each));
}

function saysTheSame(a: Held, b: Held): boolean {
  return (
    a.type === b.type &&
    a.count.value === b.count.value &&
    a.width === b.width &&
    a.height === b.height &&
    a.outside === b.outside &&
    a.side === b.side &&
    a.to === b.to &&
    a.at.length === b.at.length &&
    a.at.every((place, nth) => place === b.at[nth]) &&
    a.inCloset === b.inCloset
  );
}

const NONE: Held['at'] = [];

function held(room: Room): readonly Held[] {
  const { windows, doors, cased, closet } = room.given;
  const units = [...windows, ...doors]
    .flatMap((line) => line.value)
    .map(({ value }) => unit(value.type, value.count, value.side, value.at?.map((each) => each.value) ?? NONE, value.to, false));
  const holes = cased.flatMap((line) => line.value).map(({ value }) => hole(value.size, value.to));
  const closetDoors = closet.flatMap(({ value }) =>
    value.door === undefined ? [] : [unit(value.door.type, value.door.count, undefined, NONE, undefined, true)],
  );
  return [...units, ...holes, ...closetDoors];
}

function unit(
  type: Opening,
  count: number | undefined,
  side: Held['side'],
  at: Held['at'],
  to: Slot | undefined,
  inCloset: boolean,
): Held {
  const size = type.takes;
  return {
    type,
    count: counted(type.name, count ?? 1),
    width: size?.left,
    height: size?.right,
    area: size === undefined ? undefined : measure('area', oneArea, size.left, size.right),
    // A window is in an outside wall unless it looks into another room; a door where its type says so.
    outside: !inCloset && to === undefined && (type.kind === 'window' || isOutside(type)),
    side,
    at,
    to,
    inCloset,
  };
}

function hole(size: { readonly left: Quantity<'length'>; readonly right: Quantity<'length'> }, to: Slot): Held {
  return {
    type: undefined,
    count: counted('cased opening', 1),
    width: size.left,
    height: size.right,
    area: measure('area', oneArea, size.left, size.right),
    outside: false,
    side: undefined,
    at: NONE,
    to,
    inCloset: false,
  };
}

export function isOutside(type: Opening): boolean {
  return type.kind === 'door' && type.given.exterior !== undefined;
}

const manyAreas = form('openings', 'count × area', (count = 0, area = 0) => count * area);
/** Each sort of opening with its whole area, and every single one by itself. */
export function openingAreas(list: readonly Held[]): {
  readonly all: readonly Quantity<'area'>[];
  readonly each: readonly Quantity<'area'>[];
} {
  const all: Quantity<'area'>[] = [];
  const each: Quantity<'area'>[] = [];
  for (const { count, area } of list) {
    if (area === undefined) continue;
    all.push(count.value === 1 ? area : measure('area', manyAreas, count, area));
    for (let index = 0; index < count.value && index < 1000; index++) each.push(area);
  }
  return { all, each };
}

const lessOpenings = form('net of openings', 'gross − openings', (gross = 0, ...openings) =>
  Math.max(
    0,
    openings.reduce((rest, area) => rest - area, gross),
  ),
);
/** Gross, net and single openings of a stretch of wall, as a portion takes them. */
export function netOf(gross: Quantity<'area'>, list: readonly Held[]): Net {
  const { all, each } = openingAreas(list);
  return all.length === 0
    ? { net: gross, gross, openings: [] }
    : { net: measure('area', lessOpenings, gross, ...all), gross, openings: each };
}
export interface Net {
  readonly net: Quantity<'area'>;
  readonly gross: Quantity<'area'>;
  readonly openings: readonly Quantity<'area'>[];
}
