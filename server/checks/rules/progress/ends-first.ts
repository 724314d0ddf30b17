// A step that the diary has as done before it began.
import { isoDate } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';

export const backwards = findingSort<[step: string, done: string, began: string]>({
  code: 'progress/ends-first',
  severity: 'warning',
  say: (step, done, began) =>
    `The diary has "${step}" done on ${done}, before it began on ${began}, so it counts as begun and done on ${done}. One of the two days is wrong: put it right.`,
});

export const endsFirst: Check = {
  code: 'progress/ends-first',
  about:
    'Work is done on the day it began or later. Where the diary says otherwise one of the days is wrong, and how long the work took is, too.',
  wrong: `plan p
  start 2027-05-03
task board takes 4d
progress 2027-05-14
  board started 2027-05-12, finished 2027-05-07
`,
  right: `plan p
  start 2027-05-03
task board takes 4d
progress 2027-05-14
  board started 2027-05-04, finished 2027-05-07
`,
  reads: ({ timeline }) => [timeline.progress, timeline.steps],
  run: ({ timeline: { progress, steps } }) =>
    [...progress.records].flatMap(([number, { started, finished }]) => {
      const step = steps.list[number];
      if (step === undefined || started === undefined || finished === undefined || finished >= started) return [];
      return [finding(backwards, step.place, step.name, isoDate(finished), isoDate(started))];
    }),
};
