// Roofs over what a storey leaves bare of the level below it, by hand.
import { expect, test } from 'vitest';
import { roofFigures } from '#takeoff/measure/roof-figures';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const house = (upper: string, roof: string) =>
  planOf(
    `level main\n  footprint 28' x 32'\n  height 8'\n  walls ext-2x6\nlevel upper on main${upper}\n  height 8'\nroof low over main beside upper\n${roof}`,
    { library: 'built-in' },
  );
const feet = (quantity: Parameters<typeof amount>[0]) => amount(quantity, 'ft');

test('a strip of 28 by 12 ft to the south: a slope up to the storey, without overhang there, and flashed', () => {
  const plan = house(
    " at 0, 12'\n  footprint 28' x 20'",
    '  shape shed 3:12, high north\n  overhang 12"\n  roofing strip-shingle over felt\n',
  );
  const slope = Math.sqrt(1 + 1 / 16);
  expect(amount(plan.line('roof-cover-area', 'strip-shingle').net, 'sf')).toBeCloseTo(30 * 13 * slope, 6);
  expect(feet(plan.line('roof-wall-length', 'step-flashing').net)).toBeCloseTo(30, 6);
  const roof = roofFigures(plan.model.list('roof')[0]!)!;
  expect(feet(roof.eaves)).toBeCloseTo(30, 6);
  expect(feet(roof.rakes)).toBeCloseTo(2 * 13 * slope, 6);
  expect(plan.messages.map((message) => message.split(':')[0])).not.toContain('takeoff/roof-under-storey');
});

test('an L round a corner of the storey, flat', () => {
  const roof = roofFigures(house(" at 8', 12'\n  footprint 20' x 20'", '  shape flat\n  overhang 0\n').model.list('roof')[0]!)!;
  expect(amount(roof.area, 'sf')).toBeCloseTo(28 * 32 - 400, 6);
});

test('pieces on both sides of the storey, and a gable against it, are asked for', () => {
  const codes = (upper: string, roof: string) => house(upper, roof).messages.map((message) => message.split(':')[0]);
  expect(codes(" at 0, 6'\n  footprint 28' x 20'", '  shape shed 3:12, high north\n')).toContain('takeoff/size-missing');
  expect(codes(" at 0, 12'\n  footprint 28' x 20'", '  shape gable 3:12\n')).toContain('takeoff/size-missing');
});
