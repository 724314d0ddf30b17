// The end against the schedule that was kept.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/later-than-planned';
const plan = (takes: string, kept: string): string => `plan p\n  start 2027-05-03\ntask board takes ${takes}\n${kept}`;
const KEPT = 'as-planned bank "The bank" on 2027-04-01\n  board begins 2027-05-03, done 2027-05-06\n';

test('days, dates and whom to ask', () => {
  const { messages, told } = checked(plan('6d', KEPT));
  expect(messages(CODE)[0]).toContain(
    'ends 2 working days later than in "The bank" of 2027-04-01: on Mon 10 May 2027 instead of Thu 6 May 2027.',
  );
  expect(told).toContain(`note ${CODE} bank`);
});

test('in time, earlier, or nothing kept', () => {
  expect(checked(plan('4d', KEPT)).messages(CODE)).toEqual([]);
  expect(checked(plan('2d', KEPT)).messages(CODE)).toEqual([]);
  expect(checked(plan('6d', '')).messages(CODE)).toEqual([]);
  expect(checked(plan('6d', 'as-planned bank\n')).messages(CODE)).toEqual([]);
});
