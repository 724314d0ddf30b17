// The two ends of a range or of a size belong together: a unit on the right also holds for a bare number on the left.
import { FOOT, INCH } from '#kit/dimension';
import { formatQuantity, toBase } from '#kit/units';
import type { Expression, Literal } from '../tree.ts';
import { length } from './lengths.ts';

type Quantity = Literal & { readonly kind: 'quantity' };

/** The range of two values, and whether they are of one kind; names and calculations are for the model to judge. */
export function rangeOf(low: Expression, high: Expression): { readonly range: Expression; readonly fits: boolean } {
  const [left, right] = [quantityIn(low), quantityIn(high)];
  let ends: readonly [Expression, Expression] = [low, high];
  if (left !== undefined && right !== undefined) {
    if (left.dimension === 'bare' && right.unit !== '') ends = [withUnitOf(low, left, right), high];
    // $15,000..25,000: the sign stands before the first only.
    else if (right.dimension === 'bare' && left.dimension.startsWith('money')) ends = [low, withUnitOf(high, right, left)];
  }
  const range: Expression = { kind: 'range', low: ends[0], high: ends[1], from: low.from, to: high.to };
  return { range, fits: sameKind(ends[0], ends[1]) };
}

/** A bare value as so many of the unit of another. */
export function withUnitOf(bare: Expression, amount: Quantity, other: Quantity): Expression {
  const value = toBase(amount.value, other.unit);
  if (value === undefined) return bare;
  const unit = other.unit === 'ft-in' ? 'ft' : other.unit;
  const literal: Literal =
    other.dimension === 'length' ? length(value, unit) : { kind: 'quantity', dimension: other.dimension, value, unit };
  return { kind: 'literal', literal, from: bare.from, to: bare.to };
}

export function quantityIn(expression: Expression): Quantity | undefined {
  return expression.kind === 'literal' && expression.literal.kind === 'quantity' ? expression.literal : undefined;
}

/**
 * Where a difference has the look of feet and inches (28' - 11"): the length it may mean, the difference, and a way to
 * write the difference that cannot be mistaken.
 */
export function joinedSpellings(left: Expression, right: Expression): readonly [string, string, string] | undefined {
  const [feet, inches] = [quantityIn(left), quantityIn(right)];
  if (feet?.unit !== 'ft' || inches?.unit !== 'in' || inches.value >= FOOT || inches.value < 0) return undefined;
  const print = (value: number): string => formatQuantity({ value, dimension: 'length', unit: 'ft-in' }, 'feet');
  const small = formatQuantity({ value: inches.value, dimension: 'length', unit: 'in' }, 'feet');
  const whole = formatQuantity({ value: feet.value, dimension: 'length', unit: 'ft' }, 'feet');
  return [`${Math.floor(feet.value / FOOT)}'-${small}`, print(feet.value - inches.value), `${whole} - 0'-${small}`];
}

function sameKind(low: Expression, high: Expression): boolean {
  if (low.kind !== 'literal' || high.kind !== 'literal') return true;
  const [left, right] = [low.literal, high.literal];
  if (left.kind !== right.kind) return false;
  return left.kind !== 'quantity' || right.kind !== 'quantity' || left.dimension === right.dimension;
}

/** Whether an inch mark given twice means feet and inches: 2" 8" before an x. */
export function twiceInches(first: Expression, second: Expression): string | undefined {
  const [left, right] = [quantityIn(first), quantityIn(second)];
  if (left?.unit !== 'in' || right?.unit !== 'in') return undefined;
  const whole = left.value % INCH === 0 && right.value % INCH === 0 && right.value < FOOT && left.value < FOOT;
  return whole ? `${left.value / INCH}'-${right.value / INCH}"` : undefined;
}
