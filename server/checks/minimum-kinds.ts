// The rows of least values, sorted: by the kind of thing they are for, and by whether the thing itself and the plan's own
// lines are all they look at, so that an answer lasts while those are the same.
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import { addTo } from '#kit/gathered';
import type { ElementOf, FollowedCondition } from '#model/model';
import { looksAround } from './minimum-facts.ts';

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
  /** They look at nothing but the thing itself and the plan's own lines. */
  readonly lasting: boolean;
}

export function kindsOf(all: readonly Minimum[]): readonly Kind[] {
  const byKind = new Map<string, Minimum[]>();
  for (const row of all) {
    const kind = row.given.for?.value;
    if (kind !== undefined) addTo(byKind, `${kind} ${asksOnly(row, kind) ? 'alone' : 'around'}`, row);
  }
  return [...byKind].map(([key, rows]) => {
    const [word = '', reach] = key.split(' ');
    const together = new Map<string, Minimum[]>();
    for (const row of rows) if (row.given.together !== undefined) addTo(together, row.given.together.value, row);
    return { word, rows: rows.filter(({ given }) => given.together === undefined), together, lasting: reach === 'alone' };
  });
}

/** What rows ask of the plan, whatever they are for. */
export function wordsAsked(rows: readonly Minimum[]): readonly string[] {
  const words = new Set(['code']);
  for (const row of rows) {
    for (const value of conditionsOf(row))
      if (value.subject === 'plan')
        for (const word of [value.fact, value.words[0]]) if (word !== undefined) words.add(PLAN_FACTS[word] ?? word);
    for (const limit of limitsOf(row.given)) for (const [, word] of limit.matchAll(OF_PLAN)) words.add(word!);
  }
  return [...words];
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

/** Whether a row looks at nothing but the thing itself and what the plan's own lines say. */
function asksOnly(row: Minimum, kind: string): boolean {
  const { given } = row;
  if (kind === 'plan' || (kind === 'level' && given.together !== undefined)) return false;
  if (given.fact !== undefined && looksAround(kind, given.fact.value)) return false;
  return (
    conditionsOf(row).every(({ quantifier, subject, fact }) => {
      if (quantifier !== 'one' || (subject !== kind && subject !== 'plan')) return false;
      return fact === undefined || (subject === 'plan' ? isLineOfPlan(fact) : !looksAround(kind, fact));
    }) &&
    limitsOf(given).every(
      (limit) =>
        [...limit.matchAll(OF_PLAN)].every(([, word]) => isLineOfPlan(word!)) &&
        [...limit.matchAll(OF_THING)].every(([, of, word]) => of !== kind || !looksAround(kind, word!)),
    )
  );
}

const OF_THING = /\b([a-z-]+)\.([\w-]+)/g;

function isLineOfPlan(word: string): boolean {
  return (PLAN_FACTS[word] ?? word) in vocabulary.plan.properties;
}
