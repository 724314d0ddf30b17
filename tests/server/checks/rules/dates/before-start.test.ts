// Days before the plan begins.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/before-start';

test.each([
  ['task frame takes 5d, not before 2026-04-12', '2026-04-12'],
  ['task frame takes 5d, deadline 2026-05-01', '2026-05-01'],
  ['milestone loan on 2026-05-01', '2026-05-01'],
])('%s', (line, day) => {
  const plan = checked(`plan p\n  start 2027-04-05\n${line}\n`);
  expect(plan.marks(CODE)).toEqual([`line 3: ${day}`]);
  expect(plan.messages(CODE)[0]).toContain(`is ${day}, before the plan starts on 2027-04-05`);
  expect(plan.told.filter((each) => each.includes(CODE))[0]).toMatch(/^warning/);
});

test('a target before the start', () => {
  expect(checked('plan p\n  start 2027-04-05\n  target 2026-12-01\n').messages(CODE)).toHaveLength(1);
});

test('what the diary has from before the start is a note', () => {
  const plan = checked('plan p\n  start 2027-04-05\ntask survey takes 1d\nprogress 2027-04-09\n  survey finished 2027-04-01\n');
  expect(plan.told).toContain('note dates/before-start 1');
});

test('orders, bids and prices may be older; without a start nothing is early', () => {
  expect(checked('plan p\n  start 2027-04-05\ndelivery windows lead 9 weeks, ordered 2027-02-01\n').messages(CODE)).toEqual([]);
  expect(checked('task frame takes 5d, not before 2026-04-12\n').messages(CODE)).toEqual([]);
});

test('a paper may be got long before work begins', () => {
  const told = (lines: string): readonly string[] => checked(`plan p\n  start 2027-05-03\n${lines}\n`).messages(CODE);
  expect(told('milestone permit on 2026-10-01, good for 180 days')).toEqual([]);
  // Known to the library as one that lapses.
  expect(told('milestone permit-issued on 2026-10-01')).toEqual([]);
  expect(told('milestone permit on 2026-10-01, good for 180 days\nprogress 2027-05-06\n  permit passed 2026-10-01')).toEqual([]);
  expect(told('milestone loan on 2026-10-01\nprogress 2027-05-06\n  loan finished 2026-10-01')).toEqual([]);
  expect(told('milestone loan on 2026-10-01')[0]).toContain('write that in the diary ("loan finished 2026-10-01")');
});
