// The least and greatest values of a model code, from the library's rows, against the things of the plan. Only where the plan
// names its code; and only of what is known: a fact that nobody gave is no finding.
import { NONE, sameList } from '#kit/differing';
import type { Finding } from '#kit/finding';
import { sameGiven } from '#model/equal';
import type { Element } from '#model/model';
import type { Model } from '#model/resolve';
import type { KindWord } from '#model/words';
import type { Results } from './check.ts';
import { editionOf } from './editions.ts';
import { thingsBeside } from './minimum-facts.ts';
import { type Kind, kindsOf, type Minimum, wordsAsked } from './minimum-kinds.ts';
import { rowFindings } from './minimum-row.ts';

export interface MinimumsMemory {
  /** The rows by the kind of thing they are for, as they were sorted last. */
  sorted: { readonly rows: readonly Minimum[]; readonly kinds: readonly Kind[]; readonly asked: readonly string[] } | undefined;
  /** What was found of the things of each kind. */
  readonly found: Map<Kind, { readonly reads: readonly unknown[]; readonly findings: readonly Finding[] }>;
  /** The plan as it was when it last said something else in the words that rows ask for. */
  plan: Model['plan'];
  /** What was found of each thing, by how far its rows look. */
  readonly things: { readonly [reach in 'own' | 'beside']: WeakMap<Element, Known> };
}

interface Known {
  readonly kind: Kind;
  readonly plan: Model['plan'];
  readonly beside: readonly Element[];
  readonly findings: readonly Finding[];
}

export function minimumsMemory(): MinimumsMemory {
  return { sorted: undefined, found: new Map(), plan: undefined, things: { own: new WeakMap(), beside: new WeakMap() } };
}

export function minimumFindings({ model }: Results, memory: MinimumsMemory): readonly Finding[] {
  const code = editionOf(model);
  if (code === undefined) return [];
  const all = model.rows('minimum');
  if (memory.sorted?.rows !== all) {
    memory.sorted = { rows: all, kinds: kindsOf(all), asked: wordsAsked(all) };
    memory.found.clear();
  }
  const { kinds, asked } = memory.sorted;
  if (!sayTheSame(memory.plan, model.plan, asked)) memory.plan = model.plan;
  const findings: Finding[] = [];
  for (const kind of kinds) for (const each of findingsOf(kind, code, model, memory)) findings.push(each);
  return findings;
}

/** Everything that facts of one thing may be told by in another. */
const HOUSE = [
  'room',
  'level',
  'window',
  'door',
  'crawl',
  'roof',
  'foundation',
  'panels',
  'deck',
  'stair',
] as const satisfies readonly KindWord[];

function findingsOf(kind: Kind, code: string, model: Model, memory: MinimumsMemory): readonly Finding[] {
  const { word, reach } = kind;
  // Of the plan only what rows ask of it counts, but where it is the thing that is looked at.
  const plan = word === 'plan' ? model.plan : memory.plan;
  const own = word === 'plan' ? [] : [model.list(word as KindWord)];
  // Only rooms stand beside a thing.
  const others = reach === 'own' ? [] : reach === 'beside' ? [model.list('room')] : HOUSE.map((each) => model.list(each));
  const reads = [plan, model.settings, ...own, ...others];
  const known = memory.found.get(kind);
  if (known !== undefined && sameList(known.reads, reads)) return known.findings;
  const findings: Finding[] = [];
  for (const thing of thingsOf(word, model)) {
    const told =
      reach === 'around' ? rowFindings(kind, thing, code, model) : lastingFindings(kind, reach, thing, code, model, memory);
    for (const each of told) findings.push(each);
  }
  memory.found.set(kind, { reads, findings });
  return findings;
}

function sayTheSame(a: Model['plan'], b: Model['plan'], words: readonly string[]): boolean {
  if (a === b) return true;
  const [given, other] = [a?.given, b?.given] as readonly ({ readonly [word: string]: unknown } | undefined)[];
  return given !== undefined && other !== undefined && words.every((word) => sameGiven(given[word], other[word]));
}

/** Answers about a thing, kept while it, those beside it, the rows and what they ask of the plan are the same. */
function lastingFindings(
  kind: Kind,
  reach: 'own' | 'beside',
  thing: Element,
  code: string,
  model: Model,
  { things, plan }: MinimumsMemory,
): readonly Finding[] {
  const beside = reach === 'own' ? NONE : thingsBeside(thing, model);
  const known = things[reach].get(thing);
  if (known !== undefined && known.kind === kind && known.plan === plan && sameList(known.beside, beside)) return known.findings;
  const findings = rowFindings(kind, thing, code, model);
  things[reach].set(thing, { kind, plan, beside, findings });
  return findings;
}

function thingsOf(kind: string, model: Model): readonly Element[] {
  if (kind === 'plan') return model.plan === undefined ? [] : [model.plan];
  return model.list(kind as KindWord) as readonly Element[];
}
