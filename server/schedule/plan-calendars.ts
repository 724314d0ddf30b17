// The working times of a plan, its trades, their outside work and steps with times of their own, as calendars: week, hours,
// closed days, holidays, absences, weather, windows of dates. A calendar is kept while what it was made from is the same.

import { civil, DAY_MINUTES } from '#kit/dates';
import { sameList } from '#kit/differing';
import type { ElementOf, Plan, Step, Trade } from '#model/model';
import type { Model } from '#model/resolve';
import { type Calendar, calendar, type WorkWeek } from './calendar.ts';
import { type HolidayRule, holidayDays } from './holidays.ts';
import { daysLost, exposureOf, MONTHS, type Weather, weatherOf } from './weather-days.ts';
import { isWorked, type OwnWeek, ownHours, weekOf } from './working-week.ts';

export interface PlanCalendars {
  readonly calendars: readonly Calendar[];
  /** Number of the calendar that a step is done by; the plan's own is number 0. */
  readonly of: (step: Step, trade: Trade | undefined) => number;
}

export interface CalendarMemory {
  readonly kept: Map<string, { readonly from: readonly unknown[]; readonly calendar: Calendar }>;
}
export function calendarMemory(): CalendarMemory {
  return { kept: new Map() };
}

type Holiday = ElementOf<'holiday'>;
/** Days laid out at first; calendars reach further by themselves. */
const SPAN = 800;

/** `first` is the plan's first day, `asOf` the status date. `weather` is the plan's, unless somebody throws it. */
export function planCalendars(
  model: Model,
  first: number,
  asOf: number | undefined,
  memory: CalendarMemory,
  weather = weatherOf(model, asOf),
): PlanCalendars {
  const { plan, settings } = model;
  const holidays = holidaysOf(model);
  const calendars: Calendar[] = [];
  const numbers = new Map<string, number>();
  const make = (trade: Trade | undefined, step: OwnWeek | undefined, exposure: number): number => {
    const key = `${trade?.name ?? ''}/${exposure}/${step?.name ?? ''}`;
    let number = numbers.get(key);
    if (number !== undefined) return number;
    const diary = exposure === 0 ? [] : [asOf, model.list('progress')];
    const from = [plan, trade, step, first, settings, ...diary, ...holidays];
    let kept = memory.kept.get(key);
    if (kept === undefined || !sameList(kept.from, from)) {
      kept = { from, calendar: calendarOf(plan, trade, step, exposure, { first, holidays, weather, settings }) };
      memory.kept.set(key, kept);
    }
    number = calendars.length;
    calendars.push(kept.calendar);
    numbers.set(key, number);
    return number;
  };
  // Most steps have no times of their own: those of a trade and an exposure are looked up without a key.
  const byTrade = new Map<Trade | undefined, (number | undefined)[]>();
  const of = (step: Step, trade: Trade | undefined): number => {
    const exposure = exposureOf(step) & weather.kinds;
    if (hasOwnTimes(step)) return make(ownTrade(trade), step, exposure);
    let row = byTrade.get(trade);
    if (row === undefined) byTrade.set(trade, (row = []));
    return (row[exposure] ??= make(ownTrade(trade), undefined, exposure));
  };
  make(undefined, undefined, 0);
  return { calendars, of };
}

/** A trade that keeps other times than the plan. */
function ownTrade(trade: Trade | undefined): Trade | undefined {
  if (trade === undefined) return undefined;
  const { works, hours, away, sees } = trade.given;
  return works !== undefined || hours !== undefined || away.length > 0 || sees !== undefined ? trade : undefined;
}

function hasOwnTimes(step: Step): step is OwnWeek {
  if (step.kind !== 'task' && step.kind !== 'inspection') return false;
  return step.given.works !== undefined || yearly(step) !== undefined;
}

interface Around {
  readonly first: number;
  readonly holidays: readonly Holiday[];
  readonly weather: Weather;
  readonly settings: Model['settings'];
}

function calendarOf(
  plan: Plan | undefined,
  trade: Trade | undefined,
  step: OwnWeek | undefined,
  exposure: number,
  { first, holidays, weather, settings }: Around,
): Calendar {
  const week = weekOf(plan, trade, step, settings.minutesPerDay);
  const own = ownHours(week, plan, trade);
  const closed = closedDays(plan, trade, holidays, own.dated, first);
  const outOfSeason = step === undefined ? NEVER : outside(step);
  const isOpen = (day: number): boolean => (own.dated(day) || isWorked(week, day)) && !closed(day);
  const lost = exposure === 0 ? NEVER : daysLost(weather, exposure, first, longestDay(week), isOpen);
  return calendar(week, (day) => closed(day) || outOfSeason(day) || lost(day), first, first + SPAN, own.on);
}

const NEVER = (): boolean => false;

function longestDay({ shifts }: WorkWeek): number {
  let longest = 1;
  for (const list of shifts) {
    let sum = 0;
    for (const [from, to] of list) sum += to - from;
    longest = Math.max(longest, sum);
  }
  return longest;
}

function yearly({ given }: OwnWeek): { readonly from: MonthDay; readonly to: MonthDay } | undefined {
  const window = given.between?.value;
  if (window === undefined || typeof window.from === 'number') return undefined;
  return window as { readonly from: MonthDay; readonly to: MonthDay };
}
interface MonthDay {
  readonly month: string;
  readonly day: number;
}

/** Days outside a window that comes each year, over the turn of the year where it ends before it begins. */
function outside(step: OwnWeek): (day: number) => boolean {
  const window = yearly(step);
  if (window === undefined) return NEVER;
  const at = ({ month, day }: MonthDay): number => (MONTHS.indexOf(month) + 1) * 100 + day;
  const [from, to] = [at(window.from), at(window.to)];
  return (day) => {
    const { month, day: dayOfMonth } = civil(day);
    const now = month * 100 + dayOfMonth;
    return from <= to ? now < from || now > to : now < from && now > to;
  };
}

/** The rows of the holidays that the plan keeps: those of its country, and of its region. */
export function holidaysOf({ plan, rows }: Model): readonly Holiday[] {
  const kept = plan?.given.holidays?.value.toLowerCase();
  if (kept === undefined) return NONE;
  const country = kept.split('-')[0];
  return rows('holiday').filter((row) =>
    row.given.in?.value.some(({ value }) => value.toLowerCase() === kept || value.toLowerCase() === country),
  );
}

const NONE: readonly Holiday[] = [];

/** Days that nobody works, or that this trade does not. A date with hours of its own is worked on a holiday too. */
function closedDays(
  plan: Plan | undefined,
  trade: Trade | undefined,
  holidays: readonly Holiday[],
  dated: (day: number) => boolean,
  first: number,
): (day: number) => boolean {
  const spans = [...(plan?.given.closed ?? []), ...(trade?.given.away ?? [])].flatMap((line) =>
    line.value.map(({ value }) => value),
  );
  const year = civil(first).year;
  const off = new Set(holidays.flatMap((row) => daysOff(row, year)));
  return (day) => (off.has(day) && !dated(day)) || spans.some((span) => day >= span.first && day <= span.last);
}

/** A plan may run long: ten years of holidays are laid out. */
function daysOff(row: Holiday, year: number): readonly number[] {
  const rule = holidayRule(row);
  const since = row.given.since?.value ?? 0;
  const until = row.given.until?.value ?? year + 10;
  return rule === undefined ? [] : holidayDays(rule, Math.max(year - 1, since), Math.min(year + 10, until));
}

export function holidayRule(row: Holiday): HolidayRule | undefined {
  const on = row.given.on?.value;
  if (on === undefined) return undefined;
  if ('wait' in on) {
    const days = Math.round(on.wait.value / DAY_MINUTES);
    return { kind: 'easter', offset: on.side === 'before easter' ? -days : days };
  }
  if ('side' in on)
    return { kind: 'beside', side: on.side, weekday: on.weekday[0] ?? 0, month: MONTHS.indexOf(on.month) + 1, day: on.day };
  if ('day' in on)
    return { kind: 'fixed', month: MONTHS.indexOf(on.month) + 1, day: on.day, observed: OBSERVED[on.observed ?? ''] };
  const nth = on.nth === 'last' ? 'last' : Number.parseInt(on.nth, 10);
  if (nth !== 'last' && !(nth >= 1 && nth <= 5)) return undefined;
  return { kind: 'nth', nth: nth as 1 | 2 | 3 | 4 | 5 | 'last', weekday: on.weekday[0] ?? 0, month: MONTHS.indexOf(on.of) + 1 };
}

const OBSERVED = {
  '': 'none',
  'nearest weekday': 'nearest-weekday',
  'next monday': 'next-monday',
  'two days later': 'two-days-later',
} as const;
