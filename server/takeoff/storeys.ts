// A storey: a level with its rooms and inside walls, and the few rooms elsewhere that they have to do with. Storeys are
// measured apart, so that a plan of many houses is not looked through for a change in one.
import { alike, sameList } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { ElementOf, Level, Roof, Room } from '#model/model';
import type { Model } from '#model/resolve';
import type { Wall } from './measure/layout.ts';
import { openingsOf } from './measure/openings.ts';
import { roomAsBefore } from './same-room.ts';

export interface Storey {
  /** Undefined for rooms that stand on no level. */
  readonly level: Level | undefined;
  readonly panels: ElementOf<'panels'> | undefined;
  /** Whether it stands on a foundation wall or slab, with a sill between. */
  readonly sill: boolean;
  /** The roof over it, where its ceiling is the roof itself. */
  readonly vault: Roof | undefined;
  /** The level that it stands on, where it says so. */
  readonly below: Level | undefined;
  /** In plan order. */
  readonly rooms: readonly Room[];
  readonly walls: readonly Wall[];
  /** The rooms, and rooms elsewhere that a door or a finish ties to them, in plan order. */
  readonly known: readonly Room[];
}

export interface StoreysMemory {
  /** The lists that the storeys were made from, the rooms apart. */
  key: readonly unknown[];
  rooms: readonly Room[];
  list: readonly Storey[];
  /** Each room as the take-off knows it: the older object where it says the same. */
  readonly known: WeakMap<Slot, Room>;
}
export function storeysMemory(): StoreysMemory {
  return { key: [], rooms: [], list: [], known: new WeakMap() };
}

/** In the order of the levels; each storey is the same object while its level, rooms and walls are. */
export function storeysOf(model: Model, memory: StoreysMemory): readonly Storey[] {
  const rooms = model.list('room');
  const key = [model.list('level'), model.list('wall'), model.list('panels'), ...onSills(model), ...vaultsOf(model)];
  const sameRest = sameList(key, memory.key);
  if (sameRest && rooms === memory.rooms) return memory.list;
  memory.list = (sameRest ? withRooms(rooms, memory) : undefined) ?? anew(model, memory);
  memory.key = key;
  memory.rooms = rooms;
  return memory.list;
}

/** Some rooms say something else but stand where they stood and are tied to the same rooms: only their storeys change. */
function withRooms(rooms: readonly Room[], memory: StoreysMemory): readonly Storey[] | undefined {
  const before = memory.rooms;
  if (rooms.length !== before.length) return undefined;
  const changed = new Map<Room, Room>();
  for (let at = 0; at < rooms.length; at++) {
    const [old, room] = [before[at]!, rooms[at]!];
    if (old === room) continue;
    if (old.slot !== room.slot || levelOf(old) !== levelOf(room) || !sameTies(old, room)) return undefined;
    const known = memory.known.get(room.slot)!;
    const now = roomAsBefore(room, memory.known);
    if (now !== known) changed.set(known, now);
  }
  if (changed.size === 0) return memory.list;
  const replaced = (list: readonly Room[]): readonly Room[] =>
    list.some((room) => changed.has(room)) ? list.map((room) => changed.get(room) ?? room) : list;
  return memory.list.map((storey) => {
    const own = replaced(storey.rooms);
    const known = storey.known === storey.rooms ? own : replaced(storey.known);
    return own === storey.rooms && known === storey.known ? storey : { ...storey, rooms: own, known };
  });
}

function sameTies(a: Room, b: Room): boolean {
  if (a.given.finish?.value !== b.given.finish?.value) return false;
  return alike(openingsOf(a), openingsOf(b), (old, opening) => old.to === opening.to);
}

function anew(model: Model, memory: StoreysMemory): readonly Storey[] {
  const before = new Map(memory.list.map((storey) => [storey.level?.slot, storey]));
  return apart(model, memory).map((storey) => {
    const old = before.get(storey.level?.slot);
    return old !== undefined && isSame(old, storey) ? old : storey;
  });
}

function isSame(a: Storey, b: Storey): boolean {
  return (
    a.level === b.level &&
    a.panels === b.panels &&
    a.sill === b.sill &&
    a.vault === b.vault &&
    a.below === b.below &&
    sameList(a.rooms, b.rooms) &&
    sameList(a.walls, b.walls) &&
    sameList(a.known, b.known)
  );
}

function apart(model: Model, memory: StoreysMemory): readonly Storey[] {
  const rooms = model.list('room').map((room) => roomAsBefore(room, memory.known));
  const bySlot = new Map<Slot, Room>();
  const onLevel = new Map<Slot | undefined, Room[]>();
  for (const room of rooms) {
    bySlot.set(room.slot, room);
    addTo(onLevel, levelOf(room), room);
  }
  const abroad = new Map<Slot | undefined, Set<Room>>();
  for (const room of rooms) tie(room, bySlot, abroad);
  const walls = new Map<Slot | undefined, Wall[]>();
  for (const wall of model.list('wall')) {
    const levels = (wall.given.between?.value ?? []).flatMap(({ value }) => bySlot.get(value) ?? []).map(levelOf);
    for (const level of new Set(levels)) addTo(walls, level, wall);
  }
  const sills = onSills(model);
  const made = (level: Level | undefined): Storey => {
    const slot = level?.slot;
    const own = onLevel.get(slot) ?? [];
    const others = abroad.get(slot);
    const panels =
      level === undefined
        ? undefined
        : model.list('panels').find(({ given }) => given.for?.value.some(({ value }) => value === level));
    const known = others === undefined ? own : rooms.filter((room) => levelOf(room) === slot || others.has(room));
    const sill = slot !== undefined && sills.includes(slot);
    const vault = level === undefined ? undefined : vaultOver(level, model);
    const on = level?.given.on?.value;
    const below = on === undefined || on === slot ? undefined : model.list('level').find((other) => other.slot === on);
    return { level, panels, sill, vault, below, rooms: own, walls: walls.get(slot) ?? [], known };
  };
  const storeys = model.list('level').map(made);
  return onLevel.has(undefined) ? [...storeys, made(undefined)] : storeys;
}

/** The levels that stand on a foundation wall or slab. */
function onSills(model: Model): readonly Slot[] {
  return model.list('foundation').flatMap(({ given: { under, wall, slab } }) => {
    return under === undefined || (wall === undefined && slab === undefined) ? [] : [under.value.slot];
  });
}

/** An assembly for a roof as the ceiling of a level goes up with the roof over it. */
function vaultOver(level: Level, model: Model): Roof | undefined {
  if (level.given.ceiling?.value.given.for?.value !== 'roof') return undefined;
  return model.list('roof').find(({ given }) => given.over?.value === level);
}

function vaultsOf(model: Model): readonly Roof[] {
  return model.list('level').flatMap((level) => vaultOver(level, model) ?? []);
}

function levelOf(room: Room): Slot | undefined {
  return room.given.on?.value.slot;
}

/** Notes rooms on other levels that this one leads to or takes its finishes from, and this one with theirs. */
function tie(room: Room, bySlot: ReadonlyMap<Slot, Room>, abroad: Map<Slot | undefined, Set<Room>>): void {
  const level = levelOf(room);
  const note = (at: Slot | undefined, other: Room): void => {
    const known = abroad.get(at);
    if (known === undefined) abroad.set(at, new Set([other]));
    else known.add(other);
  };
  for (const { to } of openingsOf(room)) {
    const other = to === undefined ? undefined : bySlot.get(to);
    if (other === undefined || levelOf(other) === level) continue;
    note(level, other);
    note(levelOf(other), room);
  }
  // Finishes may be taken from room to room, over several levels.
  const seen = new Set<Room>([room]);
  for (let next = finishFrom(room, bySlot); next !== undefined && !seen.has(next); next = finishFrom(next, bySlot)) {
    seen.add(next);
    if (levelOf(next) !== level) note(level, next);
  }
}

function finishFrom(room: Room, bySlot: ReadonlyMap<Slot, Room>): Room | undefined {
  const slot = room.given.finish?.value;
  return slot === undefined ? undefined : bySlot.get(slot);
}
