// The least and greatest values of a model code, from the library's rows, against the things of the plan. Only where the plan
// names its code; and only of what is known: a fact that nobody gave is no finding.
import { NONE, sameList } from '#kit/differing';
import type { Finding } from '#kit/finding';
import type { Quantity } from '#kit/quantity';
import { sameGiven } from '#model/equal';
import type { Element } from '#model/model';
import type { Model } from '#model/resolve';
import type { KindWord } from '#model/words';
import type { Results } from './check.ts';
import { editionOf } from './editions.ts';
import { factOf, thingsBeside } from './minimum-facts.ts';
import { type AskedOfPlan, askedOfPlan, type Kind, kindsOf, type Minimum } from './minimum-kinds.ts';
import { rowFindings } from './minimum-row.ts';

export interface MinimumsMemory {
  /** The rows by the kind of thing they are for, as they were sorted last. */
  sorted: { readonly rows: readonly Minimum[]; readonly kinds: readonly Kind[]; readonly asked: AskedOfPlan } | undefined;
  /** What was found of the things of each kind. */
  readonly found: Map<Kind, { readonly reads: readonly unknown[]; readonly findings: readonly Finding[] }>;
  /** What the plan says to rows of other things, and all that it was told by. */
  plan: { readonly reads: readonly unknown[]; readonly told: Told } | undefined;
  /** What was found of each thing, by how far its rows look. */
  readonly things: { readonly [reach in 'own' | 'beside']: WeakMap<Element, Known> };
}

/** The same object while the plan says the same. */
interface Told {
  readonly plan: Model['plan'];
  readonly facts: readonly (Quantity | undefined)[];
}

interface Known {
  readonly kind: Kind;
  readonly told: Told;
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
    memory.sorted = { rows: all, kinds: kindsOf(all), asked: askedOfPlan(all) };
    memory.found.clear();
  }
  const { kinds, asked } = memory.sorted;
  const reads = [asked, model.plan, ...HOUSE.map((each) => model.list(each))];
  if (memory.plan === undefined || !sameList(memory.plan.reads, reads))
    memory.plan = { reads, told: toldBy(model, asked, memory.plan?.told) };
  const { told } = memory.plan;
  const findings: Finding[] = [];
  for (const kind of kinds) for (const each of findingsOf(kind, code, model, told, memory)) findings.push(each);
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

/** Those that may stand beside a thing. */
const BESIDE = ['room', 'crawl'] as const satisfies readonly KindWord[];

function findingsOf(kind: Kind, code: string, model: Model, told: Told, memory: MinimumsMemory): readonly Finding[] {
  const { word, reach } = kind;
  const own = word === 'plan' ? model.plan : model.list(word as KindWord);
  const others = reach === 'own' ? NONE : (reach === 'beside' ? BESIDE : HOUSE).map((each) => model.list(each));
  // Limits of the plan may be figures that rows of calculations make.
  const rows = word === 'plan' ? model.rows('calculation') : NONE;
  const reads = [told, model.settings, rows, own, ...others];
  const known = memory.found.get(kind);
  if (known !== undefined && sameList(known.reads, reads)) return known.findings;
  const findings: Finding[] = [];
  for (const thing of thingsOf(word, model)) {
    const all =
      reach === 'around' ? rowFindings(kind, thing, code, model) : lastingFindings(kind, reach, thing, code, model, told, memory);
    for (const each of all) findings.push(each);
  }
  memory.found.set(kind, { reads, findings });
  return findings;
}

function toldBy(model: Model, { lines, facts }: AskedOfPlan, before: Told | undefined): Told {
  const { plan } = model;
  const now = { plan, facts: facts.map((fact) => (plan === undefined ? undefined : factOf(plan, fact, model))) };
  if (before === undefined || !now.facts.every((value, at) => sameAmount(value, before.facts[at]))) return now;
  if (before.plan === plan) return before;
  const [given, other] = [before.plan?.given, plan?.given] as readonly ({ readonly [word: string]: unknown } | undefined)[];
  const same = given !== undefined && other !== undefined && lines.every((word) => sameGiven(given[word], other[word]));
  return same ? before : now;
}

function sameAmount(a: Quantity | undefined, b: Quantity | undefined): boolean {
  return a?.value === b?.value && a?.dimension === b?.dimension;
}

/** Answers about a thing, kept while it, those beside it, the rows and what they ask of the plan are the same. */
function lastingFindings(
  kind: Kind,
  reach: 'own' | 'beside',
  thing: Element,
  code: string,
  model: Model,
  told: Told,
  { things }: MinimumsMemory,
): readonly Finding[] {
  const beside = reach === 'own' ? NONE : thingsBeside(thing, model);
  const known = things[reach].get(thing);
  if (known !== undefined && known.kind === kind && known.told === told && sameList(known.beside, beside)) return known.findings;
  const findings = rowFindings(kind, thing, code, model);
  things[reach].set(thing, { kind, told, beside, findings });
  return findings;
}

function thingsOf(kind: string, model: Model): readonly Element[] {
  if (kind === 'plan') return model.plan === undefined ? [] : [model.plan];
  return model.list(kind as KindWord) as readonly Element[];
}
