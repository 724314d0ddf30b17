// Waits that weekends should count in.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'waits/working-time';
const plan = (wait: string, work = 'pour-footings'): string => `
trade concrete crew of 3 at $58/h
task first does ${work} takes 1d by concrete
task second takes 2d by concrete after first + ${wait}
`;

test('after concrete two working days are more than two days', () => {
  const found = checked(plan('2d'));
  expect(found.messages(CODE)).toEqual([
    '"second" waits 2d of working time after "first", so a weekend in between makes it longer; what must harden or dry does so at weekends too. Write "+ 2 days" if that is what it waits for.',
  ]);
  expect(found.told).toContain('note waits/working-time second');
});

test.each(['2 days', '48h', '1 week'])('%s runs by the calendar', (wait) =>
  expect(checked(plan(wait)).messages(CODE)).toEqual([]),
);

test('after work that no rule lets harden it is left alone', () => {
  expect(checked(plan('2d', 'frame-walls')).messages(CODE)).toEqual([]);
});
