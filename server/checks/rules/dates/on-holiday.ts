// Work on a holiday, in a plan that says its working week and names no holidays: nobody comes that day.
import { civil, dayAndMonth, dayOfFinish, dayOfStart } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import type { ElementOf } from '#model/model';
import { isWorked } from '#schedule/delivery-dates';
import { holidayDays } from '#schedule/holidays';
import { holidayRule } from '#schedule/plan-calendars';
import type { Check } from '../../check.ts';
import { keptWhile } from '../../kept.ts';
import { counted, namesText } from '../../show.ts';

export const forgotten = findingSort<[day: string, holiday: string, steps: readonly string[], others: number, country: string]>({
  code: 'dates/on-holiday',
  severity: 'note',
  say: (day, holiday, steps, others, country) =>
    `On ${day}, ${holiday}, ${namesText(steps)} ${steps.length === 1 ? 'goes' : 'go'} on${others === 0 ? '' : `, and so does work on ${counted(others, 'other holiday')}`}: the plan names no holidays, and crews, yards and inspectors keep them. Write "holidays ${country}", or "closed" with the days on which nobody comes.`,
});

export const onHoliday: Check = {
  code: 'dates/on-holiday',
  about:
    'A plan in feet with dates and a working week of its own that names no holidays (`holidays US`) or closed days works through all of them, and every date behind one comes too early.',
  wrong: `plan p
  start 2026-12-28
  workweek mon-fri 8h
trade crew crew of 2
task frame takes 10d by crew
`,
  right: `plan p
  start 2026-12-28
  workweek mon-fri 8h
  holidays US
trade crew crew of 2
task frame takes 10d by crew
`,
  reads: ({ model, timeline }) => [
    model.plan,
    model.settings,
    model.rows('holiday'),
    timeline.steps,
    timeline.crews,
    timeline.timing,
  ],
  run: ({ model, timeline }) => {
    const { plan, settings } = model;
    const { steps, crews, timing } = timeline;
    const week = plan?.given.workweek;
    if (plan === undefined || week === undefined || !timeline.dated || settings.units !== 'feet') return [];
    if (plan.given.holidays !== undefined || plan.given.closed.length > 0) return [];
    const last = Math.max(timeline.start, ...crews.finish.map(dayOfFinish));
    const worked = offDays(model.rows('holiday'), civil(timeline.start).year, civil(last).year).filter(
      ({ day }) => day >= timeline.start && day <= last && isWorked(day, timing),
    );
    const found = worked.flatMap(({ day, row }) => {
      const busy = steps.list.flatMap(({ kind, name }, at) =>
        kind === 'task' && dayOfStart(crews.start[at]!) <= day && dayOfFinish(crews.finish[at]!) >= day ? [name] : [],
      );
      return busy.length === 0 ? [] : [{ day, row, busy }];
    });
    const [first] = found;
    if (first === undefined) return [];
    const { day, row, busy } = first;
    return [finding(forgotten, week.place, dayAndMonth(day), row.label, busy, found.length - 1, COUNTRY)];
  },
};

/** Where houses are measured in feet. */
const COUNTRY = 'US';

type Holiday = ElementOf<'holiday'>;

/** Days that the rows name, in order. */
const offDays = keptWhile(
  (rows: readonly Holiday[], from: number, to: number): readonly [object, ...unknown[]] => [rows, from, to],
  (rows: readonly Holiday[], from: number, to: number): readonly { readonly day: number; readonly row: Holiday }[] =>
    rows
      .filter((row) => row.given.in?.value.some(({ value }) => value === COUNTRY))
      .flatMap((row) => {
        const rule = holidayRule(row);
        return rule === undefined ? [] : holidayDays(rule, from, to).map((day) => ({ day, row }));
      })
      .sort((a, b) => a.day - b.day),
);
