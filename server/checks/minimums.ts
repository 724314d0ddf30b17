// The least and greatest values of a model code, from the library's rows, against the things of the plan. Only where the plan
// names its code; and only of what is known: a fact that nobody gave is no finding.
import { parse } from '#grammar/parse';
import { readDeclaration } from '#grammar/shape';
import type { Amount } from '#grammar/vocabulary/types';
import { sameList } from '#kit/differing';
import { type Finding, type FindingSort, findingSort } from '#kit/finding';
import type { Place } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import { evaluate } from '#model/evaluate';
import type { Element, ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import { usualSettings } from '#model/settings';
import type { KindWord } from '#model/words';
import type { Results } from './check.ts';
import { holds } from './conditions.ts';
import { factOf } from './minimum-facts.ts';
import { quantityText } from './show.ts';

type Minimum = ElementOf<'minimum'>;

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
  sorted: { readonly rows: readonly Minimum[]; readonly kinds: readonly Kind[] } | undefined;
  /** What was found of the things of each kind. */
  readonly found: Map<Kind, { readonly reads: readonly unknown[]; readonly findings: readonly Finding[] }>;
  readonly things: WeakMap<Element, { readonly kind: Kind; readonly plan: Model['plan']; readonly findings: readonly Finding[] }>;
}
export function minimumsMemory(): MinimumsMemory {
  return { sorted: undefined, found: new Map(), things: new WeakMap() };
}

interface Kind {
  readonly word: string;
  readonly rows: readonly Minimum[];
  /** Its rows look at nothing but the thing itself and the plan. */
  readonly lasting: boolean;
}

export function minimumFindings({ model }: Results, memory: MinimumsMemory): readonly Finding[] {
  const code = model.plan?.given.code?.value.toLowerCase();
  if (code === undefined) return [];
  const all = model.rows('minimum');
  if (memory.sorted?.rows !== all) {
    memory.sorted = { rows: all, kinds: kindsOf(all) };
    memory.found.clear();
  }
  return memory.sorted.kinds.flatMap((kind) => {
    const things = thingsOf(kind.word, model);
    if (!kind.lasting) return things.flatMap((thing) => kind.rows.flatMap((row) => findingOf(row, thing, code, model)));
    const reads = [things, model.plan, model.settings];
    const known = memory.found.get(kind);
    if (known !== undefined && sameList(known.reads, reads)) return known.findings;
    const findings = things.flatMap((thing) => lastingFindings(kind, thing, code, model, memory));
    memory.found.set(kind, { reads, findings });
    return findings;
  });
}

function kindsOf(all: readonly Minimum[]): readonly Kind[] {
  const byKind = new Map<string, Minimum[]>();
  for (const row of all) {
    const kind = row.given.for?.value;
    if (kind === undefined || row.given.fact === undefined) continue;
    const rows = byKind.get(kind);
    if (rows === undefined) byKind.set(kind, [row]);
    else rows.push(row);
  }
  return [...byKind].map(([word, rows]) => ({
    word,
    rows,
    lasting: word !== 'plan' && rows.every((row) => asksOnly(row, word)),
  }));
}

/** Answers about a thing, kept while it, the rows and the plan's own lines are the same. */
function lastingFindings(kind: Kind, thing: Element, code: string, model: Model, { things }: MinimumsMemory): readonly Finding[] {
  const known = things.get(thing);
  if (known !== undefined && known.kind === kind && known.plan === model.plan) return known.findings;
  const findings = kind.rows.flatMap((row) => findingOf(row, thing, code, model));
  things.set(thing, { kind, plan: model.plan, findings });
  return findings;
}

/** Whether a row looks at nothing but the thing itself and the plan. */
function asksOnly({ given }: Minimum, kind: string): boolean {
  return [...given.when, ...given.unless].every(
    ({ value }) => value.quantifier === 'one' && (value.subject === kind || value.subject === 'plan'),
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
  for (const bound of ['at least', 'at most'] as const) {
    const limit = limitOf(given[bound]?.value, thing, model);
    if (limit === undefined || limit.dimension !== value.dimension || fits(value, limit, bound)) continue;
    const section = given.section
      .flatMap((line) => line.value)
      .find(({ value: each }) => each.edition.toLowerCase() === code)?.value;
    const told: Told = {
      row,
      name: thing.name,
      value: valueText(value, limit, model),
      limit: quantityText(limit, model),
      bound,
      section: section === undefined ? undefined : `${code} ${section.section}`,
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
