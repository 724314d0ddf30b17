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

interface Kept {
  readonly scopes: Scopes;
  readonly byRule: Map<
    Rule,
    { readonly first: readonly Side[]; readonly then: readonly Side[]; readonly pairs: readonly Pair[] }
  >;
}
const kept = new WeakMap<Order, Kept>();

/** In the order of the later and then the earlier step. A step that does both sides has its order in its own hands. */
export function unheld(
  rule: Rule,
  first: readonly Side[],
  then: readonly Side[],
  wait: Wait | undefined,
  results: Results,
): readonly Pair[] {
  const scopes = scopesOf(results);
  const { order } = results;
  let all = kept.get(order);
  if (all?.scopes !== scopes) kept.set(order, (all = { scopes, byRule: new Map() }));
  const known = all.byRule.get(rule);
  if (known !== undefined && known.first === first && known.then === then) return known.pairs;
  const pairs = found(first, then, rule.given.scope?.value ?? 'house', wait, scopes, order);
  all.byRule.set(rule, { first, then, pairs });
  return pairs;
}

type ScopeWord = 'same room' | 'same element' | 'house';

function found(
  first: readonly Side[],
  then: readonly Side[],
  scope: ScopeWord,
  wait: Wait | undefined,
  scopes: Scopes,
  order: Order,
): readonly Pair[] {
  const laterSteps = new Set(then.map(({ step }) => step));
  const firstSteps = new Set(first.map(({ step }) => step));
  const earlier = first.filter(({ step }) => !laterSteps.has(step));
  if (earlier.length === 0) return [];
  const masks = masksOf(earlier, order);
  const candidates = candidatesOf(earlier, scope, scopes);
  const pairs: Pair[] = [];
  const seen = new Set<number>();
  for (const side of then) {
    const later = side.step;
    if (wait === undefined && allHeld(later, masks, earlier.length, order)) continue;
    for (const { step } of candidates(side)) {
      const key = step * order.network.count + later;
      if (seen.has(key)) continue;
      seen.add(key);
      const linked = reaches(order, step, later);
      if (linked ? wait === undefined || waitsHold(step, later, wait, order) : goesRound(step, later, order)) continue;
      // A state's own works come in the plan's order.
      if (!linked && firstSteps.has(later) && reaches(order, later, step)) continue;
      pairs.push({ earlier: step, later, linked });
    }
  }
  return pairs;
}

const WHICH = { 'same room': 'rooms', 'same element': 'elements', house: 'buildings' } as const;

/** Of the earlier sides those that meet a later one: in a room, on a thing, or anywhere in the house. */
function candidatesOf(earlier: readonly Side[], scope: ScopeWord, scopes: Scopes): (later: Side) => readonly Side[] {
  const which = WHICH[scope];
  const everywhere: number[] = [];
  const bySlot = new Map<Slot, number[]>();
  earlier.forEach((side, at) => {
    const places = scopeOf(side, scopes)[which];
    if (places === undefined) everywhere.push(at);
    else
      for (const slot of places) {
        const list = bySlot.get(slot);
        if (list === undefined) bySlot.set(slot, [at]);
        else list.push(at);
      }
  });
  return (later) => {
    const places = scopeOf(later, scopes)[which];
    if (places === undefined) return earlier;
    const meeting = new Set(everywhere);
    for (const slot of places) for (const at of bySlot.get(slot) ?? []) meeting.add(at);
    return [...meeting].sort((a, b) => a - b).map((at) => earlier[at]!);
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
function masksOf(sides: readonly Side[], order: Order): ReadonlyMap<number, Mask> {
  const masks = new Map<number, Mask>();
  for (const { step } of sides) {
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
