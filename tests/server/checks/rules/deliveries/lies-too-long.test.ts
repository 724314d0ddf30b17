// Goods that come long before they are used: by the delivery's own word a warning, by the library's row a note.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'deliveries/lies-too-long';
const plan = (delivery: string) =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
level main
  footprint 24' x 32'
  height 8'
  walls timber
assembly timber for wall
  layer lap-siding, 7" to the weather
supplier yard
trade siding crew of 2
task shell takes 40d by siding
delivery boards brings lap-siding from yard, lead 1 week${delivery}
task lap does side-walls by siding after shell
`);

// Forty working days from Monday, 1 March: the siding begins on Monday, 26 April; the boards come on Monday, 8 March.
test('says how long it lies and how long it keeps', () => {
  const found = plan('\n  keeps 2 weeks');
  expect(found.messages(CODE)).toEqual([
    '"boards" comes on 8 Mar and "lap" first uses it on 26 Apr: Lap siding lies on site for 49 days and keeps 2 weeks, stored dry, flat. What lies about gets wet, bent or stolen and stands in the way. Let it come later: after a step nearer to "lap", or "not before" a day.',
  ]);
  expect(found.told).toContain(`warning ${CODE} boards`);
});

test('the library says six weeks of lap siding: forty-nine days are more, forty-two are not', () => {
  expect(plan('').told).toContain(`note ${CODE} boards`);
  expect(plan(', not before 2027-03-15').messages(CODE)).toEqual([]);
});

test('the delivery’s own word goes before the row', () => expect(plan('\n  keeps 8 weeks').messages(CODE)).toEqual([]));

// Board and paint: from Monday, 1 March, forty working days to Monday, 26 April; the doors come on 8 March.
const doors = (type: string) =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
level main
  footprint 24' x 32'
  height 8'
door d-2868 "Inside door" 2'-8" x 6'-8"${type}
room bed on main
  size 10' x 12'
  doors 1 d-2868
supplier yard
trade trim crew of 2
task board takes 40d by trim
delivery doors-here brings d-2868 from yard, lead 1 week
task hang does hang-doors by trim after board
`);

test('a door type of the plan says for itself how long it keeps, and how', () => {
  expect(doors('').messages(CODE)).toEqual([]);
  expect(doors('\n  keeps 2 weeks\n  stored indoors, flat').messages(CODE)[0]).toContain(
    'Inside door lies on site for 49 days and keeps 2 weeks, stored indoors, flat.',
  );
});
