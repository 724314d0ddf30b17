// The few facts of a plan that change how everything else is read: units, length of the working day. Read straight from
// the plan's own lines, so that they are known before anything is evaluated.
import type { Declaration, GivenLine } from '#grammar/shape';
import type { Expression } from '#grammar/tree';

export interface Settings {
  readonly units: 'feet' | 'metric' | 'mm';
  /** Working minutes of a usual day. */
  readonly minutesPerDay: number;
  readonly daysPerWeek: number;
}

export const usualSettings: Settings = { units: 'feet', minutesPerDay: 480, daysPerWeek: 5 };

/** The settings a plan declaration gives; the same object where nothing changed. */
export function settingsOf(plan: Declaration | undefined, before?: Settings): Settings {
  if (plan === undefined) return before !== undefined && same(before, usualSettings) ? before : usualSettings;
  const units = one(plan.given.units)?.value as Settings['units'] | undefined;
  const week = one(plan.given.workweek)?.value as WorkWeekGiven | undefined;
  const patterns = week?.hours ?? [];
  const lunch = week?.lunch === undefined ? 0 : minutesOf(week.lunch.expression);
  const [first] = patterns;
  const made: Settings = {
    units: units ?? usualSettings.units,
    minutesPerDay: first === undefined ? usualSettings.minutesPerDay : Math.max(1, hoursMinutes(first.value.hours, lunch)),
    daysPerWeek:
      patterns.length === 0 ? usualSettings.daysPerWeek : new Set(patterns.flatMap((pattern) => pattern.value.days)).size,
  };
  return before !== undefined && same(before, made) ? before : made;
}

interface WorkWeekGiven {
  readonly hours: readonly { readonly value: { readonly days: readonly number[]; readonly hours: Hours } }[];
  readonly lunch?: { readonly expression: Expression };
}
/** Clock times from and to, or a length of time. */
export type Hours = readonly [number, number] | { readonly expression: Expression };

/** Working minutes of one day: a clock span less lunch, or the hours as given. */
export function hoursMinutes(hours: Hours, lunch: number): number {
  return 'expression' in hours ? minutesOf(hours.expression) : hours[1] - hours[0] - lunchIn(hours[0], hours[1], lunch);
}

/** A half day has no lunch: it is taken where noon lies within the span, or the span is longer than six hours. */
export function lunchIn(from: number, to: number, lunch: number): number {
  const isLong = (from < NOON && to > NOON) || to - from > 6 * 60;
  return isLong && lunch > 0 && to - from > lunch ? lunch : 0;
}

export const NOON = 12 * 60;

function minutesOf(expression: Expression): number {
  return expression.kind === 'literal' && expression.literal.kind === 'quantity' ? expression.literal.value : 0;
}

function one(given: GivenLine | readonly GivenLine[] | undefined): GivenLine | undefined {
  return given === undefined || Array.isArray(given) ? undefined : (given as GivenLine);
}

function same(a: Settings, b: Settings): boolean {
  return a.units === b.units && a.minutesPerDay === b.minutesPerDay && a.daysPerWeek === b.daysPerWeek;
}
