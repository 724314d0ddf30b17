// Pairs of an earlier and a later step that no chain of links holds: by whole words of bits, so that thousands of pairs cost
// next to nothing, and only then by where they work. They stand while links and places of work are the same.
import type { Slot } from '#kit/place';
import type { Rule } from '#model/model';
import { waitsHold } from './chain-waits.ts';
import { type Order, reaches } from './order.ts';
import type { Wait } from './outcomes.ts';
import { type Scope, type Scopes, scopeOf } from './scopes.ts';
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
  const meetings = meetingsOf(rule, first, then, scopes, before);
  const same = before !== undefined && before.meetings === meetings && before.order === order;
  if (same && before.scopes === scopes) return before;
  return { order, scopes, meetings, pairs: same ? before.pairs : found(meetings, wait, order) };
}

interface Meetings {
  readonly first: readonly Side[];
  readonly then: readonly Side[];
  /** Steps that stand on both sides, which a state's own works do. */
  readonly both: ReadonlySet<number>;
  /** Earlier steps that are no later ones. */
  readonly earlier: readonly number[];
  /** The later steps, each with the earlier ones that it meets. */
  readonly later: readonly { readonly step: number; readonly meets: readonly number[] }[];
}
/** Who meets whom hangs on places of work alone: it outlives every edit of links, and of work elsewhere. */
function meetingsOf(
  rule: Rule,
  first: readonly Side[],
  then: readonly Side[],
  scopes: Scopes,
  before: Unheld | undefined,
): Meetings {
  const sort = sortOf(rule);
  if (before !== undefined && before.meetings.first === first && before.meetings.then === then) {
    if (before.scopes === scopes) return before.meetings;
    const since = scopes.since[sort];
    if (stayed(first, since, before.scopes.stamp) && stayed(then, since, before.scopes.stamp)) return before.meetings;
  }
  return metBy(sort, first, then, scopes);
}

/** Whether all sides work where they did. Sides of one list have kept their numbers. */
function stayed(sides: readonly Side[], since: Int32Array, stamp: number): boolean {
  for (const { step } of sides) if (since[step]! > stamp) return false;
  return true;
}

/** By which of a step's places a rule tells who meets whom. */
function sortOf({ given: { scope } }: Rule): keyof Scope {
  switch (scope?.value) {
    case 'same room':
      return 'rooms';
    case 'same element':
      return 'elements';
    default:
      return 'buildings';
  }
}

function metBy(sort: keyof Scope, first: readonly Side[], then: readonly Side[], scopes: Scopes): Meetings {
  const laterSteps = new Set<number>();
  for (const { step } of then) laterSteps.add(step);
  const both = new Set<number>();
  const earlier: number[] = [];
  const sides: Side[] = [];
  for (const side of first) {
    if (laterSteps.has(side.step)) both.add(side.step);
    else {
      sides.push(side);
      if (earlier[earlier.length - 1] !== side.step) earlier.push(side.step);
    }
  }
  const later: { step: number; meets: readonly number[] }[] = [];
  if (sides.length > 0) {
    const meetingsWith = candidatesOf(sides, earlier, sort, scopes);
    // The sides of one step stand together.
    for (let at = 0; at < then.length; ) {
      const from = at;
      const { step } = then[from]!;
      while (at < then.length && then[at]!.step === step) at += 1;
      later.push({ step, meets: meetingsWith(then, from, at) });
    }
  }
  return { first, then, both, earlier, later };
}

function found({ both, earlier, later }: Meetings, wait: Wait | undefined, order: Order): readonly Pair[] {
  if (later.length === 0) return [];
  let masks: ReadonlyMap<number, Mask> | undefined;
  const pairs: Pair[] = [];
  for (const { step, meets } of later) {
    if (wait === undefined && meets.length === earlier.length) {
      masks ??= masksOf(earlier, order);
      if (allHeld(step, masks, earlier.length, order)) continue;
    }
    for (const before of meets) {
      const linked = reaches(order, before, step);
      if (linked ? wait === undefined || waitsHold(before, step, wait, order) : goesRound(before, step, order)) continue;
      // A state's own works come in the plan's order.
      if (!linked && both.has(step) && reaches(order, step, before)) continue;
      pairs.push({ earlier: before, later: step, linked });
    }
  }
  return pairs;
}

/** Of the earlier steps those that meet some of a later step's sides: in a room, on a thing, or anywhere in a building. */
function candidatesOf(
  sides: readonly Side[],
  earlier: readonly number[],
  sort: keyof Scope,
  scopes: Scopes,
): (then: readonly Side[], from: number, to: number) => readonly number[] {
  const everywhere: number[] = [];
  const bySlot = new Map<Slot, number[]>();
  for (const side of sides) {
    const places = scopeOf(side, scopes)[sort];
    if (places === undefined) everywhere.push(side.step);
    else
      for (const slot of places) {
        const list = bySlot.get(slot);
        if (list === undefined) bySlot.set(slot, [side.step]);
        else list.push(side.step);
      }
  }
  // By step, the number of the last question that it was an answer to: so none is told twice.
  const toldTo = new Int32Array(scopes.bySteps.length);
  let question = 0;
  return (then, from, to) => {
    const meets: number[] = [];
    const add = (steps: readonly number[]): void => {
      for (const step of steps)
        if (toldTo[step] !== question) {
          toldTo[step] = question;
          meets.push(step);
        }
    };
    question += 1;
    add(everywhere);
    for (let at = from; at < to; at++) {
      const places = scopeOf(then[at]!, scopes)[sort];
      if (places === undefined) return earlier;
      for (const slot of places) add(bySlot.get(slot) ?? NOBODY);
    }
    return meets.sort((a, b) => a - b);
  };
}

const NOBODY: readonly number[] = [];

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
