// Which rooms lie beside which: through doors, from whichever side they are declared, and where no wall stands between them.
import { NONE } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { Opening, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { keptFor } from '../kept.ts';
import { roomsOn } from '../level-rooms.ts';

export interface DoorBetween {
  readonly other: Slot | undefined;
  readonly type: Opening;
  readonly count: number;
}

export interface CasedOpening {
  readonly other: Slot;
  readonly width: Quantity<'length'>;
  readonly height: Quantity<'length'>;
}

export interface Neighbours {
  /** The doors of a room. */
  readonly doors: (room: Room) => readonly DoorBetween[];
  /** Its openings without a door. */
  readonly cased: (room: Room) => readonly CasedOpening[];
  /** Rooms without a wall between them, the room itself first. */
  readonly open: (room: Room) => readonly Room[];
  readonly roomAt: (slot: Slot) => Room | undefined;
}

export function neighboursOf(model: Model): Neighbours {
  return found(model.list('room'));
}

const found = keptFor((rooms: readonly Room[]): Neighbours => {
  const bySlot = new Map<Slot, Room>();
  // Doors that other rooms declare; and rooms with an open side, which are few.
  const told = new Map<Slot, DoorBetween[]>();
  const cased = new Map<Slot, CasedOpening[]>();
  const openSides = new Map<Slot, Set<Slot>>();
  for (const room of rooms) {
    bySlot.set(room.slot, room);
    for (const { to, back } of doorsTold(room).toOthers) addTo(told, to, back);
    for (const line of room.given.cased)
      for (const { value } of line.value) {
        const { left: width, right: height } = value.size;
        addTo(cased, room.slot, { other: value.to, width, height });
        if (value.to !== room.slot) addTo(cased, value.to, { other: room.slot, width, height });
      }
    for (const { value } of room.given['open to']?.value ?? NONE) {
      join(room.slot, value, openSides);
      join(value, room.slot, openSides);
    }
  }
  const opened = new Map<Slot, readonly Room[]>();
  return {
    doors: (room) => {
      const { own } = doorsTold(room);
      const others = told.get(room.slot);
      return others === undefined ? own : [...own, ...others];
    },
    cased: (room) => cased.get(room.slot) ?? NONE,
    open: (room) => {
      if (!openSides.has(room.slot)) return alone(room);
      let known = opened.get(room.slot);
      if (known === undefined) opened.set(room.slot, (known = reached(room.slot, openSides, bySlot)));
      return known;
    },
    roomAt: (slot) => bySlot.get(slot),
  };
});

function join(from: Slot, to: Slot, sides: Map<Slot, Set<Slot>>): void {
  const known = sides.get(from);
  if (known === undefined) sides.set(from, new Set([to]));
  else known.add(to);
}

const alone = keptFor((room: Room): readonly Room[] => [room]);

/** The doors that a room declares, and each as the room on its other side has it. */
const doorsTold = keptFor(({ slot, given }: Room) => {
  const own: DoorBetween[] = [];
  const toOthers: { readonly to: Slot; readonly back: DoorBetween }[] = [];
  for (const line of given.doors)
    for (const { value } of line.value) {
      const { type, count = 1, to } = value;
      own.push({ other: to, type, count });
      if (to !== undefined && to !== slot) toOthers.push({ to, back: { other: slot, type, count } });
    }
  return { own, toOthers };
});

/** Everything that can be reached from a room through open sides, in the order in which it is reached. */
function reached(from: Slot, sides: ReadonlyMap<Slot, ReadonlySet<Slot>>, bySlot: ReadonlyMap<Slot, Room>): readonly Room[] {
  const seen = new Set([from]);
  for (const slot of seen) for (const next of sides.get(slot) ?? NONE) seen.add(next);
  return [...seen].flatMap((slot) => bySlot.get(slot) ?? []);
}

/**
 * Whom facts of a room may look at: those open to it, and beyond each of its doors and openings the room there with those
 * open to that. The wall that an opening stands in is told by all rooms of the storey together.
 */
export function roomsBeside(room: Room, model: Model): readonly Room[] {
  const { doors, cased, open, roomAt } = neighboursOf(model);
  const beside = [...open(room)];
  const openings = cased(room);
  for (const list of [doors(room), openings])
    for (const { other } of list) {
      const next = other === undefined ? undefined : roomAt(other);
      if (next !== undefined) for (const each of open(next)) beside.push(each);
    }
  const level = room.given.on?.value;
  if (openings.length > 0 && level !== undefined) for (const each of roomsOn(level, model)) beside.push(each);
  return beside;
}
