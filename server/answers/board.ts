// Who is on site where, week by week: several plans that share trades, machines and firms, and the days on which more is asked
// of one than there is.
import { DAY_MINUTES, weekday } from '#kit/dates';
import { type Booking, bookingsOf, type House, type Shared, sharedKey, workedDays } from '#schedule/bookings';
import { clashes } from '#schedule/contention';
import { capacityOf } from '#schedule/limits';
import { planLabel } from './summary.ts';
import type { View } from './view.ts';

export interface Board {
  readonly views: readonly View[];
  /** By the first day that somebody asks for them. */
  readonly trades: readonly BoardTrade[];
}

export interface BoardTrade {
  readonly kind: Shared['kind'];
  readonly name: string;
  readonly label: string;
  /** How many crews, or machines, there are. */
  readonly crews: number;
  readonly weeks: readonly BoardWeek[];
}

export interface BoardWeek {
  /** Its Monday, days since 1970-01-01. */
  readonly monday: number;
  /** For each plan the steps that have the trade there in this week, with their days. */
  readonly houses: readonly (readonly BoardStep[])[];
  /** Days of the week on which more crews are asked for than there are. */
  readonly clashes: readonly number[];
}

export interface BoardStep {
  readonly step: string;
  readonly days: readonly number[];
}

/** Of several plans the trades, machines and firms that two or more of them include from one file; of one plan all trades. */
export function boardOf(views: readonly View[]): Board {
  const isShared = (limit: Shared): boolean =>
    views.length === 1 ? limit.kind === 'trade' : views.filter((view) => holds(view, limit)).length > 1;
  const houses = views.map((view): House => {
    const { root, timeline } = view.plan;
    return { root, label: planLabel(view), bookings: bookingsOf(timeline, isShared) };
  });
  const twice = clashDays(views, houses);
  const keys = new Set(houses.flatMap(({ bookings }) => [...bookings.keys()]));
  const found = [...keys].flatMap((key) => {
    const trade = tradeOf(key, views);
    return trade === undefined ? [] : [{ key, trade, first: firstOf(key, houses) }];
  });
  found.sort((a, b) => a.first - b.first || (a.key < b.key ? -1 : 1));
  return {
    views,
    trades: found.map(({ key, trade }) => ({
      kind: trade.kind,
      name: trade.name,
      label: trade.label,
      crews: capacityOf(trade),
      weeks: weeksOf(key, views, houses, twice.get(key) ?? new Set()),
    })),
  };
}

function holds({ plan }: View, trade: Shared): boolean {
  return plan.model.files.some(({ path }) => path === trade.slot.file);
}

function tradeOf(key: string, views: readonly View[]): Shared | undefined {
  for (const { plan } of views)
    for (const kind of ['trade', 'machine', 'firm'] as const)
      for (const each of plan.model.list(kind)) if (sharedKey(each) === key) return each;
  return undefined;
}

function firstOf(key: string, houses: readonly House[]): number {
  return houses.reduce(
    (first, { bookings }) => (bookings.get(key) ?? []).reduce((least, { start }) => Math.min(least, start), first),
    Number.POSITIVE_INFINITY,
  );
}

/** By trade, the days on which two plans ask for more than there is. */
function clashDays(views: readonly View[], houses: readonly House[]): ReadonlyMap<string, ReadonlySet<number>> {
  const days = new Map<string, Set<number>>();
  views.forEach(({ plan: { timeline } }, at) => {
    const others = houses.filter((_, other) => other !== at);
    for (const clash of clashes(timeline, others)) {
      const key = sharedKey(clash.limit);
      const own = days.get(key) ?? new Set();
      for (const day of clash.days) own.add(day);
      days.set(key, own);
    }
  });
  return days;
}

function weeksOf(
  key: string,
  views: readonly View[],
  houses: readonly House[],
  twice: ReadonlySet<number>,
): readonly BoardWeek[] {
  const steps = houses.map(({ bookings }, at) => (bookings.get(key) ?? []).map((booking) => daysOf(booking, views[at]!)));
  const mondays = [...new Set(steps.flat().flatMap(({ days }) => days.map(mondayOf)))].sort((a, b) => a - b);
  return mondays.map((monday) => {
    const within = (day: number): boolean => day >= monday && day < monday + 7;
    return {
      monday,
      houses: steps.map((list) =>
        list
          .map(({ step, days }) => ({ step, days: days.filter(within) }))
          .filter(({ days }) => days.length > 0)
          .sort((a, b) => a.days[0]! - b.days[0]!),
      ),
      clashes: [...twice].filter(within).sort((a, b) => a - b),
    };
  });
}

function daysOf({ step, start, finish }: Booking, { plan: { timeline } }: View): BoardStep {
  const at = timeline.steps.byName.get(step)!;
  const days = workedDays(start, finish, timeline.timing.calendars[timeline.timing.calendarOf[at]!]!);
  return { step, days: days.length > 0 ? days : [Math.floor(start / DAY_MINUTES)] };
}

function mondayOf(day: number): number {
  return day - weekday(day);
}
