// Expressions of the library's rows worked out for a thing, and the figures that rows of calculations make of a plan: worked
// out when somebody asks, each with its working.
import { parse } from '#grammar/parse';
import { readDeclaration } from '#grammar/shape';
import type { Amount } from '#grammar/vocabulary/types';
import { type Quantity, quantityIn } from '#kit/quantity';
import { dimensionOf } from '#kit/units';
import { evaluate } from '#model/evaluate';
import type { Element, ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import { usualSettings } from '#model/settings';
import { holds } from './conditions.ts';
import { factOf } from './minimum-facts.ts';

export type Calculation = ElementOf<'calculation'>;

export interface Figure {
  readonly row: Calculation;
  /** What it is asked by. */
  readonly fact: string;
  readonly value: Quantity;
}

/** What the rows of calculations say of a thing, in their order; of several for one fact the first that applies. */
export function figuresOf(thing: Element, model: Model): readonly Figure[] {
  const found = new Map<string, Figure>();
  for (const row of model.rows('calculation')) {
    const figure = row.given.for?.value !== thing.kind || found.has(factName(row)) ? undefined : figureBy(row, thing, model, []);
    if (figure !== undefined) found.set(figure.fact, figure);
  }
  return [...found.values()];
}

/** One of them, by what it is asked by. `within` are the rows that ask for it: one that leads back to itself comes to nothing. */
export function figureOf(thing: Element, fact: string, model: Model, within: readonly Calculation[] = []): Figure | undefined {
  for (const row of model.rows('calculation')) {
    if (row.given.for?.value !== thing.kind || factName(row) !== fact || within.includes(row)) continue;
    const figure = figureBy(row, thing, model, within);
    if (figure !== undefined) return figure;
  }
  return undefined;
}

function factName({ name, given }: Calculation): string {
  return given.fact?.value ?? name;
}

function figureBy(row: Calculation, thing: Element, model: Model, before: readonly Calculation[]): Figure | undefined {
  const { given } = row;
  if (given.value === undefined) return undefined;
  const find = (other: Element, fact: string) => factOf(other, fact, model);
  if (!given.when.every(({ value }) => holds(value, model, thing, find))) return undefined;
  if (given.unless.some(({ value }) => holds(value, model, thing, find))) return undefined;
  const within = [...before, row];
  const of = (fact: string) => factOf(thing, fact, model);
  const value = workedOut(given.value.value, { thing, of }, model, within);
  if (value === undefined) return undefined;
  const unit = given['told in']?.value;
  const fits = unit !== undefined && dimensionOf(unit) === value.dimension;
  return { row, fact: factName(row), value: fits ? quantityIn(value, unit) : value };
}

/** The thing looked at, or one opening of it, by its facts. */
export interface Subject {
  readonly thing: Element;
  readonly of: (fact: string) => Quantity | undefined;
}

/** What an expression of a row comes to, in words of the thing looked at. */
export function workedOut(
  text: string,
  { thing, of }: Subject,
  model: Model,
  within: readonly Calculation[] = [],
): Quantity | undefined {
  const amount = amountOf(text);
  if (amount === undefined) return undefined;
  return evaluate(amount, {
    slot: thing.slot,
    // The library's rows are written in feet and inches, whatever the plan's units.
    settings: usualSettings,
    findings: [],
    valueOf: (name) => {
      const [owner = '', fact = ''] = name.split('.');
      if (owner === thing.kind) return of(fact) ?? figureOf(thing, fact, model, within)?.value;
      if (owner !== 'plan' || model.plan === undefined) return undefined;
      return factOf(model.plan, fact, model) ?? figureOf(model.plan, fact, model, within)?.value;
    },
  });
}

const BARE_U = /^U\s+(?=\d)/i;
const amounts = new Map<string, Amount | undefined>();
function amountOf(text: string): Amount | undefined {
  if (!amounts.has(text)) {
    // A bare U is a word before a number, and not a part of it.
    const number = text.replace(BARE_U, '');
    const [node] = parse(`let limit = ${number}`).nodes;
    const takes = node === undefined ? undefined : readDeclaration(node)?.takes?.value;
    const value = (takes as { readonly value?: Amount } | undefined)?.value;
    const amount = value?.kind === 'amount' ? value : undefined;
    amounts.set(text, amount === undefined || number === text ? amount : asConductance(amount));
  }
  return amounts.get(text);
}

function asConductance({ any: _any, ...amount }: Amount): Amount {
  return { ...amount, dimension: 'conductance' };
}
