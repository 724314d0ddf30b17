// The working behind a number as a tree that can be printed: the same in hover, explain, report and JSON. Made only when
// somebody asks.
import type { Dimension } from '#kit/dimension';
import type { Place } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import { formatQuantity, type System } from '#kit/units';
import { asWritten } from './as-written.ts';
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
    text: asWritten(quantity) ?? (typeof how === 'string' ? formatQuantity(quantity, how) : write(quantity, how)),
    inputs: inputs.map((input) => reasonOf(input, how)),
    ...(form.formula === undefined ? {} : { formula: form.formula }),
    ...(form.source === undefined ? {} : { source: form.source }),
    ...(place === undefined ? {} : { place }),
  };
}
