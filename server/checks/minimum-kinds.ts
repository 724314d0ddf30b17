// The rows of least values, sorted: by the kind of thing they are for, and by how far they look from it, so that an answer
// lasts while all that it hangs on is the same.
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import { addTo } from '#kit/gathered';
import type { ElementOf, FollowedCondition } from '#model/model';
import { type Reach, reachOf } from './minimum-facts.ts';

export type Minimum = ElementOf<'minimum'>;

export const BOUNDS = ['at least', 'at most'] as const;
export type Bound = (typeof BOUNDS)[number];

/** Rows for things of a kind that are answered in one way. */
export interface Kind {
  readonly word: string;
  /** Rows that stand by themselves. */
  readonly rows: readonly Minimum[];
  /** Rows that one opening must meet together, by their word. */
  readonly together: ReadonlyMap<string, readonly Minimum[]>;
  /** How far they look, but for what is asked of the plan, which they may always look at. */
  readonly reach: Reach;
}

export function kindsOf(all: readonly Minimum[]): readonly Kind[] {
  const byKind = new Map<string, Minimum[]>();
  for (const row of all) {
    const kind = row.given.for?.value;
    if (kind !== undefined) addTo(byKind, `${kind} ${reachOfRow(row, kind)}`, row);
  }
  return [...byKind].map(([key, rows]) => {
    const [word = '', reach] = key.split(' ') as [string, Reach];
    const together = new Map<string, Minimum[]>();
    for (const row of rows) if (row.given.together !== undefined) addTo(together, row.given.together.value, row);
    return { word, rows: rows.filter(({ given }) => given.together === undefined), together, reach };
  });
}

/** What rows for other things ask of the plan: its lines, and facts that more than a line tells. */
export interface AskedOfPlan {
  readonly lines: readonly string[];
  readonly facts: readonly string[];
}

export function askedOfPlan(rows: readonly Minimum[]): AskedOfPlan {
  const words = new Set(['code']);
  for (const row of rows) {
    if (row.given.for?.value === 'plan') continue;
    for (const value of conditionsOf(row))
      if (value.subject === 'plan')
        for (const word of [value.fact, value.words[0]]) if (word !== undefined) words.add(PLAN_FACTS[word] ?? word);
    for (const limit of limitsOf(row.given)) for (const [, word] of limit.matchAll(OF_PLAN)) words.add(word!);
  }
  const all = [...words];
  return {
    lines: all.filter((word) => word in vocabulary.plan.properties),
    facts: all.filter((word) => !(word in vocabulary.plan.properties)),
  };
}

/** Facts of the plan that its own line of another word tells. */
const PLAN_FACTS: { readonly [fact: string]: string } = { 'fresh-air-rate': 'fresh-air' };
const OF_PLAN = /\bplan\.([\w-]+)/g;

function conditionsOf({ given }: Minimum): readonly FollowedCondition[] {
  return [...given.when, ...given.unless, ...given.or.flatMap(({ value }) => value)].map(({ value }) => value);
}

function limitsOf(given: Minimum['given']): readonly string[] {
  return BOUNDS.flatMap((bound) => given[bound]?.value ?? []);
}

const FARTHEST: readonly Reach[] = ['around', 'beside', 'own'];

function reachOfRow(row: Minimum, kind: string): Reach {
  const { given } = row;
  const reaches = new Set<Reach>([kind === 'plan' ? 'around' : 'own']);
  // The ways out of a storey are those of its rooms.
  if (kind === 'level' && given.together !== undefined) reaches.add('beside');
  if (given.fact !== undefined) reaches.add(reachOf(kind, given.fact.value));
  for (const { quantifier, subject, fact } of conditionsOf(row)) {
    if (quantifier !== 'one' || (subject !== kind && subject !== 'plan')) reaches.add('around');
    else if (fact !== undefined && subject === kind) reaches.add(reachOf(kind, fact));
  }
  for (const limit of limitsOf(given))
    for (const [, of, word] of limit.matchAll(OF_THING)) if (of === kind) reaches.add(reachOf(kind, word!));
  return FARTHEST.find((reach) => reaches.has(reach))!;
}

const OF_THING = /\b([a-z-]+)\.([\w-]+)/g;
