// How far a step is, without the day it began.
import { dayAndMonth } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import { hasStarted } from '#schedule/timing';
import type { Check } from '../../check.ts';

export const undated = findingSort<[step: string, asOf: string]>({
  code: 'progress/no-start',
  severity: 'note',
  say: (step, asOf) =>
    `The diary says how far "${step}" is, but not the day it began. What is left of it counts as still to begin after ${asOf}, and waits for what it follows. Write the day: "started 2027-06-07".`,
});

export const noStart: Check = {
  code: 'progress/no-start',
  about:
    'Work with something left of it has begun. Without the day it began nobody knows how long it really takes, and it is held back by what it follows as if it had not begun.',
  wrong: `plan p
  start 2027-05-03
task board takes 4d
progress 2027-05-05
  board 50% done
`,
  right: `plan p
  start 2027-05-03
task board takes 4d
progress 2027-05-05
  board started 2027-05-04, 50% done
`,
  reads: ({ timeline }) => [timeline.progress, timeline.steps, timeline.timing],
  run: ({ timeline: { progress, steps, timing } }) =>
    [...progress.records].flatMap(([number, { started, finished, left, done }]) => {
      const step = steps.list[number];
      const tells = left !== undefined || (done !== undefined && done > 0);
      if (step === undefined || progress.asOf === undefined || started !== undefined || finished !== undefined || !tells)
        return [];
      // With nothing left it is done: see progress/not-closed.
      if (hasStarted(timing, number)) return [];
      return [finding(undated, step.place, step.name, dayAndMonth(progress.asOf))];
    }),
};
