// Work half done of which nobody wrote when it began.
import { expect, test } from 'vitest';
import { DAY_MINUTES } from '#kit/dates';
import { checked } from '#tests/support/checked';

const CODE = 'progress/no-start';
const plan = (entry: string): string =>
  `plan p\n  start 2027-05-03\ntask board takes 4d\nprogress 2027-05-05\n  board ${entry}\n`;

test.each(['left 1d', '75% done'])('%s', (entry) => {
  const { messages, told, plan: made } = checked(plan(entry));
  expect(messages(CODE)).toHaveLength(1);
  expect(told).toContain(`note ${CODE} board`);
  // The day that is left is Thursday 6 May.
  const { start, finish } = made.timeline.crews;
  const thursday = (Date.parse('2027-05-06') / 86_400_000) * DAY_MINUTES;
  expect([start[0], finish[0]]).toEqual([thursday + 8 * 60, thursday + 16 * 60]);
});

test('with its day, or where nothing is done', () => {
  expect(checked(plan('started 2027-05-04, left 1d')).messages(CODE)).toEqual([]);
  expect(checked(plan('0% done')).messages(CODE)).toEqual([]);
});
