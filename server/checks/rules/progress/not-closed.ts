// Work that has begun and of which nothing is left, by the diary or by its length, and that nobody says is done.
import { dayAndMonth } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import { hasFinished, hasStarted } from '#schedule/timing';
import type { Check } from '../../check.ts';

export const open = findingSort<[step: string, began: string, asOf: string, byDiary: boolean]>({
  code: 'progress/not-closed',
  severity: 'note',
  say: (step, began, asOf, byDiary) =>
    `"${step}" began on ${began}, and by ${byDiary ? 'the diary' : 'its length'} nothing of it is left on ${asOf}; nobody says that it is done. It counts as done on ${asOf}, and what follows begins the next morning. Write "finished" and the day, or what is left of it: "left 1d".`,
});

export const undated = findingSort<[step: string, asOf: string]>({
  code: 'progress/not-closed',
  severity: 'note',
  say: (step, asOf) =>
    `By the diary nothing of "${step}" is left on ${asOf}; nobody says when it began, or that it is done. It counts as done on ${asOf}, and what follows begins the next morning. Write both days ("started", "finished"), or what is left of it: "left 1d".`,
});

export const notClosed: Check = {
  code: 'progress/not-closed',
  about:
    'A step that should be done by now is either done, and the diary lacks it, or late, and every date behind it is too early. Only who was there knows which.',
  wrong: `plan p
  start 2027-05-03
task board takes 4d
progress 2027-05-12
  board started 2027-05-03
`,
  right: `plan p
  start 2027-05-03
task board takes 4d
progress 2027-05-12
  board started 2027-05-03, left 1d
`,
  reads: ({ timeline }) => [timeline.progress, timeline.timing, timeline.steps],
  run: ({ timeline: { progress, steps, timing, durations } }) =>
    [...progress.records].flatMap(([number, { started, finished, left, done }]) => {
      const step = steps.list[number];
      if (step === undefined || progress.asOf === undefined) return [];
      const isUndated = started === undefined && finished === undefined && (left !== undefined || done !== undefined);
      if (isUndated && hasFinished(timing, number) && durations[number]!.minutes > 0)
        return [finding(undated, step.place, step.name, dayAndMonth(progress.asOf))];
      if (started === undefined || !hasStarted(timing, number)) return [];
      if (hasFinished(timing, number) || timing.durations[number]! > 0 || durations[number]!.minutes === 0) return [];
      const byDiary = left !== undefined || done !== undefined;
      return [finding(open, step.place, step.name, dayAndMonth(started), dayAndMonth(progress.asOf), byDiary)];
    }),
};
