// Deliveries on days when nobody works: the next working day is named; a warning where the work cannot wait for it.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const plan = (ordered: string, wall = 'after lumber') =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
  closed 2027-03-15
supplier yard
trade framing crew of 2
delivery lumber brings stud from yard, lead 1 week, ordered ${ordered}
task walls takes 4d by framing ${wall}
`);
const CODE = 'deliveries/closed-day';

test('a Saturday before a closed Monday: Tuesday is the next day', () => {
  const found = plan('2027-03-06');
  expect(found.messages(CODE)).toEqual([
    '"lumber" comes on Saturday, 13 Mar, when nobody works on site: no one takes it in, looks it over or covers it, and a second trip is charged. Ask for Tuesday, 16 Mar, or write that day as "not before".',
  ]);
  expect(found.told).toContain(`warning ${CODE} lumber`);
});

test('only a note where the work begins later', () =>
  expect(plan('2027-03-06', 'after lumber, not before 2027-03-22').told).toContain(`note ${CODE} lumber`));

test('a working day says nothing', () => expect(plan('2027-03-05').messages(CODE)).toEqual([]));
