// Steps that miss their own deadline.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/deadline';
const plan = (deadline: string): string =>
  `plan p\n  start 2027-04-05\ntask frame takes 5d\ntask cover takes 3d after frame, deadline ${deadline}\n`;

test('the days over, and what it waits for', () => {
  // Five days end on Friday 9 April, three more on Wednesday 14 April.
  const late = checked(plan('2027-04-12'));
  expect(late.messages(CODE)).toEqual([
    '"cover" is done on Wed 14 Apr 2027, 2 working days after its deadline of Mon 12 Apr 2027; what it waits for last is "frame". Start what leads to it earlier, or move the deadline.',
  ]);
  expect(late.marks(CODE)).toEqual(['line 4: 2027-04-12']);
});

test('the evening of the deadline is in time', () => {
  expect(checked(plan('2027-04-14')).messages(CODE)).toEqual([]);
});
