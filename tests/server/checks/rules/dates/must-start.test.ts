// Steps that must start on a day and begin later.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/must-start';
const plan = (days: number, day = '2027-04-12'): string =>
  `plan p\n  start 2027-04-05\ntrade concrete crew of 3\ntask forms takes ${days}d by concrete\ntask pour takes 1d by concrete, must start ${day}, after forms\n`;

test('the working days it is late, and the chain', () => {
  // Seven days from Monday the 5th end on Tuesday the 13th.
  const late = checked(plan(7));
  expect(late.messages(CODE)).toEqual([
    '"pour" must start on Mon 12 Apr 2027 and begins on Wed 14 Apr 2027, 2 working days late: who is booked for that day comes in vain. The chain that sets its date: "forms" → "pour". Start what leads to it earlier, or book another day.',
  ]);
  expect(late.marks(CODE)).toEqual(['line 5: 2027-04-12']);
});

test('ready on its day, at noon or before', () => {
  expect(checked(plan(5)).messages(CODE)).toEqual([]);
  expect(checked(plan(2)).messages(CODE)).toEqual([]);
  expect(checked(plan(5).replace('takes 5d', 'takes 44h')).messages(CODE)).toEqual([]);
});

test('a day on which nobody works', () => {
  expect(checked(plan(2, '2027-04-10')).messages(CODE)).toEqual([
    '"pour" must start on Sat 10 Apr 2027, when those who do it do not work; it begins on Mon 12 Apr 2027. Give it another day, or give that day its hours ("works", "hours").',
  ]);
  const saturday = plan(2, '2027-04-10').replace('takes 1d by concrete,', 'takes 1d by concrete, works sat 8h,');
  expect(checked(saturday).messages(CODE)).toEqual([]);
});

test('begun, by the diary, it is not told', () => {
  const diary = 'progress 2027-04-14\n  forms finished 2027-04-13\n  pour started 2027-04-14\n';
  expect(checked(`${plan(7)}${diary}`).messages(CODE)).toEqual([]);
});

test('only its crew is at something else on that day', () => {
  // a is at work from Monday 3 May to Thursday the 6th.
  const busy = `plan p
  start 2027-05-03
trade fr "Frames" crew of 1
task a takes 4d by fr
task d takes 2d by fr, must start 2027-05-05
task c takes 5d by fr after a, d
`;
  expect(checked(busy).messages(CODE)).toEqual([
    '"d" must start on Wed 5 May 2027 and begins on Fri 7 May 2027, 2 working days late: its crew (Frames) is at "a" until then, and who is booked for that day comes in vain. Nothing else holds it. Let "a" wait for "d" ("after"), get more to do the work, or book another day.',
  ]);
});

test('a milestone that is set for a day and missed', () => {
  const set = (day: string): string => `plan p\n  start 2027-05-03\ntask a takes 4d\nmilestone m on ${day} after a\n`;
  // Four days from Monday end on Thursday, two working days after Tuesday the 4th.
  const found = checked(set('2027-05-04'));
  expect(found.messages(CODE)).toEqual([
    '"m" is set for Tue 4 May 2027 and falls on Thu 6 May 2027, 2 working days late: who counts on that day counts in vain. The chain that sets its date: "a" → "m". Start what leads to it earlier, or set another day.',
  ]);
  expect(found.marks(CODE)).toEqual(['line 4: 2027-05-04']);
  expect(checked(set('2027-05-06')).messages(CODE)).toEqual([]);
  expect(
    checked(`${set('2027-05-04')}progress 2027-05-07\n  a finished 2027-05-06\n  m finished 2027-05-06\n`).messages(CODE),
  ).toEqual([]);
});
