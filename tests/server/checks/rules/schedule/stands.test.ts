// Steps that stand from one to another: the wrong way round, or with a length of their own.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'schedule/stands';
// Monday 3 May: a to Thursday, b Friday and Monday.
const plan = (step: string): string => `plan p\n  start 2027-05-03\ntask a takes 4d\ntask b takes 2d after a\ntask w ${step}\n`;

test('done with what is done before the other begins', () => {
  const found = checked(plan('stands from b to a'));
  expect(found.messages(CODE)).toEqual([
    '"w" stands from "b" to "a", but "a" is done on 6 May, before "b" begins on 7 May: so it stands for no time at all, and nothing is hired or paid for. Turn the two around, or name the steps that it really stands for.',
  ]);
  expect(checked(plan('stands from a to b')).messages(CODE)).toEqual([]);
  expect(checked(plan('stands from a to a')).messages(CODE)).toEqual([]);
});

test('a length of its own does not count', () => {
  expect(checked(plan('takes 9d stands from a to b')).messages(CODE)).toEqual([
    '"w" stands as long as the steps that it stands for, 6d, so the length given here counts for nothing. Take it out, or take out "stands" and say what the step begins after.',
  ]);
});
