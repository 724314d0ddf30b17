// Weather as chance: calendars of outside work that lose other days in each run. A day that is lost is lost to everybody
// outside; the chance of it is the plan's `bad-weather` of its month, or the days of `weather` over those that are worked in it.
import { civil, DAY_MINUTES, dayOf } from '#kit/dates';
import type { Model } from '#model/resolve';
import { type Calendar, workBetween } from '../calendar.ts';
import { layOut, type ShiftTable } from '../calendar-table.ts';
import { calendarMemory, planCalendars } from '../plan-calendars.ts';
import type { Timeline } from '../timeline.ts';
import { hasFinished, type Timing } from '../timing.ts';
import { type Weather as Allowed, allowedIn, exposureOf, MONTHS, weatherOf as weatherAllowed } from '../weather-days.ts';
import { drawOf, thingOf } from './draws.ts';

export interface Weather {
  /** Calendars, with those that the weather changes after those of the plan; and which of them each step works by. */
  readonly calendars: Timing['calendars'];
  readonly calendarOf: Int32Array;
  /** Throws the weather of a run. */
  readonly turn: (run: number) => void;
}

/** A table that is filled anew in each run. */
type RunTable = Omit<ShiftTable, 'count'> & { count: number };

/** One calendar of outside work: without weather, and as it is in the present run. */
interface OpenAir {
  readonly calendar: Calendar;
  readonly dry: ShiftTable;
  readonly mine: RunTable;
  /** For each day the chance that it is lost. */
  readonly chance: Float64Array;
}

/** Undefined where the plan tells no weather, or nothing of it is outside. Days from `first` to `last` have weather. */
export function weatherOf(model: Model, timeline: Timeline, seed: number, first: number, last: number): Weather | undefined {
  const { steps, trades, timing, start, progress } = timeline;
  const { asOf } = progress;
  const allowed = weatherAllowed(model, asOf);
  const chances = chancesOf(model, allowed, timeline);
  if (chances === undefined) return undefined;
  // Days that the diary says were lost stay lost; those that the allowance spreads over a month are thrown instead.
  const calendars = planCalendars(model, start, asOf, calendarMemory(), { ...allowed, allowed: [] });
  const days = last - first + 1;
  const throws = new Float64Array(days);
  const open = new Map<Calendar, { readonly number: number; readonly air: OpenAir }>();
  const all = timing.calendars.slice();
  const calendarOf = timing.calendarOf.slice();
  steps.list.forEach((step, number) => {
    const exposure = exposureOf(step);
    if (exposure === 0 || hasFinished(timing, number)) return;
    const index = calendars.of(step, trades[number]);
    const dry = calendars.calendars[index]!;
    // Work of another exposure has a calendar of its own where the plan's weather tells them apart.
    let known = open.get(dry);
    if (known === undefined) {
      const air = openAir(dry, (month, worked) => chances(exposure, month, worked), throws, first, last, allowed.from);
      open.set(dry, (known = { number: all.length, air }));
      all.push(air.calendar);
    }
    calendarOf[number] = known.number;
  });
  if (open.size === 0) return undefined;
  const airs = [...open.values()].map(({ air }) => air);
  return {
    calendars: all,
    calendarOf,
    turn: (run) => {
      for (let day = 0; day < days; day++) throws[day] = drawOf(seed, run, SKY ^ (first + day));
      for (const air of airs) rain(air, throws);
    },
  };
}

const SKY = thingOf('the weather of the day');

/** For each month the chance that a worked day of it is lost to work of an exposure, by the calendar of whoever does it. */
type Chances = (exposure: number, month: number, workedDays: number) => number;

function chancesOf({ plan }: Model, weather: Allowed, { minutesPerDay }: Timeline): Chances | undefined {
  const told = plan?.given['bad-weather']?.value;
  if (told === undefined && weather.allowed.length === 0) return undefined;
  return (exposure, month, workedDays) => {
    if (told !== undefined) {
      const share = told.find(({ value }) => value.month === MONTHS[month - 1])?.value.share.value ?? 0;
      return Math.max(0, Math.min(MOST, share));
    }
    return workedDays === 0 ? 0 : Math.min(MOST, allowedIn(weather, month, exposure) / minutesPerDay / workedDays);
  };
}

/** Work that can never be done would have no end. */
const MOST = 0.95;

type MonthlyChance = (month: number, workedDays: number) => number;

/** No chance before day `from`: what was lost until then is known. */
function openAir(
  dry: Calendar,
  chances: MonthlyChance,
  throws: Float64Array,
  first: number,
  last: number,
  from: number,
): OpenAir {
  const isWorked = (day: number): boolean => workBetween(dry, day * DAY_MINUTES, (day + 1) * DAY_MINUTES) > 0;
  const chance = new Float64Array(last - first + 1);
  const byMonth = new Map<string, number>();
  for (let day = first; day <= last; day++) {
    const { year, month } = civil(day);
    const key = `${year}-${month}`;
    let own = byMonth.get(key);
    if (own === undefined) {
      let worked = 0;
      for (let each = dayOf(year, month, 1); each < dayOf(year, month + 1, 1); each++) if (isWorked(each)) worked++;
      byMonth.set(key, (own = chances(month, worked)));
    }
    chance[day - first] = day < from ? 0 : own;
  }
  const isClosed = (day: number): boolean =>
    !isWorked(day) || (day >= first && day <= last && throws[day - first]! < chance[day - first]!);
  const table = layOut(dry.week.shifts, (day) => !isWorked(day), first, last, first, dry.own);
  const mine: RunTable = {
    ...table,
    start: table.start.slice(),
    end: table.end.slice(),
    before: table.before.slice(),
    firstShift: table.firstShift.slice(),
  };
  return { calendar: { week: dry.week, closed: isClosed, own: dry.own, first, last, table: mine }, dry: table, mine, chance };
}

/** Fills the calendar of the present run: the shifts of the days that are not lost. */
function rain({ calendar, dry, mine, chance }: OpenAir, throws: Float64Array): void {
  const { start, end, before, firstShift } = mine;
  const days = chance.length;
  let count = 1;
  before[1] = 0;
  for (let day = 0; day < days; day++) {
    firstShift[day] = count;
    if (throws[day]! < chance[day]!) continue;
    for (let shift = dry.firstShift[day]!; shift < dry.firstShift[day + 1]!; shift++) {
      start[count] = dry.start[shift]!;
      end[count] = dry.end[shift]!;
      before[count + 1] = before[count]! + dry.end[shift]! - dry.start[shift]!;
      count++;
    }
  }
  firstShift[days] = count;
  start[count] = dry.start[dry.count - 1]!;
  end[count] = dry.end[dry.count - 1]!;
  // The table is the run's own; a longer one that the last run wanted is let go.
  mine.count = count + 1;
  calendar.table = mine;
}
