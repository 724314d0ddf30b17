// How a new order is made from two schedules: in a stretch of time the order is the one's, before and
// after it the other's (a crossover of two points in time: Valls, Ballestín & Quintanilla 2008; Debels & Vanhoucke
// 2005). Links hold in both, so they hold in the child.
import { type Dice, pick, roll } from './dice.ts';
import type { LinkRows } from './orders.ts';

export interface CrossingRoom {
  readonly part: Uint8Array;
  readonly place: Int32Array;
}

export function crossingRoom(count: number): CrossingRoom {
  return { part: new Uint8Array(count), place: new Int32Array(count) };
}

/**
 * `father` and `mother` are orders to place by; `times` are the father's times in that direction, `end` his end. The mother
 * gives what he does in a stretch of a fifth to a half of it; the child stays near the father, whose place it may take.
 */
export function cross(
  father: Int32Array,
  mother: Int32Array,
  times: Int32Array,
  end: number,
  dice: Dice,
  { part }: CrossingRoom,
  child: Int32Array,
): void {
  const count = child.length;
  const length = Math.floor(end * (SHORTEST + (LONGEST - SHORTEST) * roll(dice)));
  const from = pick(dice, end - length + 1);
  const to = from + length;
  // Time as the order comes to it: what leads stands with what it waits for.
  let now = 0;
  for (let place = 0; place < count; place++) {
    const each = father[place]!;
    now = Math.max(now, times[each]!);
    part[each] = now < from ? 0 : now < to ? 1 : 2;
  }
  let at = 0;
  for (let place = 0; place < count; place++) if (part[father[place]!] === 0) child[at++] = father[place]!;
  for (let place = 0; place < count; place++) if (part[mother[place]!] === 1) child[at++] = mother[place]!;
  for (let place = 0; place < count; place++) if (part[father[place]!] === 2) child[at++] = father[place]!;
}

const SHORTEST = 0.2;
const LONGEST = 0.5;

/** Moves one activity to another place between what it waits for and what waits for it. */
export function moveOne(links: LinkRows, dice: Dice, { place }: CrossingRoom, order: Int32Array): void {
  const { count, beforeStart, before, afterStart, after } = links;
  for (let at = 0; at < count; at++) place[order[at]!] = at;
  const each = pick(dice, count);
  let first = 0;
  let last = count - 1;
  for (let slot = beforeStart[each]!; slot < beforeStart[each + 1]!; slot++) first = Math.max(first, place[before[slot]!]! + 1);
  for (let slot = afterStart[each]!; slot < afterStart[each + 1]!; slot++) last = Math.min(last, place[after[slot]!]! - 1);
  const from = place[each]!;
  const to = first + pick(dice, last - first + 1);
  if (to < from) order.copyWithin(to + 1, to, from);
  else order.copyWithin(from, from + 1, to + 1);
  order[to] = each;
}
