// What a room needs to know of others before it can be measured: finishes taken from another room, doors that lead into it,
// stretches that are open, inside walls of another make.
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { Point } from '#kit/shapes/outline';
import { roomShape } from '#model/facts/room';
import type { Goods, Roof, Room } from '#model/model';
import { vaultPitch } from './ceiling.ts';
import type { Beside, Face, Layout } from './layout.ts';
import { type Held, openingsOf } from './openings.ts';
import { sidesOfFloor, spotOf } from './wall-parts.ts';

export interface RoomContext {
  /** The room itself, then those it takes finishes from. */
  readonly finishes: readonly Room[];
  /** Openings of other rooms that lead here. */
  readonly incoming: readonly Held[];
  /** The room of each of them. */
  readonly incomingFrom: readonly Slot[];
  /** Its own openings that an earlier room has told already. */
  readonly told: readonly Held[];
  /** What the rooms are for that its own openings lead to, in their order. */
  readonly behind: readonly (string | undefined)[];
  readonly open: readonly Quantity<'length'>[];
  readonly faces: readonly Face[];
  /** The rooms that lie along its sides. */
  readonly beside: readonly Beside[];
  /** Of the roof that its ceiling goes up with. */
  readonly pitch: Quantity<'slope'> | undefined;
  /** What trims the openings of its level. */
  readonly casing: Goods | undefined;
}

/** The rooms of a plan, and which openings of others lead to each. */
export interface Rooms {
  readonly list: readonly Room[];
  readonly order: ReadonlyMap<Slot, number>;
  readonly leading: ReadonlyMap<Slot, readonly Leading[]>;
}
export interface Leading {
  readonly from: Room;
  readonly opening: Held;
}

export function roomsOf(list: readonly Room[]): Rooms {
  const leading = new Map<Slot, Leading[]>();
  for (const from of list)
    for (const opening of openingsOf(from)) {
      if (opening.to === undefined) continue;
      addTo(leading, opening.to, { from, opening });
    }
  return { list, order: new Map(list.map((room, index) => [room.slot, index])), leading };
}

export function roomContext(
  room: Room,
  rooms: Rooms,
  layout: Layout,
  vault: Roof | undefined,
  casing: Goods | undefined,
): RoomContext {
  const incoming = (rooms.leading.get(room.slot) ?? []).filter(({ from, opening }) => !tells(room, from.slot, opening));
  return {
    finishes: finishChain(room, rooms),
    incoming: incoming.map(({ opening }) => opening),
    incomingFrom: incoming.map(({ from }) => from.slot),
    told: openingsOf(room).filter((opening) => isToldTwice(room, opening, rooms)),
    behind: openingsOf(room).map(({ to }) => useOf(to, rooms)),
    open: layout.open.get(room.slot) ?? [],
    faces: layout.faces.get(room.slot) ?? [],
    beside: layout.beside.get(room.slot) ?? [],
    pitch: vault === undefined ? undefined : vaultPitch(vault),
    casing,
  };
}

function useOf(slot: Slot | undefined, { list, order }: Rooms): string | undefined {
  const at = slot === undefined ? undefined : order.get(slot);
  return at === undefined ? undefined : list[at]!.given.use?.value;
}

/** Where the outside openings of a placed room stand on its level, in their order; undefined where nobody can tell. */
export function outsideSpots(room: Room, beside: readonly Beside[]): readonly (Point | undefined)[] {
  const outside = openingsOf(room).filter((opening) => opening.outside);
  const shape = room.given.at === undefined || outside.length === 0 ? undefined : roomShape(room);
  if (shape === undefined) return outside.map(() => undefined);
  const { east, north } = room.given.at!.value;
  const sides = sidesOfFloor(shape);
  return outside.map((held) => {
    const spot = spotOf({ held }, sides, beside);
    return spot === undefined ? undefined : { x: spot.x + east.value, y: spot.y + north.value };
  });
}

/** The openings that stand in inside walls, each door between two rooms once. */
export function insideOpenings(list: readonly Room[], rooms: Rooms): readonly { readonly room: Slot; readonly opening: Held }[] {
  return list.flatMap((room) =>
    openingsOf(room)
      .filter((opening) => !opening.outside && !isToldTwice(room, opening, rooms))
      .map((opening) => ({ room: room.slot, opening })),
  );
}

/** A door or cased opening to a room that an earlier room has told already, from its own side. */
function isToldTwice(room: Room, opening: Held, rooms: Rooms): boolean {
  const at = opening.to === undefined ? undefined : rooms.order.get(opening.to);
  if (at === undefined || at > rooms.order.get(room.slot)!) return false;
  return tells(rooms.list[at]!, room.slot, opening);
}

function tells(room: Room, to: Slot, opening: Held): boolean {
  return openingsOf(room).some((own) => own.to === to && own.type === opening.type);
}

/** `finish as`, followed; a ring of rooms ends where it closes. */
function finishChain(room: Room, rooms: Rooms): readonly Room[] {
  const chain = [room];
  for (;;) {
    const slot = chain[chain.length - 1]!.given.finish?.value;
    const at = slot === undefined ? undefined : rooms.order.get(slot);
    const next = at === undefined ? undefined : rooms.list[at];
    if (next === undefined || chain.includes(next)) return chain;
    chain.push(next);
  }
}
