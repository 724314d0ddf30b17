// Whether a room says the same as before as far as the take-off reads it: its own lines, and of its level only the height
// and the faces that walls, inside walls and ceiling turn to it. A change of sheathing in every wall then leaves every room
// as it was.
import { alike } from '#kit/differing';
import { type Slot, samePlace } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import { sameGiven } from '#model/equal';
import type { Assembly, Goods, Level, Room } from '#model/model';
import { itemText } from './goods.ts';
import { facesOf } from './measure/layers.ts';
import { sameQuantity } from './same.ts';

/** The older room where it says the same. */
export function roomAsBefore(room: Room, before: WeakMap<Slot, Room>): Room {
  const old = before.get(room.slot);
  if (old === room) return room;
  if (old !== undefined && saysTheSame(old, room)) return old;
  before.set(room.slot, room);
  return room;
}

function saysTheSame(a: Room, b: Room): boolean {
  if (a.label !== b.label || !samePlace(a.place, b.place)) return false;
  const words = Object.keys(b.given) as (keyof Room['given'])[];
  if (words.length !== Object.keys(a.given).length) return false;
  return (
    words.every((word) => word === 'on' || sameGiven(a.given[word], b.given[word])) &&
    sameLevel(a.given.on?.value, b.given.on?.value)
  );
}

function sameLevel(a: Level | undefined, b: Level | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined || a.slot !== b.slot) return false;
  return (
    sameOptional(a.given.height?.value, b.given.height?.value) &&
    sameFaces(a.given.walls?.value, b.given.walls?.value) &&
    sameFaces(a.given.partitions?.value, b.given.partitions?.value) &&
    sameFaces(a.given.ceiling?.value, b.given.ceiling?.value)
  );
}

function sameOptional(a: Quantity | undefined, b: Quantity | undefined): boolean {
  return a === undefined || b === undefined ? a === b : sameQuantity(a, b);
}

function sameFaces(a: Assembly | undefined, b: Assembly | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined) return false;
  return alike(facesOf(a), facesOf(b), sameGoods);
}

function sameGoods(a: Goods, b: Goods): boolean {
  return a.of === b.of && itemText(a) === itemText(b) && samePlace(a.place, b.place);
}
