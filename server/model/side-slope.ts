// How far the sides of a hole lean back: so much level to one upright. A slope in degrees or percent is the angle that the
// side stands at, so it is turned over: 60 degrees are 0.58 to 1, and 34 degrees 1.5 to 1.
import { form, measure, type Quantity } from '#kit/quantity';

const leaning = form('level to upright', '1 ÷ the rise of the side', (rise = 0) => 1 / Math.max(rise, LEAST));
/** Flatter than this is level ground. */
const LEAST = 1e-6;

export function sideSlopeOf(given: Quantity<'slope'>): Quantity<'slope'> {
  return given.unit === 'deg' || given.unit === '%' ? measure('slope', leaning, given) : given;
}
