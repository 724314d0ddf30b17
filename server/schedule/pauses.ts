// Days that a step would have been worked on and was not: its trade is away, or the weather took them, by the diary or by the
// allowance of the month. Counted from when what holds it lets it begin to when it is done; read back when somebody asks.
import { civil, dayOfFinish, dayOfStart } from '#kit/dates';
import type { Model } from '#model/resolve';
import { holderOf, holdOf } from './holds.ts';
import type { Timeline } from './timeline.ts';
import { hasStarted } from './timing.ts';
import { exposureOf, weatherOf } from './weather-days.ts';
import { isWorked, ownHours, weekOf } from './working-week.ts';

export interface Pause {
  readonly why: 'away' | 'rain' | 'frost' | 'wind' | 'heat' | 'allowance';
  /** Days, both included; of an allowance the first and the last that it takes in one month. */
  readonly first: number;
  readonly last: number;
  /** Working days of the step in it that are not lost anyway. */
  readonly days: number;
}

const WEATHER = ['rain', 'frost', 'wind', 'heat'] as const;

export function pausesOf(step: number, timeline: Timeline, model: Model): readonly Pause[] {
  const { steps, trades, crews, timing, progress } = timeline;
  const each = steps.list[step]!;
  if ((each.kind !== 'task' && each.kind !== 'inspection') || crews.finish[step] === crews.start[step]) return [];
  const trade = trades[step];
  const week = weekOf(model.plan, trade, each.given.works === undefined ? undefined : each, timeline.minutesPerDay);
  const { dated } = ownHours(week, model.plan, trade);
  const plan = timing.calendars[timing.planCalendar]!.closed as (day: number) => boolean;
  const holder = holderOf(holdOf(step, timeline));
  const bound = holder === undefined ? Math.max(timing.start, timing.notBefore[step]!) : crews.finish[holder]!;
  const from = dayOfStart(hasStarted(timing, step) ? crews.start[step]! : Math.min(crews.start[step]!, bound));
  const to = dayOfFinish(crews.finish[step]!);
  const exposure = exposureOf(each);
  const { lost } = weatherOf(model, progress.asOf);
  const away = trade?.given.away.flatMap((line) => line.value.map(({ value }) => ({ ...value, why: 'away' as const }))) ?? [];
  const weather = lost.flatMap(({ kind, first, last }) =>
    (kind & exposure) === 0 ? [] : [{ first, last, why: WEATHER.find((_, bit) => kind === 1 << bit)! }],
  );
  const isOpen = (day: number): boolean => (dated(day) || isWorked(week, day)) && !plan(day);
  const named = [...away, ...weather];
  const told = named.flatMap(({ first, last, why }) => {
    let days = 0;
    for (let day = Math.max(first, from); day <= Math.min(last, to); day++) if (isOpen(day)) days += 1;
    return days === 0 ? [] : [{ why, first, last, days }];
  });
  // What is named above is not the allowance's, and neither is a season that the step keeps.
  if (exposure === 0 || (each.kind === 'task' && each.given.between !== undefined)) return told;
  const own = timing.calendars[timing.calendarOf[step]!]!.closed as (day: number) => boolean;
  const months = new Map<number, Pause>();
  for (let day = from; day <= to; day++) {
    if (!isOpen(day) || !own(day) || named.some(({ first, last }) => first <= day && day <= last)) continue;
    const { year, month } = civil(day);
    const known = months.get(year * 12 + month);
    months.set(year * 12 + month, { why: 'allowance', first: known?.first ?? day, last: day, days: (known?.days ?? 0) + 1 });
  }
  return [...told, ...months.values()];
}
