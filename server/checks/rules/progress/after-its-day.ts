// What a block of the diary tells of days after its own: nobody can have seen it.
import { isoDate } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';

export const ahead = findingSort<[step: string, what: string, day: string, block: string]>({
  code: 'progress/after-its-day',
  severity: 'warning',
  say: (step, what, day, block) =>
    `The diary of ${block} says that "${step}" ${what} on ${day}, a day that had not come. Until then it does not count. If it is expected, write "now ${day}"; if it happened, put the day right, or write it under a later "progress".`,
});

export const afterItsDay: Check = {
  code: 'progress/after-its-day',
  about:
    'A block of the diary tells what had happened by its day. What it tells of later days is a slip, or a hope: dates that are counted on it would be too early.',
  wrong: `plan p
  start 2027-05-03
task board takes 4d
progress 2027-05-05
  board started 2027-05-03, finished 2027-05-07
`,
  right: `plan p
  start 2027-05-03
task board takes 4d
progress 2027-05-07
  board started 2027-05-03, finished 2027-05-07
`,
  reads: ({ model }) => [model.list('progress')],
  run: ({ model }) =>
    model.list('progress').flatMap(({ takes: day, entries }): readonly Finding[] => {
      if (day === undefined) return [];
      return entries.flatMap(({ value, deeper }): readonly Finding[] => {
        const { started, finished, passed, failed } = deeper;
        const facts = [
          { what: 'began', at: started?.value, place: started?.place },
          { what: 'was done', at: finished?.value, place: finished?.place },
          { what: 'passed', at: passed?.value, place: passed?.place },
          { what: 'failed', at: failed?.value.date, place: failed?.place },
        ];
        return facts.flatMap(({ what, at, place }) =>
          at === undefined || place === undefined || at <= day
            ? []
            : [finding(ahead, place, value.name, what, isoDate(at), isoDate(day))],
        );
      });
    }),
};
