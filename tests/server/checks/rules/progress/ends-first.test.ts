// Steps that the diary ends before they begin.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'progress/ends-first';
const plan = (diary: string): string => `plan p\n  start 2027-05-03\ntask board takes 4d\n${diary}`;

test('both days are named, and the step counts as done on its last', () => {
  const { messages, marks } = checked(plan('progress 2027-05-14\n  board started 2027-05-12, finished 2027-05-07\n'));
  expect(messages(CODE)).toEqual([
    'The diary has "board" done on 2027-05-07, before it began on 2027-05-12, so it counts as begun and done on 2027-05-07. One of the two days is wrong: put it right.',
  ]);
  expect(marks(CODE)).toEqual(['line 3: board']);
});

test('from two blocks, too; one day is in order', () => {
  const two = 'progress 2027-05-10\n  board started 2027-05-10\nprogress 2027-05-14\n  board finished 2027-05-07\n';
  expect(checked(plan(two)).messages(CODE)).toHaveLength(1);
  expect(checked(plan('progress 2027-05-14\n  board started 2027-05-07, finished 2027-05-07\n')).messages(CODE)).toEqual([]);
});
