// Pairs of an earlier and a later step that no chain of links holds: by whole words of bits, so that thousands of pairs cost
// next to nothing, and only then by where they work. Kept while links and places of work are the same.
import type { Slot } from '#kit/place';
import type { Rule } from '#model/model';
import { waitsHold } from './chain-waits.ts';
import type { Results } from './check.ts';
import { type Order, reaches } from './order.ts';
import type { Wait } from './outcomes.ts';
import { type Scopes, scopeOf, scopesOf } from './scopes.ts';
import type { Side } from './sides.ts';

export interface Pair {
  readonly earlier: number;
  readonly later: number;
  /** A chain leads there, but the waits on it are too short. */
  readonly linked: boolean;
}

const kept = new WeakMap<Order, Map<Rule, { readonly meetings: Meetings; readonly pairs: readonly Pair[] }>>();

/** In the order of the later and then the earlier step. A step that does both sides has its order in its own hands. */
export function unheld(
  rule: Rule,
  first: readonly Side[],
  then: readonly Side[],
  wait: Wait | undefined,
  results: Results,
): readonly Pair[] {
  const { order } = results;
  const meetings = meetingsOf(rule, first, then, scopesOf(results));
  let all = kept.get(order);
  if (all === undefined) kept.set(order, (all = new Map()));
  const known = all.get(rule);
  if (known?.meetings === meetings) return known.pairs;
  const pairs = found(meetings, wait, order);
  all.set(rule, { meetings, pairs });
  return pairs;
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
interface KeptMeetings {
  readonly scopes: Scopes;
  readonly meetings: Meetings;
}
const meetingsKept = new WeakMap<Rule, KeptMeetings>();

/** Who meets whom hangs on places of work alone: it outlives every edit of links, and of work elsewhere. */
function meetingsOf(rule: Rule, first: readonly Side[], then: readonly Side[], scopes: Scopes): Meetings {
  const known = meetingsKept.get(rule);
  const sameSides = known !== undefined && known.meetings.first === first && known.meetings.then === then;
  if (sameSides && known.scopes === scopes) return known.meetings;
  const unmoved = sameSides && stayed(first, known.scopes, scopes) && stayed(then, known.scopes, scopes);
  const meetings = unmoved ? known.meetings : metBy(rule, first, then, scopes);
  meetingsKept.set(rule, { scopes, meetings });
  return meetings;
}

/** Whether all sides work where they did. Sides of one list have kept their numbers. */
function stayed(sides: readonly Side[], before: Scopes, now: Scopes): boolean {
  for (const { step } of sides) if (now.since[step]! > before.stamp) return false;
  return true;
}

function metBy(rule: Rule, first: readonly Side[], then: readonly Side[], scopes: Scopes): Meetings {
  const laterSteps = new Set(then.map(({ step }) => step));
  const firstSteps = new Set(first.map(({ step }) => step));
  const earlier = first.filter(({ step }) => !laterSteps.has(step));
  const candidates = candidatesOf(earlier, rule.given.scope?.value ?? 'house', scopes);
  const meeting = new Map<number, Set<number>>();
  for (const side of earlier.length === 0 ? [] : then) {
    const steps = meeting.get(side.step);
    if (steps === undefined) meeting.set(side.step, new Set(candidates(side)));
    else for (const step of candidates(side)) steps.add(step);
  }
  const made: Meetings = {
    first,
    then,
    both: new Set([...laterSteps].filter((step) => firstSteps.has(step))),
    earlier: [...new Set(earlier.map(({ step }) => step))],
    later: [...meeting].map(([step, steps]) => ({ step, meets: [...steps].sort((a, b) => a - b) })),
  };
  return made;
}

function found({ both, earlier, later }: Meetings, wait: Wait | undefined, order: Order): readonly Pair[] {
  if (later.length === 0) return [];
  const masks = wait === undefined ? masksOf(earlier, order) : undefined;
  const pairs: Pair[] = [];
  for (const { step, meets } of later) {
    if (masks !== undefined && meets.length === earlier.length && allHeld(step, masks, earlier.length, order)) continue;
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

type ScopeWord = 'same room' | 'same element' | 'house';
const WHICH = { 'same room': 'rooms', 'same element': 'elements', house: 'buildings' } as const;

/** Of the earlier steps those that meet a later side: in a room, on a thing, or anywhere in the house. */
function candidatesOf(earlier: readonly Side[], scope: ScopeWord, scopes: Scopes): (later: Side) => Iterable<number> {
  const which = WHICH[scope];
  const all = earlier.map(({ step }) => step);
  const everywhere: number[] = [];
  const bySlot = new Map<Slot, number[]>();
  for (const side of earlier) {
    const places = scopeOf(side, scopes)[which];
    if (places === undefined) everywhere.push(side.step);
    else
      for (const slot of places) {
        const list = bySlot.get(slot);
        if (list === undefined) bySlot.set(slot, [side.step]);
        else list.push(side.step);
      }
  }
  return (later) => {
    const places = scopeOf(later, scopes)[which];
    if (places === undefined) return all;
    const meeting = new Set(everywhere);
    for (const slot of places) for (const step of bySlot.get(slot) ?? []) meeting.add(step);
    return meeting;
  };
}

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
