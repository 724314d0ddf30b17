// Numbers as a sentence of a finding says them: lengths and areas in the plan's units, days by their date or number.
import { DAY_MINUTES, dayAndMonth, dayOfFinish } from '#kit/dates';
import type { Dimension } from '#kit/dimension';
import { formatQuantity } from '#kit/units';
import { degreesOf } from '#kit/units/tangent';
import type { Model } from '#model/resolve';
import type { Timeline } from '#schedule/timeline';

/** A length in base units, as the plan's drawings would print it. */
export function lengthText(value: number, model: Model): string {
  const text = quantityText({ value, dimension: 'length' }, model);
  // What is not nothing is never told as nothing.
  return value !== 0 && text === '0"' ? formatQuantity({ value, dimension: 'length', unit: 'in' }, 'feet') : text;
}

/** An area in base units. */
export function areaText(value: number, model: Model): string {
  return quantityText({ value, dimension: 'area' }, model);
}

export function quantityText(
  { value, dimension }: { readonly value: number; readonly dimension: Dimension },
  { settings: { units } }: Model,
  unit = dimension === 'length' && units === 'mm' ? 'mm' : undefined,
): string {
  return formatQuantity({ value, dimension, ...(unit === undefined ? {} : { unit }) }, units === 'feet' ? 'feet' : 'metric');
}

/** '1 day', '3 days'. */
export function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

/** The day a step begins that begins at a moment. */
export function startText(moment: number, timeline: Timeline): string {
  return dayText(Math.floor(moment / DAY_MINUTES), timeline);
}

/** The day a step is done that finishes at a moment: a midnight belongs to the day before it. */
export function finishText(moment: number, timeline: Timeline): string {
  return dayText(dayOfFinish(moment), timeline);
}

/** '12 May', or the number of the day where the plan has no start. */
export function dayText(day: number, timeline: Timeline): string {
  return timeline.dated ? dayAndMonth(day) : `day ${1 + day - timeline.start}`;
}

/** '"bath", "hall" and "bed"': the first few, then how many more. */
export function namesText(names: readonly string[], most = 4): string {
  const quoted = names.slice(0, most).map((name) => `"${name}"`);
  const others = names.length - quoted.length;
  if (others > 0) return `${quoted.join(', ')} and ${others} more`;
  if (quoted.length < 2) return quoted.join('');
  return `${quoted.slice(0, -1).join(', ')} and ${quoted[quoted.length - 1]}`;
}

/** '1.5:1 (34 degrees)', 'upright': how far a side leans back, level to upright, and the angle that it stands at. */
export function sideText(slope: number): string {
  if (slope <= 0) return 'upright';
  return `${Math.round(slope * 100) / 100}:1 (${Math.round(degreesOf(1 / slope))} degrees)`;
}
