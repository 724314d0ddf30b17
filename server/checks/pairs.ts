// Pairs of an earlier and a later step that no chain of links holds: by whole words of bits, so that thousands of pairs cost
// next to nothing, and only then by where they work. They stand while links and places of work are the same.
import { sameList } from '#kit/differing';
import type { Rule } from '#model/model';
import { waitsHold } from './chain-waits.ts';
import { type Meetings, meetingsOf, type Sort } from './meetings.ts';
import { type Order, reaches } from './order.ts';
import type { Wait } from './outcomes.ts';
import type { Scopes } from './scopes.ts';
import type { Side } from './sides.ts';

export interface Pair {
  readonly earlier: number;
  readonly later: number;
  /** A chain leads there, but the waits on it are too short. */
  readonly linked: boolean;
}

/** What a rule came to, and by what: the next look at the same rule begins with it. */
export interface Unheld {
  readonly order: Order;
  readonly scopes: Scopes;
  readonly meetings: Meetings;
  /** By later step. */
  readonly byLater: readonly (readonly Pair[])[];
  /** In the order of the later and then the earlier step. */
  readonly pairs: readonly Pair[];
}

/** A step that does both sides has its order in its own hands. */
export function unheld(
  rule: Rule,
  first: readonly Side[],
  then: readonly Side[],
  wait: Wait | undefined,
  scopes: Scopes,
  order: Order,
  before: Unheld | undefined,
): Unheld {
  const meetings = meetingsOf(sortOf(rule), first, then, scopes, before);
  if (before !== undefined && before.meetings === meetings && before.order === order)
    return before.scopes === scopes ? before : { ...before, scopes };
  const byLater = pairsOf(meetings, wait, order, before);
  return { order, scopes, meetings, byLater, pairs: byLater.flat() };
}

/** By which of a step's places a rule tells who meets whom. */
export function sortOf({ given: { scope } }: Rule): Sort {
  switch (scope?.value) {
    case 'same room':
      return 'rooms';
    case 'same element':
      return 'elements';
    default:
      return 'buildings';
  }
}

/** By later step. Under the same order, one that meets whom it met has the pairs that it had. */
function pairsOf(
  { both, earlier, later }: Meetings,
  wait: Wait | undefined,
  order: Order,
  before: Unheld | undefined,
): readonly (readonly Pair[])[] {
  const known = before?.order === order && sameList(before.meetings.earlier, earlier) ? before : undefined;
  let masks: ReadonlyMap<number, Mask> | undefined;
  return later.map((meeting, at) => {
    if (known !== undefined && known.meetings.later[at] === meeting) return known.byLater[at]!;
    const { step, meets } = meeting;
    if (wait === undefined && meets.length === earlier.length) {
      masks ??= masksOf(earlier, order);
      if (allHeld(step, masks, earlier.length, order)) return ALL_HELD;
    }
    let pairs: Pair[] | undefined;
    for (const other of meets) {
      const linked = reaches(order, other, step);
      if (linked ? wait === undefined || waitsHold(other, step, wait, order) : goesRound(other, step, order)) continue;
      // A state's own works come in the plan's order.
      if (!linked && both.has(step) && reaches(order, step, other)) continue;
      (pairs ??= []).push({ earlier: other, later: step, linked });
    }
    return pairs ?? ALL_HELD;
  });
}

const ALL_HELD: readonly Pair[] = [];

/** Whether a chain leads there through the link that closes a ring: the ring is told already, and hides what it would hold. */
function goesRound(earlier: number, later: number, order: Order): boolean {
  return order.network.loops.some((ring) => {
    const [last, first] = [ring[ring.length - 1]!, ring[0]!];
    return (earlier === last || reaches(order, earlier, last)) && (later === first || reaches(order, first, later));
  });
}

interface Mask {
  readonly words: Uint32Array;
  count: number;
}

/** The earlier steps of each group of connected steps, as bits at their places in its rows. */
function masksOf(steps: readonly number[], order: Order): ReadonlyMap<number, Mask> {
  const masks = new Map<number, Mask>();
  for (const step of steps) {
    const group = order.group[step]!;
    let mask = masks.get(group);
    if (mask === undefined) masks.set(group, (mask = { words: new Uint32Array(order.words[step]!), count: 0 }));
    mask.count += 1;
    const place = order.member[step]!;
    if (mask.words.length > 0) mask.words[place >>> 5]! |= 1 << (place & 31);
  }
  return masks;
}

/** Whether links hold every one of the earlier steps before this one. */
function allHeld(later: number, masks: ReadonlyMap<number, Mask>, count: number, order: Order): boolean {
  const mask = masks.get(order.group[later]!);
  if (mask === undefined || mask.count < count || mask.words.length === 0) return false;
  const row = order.row[later]!;
  for (let word = 0; word < mask.words.length; word++) if ((mask.words[word]! & ~order.bits[row + word]!) !== 0) return false;
  return true;
}
