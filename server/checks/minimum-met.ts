// The least values that a thing meets, with what it has: for whoever looks at it, never as a verdict. Only rows that were
// looked up in the plan's edition count, or that are the town's own; what nobody gave is not told.
import type { Quantity } from '#kit/quantity';
import type { Element, Opening } from '#model/model';
import type { Model } from '#model/resolve';
import { type Subject, workedOut } from './calculations.ts';
import { editionOf, sectionIn } from './editions.ts';
import { keptFor } from './kept.ts';
import { clearOf } from './minimum-facts/escape.ts';
import { factOf, waysOf } from './minimum-facts.ts';
import { BOUNDS, type Bound, type Kind, kindsOf, type Minimum } from './minimum-kinds.ts';
import { amountText, comparable, fits, valueText } from './minimum-limits.ts';
import { applies, originOf, rowFindings } from './minimum-row.ts';

export interface Met {
  /** 'finished height'. */
  readonly what: string;
  /** '8'-0"'. */
  readonly has: string;
  /** 'at least 7'-0"', or both bounds. */
  readonly limits: readonly string[];
  /** 'R305.1', where it was looked up. */
  readonly sections: readonly string[];
}

export interface MetValues {
  readonly code: string;
  readonly met: readonly Met[];
  /** How many findings of least values stand at it. */
  readonly missed: number;
}

/** Undefined where the plan names no code, or nothing is known of the thing. */
export function minimumsMet(thing: Element, model: Model): MetValues | undefined {
  const code = editionOf(model);
  if (code === undefined) return undefined;
  const kinds = kindsIn(model.rows('minimum')).filter(({ word }) => word === thing.kind);
  const subject: Subject = { thing, of: (fact) => factOf(thing, fact, model) };
  const held: Held[] = kinds.flatMap((kind) => heldBy(kind, subject, code, model));
  if (thing.kind === 'window' || thing.kind === 'door') held.push(...heldByOpening(thing, code, model));
  const missed = kinds.reduce((sum, kind) => sum + rowFindings(kind, thing, code, model).filter(isMeasured).length, 0);
  return held.length + missed === 0 ? undefined : { code, met: gathered(held, code, model), missed };
}

const kindsIn = keptFor((rows: readonly Minimum[]) => kindsOf(rows));

function isMeasured({ code, details }: ReturnType<typeof rowFindings>[number]): boolean {
  const [told] = details as readonly { readonly measured?: unknown }[];
  return code.startsWith('minimum/') && told?.measured !== undefined;
}

interface Held {
  readonly row: Minimum;
  readonly fact: string;
  readonly value: Quantity;
  readonly bound: Bound;
  readonly limit: Quantity;
}

function heldBy({ rows, together }: Kind, subject: Subject, code: string, model: Model): readonly Held[] {
  const asked = rows.filter((row) => isRead(row, code) && applies(row, subject, model));
  const held = asked.flatMap((row) => boundsHeld(row, subject, model).filter(({ fits }) => fits));
  for (const [word, list] of together) held.push(...bestWay(word, list, subject, code, model));
  return held;
}

/** Of the openings of which one must meet all rows, the first that does, where enough of it is known to say so. */
function bestWay(word: string, rows: readonly Minimum[], subject: Subject, code: string, model: Model): readonly TriedHeld[] {
  const asked = rows.filter((row) => isRead(row, code) && applies(row, subject, model));
  if (asked.length === 0) return [];
  for (const { facts, stated } of waysOf(subject.thing, word, model) ?? []) {
    if (!stated) continue;
    const of = (fact: string) => facts[fact] ?? subject.of(fact);
    const tried = asked.flatMap((row) => boundsHeld(row, { thing: subject.thing, of }, model));
    if (tried.length > 0 && tried.every((each) => each.fits)) return tried;
  }
  return [];
}

/** What the rows of escape openings and of the exit say of a type's own clear opening. */
function heldByOpening(type: Opening, code: string, model: Model): readonly Held[] {
  const facts = clearOf(type);
  const subject: Subject = { thing: type, of: (fact) => facts[fact] };
  return model
    .rows('minimum')
    .filter((row) => isRead(row, code) && (row.given.for?.value === 'room' || row.given.for?.value === 'plan'))
    .flatMap((row) => boundsHeld(row, subject, model).filter(({ fits }) => fits));
}

interface TriedHeld extends Held {
  readonly fits: boolean;
}

function boundsHeld(row: Minimum, subject: Subject, model: Model): readonly TriedHeld[] {
  const { given } = row;
  const fact = given.fact?.value;
  const value = fact === undefined ? undefined : subject.of(fact);
  if (fact === undefined || value === undefined) return [];
  return BOUNDS.flatMap((bound) => {
    const text = given[bound]?.value;
    const limit = text === undefined ? undefined : workedOut(text, subject, model);
    if (limit === undefined || !comparable(limit, value)) return [];
    return [{ row, fact, value, bound, limit, fits: fits(value, limit, bound) }];
  });
}

function isRead(row: Minimum, code: string): boolean {
  return originOf(row, code).read;
}

/** One line for each fact: of several limits one way the strictest, and both ways together. */
function gathered(held: readonly Held[], code: string, model: Model): readonly Met[] {
  const byFact = new Map<string, Map<Bound, Held>>();
  for (const each of held) {
    const bounds = byFact.get(each.fact) ?? new Map<Bound, Held>();
    byFact.set(each.fact, bounds);
    const before = bounds.get(each.bound);
    if (before === undefined || isStricter(each, before)) bounds.set(each.bound, each);
  }
  return [...byFact].map(([fact, bounds]) => {
    const list = [...bounds.values()];
    const sections = list.flatMap(({ row }) => {
      const section = row.given.local === undefined ? sectionIn(row.given.section, code) : undefined;
      return section === undefined ? [] : [section.slice(code.length + 1)];
    });
    const what = fact.replaceAll('-', ' ');
    return {
      what,
      has: bare(what, valueText(list[0]!.value, list[0]!.limit, model)),
      limits: list.map(({ bound, limit }) => `${bound} ${amountText(limit, model)}`),
      sections: [...new Set(sections)],
    };
  });
}

/** A U of 0.30 is written U 0.3 already. */
function bare(what: string, text: string): string {
  return text.startsWith(`${what} `) ? text.slice(what.length + 1) : text;
}

function isStricter(a: Held, b: Held): boolean {
  return a.bound === 'at least' ? a.limit.value > b.limit.value : a.limit.value < b.limit.value;
}
