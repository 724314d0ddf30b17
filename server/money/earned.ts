// What is done, at what it was planned to cost, against what was planned to be done by now and what has been paid: earned
// value, by the schedule that was kept. The terms and
// formulas are those of the trade and of ISO 21508:2018 (from memory).
import { DAY_MINUTES } from '#kit/dates';
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import { type AsPlanned, chosenSchedule, type PlannedStep } from '#schedule/as-planned';
import { workBetween } from '#schedule/calendar';
import type { Timeline } from '#schedule/timeline';
import { hasFinished, hasStarted } from '#schedule/timing';

export const EARNED_FACTS = [
  'planned-value',
  'earned-value',
  'actual-cost',
  'schedule-variance',
  'cost-variance',
  'schedule-performance',
  'cost-performance',
  'budget-at-completion',
  'estimate-at-completion',
  'estimate-to-complete',
  'variance-at-completion',
] as const;
export type EarnedFact = (typeof EARNED_FACTS)[number];

/** Where one divides by nothing, that figure is not there. */
export type Earned = { readonly against: AsPlanned; readonly asOf: number } & {
  readonly [F in EarnedFact]: Quantity | undefined;
};

const SOURCE = 'common practice; ISO 21508:2018, Earned value management (from memory)';
const shareOf = form('its part', 'cost as planned × share', (cents = 0, share = 0) => Math.round(cents * share));
const less = (label: string, formula: string) => form(label, formula, (a = 0, b = 0) => a - b, SOURCE);
const over = (label: string, formula: string) => form(label, formula, (a = 0, b = 1) => a / b, SOURCE);
const forecast = form(
  'estimate at completion',
  'budget × actual cost ÷ earned value',
  (budget = 0, actual = 0, earned = 1) => Math.round((budget * actual) / earned),
  SOURCE,
);
const behind = less('schedule variance', 'earned value − planned value');
const dearer = less('cost variance', 'earned value − actual cost');
const pace = over('schedule performance', 'earned value ÷ planned value');
const thrift = over('cost performance', 'earned value ÷ actual cost');
const open = less('estimate to complete', 'estimate at completion − actual cost');
const left = less('variance at completion', 'budget − estimate at completion');

/** Undefined without a diary, or without a kept schedule that says what steps cost. */
export function earnedOf(model: Model, timeline: Timeline): Earned | undefined {
  const { asOf } = timeline.progress;
  const against = chosenSchedule(model);
  if (asOf === undefined || against === undefined || !timeline.dated) return undefined;
  const priced = [...against.steps].filter(([, { cents }]) => cents !== undefined);
  if (priced.length === 0) return undefined;
  const cost = (name: string, cents: number) => constant(`${name}, as planned`, cents, 'money');
  const parts = (share: (name: string, planned: PlannedStep) => number): readonly Quantity<'money'>[] =>
    priced.flatMap(([name, planned]) => {
      const part = share(name, planned);
      if (part === 0) return [];
      const whole = cost(name, planned.cents!);
      return [part === 1 ? whole : measure('money', shareOf, whole, constant('share', part, 'number'))];
    });
  const budget = total(
    'budget at completion',
    'money',
    priced.map(([name, { cents }]) => cost(name, cents!)),
  );
  const planned = total(
    'planned value',
    'money',
    parts((_, step) => plannedShare(step, asOf, timeline)),
  );
  const earned = total(
    'earned value',
    'money',
    parts((name) => doneShare(name, timeline)),
  );
  const actual = total('actual cost', 'money', bills(model, asOf));
  // Where nothing is paid yet, nothing says how dear the rest will be.
  const estimate = earned.value > 0 && actual.value > 0 ? measure('money', forecast, budget, actual, earned) : undefined;
  return {
    against,
    asOf,
    'planned-value': planned,
    'earned-value': earned,
    'actual-cost': actual,
    'schedule-variance': measure('money', behind, earned, planned),
    'cost-variance': measure('money', dearer, earned, actual),
    'schedule-performance': planned.value > 0 ? measure('number', pace, earned, planned) : undefined,
    'cost-performance': actual.value > 0 ? measure('number', thrift, earned, actual) : undefined,
    'budget-at-completion': budget,
    'estimate-at-completion': estimate,
    'estimate-to-complete': estimate === undefined ? undefined : measure('money', open, estimate, actual),
    'variance-at-completion': estimate === undefined ? undefined : measure('money', left, budget, estimate),
  };
}

/** Of a step's days those that had passed: its cost is spread evenly over its working days. */
function plannedShare({ begins, done }: PlannedStep, asOf: number, { timing }: Timeline): number {
  if (asOf >= done) return 1;
  if (asOf < begins) return 0;
  const calendar = timing.calendars[timing.planCalendar]!;
  const worked = (to: number): number => workBetween(calendar, begins * DAY_MINUTES, (to + 1) * DAY_MINUTES);
  const all = worked(done);
  return all === 0 ? 0 : worked(asOf) / all;
}

/** By the diary; of what it only says that it has begun, by its length. A step that is gone earns nothing. */
function doneShare(name: string, { steps, timing, progress, durations }: Timeline): number {
  const step = steps.byName.get(name);
  if (step === undefined) return 0;
  if (hasFinished(timing, step)) return 1;
  const said = progress.records.get(step)?.done;
  if (said !== undefined) return Math.max(0, Math.min(1, said));
  const length = durations[step]!.minutes;
  if (!hasStarted(timing, step) || length === 0) return 0;
  return Math.max(0, Math.min(1, 1 - timing.durations[step]! / length));
}

/** What had been paid or asked for by the day: an invoice and its payment are one bill, by whom and what for. */
function bills(model: Model, asOf: number): readonly Quantity<'money'>[] {
  const sums = new Map<string, { paid: number; invoiced: number }>();
  const add = (list: readonly ElementOf<'paid' | 'invoice'>[], kind: 'paid' | 'invoiced'): void => {
    for (const { takes, given } of list) {
      if (takes === undefined || (given.on !== undefined && given.on.value > asOf)) continue;
      const what = given.for?.value.map(({ value }) => value.name).join(', ') ?? '';
      const key = `${takes.who.name}${what === '' ? '' : ` for ${what}`}`;
      const sum = sums.get(key) ?? { paid: 0, invoiced: 0 };
      sum[kind] += Math.round(takes.money.value);
      sums.set(key, sum);
    }
  };
  add(model.list('paid'), 'paid');
  add(model.list('invoice'), 'invoiced');
  return [...sums].map(([key, { paid, invoiced }]) => constant(key, Math.max(paid, invoiced), 'money'));
}
