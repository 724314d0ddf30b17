// One row of least values held against one thing, or against the openings of it of which one must meet several rows at once.
import { type Finding, type FindingSort, findingSort } from '#kit/finding';
import type { Place } from '#kit/place';
import type { Element, FollowedCondition } from '#model/model';
import type { Model } from '#model/resolve';
import { type Subject, workedOut } from './calculations.ts';
import { holds, type ValueOf } from './conditions.ts';
import { factOf, lineOfFact, waysOf } from './minimum-facts.ts';
import { BOUNDS, type Bound, type Kind, type Minimum } from './minimum-kinds.ts';
import { amountText, comparable, fits, valueText } from './minimum-limits.ts';

interface Told {
  readonly row: Minimum;
  readonly name: string;
  /** Absent where the row only reminds. */
  readonly measured:
    | {
        readonly value: string;
        readonly limit: string;
        readonly bound: Bound;
        /** The opening that comes nearest, where several might do. */
        readonly by: string | undefined;
        /** What would do as well. */
        readonly instead: readonly string[];
        /** What the thing has of that: 'between framing R-13'. */
        readonly beside: readonly string[];
        /** Where the value comes from: a section, a local rule. */
        readonly origin: string;
      }
    | undefined;
}

export const missed: FindingSort<[told: Told]> = findingSort<[told: Told]>({
  code: 'minimum/missed',
  severity: 'note',
  say: ({ row: { label, given }, name, measured }) =>
    [given.because?.value, measured === undefined ? `${label}.` : measuredText(label, name, measured), given.remedy?.value, LOCAL]
      .filter((part) => part !== undefined)
      .join(' '),
});

const LOCAL = 'Local code and the inspector decide.';

function measuredText(label: string, name: string, measured: NonNullable<Told['measured']>): string {
  const { bound, limit, instead, beside, origin, value, by } = measured;
  const others = instead.map((each) => `, or ${each}`).join('');
  return `${label}: ${bound} ${limit}${others}${origin === '' ? '' : ` ${origin}`}, and ${name} has ${value}${beside.length === 0 ? '' : ` (${beside.join(', ')})`}${by === undefined ? '' : ` by its ${by}`}.`;
}

/** All that the rows of a kind say of a thing. */
export function rowFindings({ rows, together }: Kind, thing: Element, code: string, model: Model): readonly Finding[] {
  const subject: Subject = { thing, of: (fact) => factOf(thing, fact, model) };
  const findings = rows.flatMap((row) => (applies(row, subject, model) ? findingsOf(row, subject, code, model) : []));
  for (const [word, list] of together) findings.push(...nearestMiss(word, list, subject, code, model));
  return findings;
}

export function applies({ given }: Minimum, subject: Subject, model: Model): boolean {
  const { thing } = subject;
  const find = valuesFor(subject, model);
  return (
    given.when.every(({ value }) => holds(value, model, thing, find)) &&
    !given.unless.some(({ value }) => holds(value, model, thing, find))
  );
}

function valuesFor({ thing, of }: Subject, model: Model): ValueOf {
  return (other, fact) => (other === thing ? of(fact) : factOf(other, fact, model));
}

/** Where no opening meets all rows, what the one that comes nearest lacks. An opening of which too little is known may do. */
function nearestMiss(word: string, rows: readonly Minimum[], subject: Subject, code: string, model: Model): readonly Finding[] {
  const asked = rows.filter((row) => applies(row, subject, model));
  const ways = asked.length === 0 ? [] : (waysOf(subject.thing, word, model) ?? []);
  let nearest: readonly Finding[] | undefined;
  let rank = Number.POSITIVE_INFINITY;
  for (const { facts, opening, stated } of ways) {
    const of = (fact: string) => facts[fact] ?? subject.of(fact);
    const failures = asked.flatMap((row) => findingsOf(row, { thing: subject.thing, of }, code, model, opening));
    if (failures.length === 0) return [];
    const own = failures.length + (stated ? 0 : 100);
    if (own < rank) [nearest, rank] = [failures, own];
  }
  return nearest ?? [];
}

function findingsOf(row: Minimum, subject: Subject, code: string, model: Model, by?: string): readonly Finding[] {
  const { given } = row;
  const { thing } = subject;
  if (given.fact === undefined) return [found(row, thing, thing.place, 'note', undefined)];
  const value = subject.of(given.fact.value);
  if (value === undefined) return [];
  for (const bound of BOUNDS) {
    const text = given[bound]?.value;
    const limit = text === undefined ? undefined : workedOut(text, subject, model);
    if (limit === undefined || !comparable(limit, value) || fits(value, limit, bound)) continue;
    const find = valuesFor(subject, model);
    const alternatives = given.or.map((line) => line.value.map((condition) => condition.value));
    if (alternatives.some((all) => all.every((condition) => holds(condition, model, thing, find)))) return [];
    const { origin, read } = originOf(row, code);
    const measured = {
      value: valueText(value, limit, model),
      limit: amountText(limit, model),
      bound,
      by,
      instead: alternatives.map((all) => all.map((condition) => conditionText(condition, thing.kind, model)).join(' and ')),
      beside: besideTexts(given.fact.value, alternatives.flat(), subject, model),
      origin,
    };
    // Of an edition that nobody looked at the row only reminds.
    const severity = read ? (given.severity?.value ?? 'note') : 'note';
    return [found(row, thing, placeOf(thing, given.fact.value), severity, measured)];
  }
  return [];
}

function found(row: Minimum, thing: Element, place: Place, severity: Finding['severity'], measured: Told['measured']): Finding {
  const told: Told = { row, name: spokenName(thing), measured };
  const source = row.given.source?.value;
  return {
    sort: missed as unknown as FindingSort<never>,
    code: `minimum/${row.name}`,
    severity,
    place,
    details: [told],
    ...(source === undefined ? {} : { source }),
  };
}

/** A crawl space or a site may have no name: it goes by its number, which says nothing to a reader. */
function spokenName({ kind, name }: Element): string {
  return /^\d/.test(name) ? `the ${kind}` : `"${name}"`;
}

/** A town's own rule stands for itself; a section is named only of an edition in which it was looked up. */
export function originOf({ given }: Minimum, code: string): { readonly origin: string; readonly read: boolean } {
  if (given.local !== undefined) return { origin: `by ${given.local.value}`, read: true };
  const sections = given.section.flatMap((line) => line.value.map(({ value }) => value));
  const section = sections.find(({ edition }) => edition.toLowerCase() === code);
  if (section !== undefined) return { origin: `in the model code (${code} ${section.section})`, read: true };
  // The value may be of another standard, which its label names then.
  if (sections.length === 0) return { origin: '', read: false };
  return { origin: `in other editions of the model code (${code} was not looked up)`, read: false };
}

const TESTS: { readonly [test in FollowedCondition['test']]?: string } = {
  'at-least': 'at least',
  'at-most': 'at most',
  over: 'over',
  under: 'under',
  is: 'is',
  'is-not': 'is not',
  has: 'has',
};

/** 'wall cavity at least R-20', 'a crawl with a cover'. */
function conditionText({ subject, fact, test, words, amount }: FollowedCondition, kind: string, model: Model): string {
  const what = [...(subject === kind ? [] : [subject]), ...(fact === undefined ? [] : [fact.replaceAll('-', ' ')])].join(' ');
  const than = amount === undefined ? words.join(' ') : amountText(amount, model);
  return [what, ...(test === 'exists' ? ['given'] : [TESTS[test] ?? '', than])].filter((part) => part !== '').join(' ');
}

/** What is known of the thing for the alternatives, each fact once; nothing of what it has nothing of. */
function besideTexts(
  own: string,
  conditions: readonly FollowedCondition[],
  { thing, of }: Subject,
  model: Model,
): readonly string[] {
  const texts = new Map<string, string>();
  for (const { subject, fact, amount } of conditions) {
    if (subject !== thing.kind || fact === undefined || fact === own || amount === undefined || texts.has(fact)) continue;
    const value = of(fact);
    if (value === undefined || value.value === 0) continue;
    texts.set(fact, `${fact.replaceAll('-', ' ')} ${amountText(value, model, amount.unit ?? value.unit)}`);
  }
  return [...texts.values()];
}

interface Line {
  readonly place?: Place;
}

/** The line that gives the value, where one does. */
function placeOf(thing: Element, fact: string): Place {
  const given = thing.given as { readonly [word: string]: Line | readonly Line[] | undefined };
  const lines = given[lineOfFact(thing.kind, fact)];
  const line = Array.isArray(lines) ? (lines as readonly Line[])[0] : (lines as Line | undefined);
  return line?.place ?? thing.place;
}
