// A value that is its own working: number, dimension, the form it was made by and the quantities that went in.
// Text is made of it only when somebody asks (see the answers room); arithmetic goes through `measure`, so a number
// and its working cannot drift apart.
import { NONE } from './differing.ts';
import type { Dimension } from './dimension.ts';
import type { Place } from './place.ts';

/** How a number is made: one constant object a formula. `compute` is also what replays it. */
export interface Form {
  /** What the result is, in a builder's words: 'wall area'. */
  readonly label: string;
  /** In words: 'length × height'. Absent for a given value. */
  readonly formula?: string;
  readonly source?: string;
  readonly compute: (...values: readonly number[]) => number;
}

export interface Quantity<D extends Dimension = Dimension> {
  /** In the base units of `dimension`. */
  readonly value: number;
  readonly dimension: D;
  readonly form: Form;
  readonly inputs: readonly Quantity[];
  /** Where it was given; for computed quantities, where that was asked for, if anywhere. */
  readonly place?: Place;
  /** The unit a person wrote it in or is used to ('sf', 'in'), where the usual one would read oddly. */
  readonly unit?: string;
}

/** Declares a form. The formula names its inputs in order, so that working reads like the arithmetic. */
export function form(label: string, formula: string, compute: (...values: readonly number[]) => number, source?: string): Form {
  return source === undefined ? { label, formula, compute } : { label, formula, compute, source };
}

/** A number made from others. The only way to compute a quantity. */
export function measure<D extends Dimension>(dimension: D, how: Form, ...inputs: readonly Quantity[]): Quantity<D> {
  return { value: computed(how, inputs), dimension, form: how, inputs };
}

/** Nearly all forms take one, two or three numbers; those are handed over without a list of them. */
function computed({ compute }: Form, inputs: readonly Quantity[]): number {
  switch (inputs.length) {
    case 1:
      return compute(inputs[0]!.value);
    case 2:
      return compute(inputs[0]!.value, inputs[1]!.value);
    case 3:
      return compute(inputs[0]!.value, inputs[1]!.value, inputs[2]!.value);
    default:
      return compute(...inputs.map((input) => input.value));
  }
}

const given = new Map<string, Form>();

/** A number somebody wrote down: in the plan, or in a row of the library. `label` says what it is ('height'). */
export function givenQuantity<D extends Dimension>(
  label: string,
  value: number,
  dimension: D,
  place: Place,
  unit?: string,
): Quantity<D> {
  let how = given.get(label);
  if (how === undefined) given.set(label, (how = { label, compute: () => Number.NaN }));
  // Written out: what a spread copies has a hidden shape of its own, which takes more room than the quantity.
  return unit === undefined
    ? { value, dimension, form: how, inputs: NONE, place }
    : { value, dimension, form: how, inputs: NONE, place, unit };
}

/** The same quantity, asked for at a place. */
export function quantityAt<D extends Dimension>({ value, dimension, form, inputs }: Quantity<D>, place: Place): Quantity<D> {
  return { value, dimension, form, inputs, place };
}

/** The same quantity, spoken of in another unit. */
export function quantityIn<D extends Dimension>(quantity: Quantity<D>, unit: string): Quantity<D> {
  const { value, dimension, form, inputs, place } = quantity;
  return place === undefined ? { value, dimension, form, inputs, unit } : { value, dimension, form, inputs, place, unit };
}

/** A number fixed by definition (12 inches to the foot), or counted. */
export function constant<D extends Dimension>(label: string, value: number, dimension: D, source?: string): Quantity<D> {
  const how: Form = source === undefined ? { label, compute: () => value } : { label, compute: () => value, source };
  return { value, dimension, form: how, inputs: NONE };
}

/** What the form makes of the inputs: equal to `value` for every quantity that has inputs. */
export function replay(quantity: Quantity): number {
  return quantity.inputs.length === 0 ? quantity.value : quantity.form.compute(...quantity.inputs.map(replay));
}

/** The sum of several quantities of one dimension, in the order given. */
export function total<D extends Dimension>(label: string, dimension: D, inputs: readonly Quantity<D>[]): Quantity<D> {
  // Thousands of inputs are usual here, so they are not handed over one by one; the form replays to the same sum.
  let value = 0;
  for (const input of inputs) value += input.value;
  return { value, dimension, form: sumForm(label), inputs };
}

/** The same sum where the values are at hand; the inputs are looked up when somebody asks for the working. */
export function totalOf<D extends Dimension>(
  label: string,
  dimension: D,
  values: Float64Array,
  inputsOf: () => readonly Quantity<D>[],
  unit?: string,
): Quantity<D> {
  let value = 0;
  for (let at = 0; at < values.length; at++) value += values[at]!;
  let inputs: readonly Quantity<D>[] | undefined;
  const made = {
    value,
    dimension,
    form: sumForm(label),
    get inputs() {
      return (inputs ??= inputsOf());
    },
  };
  return unit === undefined ? made : Object.assign(made, { unit });
}

const sums = new Map<string, Form>();
function sumForm(label: string): Form {
  let how = sums.get(label);
  if (how === undefined) {
    how = form(label, 'the sum of', (...values) => values.reduce((sum, value) => sum + value, 0));
    sums.set(label, how);
  }
  return how;
}

/** Whole units upward, not fooled by float noise (149.00000000000003 is 149). */
export function roundUp(value: number): number {
  return Math.ceil(value - Math.abs(value) * 1e-9 - 1e-12);
}
