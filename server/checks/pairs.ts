// Pairs of an earlier and a later step that no chain of links holds: by whole words of bits, so that thousands of pairs cost
// next to nothing, and only then by where they work.

import { chainHolds } from './chain-waits.ts';
import type { Results } from './check.ts';
import { type Order, reaches } from './order.ts';
import type { Wait } from './outcomes.ts';
import { meets } from './scopes.ts';
import type { Side } from './sides.ts';

export interface Pair {
  readonly earlier: number;
  readonly later: number;
  /** A chain leads there, but it does not hold the wait. */
  readonly linked: boolean;
}

/** In the order of the later and then the earlier step. A step that does both sides has its order in its own hands. */
export function unheld(
  first: readonly Side[],
  then: readonly Side[],
  scope: 'same room' | 'same element' | 'house',
  wait: Wait | undefined,
  { timeline, order, model }: Results,
): readonly Pair[] {
  const laterSteps = new Set(then.map(({ step }) => step));
  const firstSteps = new Set(first.map(({ step }) => step));
  const earlier = first.filter(({ step }) => !laterSteps.has(step));
  if (earlier.length === 0) return [];
  const masks = masksOf(earlier, order);
  const found: Pair[] = [];
  const seen = new Set<number>();
  for (const side of then) {
    const later = side.step;
    if (wait === undefined && allHeld(later, masks, earlier.length, order)) continue;
    for (const other of earlier) {
      const linked = reaches(order, other.step, later);
      if (linked && wait === undefined) continue;
      // A state's own works come in the plan's order.
      if (!linked && firstSteps.has(later) && reaches(order, later, other.step)) continue;
      const key = other.step * timeline.network.count + later;
      if (seen.has(key) || !meets(scope, other, side, timeline, model)) continue;
      seen.add(key);
      if (linked && chainHolds(other.step, later, wait!, timeline, order)) continue;
      found.push({ earlier: other.step, later, linked });
    }
  }
  return found;
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
