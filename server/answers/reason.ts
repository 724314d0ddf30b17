// The working behind a number as a tree that can be printed: the same in hover, explain, report and JSON. Made only when
// somebody asks.
import type { Dimension } from '#kit/dimension';
import type { Place } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import { formatQuantity, type System } from '#kit/units';
import { type Style, write } from './view.ts';

export interface Reason {
  readonly label: string;
  /** In base units of `dimension`. */
  readonly value: number;
  readonly dimension: Dimension;
  /** As a person reads it, unit included: 433.3 sf. */
  readonly text: string;
  readonly formula?: string;
  readonly inputs: readonly Reason[];
  readonly source?: string;
  readonly place?: Place;
}

/** `how` numbers are written: by the plan's style, or by its units alone. */
export function reasonOf(quantity: Quantity, how: Style | System): Reason {
  const { form, value, dimension, inputs, place } = quantity;
  return {
    label: form.label,
    value,
    dimension,
    text: typeof how === 'string' ? formatQuantity(quantity, how) : write(quantity, how),
    inputs: inputs.map((input) => reasonOf(input, how)),
    ...(form.formula === undefined ? {} : { formula: form.formula }),
    ...(form.source === undefined ? {} : { source: form.source }),
    ...(place === undefined ? {} : { place }),
  };
}

/** One line a reason, inputs indented below; `where` says a place in a person's words. */
export function reasonLines(reason: Reason, where: (place: Place) => string, depth = 6): readonly string[] {
  const lines: string[] = [];
  const add = (each: Reason, indent: number): void => {
    const formula = each.formula === undefined ? '' : ` (${each.formula})`;
    const place = each.place === undefined ? '' : `, ${where(each.place)}`;
    const source = each.source === undefined ? '' : ` [${each.source}]`;
    lines.push(`${'  '.repeat(indent)}${each.label} ${each.text}${formula}${place}${source}`);
    if (indent >= depth) return;
    for (const input of each.inputs) add(input, indent + 1);
  };
  add(reason, 0);
  return lines;
}
