// Shares and places as the tables of a layout write them.
import type { Line } from '#takeoff/lines';
import { labelOf } from '../takeoff-lines.ts';
import type { View } from '../view.ts';

/** '6.5%' of a whole; empty where there is none. */
export function shareText(part: number, whole: number): string {
  return whole > 0 ? `${(Math.round((part / whole) * 1000) / 10).toFixed(1)}%` : '';
}

/** 'Bedroom, walls'. */
export function placeText({ where }: Line, view: View): string {
  const of = labelOf(where.room ?? where.element, view);
  return where.part === undefined ? of : `${of}, ${where.part}`;
}
