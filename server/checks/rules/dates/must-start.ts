// Steps that must start on a day and do not: who is booked for it comes in vain. With the chain that causes it.
import { DAY_MINUTES, dayOfStart, shortDate } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import { workBetween } from '#schedule/calendar';
import { mustStart } from '#schedule/step-windows';
import type { Steps } from '#schedule/steps';
import { chainText } from '../../chain-text.ts';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { begunAt } from '../../outcomes.ts';
import { counted } from '../../show.ts';

export const late = findingSort<[step: string, day: string, begins: string, days: number, chain: string | undefined]>({
  code: 'dates/must-start',
  severity: 'warning',
  say: (step, day, begins, days, chain) =>
    `"${step}" must start on ${day} and begins on ${begins}, ${counted(days, 'working day')} late: who is booked for that day comes in vain.${chain === undefined ? '' : ` The chain that sets its date: ${chain}.`} Start what leads to it earlier, or book another day.`,
});

export const closed = findingSort<[step: string, day: string, begins: string]>({
  code: 'dates/must-start',
  severity: 'warning',
  say: (step, day, begins) =>
    `"${step}" must start on ${day}, when those who do it do not work; it begins on ${begins}. Give it another day, or give that day its hours ("works", "hours").`,
});

export const mustStartCheck: Check = {
  code: 'dates/must-start',
  about:
    'A step with a day on which it must start should begin on it: a crane, a pump or a crew is booked for that day. The finding tells the chain of steps that makes it late.',
  wrong: `plan p
  start 2027-04-05
task forms takes 6d
task pour takes 1d, must start 2027-04-12, after forms
`,
  right: `plan p
  start 2027-04-05
task forms takes 5d
task pour takes 1d, must start 2027-04-12, after forms
`,
  reads: ({ timeline }) => {
    const { steps, crews, timing, links } = timeline;
    return [steps, ...(timeline.dated && bound(steps).length > 0 ? [crews, timing, links] : [])];
  },
  run: ({ timeline }) => {
    const { steps, timing, crews } = timeline;
    if (!timeline.dated) return [];
    return bound(steps).flatMap((at) => {
      const step = steps.list[at]!;
      const day = mustStart(step)!;
      const start = crews.start[at]!;
      if (begunAt(at, timeline) !== undefined || start < (day + 1) * DAY_MINUTES) return [];
      const { place } = (step.kind === 'task' || step.kind === 'inspection' ? step.given['must start'] : undefined) ?? step;
      const begins = shortDate(dayOfStart(start));
      const calendar = timing.calendars[timing.calendarOf[at]!]!;
      if (workBetween(calendar, day * DAY_MINUTES, start) <= 0)
        return [finding(closed, place, step.name, shortDate(day), begins)];
      const days = Math.max(1, Math.floor(workBetween(calendar, day * DAY_MINUTES, start) / timeline.minutesPerDay + 1e-9));
      return [finding(late, place, step.name, shortDate(day), begins, days, chainText(at, timeline))];
    });
  },
};

const bound = keptFor(({ list }: Steps): readonly number[] =>
  list.flatMap((step, at) => (mustStart(step) === undefined ? [] : [at])),
);
