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
