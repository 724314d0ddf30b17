// The hours that a plan, a trade and a step are worked: the week, and the months and dates that have other hours.
import { civil, shortMonth, weekday } from '#kit/dates';
import type { Plan, Step, Trade } from '#model/model';
import { lunchIn, NOON } from '#model/settings';
import type { WorkWeek } from './calendar.ts';
import { type OwnHours, type Shift, tidyShifts } from './calendar-table.ts';

/** Work begins at eight where only hours are given. */
const MORNING = 8 * 60;

type Hours = readonly [number, number] | { readonly value: number };
/** A task or visit with days and hours of its own. */
export type OwnWeek = Extract<Step, { kind: 'task' | 'inspection' }>;

/** The step's week before its trade's, the trade's before the plan's; an inspecting body comes on the days it says. */
export function weekOf(
  plan: Plan | undefined,
  trade: Trade | undefined,
  step: OwnWeek | undefined,
  minutesPerDay: number,
): WorkWeek {
  const others = step?.given.works ?? trade?.given.works;
  const given = others?.value ?? plan?.given.workweek?.value.hours;
  const lunch = others === undefined ? lunchOf(plan) : 0;
  const shifts: Shift[][] = [[], [], [], [], [], [], []];
  const patterns = given === undefined ? [{ days: [0, 1, 2, 3, 4], hours: undefined }] : given.map(({ value }) => value);
  for (const { days, hours } of patterns) {
    for (const day of days) shifts[day]!.push(...shiftsOf((hours as Hours | undefined) ?? { value: minutesPerDay }, lunch));
  }
  const sees = trade?.given.sees?.value.flatMap(({ value }) => value);
  return { shifts: shifts.map((list, day) => (sees !== undefined && !sees.includes(day) ? [] : list)) };
}

/**
 * Other hours by month for days that are worked anyway, and by date for any day: a Saturday, or a holiday that is worked.
 * A trade's before the plan's, a date's before its month's.
 */
export function ownHours(
  week: WorkWeek,
  plan: Plan | undefined,
  trade: Trade | undefined,
): { readonly on: OwnHours; readonly dated: (day: number) => boolean } {
  const lines = [trade?.given.hours, plan?.given.hours].flatMap((line) => line?.value.map(({ value }) => value) ?? []);
  if (lines.length === 0) return NOTHING;
  const byMonth = new Map<string, readonly Shift[]>();
  const byDay = new Map<number, readonly Shift[]>();
  for (const { when, hours } of lines) {
    const shifts = tidyShifts(shiftsOf(hours as Hours, lunchOf(plan)));
    if (typeof when === 'string') {
      if (!byMonth.has(when)) byMonth.set(when, shifts);
    } else {
      for (let day = when.first; day <= when.last && day < when.first + LONGEST; day++) {
        if (!byDay.has(day)) byDay.set(day, shifts);
      }
    }
  }
  return {
    on: (day) => byDay.get(day) ?? (isWorked(week, day) ? byMonth.get(shortMonth(civil(day).month).toLowerCase()) : undefined),
    dated: (day) => byDay.has(day),
  };
}

/** A span of dates is laid out day by day, so one of a hundred years is not. */
const LONGEST = 3700;
const NOTHING = { on: () => undefined, dated: () => false };

export function isWorked({ shifts }: WorkWeek, day: number): boolean {
  return shifts[weekday(day)]!.length > 0;
}

function lunchOf(plan: Plan | undefined): number {
  return plan?.given.workweek?.value.lunch?.value ?? 0;
}

/** A span has its lunch cut out; so many hours begin in the morning. */
function shiftsOf(hours: Hours, lunch: number): readonly Shift[] {
  return isSpan(hours) ? around(hours[0], hours[1], lunch) : [[MORNING, MORNING + hours.value]];
}

function isSpan(hours: Hours): hours is readonly [number, number] {
  return Array.isArray(hours);
}

/** A span with its lunch cut out of the middle, at noon where noon lies within. */
function around(from: number, to: number, longest: number): readonly Shift[] {
  const lunch = lunchIn(from, to, longest);
  if (lunch === 0) return [[from, to]];
  const start = from < NOON && NOON + lunch < to ? NOON : from + Math.floor((to - from - lunch) / 2);
  return [
    [from, start],
    [start + lunch, to],
  ];
}
