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
