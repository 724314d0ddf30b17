// The least and greatest values of a model code, from the library's rows, against the things of the plan. Only where the plan
// names its code; and only of what is known: a fact that nobody gave is no finding.
import { parse } from '#grammar/parse';
import { readDeclaration } from '#grammar/shape';
import type { Amount } from '#grammar/vocabulary/types';
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import { sameList } from '#kit/differing';
import { type Finding, type FindingSort, findingSort } from '#kit/finding';
import { addTo } from '#kit/gathered';
import type { Place } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import { sameGiven } from '#model/equal';
import { evaluate } from '#model/evaluate';
import type { Element, ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import { usualSettings } from '#model/settings';
import type { KindWord } from '#model/words';
import type { Results } from './check.ts';
import { holds } from './conditions.ts';
import { editionOf, sectionIn } from './editions.ts';
import { factOf } from './minimum-facts.ts';
import { quantityText } from './show.ts';

type Minimum = ElementOf<'minimum'>;

const BOUNDS = ['at least', 'at most'] as const;

interface Told {
  readonly row: Minimum;
  readonly name: string;
  readonly value: string;
  readonly limit: string;
  readonly bound: 'at least' | 'at most';
  /** Where it stands in the plan's edition, if the row knows. */
  readonly section: string | undefined;
}

export const missed: FindingSort<[told: Told]> = findingSort<[told: Told]>({
  code: 'minimum/missed',
  severity: 'note',
  say: ({ row: { label, given }, name, value, limit, bound, section }) =>
    [
      given.because?.value,
      `${label}: ${bound} ${limit} in the model code${section === undefined ? '' : ` (${section})`}, and "${name}" has ${value}.`,
      given.remedy?.value,
      'Local code and the inspector decide.',
    ]
      .filter((part) => part !== undefined)
      .join(' '),
});

export interface MinimumsMemory {
  /** The rows by the kind of thing they are for, as they were sorted last. */
  sorted: { readonly rows: readonly Minimum[]; readonly kinds: readonly Kind[]; readonly asked: readonly string[] } | undefined;
  /** What was found of the things of each kind. */
  readonly found: Map<Kind, { readonly reads: readonly unknown[]; readonly findings: readonly Finding[] }>;
  /** The plan as it was when it last said something else in the words that rows ask for. */
  plan: Model['plan'];
  readonly things: WeakMap<Element, { readonly kind: Kind; readonly plan: Model['plan']; readonly findings: readonly Finding[] }>;
}
export function minimumsMemory(): MinimumsMemory {
  return { sorted: undefined, found: new Map(), plan: undefined, things: new WeakMap() };
}

interface Kind {
  readonly word: string;
  readonly rows: readonly Minimum[];
  /** Its rows look at nothing but the thing itself and the plan. */
  readonly lasting: boolean;
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

function findingsOf(kind: Kind, code: string, model: Model, memory: MinimumsMemory): readonly Finding[] {
  if (!kind.lasting) return thingsOf(kind.word, model).flatMap((thing) => rowFindings(kind, thing, code, model));
  // The plan's own facts are those of its rooms' doors.
  const reads =
    kind.word === 'plan'
      ? [model.plan, model.list('room'), model.settings]
      : [thingsOf(kind.word, model), memory.plan, model.settings];
  const known = memory.found.get(kind);
  if (known !== undefined && sameList(known.reads, reads)) return known.findings;
  const findings: Finding[] = [];
  for (const thing of thingsOf(kind.word, model)) {
    const own = kind.word === 'plan' ? rowFindings(kind, thing, code, model) : lastingFindings(kind, thing, code, model, memory);
    for (const each of own) findings.push(each);
  }
  memory.found.set(kind, { reads, findings });
  return findings;
}

/** What rows ask of the plan, whatever they are for. */
function wordsAsked(rows: readonly Minimum[]): readonly string[] {
  const words = new Set(['code']);
  for (const { given } of rows) {
    for (const { value } of [...given.when, ...given.unless])
      if (value.subject === 'plan') for (const word of [value.fact, value.words[0]]) if (word !== undefined) words.add(word);
    for (const limit of limitsOf(given)) for (const [, word] of limit.matchAll(OF_PLAN)) words.add(word!);
  }
  return [...words];
}

const OF_PLAN = /\bplan\.([\w-]+)/g;

function limitsOf(given: Minimum['given']): readonly string[] {
  return BOUNDS.flatMap((bound) => given[bound]?.value ?? []);
}

function sayTheSame(a: Model['plan'], b: Model['plan'], words: readonly string[]): boolean {
  if (a === b) return true;
  const [given, other] = [a?.given, b?.given] as readonly ({ readonly [word: string]: unknown } | undefined)[];
  return given !== undefined && other !== undefined && words.every((word) => sameGiven(given[word], other[word]));
}

function kindsOf(all: readonly Minimum[]): readonly Kind[] {
  const byKind = new Map<string, Minimum[]>();
  for (const row of all) {
    const kind = row.given.for?.value;
    if (kind === undefined || row.given.fact === undefined) continue;
    addTo(byKind, kind, row);
  }
  return [...byKind].map(([word, rows]) => ({
    word,
    rows,
    lasting: rows.every((row) => asksOnly(row, word)),
  }));
}

/** Answers about a thing, kept while it, the rows and what they ask of the plan are the same. */
function lastingFindings(
  kind: Kind,
  thing: Element,
  code: string,
  model: Model,
  { things, plan }: MinimumsMemory,
): readonly Finding[] {
  const known = things.get(thing);
  if (known !== undefined && known.kind === kind && known.plan === plan) return known.findings;
  const findings = rowFindings(kind, thing, code, model);
  things.set(thing, { kind, plan, findings });
  return findings;
}

function rowFindings({ rows }: Kind, thing: Element, code: string, model: Model): readonly Finding[] {
  return rows.flatMap((row) => findingOf(row, thing, code, model));
}

/** Whether a row looks at nothing but the thing itself and what the plan's own lines say. */
function asksOnly({ given }: Minimum, kind: string): boolean {
  return (
    [...given.when, ...given.unless].every(
      ({ value }) => value.quantifier === 'one' && (value.subject === kind || value.subject === 'plan'),
    ) && limitsOf(given).every((limit) => [...limit.matchAll(OF_PLAN)].every(([, word]) => word! in vocabulary.plan.properties))
  );
}

function thingsOf(kind: string, model: Model): readonly Element[] {
  if (kind === 'plan') return model.plan === undefined ? [] : [model.plan];
  return model.list(kind as KindWord) as readonly Element[];
}

function findingOf(row: Minimum, thing: Element, code: string, model: Model): readonly Finding[] {
  const { given } = row;
  const fact = given.fact!.value;
  if (
    !given.when.every(({ value }) => holds(value, model, thing)) ||
    given.unless.some(({ value }) => holds(value, model, thing))
  )
    return [];
  const value = factOf(thing, fact, model);
  if (value === undefined) return [];
  for (const bound of BOUNDS) {
    const limit = limitOf(given[bound]?.value, thing, model);
    if (limit === undefined || limit.dimension !== value.dimension || fits(value, limit, bound)) continue;
    const section = sectionIn(given.section, code);
    const told: Told = {
      row,
      name: thing.name,
      value: valueText(value, limit, model),
      limit: quantityText(limit, model),
      bound,
      section,
    };
    const source = given.source?.value;
    return [
      {
        sort: missed as unknown as FindingSort<never>,
        code: `minimum/${row.name}`,
        // Of an edition that nobody looked at the row only reminds.
        severity: section === undefined ? 'note' : (given.severity?.value ?? 'note'),
        place: placeOf(thing, fact),
        details: [told],
        ...(source === undefined ? {} : { source }),
      },
    ];
  }
  return [];
}

/** Lengths and areas are exact; other measures get a billionth in the plan's favour. */
function fits(value: Quantity, limit: Quantity, bound: 'at least' | 'at most'): boolean {
  const exact = value.dimension === 'length' || value.dimension === 'area';
  const grace = exact ? 0 : Math.abs(limit.value) * 1e-9;
  return bound === 'at least' ? value.value >= limit.value - grace : value.value <= limit.value + grace;
}

/** A limit in words of the thing looked at: 70 sf, plan.frost, room.floor-area * 8%. */
function limitOf(text: string | undefined, thing: Element, model: Model): Quantity | undefined {
  const amount = text === undefined ? undefined : amountOf(text);
  if (amount === undefined) return undefined;
  return evaluate(amount, {
    slot: thing.slot,
    // The library's rows are written in feet and inches, whatever the plan's units.
    settings: usualSettings,
    findings: [],
    valueOf: (name) => {
      const [owner = '', fact = ''] = name.split('.');
      if (owner === 'plan') return model.plan === undefined ? undefined : factOf(model.plan, fact, model);
      return owner === thing.kind ? factOf(thing, fact, model) : undefined;
    },
  });
}

const amounts = new Map<string, Amount | undefined>();
function amountOf(text: string): Amount | undefined {
  if (!amounts.has(text)) {
    const [node] = parse(`let limit = ${text}`).nodes;
    const takes = node === undefined ? undefined : readDeclaration(node)?.takes?.value;
    const value = (takes as { readonly value?: Amount } | undefined)?.value;
    amounts.set(text, value?.kind === 'amount' ? value : undefined);
  }
  return amounts.get(text);
}

/** A hair under the limit is not told as the limit. */
function valueText(value: Quantity, limit: Quantity, model: Model): string {
  const text = quantityText(value, model);
  if (text !== quantityText(limit, model)) return text;
  return `${value.value < limit.value ? 'just under' : 'just over'} ${text}`;
}

/** The line that gives the value, where one does. */
function placeOf(thing: Element, fact: string): Place {
  const given = thing.given as { readonly [word: string]: { readonly place?: Place } | undefined };
  return given[fact]?.place ?? thing.place;
}
