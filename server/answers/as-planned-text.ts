// A plan's schedule as text to keep beside it: what was promised, step by step, to compare with later.
import { dayOfFinish, dayOfStart, isoDate } from '#kit/dates';
import { type View, writeMoney } from './view.ts';

/** `on`: the day it stands so. Undefined for a plan without dates: days counted from a first one mean nothing later. */
export function asPlannedText(name: string, on: number, { plan, style }: View): string | undefined {
  const { timeline, budget, model } = plan;
  const { steps, crews } = timeline;
  if (!timeline.dated || steps.list.length === 0) return undefined;
  const costs = budget.priced ? `, costs ${writeMoney(budget.total, style)}` : '';
  const width = steps.list.reduce((most, step) => Math.max(most, step.name.length), 0);
  const lines = steps.list.map((step, at) => {
    const [start, finish] = [crews.start[at]!, crews.finish[at]!];
    const begins = dayOfStart(start);
    const done = start === finish ? begins : Math.max(begins, dayOfFinish(finish));
    const when = start === finish ? `done ${isoDate(done)}` : `begins ${isoDate(begins)}, done ${isoDate(done)}`;
    const cents = budget.priced ? budget.centsOfStep(at) : 0;
    return `  ${step.name.padEnd(width)} ${when}${cents === 0 ? '' : `, costs ${writeMoney(cents, style)}`}`;
  });
  const label = model.plan?.label ?? name;
  return `${[
    `# ${label}: the schedule as it stood on ${isoDate(on)}. Kept to compare with, so it is not edited.`,
    '',
    `as-planned ${name} on ${isoDate(on)}${costs}`,
    ...lines,
  ].join('\n')}\n`;
}

/** The day a plan stands at by its diary, else its first. */
export function dayOfPlan({ plan: { timeline } }: View): number {
  return timeline.progress.asOf ?? timeline.start;
}
