// A reason for programs, and for anybody who prints a tree: label, value and unit, formula, inputs, source, and the file
// and line each input came from.
import type { Quantity } from '#kit/quantity';
import { amountOf } from './amount.ts';
import { asWritten } from './as-written.ts';
import { positionOf } from './position.ts';
import { type View, write } from './view.ts';

export interface ListedReason {
  readonly label: string;
  /** Absent where the text is no number: a date, a name. */
  readonly value?: number;
  readonly unit?: string;
  /** As a person reads it. */
  readonly text: string;
  readonly formula?: string;
  readonly inputs: readonly ListedReason[];
  readonly source?: string;
  readonly place?: { readonly file: string; readonly line: number; readonly column: number };
}

export function listedReason(quantity: Quantity, view: View, label = quantity.form.label): ListedReason {
  const { form, inputs, place } = quantity;
  const { quantity: value, unit } = amountOf(quantity, view.style);
  return {
    label,
    value,
    unit,
    text: asWritten(quantity) ?? write(quantity, view.style),
    ...(form.formula === undefined ? {} : { formula: form.formula }),
    inputs: inputs.map((input) => listedReason(input, view)),
    ...sourceOf(quantity, view),
    ...(place === undefined ? {} : placed(place, view)),
  };
}

/** The source of the formula; and of a number from a convention, the book. */
function sourceOf({ form, place }: Quantity, { plan }: View): Pick<ListedReason, 'source'> {
  if (form.source !== undefined) return { source: form.source };
  const book = place?.slot.kind === 'convention' ? plan.model.element(place.slot)?.label : undefined;
  return book === undefined ? {} : { source: book };
}

/** Words instead of a number: a date and what holds it. */
export function saying(
  label: string,
  text: string,
  inputs: readonly ListedReason[] = [],
  place?: Quantity['place'],
  view?: View,
): ListedReason {
  return { label, text, inputs, ...(place === undefined || view === undefined ? {} : placed(place, view)) };
}

function placed(place: NonNullable<Quantity['place']>, view: View): Pick<ListedReason, 'place'> {
  const { file, line, column } = positionOf(place, view);
  return { place: { file, line, column } };
}

/** The same, what went into it so many levels down: where the rest is told elsewhere. */
export function pruned(reason: ListedReason, depth: number): ListedReason {
  return { ...reason, inputs: depth <= 0 ? [] : reason.inputs.map((input) => pruned(input, depth - 1)) };
}

const SUM = 'the sum of';

/** One line a reason, what went into it indented below. */
export function treeLines(reason: ListedReason, depth = 12, indent = 0): readonly string[] {
  const parts = [`${'  '.repeat(indent)}${reason.label}${reason.text === '' ? '' : `  ${reason.text}`}`];
  if (reason.formula !== undefined && (reason.inputs.length > 0 || reason.formula !== SUM)) parts.push(`= ${reason.formula}`);
  if (reason.place !== undefined) parts.push(`(${reason.place.file}:${reason.place.line})`);
  if (reason.source !== undefined) parts.push(`[${reason.source}]`);
  const own = parts.join('  ');
  if (indent >= depth) return [own];
  return [own, ...reason.inputs.flatMap((input) => treeLines(input, depth, indent + 1))];
}
