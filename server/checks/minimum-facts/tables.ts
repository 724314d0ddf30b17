// The shape of a table of facts, and what several of them ask: fixtures and devices by what they serve as, and which rooms
// lie beside which.
import type { Dimension } from '#kit/dimension';
import type { Slot } from '#kit/place';
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import type { Goods, Opening, Room } from '#model/model';
import type { Model } from '#model/resolve';

export interface FactTable<E> {
  /** The property whose line tells a fact, where that is not its own word. */
  readonly lines?: { readonly [fact: string]: string };
  readonly own?: { readonly [fact: string]: (thing: E, model: Model) => Quantity | undefined };
  readonly around?: { readonly [fact: string]: (thing: E, model: Model) => Quantity | undefined };
}

type Listed = Room['given']['fixtures'][number]['value'][number]['value'];

/** What a room lists under fixtures or devices that serves as something. */
export function serving(lines: Room['given']['fixtures'], service: string): readonly Listed[] {
  return lines.flatMap((line) => line.value.flatMap(({ value }) => (servesAs(value.type, service) ? [value] : [])));
}

function servesAs({ of }: Goods, service: string): boolean {
  return of?.kind === 'fixture' && (of.given['serves as']?.value.some(({ value }) => value === service) ?? false);
}

/** How many of them. */
export function countOf(listed: readonly Listed[]): number {
  return listed.reduce((sum, { count }) => sum + (typeof count === 'number' ? count : 1), 0);
}

/** The ratings of one dimension behind a fixture: 80 cfm, 200 A. */
export function ratingOf({ ratings }: Listed, dimension: Dimension): number | undefined {
  for (const { value } of ratings)
    if ('kind' in value && value.kind === 'quantity' && value.dimension === dimension) return value.value;
  return undefined;
}

export function smallest<D extends Dimension>(values: readonly Quantity<D>[]): Quantity<D> | undefined {
  return values.reduce<Quantity<D> | undefined>(
    (least, each) => (least === undefined || each.value < least.value ? each : least),
    undefined,
  );
}

export function greatest<D extends Dimension>(values: readonly Quantity<D>[]): Quantity<D> | undefined {
  return values.reduce<Quantity<D> | undefined>(
    (most, each) => (most === undefined || each.value > most.value ? each : most),
    undefined,
  );
}

export function number(label: string, value: number): Quantity<'number'> {
  return constant(label, value, 'number');
}

const ratio = form('share', 'part ÷ whole', (part = 0, whole = 1) => part / whole);
/** One area over another. */
export function shareOf(part: Quantity, whole: Quantity): Quantity<'number'> | undefined {
  return whole.value > 0 ? measure('number', ratio, part, whole) : undefined;
}

export function areas(label: string, list: readonly Quantity<'area'>[]): Quantity<'area'> {
  return total(label, 'area', list);
}

// ---- rooms beside rooms ----

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
  /** Doors of a room, from whichever side they are declared. */
  readonly doors: ReadonlyMap<Slot, readonly DoorBetween[]>;
  /** Openings without a door, from whichever side they are declared. */
  readonly cased: ReadonlyMap<Slot, readonly CasedOpening[]>;
  /** Rooms without a wall between them, the room itself among them. */
  readonly open: ReadonlyMap<Slot, readonly Room[]>;
  readonly bySlot: ReadonlyMap<Slot, Room>;
}

const kept = new WeakMap<readonly Room[], Neighbours>();

export function neighboursOf(model: Model): Neighbours {
  const rooms = model.list('room');
  let known = kept.get(rooms);
  if (known === undefined) kept.set(rooms, (known = found(rooms)));
  return known;
}

function found(rooms: readonly Room[]): Neighbours {
  const bySlot = new Map(rooms.map((room) => [room.slot, room]));
  const doors = new Map<Slot, DoorBetween[]>(rooms.map(({ slot }) => [slot, []]));
  const cased = new Map<Slot, CasedOpening[]>(rooms.map(({ slot }) => [slot, []]));
  const beside = new Map<Slot, Set<Slot>>(rooms.map(({ slot }) => [slot, new Set([slot])]));
  for (const { slot, given } of rooms) {
    for (const line of given.doors)
      for (const { value } of line.value) {
        const { type, count = 1, to } = value;
        doors.get(slot)!.push({ other: to, type, count });
        if (to !== undefined && to !== slot) doors.get(to)?.push({ other: slot, type, count });
      }
    for (const line of given.cased)
      for (const { value } of line.value) {
        const { left: width, right: height } = value.size;
        cased.get(slot)!.push({ other: value.to, width, height });
        if (value.to !== slot) cased.get(value.to)?.push({ other: slot, width, height });
      }
    for (const { value } of given['open to']?.value ?? []) {
      beside.get(slot)!.add(value);
      beside.get(value)?.add(slot);
    }
  }
  return { doors, cased, open: new Map(rooms.map(({ slot }) => [slot, reached(slot, beside, bySlot)])), bySlot };
}

/** Everything that can be reached from a room through open sides, in the order in which it is reached. */
function reached(from: Slot, beside: ReadonlyMap<Slot, ReadonlySet<Slot>>, bySlot: ReadonlyMap<Slot, Room>): readonly Room[] {
  const seen = new Set([from]);
  for (const slot of seen) for (const next of beside.get(slot) ?? []) seen.add(next);
  return [...seen].flatMap((slot) => bySlot.get(slot) ?? []);
}
