// Work that should be done and is not said to be.
import { expect, test } from 'vitest';
import { dayOfFinish, isoDate } from '#kit/dates';
import { checked } from '#tests/support/checked';

const CODE = 'progress/not-closed';
const plan = (entry: string): string =>
  `plan p\n  start 2027-05-03\ntask board takes 4d\ntask paint takes 1d after board\nprogress 2027-05-12\n  board started 2027-05-03${entry}\n`;
const ends = (entry: string): readonly string[] =>
  [...checked(plan(entry)).plan.timeline.crews.finish].map((moment) => isoDate(dayOfFinish(moment)));

test('by its length, or by the diary', () => {
  expect(checked(plan('')).messages(CODE)).toEqual([
    '"board" began on 3 May, and by its length nothing of it is left on 12 May; nobody says that it is done. It counts as done on 12 May, and what follows begins the next morning. Write "finished" and the day, or what is left of it: "left 1d".',
  ]);
  expect(checked(plan(', 100% done')).messages(CODE)[0]).toContain('by the diary nothing');
  expect(ends('')).toEqual(['2027-05-12', '2027-05-13']);
});

test('done, or with something left', () => {
  expect(checked(plan(', finished 2027-05-07')).messages(CODE)).toEqual([]);
  expect(checked(plan(', left 1d')).messages(CODE)).toEqual([]);
  expect(ends(', left 1d')).toEqual(['2027-05-13', '2027-05-14']);
});
