// Values that several kinds take alike: the sides of the compass, a place, outlines by sides, corners or rectangles, the months.
import { by, either, fields, listOf, oneOf, phrase, quantity } from './types.ts';

const length = quantity('length');
export const sides = oneOf('north', 'east', 'south', 'west');
/** East, then north. */
export const place = fields({ east: length, north: phrase(',', length) });
/** A rectangle, and others that are put to it or cut from it. */
const rectangles = fields({
  first: by(length, length),
  more: phrase(',', listOf(fields({ how: oneOf('plus', 'less'), size: by(length, length), at: phrase('at', place) }))),
});
const corners = fields({ corners: phrase('corners', listOf(by(length, length))) });
const walk = listOf(fields({ side: sides, length }));
export const outline = either(rectangles, corners, walk);
export const months = oneOf('jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec');
