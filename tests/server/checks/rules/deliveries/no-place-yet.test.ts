// Board, cabinets and floors that come before the house is closed.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const found = (delivery: string) =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
level main
  footprint 24' x 32'
  height 8'
  ceiling lid
assembly lid for ceiling
  layer drywall 1/2"
room hall on main
  size 10' x 10'
supplier yard
trade crew crew of 2
task roof does lay-underlayment takes 20d by crew
delivery board brings drywall from yard, ${delivery}
task hang does hang-board takes 3d by crew after roof
`).messages('deliveries/no-place-yet');

// Twenty working days from Monday, 1 March end on Friday, 26 March.
test('names what the house still lacks', () =>
  expect(found('lead 1 week')).toEqual([
    '"board" comes on 8 Mar, but the house is dry on 26 Mar ("roof" is last). Drywall is stored indoors, flat, and until then there is no place for it: in the open it is ruined or stolen. Let "board" wait for "roof".',
  ]));

test('behind the last step it is right', () => expect(found('after roof')).toEqual([]));

// Each house has its own day on which it is dry: five working days for the first, on Friday, 5 March, thirty for the second, on 9 April.
const twoHouses = (lead: string, boarded: 'both' | 'second') =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
level one
  footprint 24' x 32'
  height 8'
${boarded === 'both' ? '  ceiling lid' : ''}
level two
  footprint 24' x 32'
  height 8'
  ceiling lid
foundation under one
  wall 8" x 3'
foundation under two
  wall 8" x 3'
roof first over one
  shape gable 6:12
roof second over two
  shape gable 6:12
assembly lid for ceiling
  layer drywall 1/2"
room hall-one on one
  size 10' x 10'
room hall-two on two
  size 10' x 10'
supplier yard
trade crew crew of 2, crews 2
task roof-one does lay-underlayment of first takes 5d by crew
task roof-two does lay-underlayment of second takes 30d by crew
delivery board brings drywall from yard, lead ${lead}
task hang-one does hang-board on one takes 3d by crew after roof-one
task hang-two does hang-board on two takes 3d by crew after roof-two
`).messages('deliveries/no-place-yet');

test('of several houses it is the first dry one of those that the goods are for', () => {
  expect(twoHouses('2 weeks', 'both')).toEqual([]);
  expect(twoHouses('2 days', 'both').join()).toContain('comes on 3 Mar, but the house is dry on 5 Mar ("roof-one" is last)');
  expect(twoHouses('2 weeks', 'second').join()).toContain('comes on 15 Mar, but the house is dry on 9 Apr ("roof-two" is last)');
});
