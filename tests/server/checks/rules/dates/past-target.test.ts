// Plans that end after their target day.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/past-target';
const plan = (target: string): string =>
  `plan p\n  start 2027-04-05\n  target ${target}\ntask frame takes 12d\ntask finish takes 15d after frame\n`;

test('the days over, and the step that ends last', () => {
  // 27 working days from Monday 5 April end on Tuesday 11 May; 30 April is a Friday.
  const late = checked(plan('2027-04-30'));
  expect(late.messages(CODE)[0]).toMatch(
    /^The plan ends on Tue 11 May 2027, 7 working days after its target of Fri 30 Apr 2027: "finish" ends last\./,
  );
  expect(late.marks(CODE)).toEqual(['line 3: 2027-04-30']);
  expect(late.plan.findings.find(({ code }) => code === CODE)?.related?.[0]?.place.slot.name).toBe('finish');
});

test('the evening of the target is in time', () => {
  expect(checked(plan('2027-05-11')).messages(CODE)).toEqual([]);
  expect(checked(plan('2027-05-10')).messages(CODE)[0]).toMatch(/1 working day after/);
});
