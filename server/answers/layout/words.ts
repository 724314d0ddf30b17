// Shares and places as the tables of a layout write them.
import type { Face, Line } from '#takeoff/lines';
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

/** As whoever stands in it calls it: 'Kitchen, south wall', 'Main floor, rim, south', 'Hall, floor'. */
export function faceText(line: Line, { label }: Face, view: View): string {
  const { part } = line.where;
  const place = placeText(line, view);
  if (part === label) return place;
  if (part !== 'walls') return `${place}, ${label}`;
  const of = labelOf(line.where.room ?? line.where.element, view);
  return `${of}, ${label.replace(LOOKS, '$1 wall$2')}`;
}
const LOOKS = /^((?:north|south)?(?:east|west)?)((?: \d+)?)(?=,|$)/;
