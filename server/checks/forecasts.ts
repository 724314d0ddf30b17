// What is told of the weather for the days on which a step is worked: by the forecast lines of the plan.
import { dayOfFinish, dayOfStart } from '#kit/dates';
import type { Plan, WorkKind } from '#model/model';
import { isWorked } from '#schedule/delivery-dates';
import { waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { afterStart } from '#schedule/waits';
import type { Results } from './check.ts';
import { isDone } from './outcomes.ts';
import { dayText } from './show.ts';
import { doingIn } from './sides.ts';

export type Forecast = Plan['given']['forecast'][number]['value'];
type Wait = Parameters<typeof waiting>[0];

interface Met {
  readonly day: number;
  readonly forecast: Forecast;
}

/** Days of a forecast on which a step is worked, or is not yet dry, each with its line, in order. */
export function metOn(
  at: number,
  after: Wait | undefined,
  plan: Plan,
  timeline: Timeline,
  bad: (forecast: Forecast) => boolean,
): readonly Met[] {
  const { crews, timing } = timeline;
  const first = dayOfStart(crews.start[at]!);
  const worked = Math.max(first, dayOfFinish(crews.finish[at]!));
  let last = worked;
  if (after !== undefined) {
    const { lag, clock } = waiting(after);
    last = Math.max(last, dayOfFinish(afterStart(timing.calendars[timing.planCalendar]!, crews.finish[at]!, lag, clock)));
  }
  const met: Met[] = [];
  for (let day = first; day <= last; day++) {
    const told = plan.given.forecast.find(({ value: { days } }) => day >= days.first && day <= days.last)?.value;
    if (told === undefined || !bad(told)) continue;
    // Days on which nobody works do not matter while the work goes on; afterwards each does.
    if (day > worked || isWorked(day, { ...timing, planCalendar: timing.calendarOf[at]! })) met.push({ day, forecast: told });
  }
  return met;
}

/** '4 May', '4 May and 5 May', '4 May to 7 May' where all between are met, else '4 May, 6 May and 9 May'. */
export function metText(met: readonly Met[], timeline: Timeline): string {
  const days = met.map(({ day }) => dayText(day, timeline));
  const [first, last] = [met[0]!.day, met[met.length - 1]!.day];
  if (days.length > 2 && last - first === days.length - 1) return `${days[0]} to ${days[days.length - 1]}`;
  return days.length === 1 ? days[0]! : `${days.slice(0, -1).join(', ')} and ${days[days.length - 1]}`;
}

/** Tasks still to do with the works that a condition picks: by step, its first such work. */
export function openWorks(
  { timeline }: Results,
  picks: (work: WorkKind) => boolean,
): readonly { readonly at: number; readonly work: WorkKind }[] {
  return timeline.steps.list.flatMap((step, at) => {
    if (step.kind !== 'task' || isDone(at, timeline)) return [];
    const work = step.given.does?.value.find(({ value }) => picks(value.work))?.value.work;
    return work === undefined ? [] : [{ at, work }];
  });
}

/** What a check of forecasts reads; nothing but the plan where it tells none of that kind. */
export function readsOfForecast(results: Results, tells: (forecast: Forecast) => boolean): readonly unknown[] {
  const { model, timeline } = results;
  const told = model.plan?.given.forecast.some(({ value }) => tells(value)) === true;
  if (!told) return [undefined];
  const { steps, crews, timing, progress } = timeline;
  return [model.plan, steps, crews, timing, progress, doingIn(results), model.settings];
}
