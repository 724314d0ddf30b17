// Steps that miss their own deadline, or the days between which they may be done.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/deadline';
const plan = (deadline: string): string =>
  `plan p\n  start 2027-04-05\ntask frame takes 5d\ntask cover takes 3d after frame, deadline ${deadline}\n`;

test('the days over, and what it waits for', () => {
  // Five days end on Friday 9 April, three more on Wednesday 14 April.
  const late = checked(plan('2027-04-12'));
  expect(late.messages(CODE)).toEqual([
    '"cover" is done on Wed 14 Apr 2027, 2 working days after its deadline of Mon 12 Apr 2027. The chain that sets its date: "frame" → "cover". Start what leads to it earlier, or move the deadline.',
  ]);
  expect(late.marks(CODE)).toEqual(['line 4: 2027-04-12']);
});

test('the evening of the deadline is in time', () => {
  expect(checked(plan('2027-04-14')).messages(CODE)).toEqual([]);
});

test('the chain goes through crews that are elsewhere, and ends with the last five of it', () => {
  const long = checked(`plan p
  start 2027-04-05
phase all in order
  task a takes 1d
  task b takes 1d
  task c takes 1d
  task d takes 1d
  task e takes 1d
  task f takes 1d, deadline 2027-04-09
`);
  expect(long.messages(CODE)[0]).toContain('The chain that sets its date: … → "b" → "c" → "d" → "e" → "f".');
  const taken = checked(`plan p
  start 2027-04-05
trade framing crew of 4
task porch takes 3d by framing, deadline 2027-04-07
task deck takes 2d by framing, deadline 2027-04-08
`);
  expect(taken.messages(CODE)[0]).toContain(
    '"deck" is done on Fri 9 Apr 2027, 1 working day after its deadline of Thu 8 Apr 2027. The chain that sets its date: "porch" → "deck".',
  );
});

test('days between which it may be done', () => {
  const plan = (window: string): string =>
    `plan p\n  start 2027-04-05\ntask grade takes 5d\ntask grass takes 3d after grade, between ${window}\n`;
  const late = checked(plan('2027-04-05 and 2027-04-13'));
  expect(late.messages(CODE)).toEqual([
    '"grass" is done on Wed 14 Apr 2027, 1 working day after Tue 13 Apr 2027, the last day on which it may be done. The chain that sets its date: "grade" → "grass". Start what leads to it earlier, or move its dates.',
  ]);
  expect(late.marks(CODE)).toEqual(['line 4: 2027-04-05 and 2027-04-13']);
  expect(checked(plan('2027-04-05 and 2027-04-14')).messages(CODE)).toEqual([]);
});
