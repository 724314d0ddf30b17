// Which rooms lie beside which: through doors, from whichever side they are declared, and where no wall stands between them.
import { NONE } from '#kit/differing';
import type { Slot } from '#kit/place';
import type { Opening, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { keptFor } from '../kept.ts';

export interface DoorBetween {
  readonly other: Slot | undefined;
  readonly type: Opening;
  readonly count: number;
}

export interface Neighbours {
  /** The doors of a room. */
  readonly doors: (room: Room) => readonly DoorBetween[];
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
  const openSides = new Map<Slot, Set<Slot>>();
  for (const room of rooms) {
    bySlot.set(room.slot, room);
    for (const { to, back } of doorsTold(room).toOthers) {
      const known = told.get(to);
      if (known === undefined) told.set(to, [back]);
      else known.push(back);
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

/** Whom facts of a room may look at: those open to it, and beyond each of its doors the room there with those open to that. */
export function roomsBeside(room: Room, model: Model): readonly Room[] {
  const { doors, open, roomAt } = neighboursOf(model);
  const beside = [...open(room)];
  for (const { other } of doors(room)) {
    const next = other === undefined ? undefined : roomAt(other);
    if (next !== undefined) for (const each of open(next)) beside.push(each);
  }
  return beside;
}
