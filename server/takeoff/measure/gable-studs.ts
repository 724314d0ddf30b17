// Studs under a sloping roof: each as long as the roof is high over its place, so that they step by spacing × pitch. They are
// laid out from one end; those at the ends, where the roof comes down to the plate, are cut as long as the first step.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Pieces } from '../lines.ts';
import { counted } from './portion.ts';

type Length = Quantity<'length'>;

/** How high the roof stands over a place of the wall, by its distance from the end where it begins to rise. */
export type Height = (from: Length) => Length;

const underSlope = form('stud', 'distance from the end × pitch', (from = 0, pitch = 0) => from * pitch);
const underBreak = form(
  'stud',
  'distance up to the break × pitch + distance from there × upper pitch',
  (from = 0, at = 0, pitch = 0, upper = 0) => Math.min(from, at) * pitch + Math.max(0, from - at) * upper,
);
const partOf = form('stud', 'rise × distance from the low end ÷ span', (from = 0, rise = 0, span = 1) => (rise * from) / span);

export function bySlope(pitch: Quantity<'slope'>): Height {
  return (from) => measure('length', underSlope, from, pitch);
}

export function byBreak(breakAt: Length, pitch: Quantity<'slope'>, upper: Quantity<'slope'>): Height {
  return (from) => measure('length', underBreak, from, breakAt, pitch, upper);
}

export function byRise(rise: Length, span: Length): Height {
  return (from) => measure('length', partOf, from, rise, span);
}

/**
 * `count` studs of a wall `width` long, as conventions count them, times `walls` alike. `both` where the roof comes down at
 * either end, else it is highest at the far one.
 */
export function steppedStuds(
  width: Length,
  spacing: Length,
  count: Quantity<'number'>,
  walls: number,
  both: boolean,
  height: Height,
): readonly Pieces[] {
  const whole = Math.round(count.value);
  const places: number[] = [];
  // No more than are counted, however close.
  for (let at = spacing.value; at < width.value * (1 - EXACT) && places.length < Math.min(whole, MOST); at += spacing.value)
    places.push(both ? Math.min(at, width.value - at) : at);
  if (!both && places.length < whole) places.push(width.value);
  const first = Math.min(spacing.value, both ? width.value / 2 : width.value);
  const counts = new Map<number, number>();
  for (const place of [...places, ...new Array<number>(Math.max(0, Math.min(whole, MOST) - places.length)).fill(first)])
    counts.set(Math.round(place), (counts.get(Math.round(place)) ?? 0) + walls);
  return [...counts]
    .sort(([a], [b]) => b - a)
    .map(([place, many]) => ({
      count: counted('studs', many),
      length: height(constant('distance from the end', place, 'length')),
    }));
}

const EXACT = 1e-9;

/** A wall that no house has. */
const MOST = 1000;
