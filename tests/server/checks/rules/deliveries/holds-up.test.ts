// Steps that wait for their goods alone: for how many working days, and not where something else holds them as long.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const found = (delivery: string, more = '') =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier millwork
trade framing crew of 2
trade roofers crew of 2
task walls takes 5d by framing
task roof takes 50d by roofers
delivery windows-here brings truss from millwork, lead ${delivery}
task windows-in takes 2d by framing after walls, windows-here${more}
`).messages('deliveries/holds-up');

// The walls are done on Friday, 5 March; two weeks from Monday, 1 March is Monday, 15 March: one week of work is lost.
test('says for how long and since when', () =>
  expect(found('2 weeks')).toEqual([
    '"windows-in" waits 5 working days for "windows-here" alone: all else that it waits for is done and its crew is free on 5 Mar, and the goods come on 15 Mar. Measure and order sooner, take what has a shorter lead, or plan other work between.',
  ]));

test('what is ordered cannot be ordered sooner', () =>
  expect(found('3 weeks, ordered 2027-02-22').join()).toContain('Ask whether a part can come sooner'));

test('nothing while the crew is busy elsewhere', () =>
  expect(found('2 weeks', '\ntask porch takes 10d by framing after walls, not before 2027-03-08')).toEqual([]));

test('nothing where other work lasts as long, or the goods are there in time', () => {
  expect(found('2 weeks', ', roof')).toEqual([]);
  expect(found('3 days')).toEqual([]);
});

// Two crews: the other of them is free from Friday, 5 March, whatever the first does on the porch.
const withCrews = (crews: string, porches: string) =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier millwork
trade framing crew of 2, crews ${crews}
task walls takes 5d by framing
delivery windows-here brings truss from millwork, lead 2 weeks
task windows-in takes 2d by framing after walls, windows-here
${porches}
`).messages('deliveries/holds-up');
const PORCH = 'task porch takes 10d by framing after walls, not before 2027-03-08';

test('of several crews one that is free is enough', () => {
  expect(withCrews('1', PORCH)).toEqual([]);
  expect(withCrews('2', PORCH).join()).toContain('"windows-in" waits 5 working days');
  expect(withCrews('2', `${PORCH}\n${PORCH.replace('porch', 'shed')}`)).toEqual([]);
});

test('names the step that uses the goods, where another stands before it, and what a delivery itself waits for', () => {
  const messages = checked(`plan p
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
trade mill
task saw takes 10d by mill
delivery boards brings lap-siding from yard, after saw
task talk takes 1d by siding after boards
task lap does side-walls by siding after talk
`).messages('deliveries/holds-up');
  expect(messages).toEqual([
    '"talk" and behind it "lap", which uses the goods, wait 10 working days for "boards" alone: all else is done and the crew is free on 1 Mar, and the goods come on 12 Mar, once "saw" is done. Begin "saw" sooner or see whether a part can come first, or plan other work between.',
  ]);
});
