// Whether a literal can stand where a dimension is wanted, and what to call it where it cannot.
import type { Dimension } from '#kit/dimension';
import type { Literal } from '../tree.ts';

/** A bare number may be a count, a length of a plan in millimetres, a U value of the plan's units; zero needs no unit. */
const BARE: ReadonlySet<Dimension> = new Set<Dimension>(['number', 'length', 'conductance', 'resistance', 'slope']);

export function fitsDimension(literal: Literal, wanted: Dimension): boolean {
  switch (literal.kind) {
    case 'quantity':
      if (literal.dimension === wanted) return true;
      if (literal.dimension === 'bare') return BARE.has(wanted) || literal.value === 0;
      // A slope may be given in percent; money each is money.
      return (
        (wanted === 'slope' && literal.dimension === 'number') || (wanted === 'money/number' && literal.dimension === 'money')
      );
    case 'ratio':
      return wanted === 'slope' || wanted === 'number';
    default:
      return false;
  }
}

/** 'an area', for messages. */
export function unitWord(literal: Literal): string {
  switch (literal.kind) {
    case 'quantity':
      return literal.dimension === 'bare' ? 'a bare number' : dimensionWord(literal.dimension);
    case 'nominal':
      return 'a lumber size';
    case 'bar':
      return 'a bar size';
    case 'ratio':
      return 'a ratio';
    case 'date':
      return 'a date';
    case 'clock':
      return 'a time of day';
    case 'weekdays':
      return 'days of the week';
    case 'door':
      return 'a door size';
  }
}

export function dimensionWord(dimension: Dimension): string {
  const [top, bottom] = dimension.split('/');
  const article = top === 'area' ? 'an ' : top === 'money' || top === 'time' ? '' : 'a ';
  return bottom === undefined ? `${article}${top}` : `${article}${top} per ${bottom}`;
}
