// 5 U.S.C. 6103: New Year's Day is a federal holiday, and a Friday in 2027. A public schedule (github.com, myosun01/4D_PtD) works it through.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const frame = (plan: string, days = '10d') =>
  checked(`plan p
  start 2026-12-28
${plan}trade crew crew of 2
task frame takes ${days} by crew
`).messages('dates/on-holiday');

test('names the first holiday that is worked, and counts the others', () => {
  expect(frame('  workweek mon-fri 8h\n')).toEqual([
    `On 1 Jan, New Year's Day, "frame" goes on: the plan names no holidays, and crews, yards and inspectors keep them. Write "holidays US", or "closed" with the days on which nobody comes.`,
  ]);
  // The birthday of Martin Luther King, Jr. is the third Monday of January, the 18th.
  expect(frame('  workweek mon-fri 8h\n', '20d').join()).toContain('and so does work on 1 other holiday');
});

test('nothing where holidays or closed days are named, where none is worked, or where no week is told', () => {
  expect(frame('  workweek mon-fri 8h\n  holidays US\n')).toEqual([]);
  expect(frame('  workweek mon-fri 8h\n  closed 2027-01-01\n')).toEqual([]);
  expect(frame('  workweek mon-fri 8h\n', '4d')).toEqual([]);
  expect(frame('')).toEqual([]);
});
