// What a row of the library says of a plan, kept while all that it reads is the same and the steps that it speaks of are
// those that they were, at work where they were.
import { sameList } from '#kit/differing';
import type { Rule, Step } from '#model/model';
import type { Model } from '#model/resolve';
import type { KindWord } from '#model/words';
import type { Timeline } from '#schedule/timeline';
import type { Results } from './check.ts';
import { keptFor } from './kept.ts';
import { type Scope, type Scopes, scopesOf } from './scopes.ts';
import { doingIn, type Side } from './sides.ts';

export interface KeptRow<T> {
  readonly reads: readonly unknown[];
  /** The steps as they were, and the number of the look at their places. */
  readonly steps: readonly Step[];
  readonly stamp: number;
  readonly value: T;
}

export type RowMemory<R extends object, T> = WeakMap<R, KeptRow<T>>;

/** `sides` are all whom the row speaks of; it looks at where they work by `sorts`. */
export function keptByRow<R extends object, T>(
  memory: RowMemory<R, T>,
  row: R,
  reads: readonly unknown[],
  sides: readonly (readonly Side[])[],
  sorts: readonly (keyof Scope)[],
  results: Results,
  make: () => T,
): T {
  const { steps } = results.timeline;
  const scopes = scopesOf(results);
  const now = [steps.index, doingIn(results), ...reads];
  const known = memory.get(row);
  if (known !== undefined && sameList(known.reads, now) && haveStayed(known, sides, sorts, steps, scopes)) return known.value;
  const value = make();
  const own = sides.flatMap((list) => list.map(({ step }) => steps.list[step]!));
  memory.set(row, { reads: now, steps: own, stamp: scopes.stamp, value });
  return value;
}

function haveStayed(
  known: KeptRow<unknown>,
  sides: readonly (readonly Side[])[],
  sorts: readonly (keyof Scope)[],
  { list }: Timeline['steps'],
  { since }: Scopes,
): boolean {
  let at = 0;
  for (const each of sides)
    for (const { step } of each) {
      if (list[step] !== known.steps[at++]) return false;
      for (const sort of sorts) if (since[sort][step]! > known.stamp) return false;
    }
  return true;
}

interface Asking {
  readonly given: Pick<Rule['given'], 'when' | 'unless'> & { readonly for?: { readonly value: string } | undefined };
}

/** The things that a row is for or asks of, by their lists. */
export function thingsAsked(row: Asking, model: Model): readonly unknown[] {
  return kindsAsked(row).map((kind) => (kind === 'plan' ? model.plan : model.list(kind as KindWord)));
}

const kindsAsked = keptFor(({ given }: Asking): readonly string[] => {
  const kinds = new Set<string>([...given.when, ...given.unless].map(({ value }) => value.subject));
  if (given.for !== undefined) kinds.add(given.for.value);
  return [...kinds];
});
