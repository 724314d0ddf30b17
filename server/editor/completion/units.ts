// Units for a number that stands there without one, and a few ways to write a value of a dimension.
import type { Dimension } from '#kit/dimension';
import { UNITS } from '#kit/units/table';
import { words } from '../prose.ts';
import type { View } from '../view.ts';
import type { Suggestion } from './suggestion.ts';

/** `12` becomes 12', 12", 12 m …: those of the plan's own units first. */
export function unitSuggestions(
  number: string,
  dimension: Dimension | undefined,
  { plan: { model } }: View,
): readonly Suggestion[] {
  const own = model.settings.units === 'feet' ? 'feet' : 'metric';
  const [top = '', bottom] = (dimension ?? '').split('/');
  const fitting = UNITS.filter((unit) => dimension === undefined || (bottom === undefined && unit.dimension === top));
  const spelled = fitting.map((unit, at): Suggestion => {
    const label = spelling(number, unit.unit, unit.one);
    const ofPlan = unit.system === 'both' || unit.system === own;
    return {
      label,
      detail: unit.dimension,
      help: [words(unit.words.join(', '))],
      kind: 'unit',
      rank: (USUAL.includes(unit.unit) ? -100 + USUAL.indexOf(unit.unit) : ofPlan ? 0 : 100) + at,
    };
  });
  return top === 'money' && bottom !== undefined ? [] : spelled;
}

/** Times are mostly said in these. */
const USUAL = ['d', 'days', 'h', 'weeks'];

/** Marks stand straight behind the number; so do letters that are written so. */
const GLUED: ReadonlyMap<string, string> = new Map([
  ['ft', "'"],
  ['in', '"'],
  ['%', '%'],
  ['d', 'd'],
  ['w', 'w'],
  ['h', 'h'],
]);

function spelling(number: string, unit: string, one: string | undefined): string {
  const glued = GLUED.get(unit);
  if (glued !== undefined) return `${number}${glued}`;
  return `${number} ${number === '1' && one !== undefined ? one : unit}`;
}
