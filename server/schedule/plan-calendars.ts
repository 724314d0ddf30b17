// The working times of a plan, its trades and their outside work, as calendars: week, hours, closed days, holidays,
// absences, an allowance for weather. A calendar is kept while what it was made from is the same.
import { civil, dayOf, weekday } from '#kit/dates';
import type { ElementOf, Plan, Trade } from '#model/model';
import type { Model } from '#model/resolve';
import { type Calendar, calendar, type WorkWeek } from './calendar.ts';
import { type HolidayRule, holidayDays } from './holidays.ts';

export interface PlanCalendars {
  readonly calendars: readonly Calendar[];
  /** The plan's own is number 0. */
  readonly of: (trade: Trade | undefined, outside: boolean) => number;
}

export interface CalendarMemory {
  readonly kept: Map<string, { readonly from: readonly unknown[]; readonly calendar: Calendar }>;
}
export function calendarMemory(): CalendarMemory {
  return { kept: new Map() };
}

type Holiday = ElementOf<'holiday'>;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
/** Work begins at eight where only hours are given. */
const MORNING = 8 * 60;
/** Days laid out at first; calendars reach further by themselves. */
const SPAN = 800;

/** `first` is the plan's first day. */
export function planCalendars(model: Model, first: number, memory: CalendarMemory): PlanCalendars {
  const { plan } = model;
  const holidays = holidaysOf(model);
  const calendars: Calendar[] = [];
  const numbers = new Map<string, number>();
  const make = (key: string, from: readonly unknown[], build: () => Calendar): number => {
    let number = numbers.get(key);
    if (number !== undefined) return number;
    let kept = memory.kept.get(key);
    if (kept === undefined || kept.from.length !== from.length || kept.from.some((each, at) => each !== from[at])) {
      kept = { from, calendar: build() };
      memory.kept.set(key, kept);
    }
    number = calendars.length;
    calendars.push(kept.calendar);
    numbers.set(key, number);
    return number;
  };
  const { settings } = model;
  const byTrade = new Map<Trade | undefined, (number | undefined)[]>();
  const of = (trade: Trade | undefined, outside: boolean): number => {
    let pair = byTrade.get(trade);
    if (pair === undefined) byTrade.set(trade, (pair = []));
    return (pair[outside ? 1 : 0] ??= find(trade, outside));
  };
  const find = (trade: Trade | undefined, outside: boolean): number => {
    const weather = outside && (plan?.given.weather?.value.length ?? 0) > 0;
    const own =
      trade !== undefined && (trade.given.works !== undefined || trade.given.away.length > 0 || trade.given.sees !== undefined)
        ? trade
        : undefined;
    const key = `${own?.name ?? ''}${weather ? ' outside' : ''}`;
    return make(key, [plan, own, first, settings, ...holidays], () => {
      const week = weekOf(plan, own, settings.minutesPerDay);
      const closed = closedDays(plan, own, holidays, first);
      const lost = weather ? weatherDays(plan, week, closed, first) : NO_DAYS;
      return calendar(week, (day) => closed(day) || lost.has(day), first, first + SPAN);
    });
  };
  of(undefined, false);
  return { calendars, of };
}

/** The rows of the holidays that the plan keeps. */
export function holidaysOf({ plan, rows }: Model): readonly Holiday[] {
  const kept = plan?.given.holidays?.value.toLowerCase();
  return kept === undefined ? NONE : rows('holiday').filter((row) => row.given.in?.value.toLowerCase() === kept);
}

const NONE: readonly Holiday[] = [];
const NO_DAYS: ReadonlySet<number> = new Set();

function weekOf(plan: Plan | undefined, trade: Trade | undefined, minutesPerDay: number): WorkWeek {
  const given = trade?.given.works?.value ?? plan?.given.workweek?.value.hours;
  const lunch = trade?.given.works === undefined ? (plan?.given.workweek?.value.lunch?.value ?? 0) : 0;
  const shifts: (readonly [number, number])[][] = [[], [], [], [], [], [], []];
  const patterns = given === undefined ? [{ days: [0, 1, 2, 3, 4], hours: undefined }] : given.map(({ value }) => value);
  for (const { days, hours } of patterns) {
    for (const day of days) {
      if (hours === undefined) shifts[day]!.push(...around(MORNING, MORNING + minutesPerDay, 0));
      else if (Array.isArray(hours)) shifts[day]!.push(...around(hours[0] as number, hours[1] as number, lunch));
      else shifts[day]!.push([MORNING, MORNING + (hours as { value: number }).value]);
    }
  }
  const sees = trade?.given.sees?.value.flatMap(({ value }) => value);
  return { shifts: shifts.map((list, day) => (sees !== undefined && !sees.includes(day) ? [] : list)) };
}

/** A span with its lunch cut out of the middle, at noon where noon lies within. */
function around(from: number, to: number, lunch: number): (readonly [number, number])[] {
  if (lunch <= 0 || to - from <= lunch) return [[from, to]];
  const noon = 12 * 60;
  const start = from < noon && noon + lunch < to ? noon : from + Math.floor((to - from - lunch) / 2);
  return [
    [from, start],
    [start + lunch, to],
  ];
}

function closedDays(
  plan: Plan | undefined,
  trade: Trade | undefined,
  holidays: readonly Holiday[],
  first: number,
): (day: number) => boolean {
  const spans = [...(plan?.given.closed ?? []), ...(trade?.given.away ?? [])].flatMap((line) =>
    line.value.map(({ value }) => value),
  );
  const year = civil(first).year;
  const off = new Set(holidays.flatMap((row) => daysOff(row, year)));
  return (day) => off.has(day) || spans.some((span) => day >= span.first && day <= span.last);
}

/** A plan may run long: ten years of holidays are laid out. */
function daysOff(row: Holiday, year: number): readonly number[] {
  const rule = holidayRule(row);
  const since = row.given.since?.value ?? 0;
  return rule === undefined ? [] : holidayDays(rule, Math.max(year - 1, since), year + 10);
}

export function holidayRule(row: Holiday): HolidayRule | undefined {
  const on = row.given.on?.value;
  if (on === undefined) return undefined;
  if ('day' in on)
    return {
      kind: 'fixed',
      month: MONTHS.indexOf(on.month) + 1,
      day: on.day,
      observed: on.observed === undefined ? 'none' : 'nearest-weekday',
    };
  const nth = on.nth === 'last' ? 'last' : Number.parseInt(on.nth, 10);
  if (nth !== 'last' && !(nth >= 1 && nth <= 5)) return undefined;
  return { kind: 'nth', nth: nth as 1 | 2 | 3 | 4 | 5 | 'last', weekday: on.weekday[0] ?? 0, month: MONTHS.indexOf(on.of) + 1 };
}

/** Working days lost to weather in each month, spread evenly over its working days. */
function weatherDays(
  plan: Plan | undefined,
  week: WorkWeek,
  closed: (day: number) => boolean,
  first: number,
): ReadonlySet<number> {
  const lost = new Set<number>();
  const dayMinutes = Math.max(
    1,
    week.shifts.reduce(
      (most, list) =>
        Math.max(
          most,
          list.reduce((sum, [from, to]) => sum + to - from, 0),
        ),
      0,
    ),
  );
  const { year, month } = civil(first);
  for (let ahead = 0; ahead < 60; ahead++) {
    const at = month - 1 + ahead;
    const [y, m] = [year + Math.floor(at / 12), (at % 12) + 1];
    const allowance = plan?.given.weather?.value.find(({ value }) => value.month === MONTHS[m - 1]);
    const count = allowance === undefined ? 0 : Math.round(allowance.value.lost.value / dayMinutes);
    if (count <= 0) continue;
    const days: number[] = [];
    const end = m === 12 ? dayOf(y + 1, 1, 1) : dayOf(y, m + 1, 1);
    for (let day = dayOf(y, m, 1); day < end; day++) if (week.shifts[weekday(day)]!.length > 0 && !closed(day)) days.push(day);
    for (let nth = 0; nth < Math.min(count, days.length); nth++) lost.add(days[Math.floor(((nth + 0.5) * days.length) / count)]!);
  }
  return lost;
}
