// An expression as written → a quantity with its working. Units are checked here; what cannot be evaluated is a finding
// and has no value. Names are read through the reader, which remembers what was read.
import type { Expression, Literal } from '#grammar/tree';
import type { Amount } from '#grammar/vocabulary/types';
import { type Dimension, MILLIMETRE, overDimension, timesDimension } from '#kit/dimension';
import { type Finding, finding } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import { type Form, form, givenQuantity, measure, type Quantity, quantityAt, quantityIn, roundUp } from '#kit/quantity';
import { fromBase } from '#kit/units';
import { dividedByZero, mixedUnits, unitMissing, wrongUnit } from './problems.ts';
import type { Settings } from './settings.ts';

export interface Evaluation {
  readonly slot: Slot;
  readonly settings: Settings;
  readonly findings: Finding[];
  /** A named value: a `let`, or a fact of a thing. Undefined has been reported already. */
  readonly valueOf: (name: string, place: Place) => Quantity | undefined;
}

/** U-value of 1 Btu/(h·ft²·°F) in W/(m²·K): NIST SP 811, appendix B. */
const US_CONDUCTANCE = 5.678263;

export function evaluate<D extends Dimension>(amount: Amount<D>, at: Evaluation): Quantity<D> | undefined {
  const wanted = amount.any === true ? undefined : amount.dimension;
  const found = expressionOf(amount.expression, wanted, amount, at);
  if (found === undefined) return undefined;
  if (wanted !== undefined && !fits(found.dimension, wanted)) {
    at.findings.push(finding(wrongUnit, placeOf(amount.expression, amount, at), amount.label, wanted, found.dimension));
    return undefined;
  }
  return (found.dimension === wanted || wanted === undefined ? found : inDimension(found, wanted)) as Quantity<D>;
}

function inDimension({ value, form, inputs, place, unit }: Quantity, dimension: Dimension): Quantity {
  if (place === undefined) return { value, dimension, form, inputs };
  return unit === undefined ? { value, dimension, form, inputs, place } : { value, dimension, form, inputs, place, unit };
}

function fits(got: Dimension, wanted: Dimension): boolean {
  return got === wanted || (got === 'number' && wanted === 'slope') || (got === 'money' && wanted === 'money/number');
}

function placeOf(expression: Expression, amount: Amount, at: Evaluation): Place {
  return { slot: at.slot, spot: { path: amount.path, from: expression.from, to: expression.to } };
}

function expressionOf(
  expression: Expression,
  wanted: Dimension | undefined,
  amount: Amount,
  at: Evaluation,
): Quantity | undefined {
  const place = placeOf(expression, amount, at);
  switch (expression.kind) {
    case 'literal':
      return literalOf(expression.literal, wanted, amount, place, at);
    case 'name':
      return at.valueOf(expression.name, place);
    case 'operation': {
      const sum = expression.operator === '+' || expression.operator === '-';
      const left = expressionOf(expression.left, sum ? wanted : undefined, amount, at);
      const right = expressionOf(expression.right, sum ? wanted : undefined, amount, at);
      return left === undefined || right === undefined ? undefined : operation(expression.operator, left, right, place, at);
    }
    case 'call': {
      const inputs = expression.inputs.map((input) => expressionOf(input, wanted, amount, at));
      if (inputs.some((input) => input === undefined) || inputs.length === 0) return undefined;
      return quantityAt(measure(inputs[0]!.dimension, calls[expression.name], ...(inputs as Quantity[])), place);
    }
    case 'range': {
      const low = expressionOf(expression.low, wanted, amount, at);
      const high = expressionOf(expression.high, wanted, amount, at);
      if (low === undefined || high === undefined) return undefined;
      const between = quantityAt(measure(low.dimension, middle, low, high), place);
      // The unit of a time says by which clock it runs.
      return low.dimension === 'time' && low.unit !== undefined && low.unit === high.unit
        ? quantityIn(between, low.unit)
        : between;
    }
  }
}

/** What a range comes to where one number is wanted; its ends are its inputs. */
export const middle = form('the middle of the range', '(least + most) ÷ 2', (low = 0, high = 0) => (low + high) / 2);
const calls: { readonly [name in 'min' | 'max' | 'roundup']: Form } = {
  min: form('the least', 'the least of', (...values) => Math.min(...values)),
  max: form('the most', 'the most of', (...values) => Math.max(...values)),
  roundup: form('rounded up', 'rounded up to a whole', (value = 0) => roundUp(value)),
};
const operations: { readonly [operator in '+' | '-' | '*' | '/']: Form } = {
  '+': form('sum', 'a + b', (a = 0, b = 0) => a + b),
  '-': form('difference', 'a − b', (a = 0, b = 0) => a - b),
  '*': form('product', 'a × b', (a = 0, b = 0) => a * b),
  '/': form('quotient', 'a ÷ b', (a = 0, b = 0) => a / b),
};

function operation(
  operator: '+' | '-' | '*' | '/',
  left: Quantity,
  right: Quantity,
  place: Place,
  at: Evaluation,
): Quantity | undefined {
  const dimension =
    operator === '*'
      ? timesDimension(left.dimension, right.dimension)
      : operator === '/'
        ? overDimension(left.dimension, right.dimension)
        : left.dimension === right.dimension
          ? left.dimension
          : undefined;
  if (dimension === undefined) {
    at.findings.push(finding(mixedUnits, place, operator, left.dimension, right.dimension));
    return undefined;
  }
  if (operator === '/' && right.value === 0) {
    at.findings.push(finding(dividedByZero, place));
    return undefined;
  }
  return quantityAt(measure(dimension, operations[operator], left, right), place);
}

function literalOf(
  literal: Literal,
  wanted: Dimension | undefined,
  amount: Amount,
  place: Place,
  at: Evaluation,
): Quantity | undefined {
  if (literal.kind === 'ratio') {
    const [first = 0, second = 1] = literal.terms;
    if (second === 0) {
      at.findings.push(finding(dividedByZero, place));
      return undefined;
    }
    return givenQuantity(
      amount.label,
      first / second,
      wanted === 'number' ? 'number' : 'slope',
      place,
      second === 12 ? 'pitch' : ':',
    );
  }
  if (literal.kind !== 'quantity') {
    at.findings.push(finding(wrongUnit, place, amount.label, wanted ?? 'number', 'number'));
    return undefined;
  }
  const { value, unit } = literal;
  if (literal.dimension === 'bare') return bare(value, wanted, amount, place, at);
  if (literal.dimension === 'time')
    return givenQuantity(amount.label, minutes(value, unit, amount, at.settings), 'time', place, unit);
  return givenQuantity(amount.label, value, literal.dimension, place, unit);
}

function bare(value: number, wanted: Dimension | undefined, amount: Amount, place: Place, at: Evaluation): Quantity | undefined {
  switch (wanted) {
    case undefined:
    case 'number':
      return givenQuantity(amount.label, value, 'number', place);
    case 'length':
      if (at.settings.units === 'mm') return givenQuantity(amount.label, value * MILLIMETRE, 'length', place, 'mm');
      break;
    case 'conductance':
      return at.settings.units === 'feet'
        ? givenQuantity(amount.label, value * US_CONDUCTANCE, 'conductance', place, 'U')
        : givenQuantity(amount.label, value, 'conductance', place, 'W/m2K');
    default:
      break;
  }
  if (value === 0) return givenQuantity(amount.label, 0, wanted, place);
  if (wanted === 'length') at.findings.push(finding(unitMissing, place, amount.label, value));
  else at.findings.push(finding(wrongUnit, place, amount.label, wanted, 'number'));
  return undefined;
}

/** Working minutes where the property works by the clock of work; else as spelled: `d` and `w` work, days and weeks run. */
function minutes(value: number, unit: string, amount: Amount, settings: Settings): number {
  const count = fromBase(value, unit) ?? 0;
  const { minutesPerDay, daysPerWeek } = settings;
  switch (unit) {
    case 'd':
      return count * minutesPerDay;
    case 'w':
      return count * minutesPerDay * daysPerWeek;
    case 'days':
      return amount.clock === 'work' ? count * minutesPerDay : value;
    case 'weeks':
      return amount.clock === 'work' ? count * minutesPerDay * daysPerWeek : value;
    case 'months':
      // A month of work is taken as thirty days less the days that are not worked.
      return amount.clock === 'work' ? Math.round((count * 30 * daysPerWeek) / 7) * minutesPerDay : value;
    default:
      return value;
  }
}
