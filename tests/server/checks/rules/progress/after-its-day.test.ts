// Facts of days that had not come when they were written down.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'progress/after-its-day';
const plan = (line: string): string =>
  `plan p\n  start 2027-05-03\ntask board takes 4d\ninspection look after board\nprogress 2027-05-05\n  ${line}\n`;

test.each([
  ['board started 2027-05-06', '"board" began on 2027-05-06'],
  ['board started 2027-05-03, finished 2027-05-07', '"board" was done on 2027-05-07'],
  ['look passed 2027-05-10', '"look" passed on 2027-05-10'],
  ['look failed 2027-05-10 "no plans"', '"look" failed on 2027-05-10'],
])('%s', (line, said) => {
  const { messages, told } = checked(plan(line));
  expect(messages(CODE)[0]).toContain(said);
  expect(told.filter((each) => each.startsWith(`warning ${CODE}`))).toHaveLength(1);
});

test('what is expected may lie ahead, and what happened on the day itself is known', () => {
  expect(checked(plan('board now 2027-05-20')).messages(CODE)).toEqual([]);
  expect(checked(plan('board started 2027-05-05')).messages(CODE)).toEqual([]);
});

test('a fact ahead of its block does not move a date until its day has come', () => {
  const text = plan('board started 2027-05-03, finished 2027-05-05\nprogress 2027-05-04\n  look passed 2027-05-12');
  const day = (asOf?: number): boolean =>
    checked(text, asOf === undefined ? {} : { asOf }).plan.timeline.progress.records.get(1)?.finished !== undefined;
  expect(day()).toBe(false);
  expect(day(Date.parse('2027-05-12') / 86_400_000)).toBe(true);
});
