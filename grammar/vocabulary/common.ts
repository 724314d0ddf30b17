// Values that several kinds take alike: the sides of the compass, an outline walked along them, the months.
import { fields, listOf, oneOf, quantity } from './types.ts';

export const sides = oneOf('north', 'east', 'south', 'west');
export const outline = listOf(fields({ side: sides, length: quantity('length') }));
export const months = oneOf('jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec');
