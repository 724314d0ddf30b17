// The limit of a row, and how it and a value are compared and told: 70 sf, plan.frost, room.floor-area * 8%, 1/150.
import { parse } from '#grammar/parse';
import { readDeclaration } from '#grammar/shape';
import type { Amount } from '#grammar/vocabulary/types';
import type { Dimension } from '#kit/dimension';
import { type Quantity, quantityIn } from '#kit/quantity';
import { evaluate } from '#model/evaluate';
import type { Element } from '#model/model';
import type { Model } from '#model/resolve';
import { usualSettings } from '#model/settings';
import { factOf } from './minimum-facts.ts';
import type { Bound } from './minimum-kinds.ts';
import { quantityText } from './show.ts';

/** The thing looked at, or one opening of it, by its facts. */
export interface Subject {
  readonly thing: Element;
  readonly of: (fact: string) => Quantity | undefined;
}

/** A limit in words of the thing looked at. */
export function limitOf(text: string, { thing, of }: Subject, model: Model): Quantity | undefined {
  const amount = amountOf(text);
  if (amount === undefined) return undefined;
  return evaluate(amount, {
    slot: thing.slot,
    // The library's rows are written in feet and inches, whatever the plan's units.
    settings: usualSettings,
    findings: [],
    valueOf: (name) => {
      const [owner = '', fact = ''] = name.split('.');
      if (owner === thing.kind) return of(fact);
      return owner === 'plan' && model.plan !== undefined ? factOf(model.plan, fact, model) : undefined;
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

export function comparable(a: Quantity, b: Quantity): boolean {
  return asNumber(a.dimension) === asNumber(b.dimension);
}

/** A slope is a share like another: 6 inches in 10 feet are 5%. */
function asNumber(dimension: Dimension): Dimension {
  return dimension === 'slope' ? 'number' : dimension;
}

/**
 * Lengths are exact. An area may be short by what reading its sides took: 41.04" is no whole number of 1/320 mm, so half of
 * that on each side, far less than a sixty-fourth of an inch. Other measures get a billionth in the plan's favour.
 */
export function fits(value: Quantity, limit: Quantity, bound: Bound): boolean {
  const grace = graceOf(limit);
  return bound === 'at least' ? value.value >= limit.value - grace : value.value <= limit.value + grace;
}

function graceOf({ dimension, value }: Quantity): number {
  if (dimension === 'length') return 0;
  return dimension === 'area' ? Math.sqrt(Math.abs(value)) : Math.abs(value) * 1e-9;
}

/** Units that say more than the usual one would: a sill of 44", not of 3'-8". */
const TELLING: ReadonlySet<string> = new Set(['%', 'in/ft', 'in', 'sq in']);

/** As the row writes it. Plans in metres read their own lengths. */
export function amountText(value: Quantity, model: Model, unit = value.unit): string {
  const { dimension } = value;
  if (unit !== undefined && TELLING.has(unit) && !(unit === 'in' && model.settings.units !== 'feet'))
    return told(quantityIn(value, unit), model);
  // Vents are told as the code writes them.
  if (dimension === 'number' && value.value > 0 && value.value < 0.05) return `1/${Math.round(1 / value.value)}`;
  return quantityText(value, model);
}

function told(value: Quantity, model: Model): string {
  return quantityText(value, model, value.unit);
}

/** The value beside its limit: a hair under it is not told as the limit. */
export function valueText(value: Quantity, limit: Quantity, model: Model): string {
  const text = amountText(value, model, limit.unit ?? value.unit);
  if (value.value === limit.value || text !== amountText(limit, model)) return text;
  return `${value.value < limit.value ? 'just under' : 'just over'} ${text}`;
}
