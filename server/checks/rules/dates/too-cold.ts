// Outside work on days, or before nights, that are told or known to be colder than it bears, with nothing that keeps it warm.
import { civil, DAY_MINUTES, dayOfFinish, dayOfStart, monthName, shortMonth } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Quantity } from '#kit/quantity';
import type { Plan, WorkKind } from '#model/model';
import { waiting } from '#schedule/links';
import { afterStart } from '#schedule/waits';
import type { Check, Results } from '../../check.ts';
import { reaches } from '../../order.ts';
import { isDone } from '../../outcomes.ts';
import { dayText, namesText, quantityText } from '../../show.ts';
import { doingIn, sidesOf } from '../../sides.ts';

type Told = [step: string, work: string, least: string, when: string, low: string, warmers: readonly string[]];

const say = (step: string, work: string, least: string, when: string, low: string, warmers: readonly string[]): string =>
  `"${step}": ${when} the low is ${low}, and "${work}" is not done, nor left young, below ${least}: what is done too cold freezes, does not set or does not hold. ${warmers.length === 0 ? 'Move it to warmer days.' : `Have ${namesText(warmers)} before it, or move it to warmer days.`}`;

export const freezes = findingSort<Told>({ code: 'dates/too-cold', severity: 'error', say });
export const cold = findingSort<Told>({ code: 'dates/too-cold', severity: 'warning', say });

export const tooCold: Check = {
  code: 'dates/too-cold',
  gathers: true,
  about:
    'Some outside work bears no cold: its row says above which temperature it is done, and for how long after. Where the plan says the usual lows of its months, names a climate that does, or has a forecast, the days of that work are held against them. Frost that is forecast is an error; a cold month warns.',
  wrong: `plan p
  start 2027-11-22
  forecast 2027-11-22..2027-11-23 19 F
trade concrete crew of 3
task footings does pour-footings takes 1d by concrete
`,
  right: `plan p
  start 2027-11-22
  forecast 2027-11-22..2027-11-23 19 F
trade concrete crew of 3
task blankets does ready-cold-cover takes 2h by concrete
task footings does pour-footings takes 1d by concrete after blankets
`,
  reads: (results) => {
    const { model, timeline, order } = results;
    if (!saysCold(model.plan)) return [undefined];
    const { steps, crews, progress, timing } = timeline;
    return [model.plan, steps, crews, progress, timing, order, doingIn(results), model.settings];
  },
  run: (results) => {
    const { model, timeline } = results;
    const { plan } = model;
    if (plan === undefined || !saysCold(plan) || !timeline.dated) return [];
    return timeline.steps.list.flatMap((step, at) => {
      if (step.kind !== 'task' || isDone(at, timeline)) return [];
      for (const { value } of step.given.does?.value ?? []) {
        const found = ofWork(value.work, at, plan, results);
        if (found !== undefined) return [found];
      }
      return [];
    });
  },
};

/** The plan's own before those of its climate. */
function lowsOf({ given }: Plan): NonNullable<Plan['given']['lows']>['value'] | undefined {
  return (given.lows ?? given.climate?.value.given.lows)?.value;
}

function saysCold(plan: Plan | undefined): boolean {
  return plan !== undefined && (lowsOf(plan) !== undefined || plan.given.forecast.some(({ value }) => value.low !== undefined));
}

function ofWork(work: WorkKind, at: number, plan: Plan, results: Results): Finding | undefined {
  const { model, timeline, order } = results;
  const { above, exposed } = work.given;
  // Work in a closed house has its own weather.
  if (above === undefined || exposed?.value.some(({ value }) => value === 'frost') !== true) return undefined;
  const step = timeline.steps.list[at]!;
  const least = (step.kind === 'task' ? step.given.above?.value : undefined) ?? above.value.least;
  const coldest = coldestOf(daysOf(work, at, results), plan, least.value);
  if (coldest === undefined) return undefined;
  const warmers = work.given['kept warm by']?.value.map(({ value }) => value.name) ?? [];
  if (sidesOf(warmers, doingIn(results)).some((side) => side.step === at || reaches(order, side.step, at))) return undefined;
  const sort = coldest.isForecast && coldest.low.value <= FREEZING ? freezes : cold;
  const when = coldest.isForecast
    ? `on ${dayText(coldest.day, timeline)}, by the forecast,`
    : `on ${dayText(coldest.day, timeline)}, in a usual ${monthName(civil(coldest.day).month)},`;
  // The first day that is too cold may come before the coldest.
  const { firstBelow } = coldest;
  const already =
    firstBelow.day === coldest.day || firstBelow.low.value === coldest.low.value
      ? ''
      : ` (and ${quantityText(firstBelow.low, model)} already on ${dayText(firstBelow.day, timeline)})`;
  const low = `${quantityText(coldest.low, model)}${already}`;
  return finding(sort, step.place, step.name, work.label, quantityText(least, model), when, low, warmers);
}

/** In degrees Celsius, as temperatures are kept. */
const FREEZING = 0;

/** From the day that it begins to the last on which it is young. */
function daysOf(work: WorkKind, at: number, { timeline }: Results): readonly [first: number, last: number] {
  const { crews, timing } = timeline;
  const first = dayOfStart(crews.start[at]!);
  const young = work.given.above?.value.after;
  if (young === undefined) return [first, Math.max(first, dayOfFinish(crews.finish[at]!))];
  const { lag, clock } = waiting(young);
  const end = afterStart(timing.calendars[timing.planCalendar]!, crews.finish[at]!, lag, clock);
  return [first, Math.max(first, Math.floor(end / DAY_MINUTES))];
}

interface Coldest {
  readonly day: number;
  readonly low: Quantity<'temperature'>;
  readonly isForecast: boolean;
}

/** Of the days below `least`, the coldest and the first. A forecast speaks before what is usual in the month. */
function coldestOf(
  [first, last]: readonly [number, number],
  plan: Plan,
  least: number,
): (Coldest & { readonly firstBelow: Coldest }) | undefined {
  const { given } = plan;
  const lows = lowsOf(plan);
  let coldest: Coldest | undefined;
  let firstBelow: Coldest | undefined;
  for (let day = first; day <= last; day++) {
    const told = given.forecast.find(({ value: { days, low } }) => low !== undefined && day >= days.first && day <= days.last)
      ?.value.low;
    const month = shortMonth(civil(day).month).toLowerCase();
    const usual = lows?.find(({ value }) => value.month === month)?.value.low;
    const low = told ?? usual;
    if (low === undefined || low.value >= least) continue;
    const frosty = { day, low, isForecast: told !== undefined };
    firstBelow ??= frosty;
    if (coldest === undefined || low.value < coldest.low.value) coldest = frosty;
  }
  return coldest === undefined || firstBelow === undefined ? undefined : { ...coldest, firstBelow };
}
