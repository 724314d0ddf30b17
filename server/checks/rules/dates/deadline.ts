// Steps that end after their own deadline, or after the last day of the window that they name; with the chain that causes it.
import { DAY_MINUTES, dayOfFinish, shortDate } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Step } from '#model/model';
import { workBetween } from '#schedule/calendar';
import { datesBetween } from '#schedule/step-windows';
import type { Steps } from '#schedule/steps';
import type { Timeline } from '#schedule/timeline';
import { chainText } from '../../chain-text.ts';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { isDone } from '../../outcomes.ts';
import { counted } from '../../show.ts';

type Told = [step: string, end: string, last: string, days: number, chain: string | undefined];

export const missed = findingSort<Told>({
  code: 'dates/deadline',
  severity: 'warning',
  say: (step, end, deadline, days, chain) =>
    `"${step}" is done on ${end}, ${counted(days, 'working day')} after its deadline of ${deadline}.${because(chain)} Start what leads to it earlier, or move the deadline.`,
});

export const outOfWindow = findingSort<Told>({
  code: 'dates/deadline',
  severity: 'warning',
  say: (step, end, last, days, chain) =>
    `"${step}" is done on ${end}, ${counted(days, 'working day')} after ${last}, the last day on which it may be done.${because(chain)} Start what leads to it earlier, or move its dates.`,
});

function because(chain: string | undefined): string {
  return chain === undefined ? '' : ` The chain that sets its date: ${chain}.`;
}

export const deadline: Check = {
  code: 'dates/deadline',
  about:
    'A step that names a deadline, or the days between which it may be done, should be done by the end of the last of them. The finding tells the chain of steps that makes it late.',
  wrong: `plan p
  start 2027-04-05
task frame takes 5d, deadline 2027-04-07
`,
  right: `plan p
  start 2027-04-05
task frame takes 5d, deadline 2027-04-09
`,
  reads: ({ timeline }) => {
    const { steps, crews, timing, links } = timeline;
    return [steps, ...(timeline.dated && limited(steps).length > 0 ? [crews, timing, links] : [])];
  },
  run: ({ timeline }) => {
    const { steps } = timeline;
    if (!timeline.dated) return [];
    return limited(steps).flatMap((at) => {
      const step = steps.list[at]!;
      const { given } = step;
      const found = given.deadline === undefined ? [] : late(step, at, given.deadline.value, given.deadline, missed, timeline);
      const window = datesBetween(step);
      return window === undefined || isDone(at, timeline)
        ? found
        : [...found, ...late(step, at, window.last, windowGiven(step), outOfWindow, timeline)];
    });
  },
};

function late(
  step: Step,
  at: number,
  last: number,
  given: { readonly place: Finding['place'] },
  sort: typeof missed,
  timeline: Timeline,
): readonly Finding[] {
  const { timing, crews } = timeline;
  const due = (last + 1) * DAY_MINUTES;
  const end = crews.finish[at]!;
  if (end <= due) return [];
  const calendar = timing.calendars[timing.calendarOf[at]!]!;
  const days = Math.max(1, Math.ceil(workBetween(calendar, due, end) / timeline.minutesPerDay - 1e-9));
  const told: Told = [step.name, shortDate(dayOfFinish(end)), shortDate(last), days, chainText(at, timeline)];
  return [finding(sort, given.place, ...told)];
}

function windowGiven(step: Step): { readonly place: Finding['place'] } {
  return (step.kind === 'task' || step.kind === 'inspection' ? step.given.between : undefined) ?? step;
}

const limited = keptFor(({ list }: Steps): readonly number[] => {
  const numbers: number[] = [];
  for (let at = 0; at < list.length; at++) {
    if (list[at]!.given.deadline !== undefined || datesBetween(list[at]!) !== undefined) numbers.push(at);
  }
  return numbers;
});
