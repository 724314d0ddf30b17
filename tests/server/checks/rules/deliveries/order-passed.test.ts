// Orders that are late, seen from the status date: by the lead alone, silent where an order is written down.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const found = (delivery: string, diary = 'progress 2027-03-12\n  walls started 2027-03-01, left 10d\n') =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier yard
trade framing crew of 2
task walls takes 20d by framing
delivery truss-load brings truss from yard${delivery}
task trusses takes 2d by framing after walls, truss-load
${diary}`).messages('deliveries/order-passed');

// The walls are done on Friday, 26 March, but five weeks from the first day, 1 March, are Monday, 5 April.
test('says by when it had to be ordered, and how late it comes if it is ordered now', () =>
  expect(found(', lead 5 weeks')).toEqual([
    '"truss-load" had to be ordered by 1 Mar to be there on 5 Apr, when "trusses" needs it. On 12 Mar that day has passed and no order is written down: ordered now it comes on 16 Apr, 11 days too late. Write down when it was "ordered", or order it today and ask what else there is.',
  ]));

test('on the last day itself there is still time', () => {
  expect(found(', lead 17 days')).toEqual([]);
  expect(found(', lead 18 days')).toHaveLength(1);
});

test('an order that is written down, a lead that nobody gave and a plan without a status date say nothing', () => {
  expect(found(', lead 5 weeks, ordered 2027-02-24')).toEqual([]);
  expect(found('')).toEqual([]);
  expect(found(', lead 5 weeks', '')).toEqual([]);
});
