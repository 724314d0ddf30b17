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

test('a gable against the storey: one gable, and the wall in place of the other', () => {
  const plan = house(
    " at 0, 12'\n  footprint 28' x 20'",
    '  shape gable 3:12\n  overhang 12"\n  framed rafter 2x6 at 24" oc\n  roofing strip-shingle over felt\n',
  );
  const roof = roofFigures(plan.model.list('roof')[0]!)!;
  const slope = Math.sqrt(1 + 1 / 16);
  // 12 ft and one overhang long; each slope 14 ft and one overhang.
  expect(amount(roof.area, 'sf')).toBeCloseTo(2 * 13 * 15 * slope, 6);
  expect(feet(roof.ridge)).toBeCloseTo(13, 6);
  expect(feet(roof.eaves)).toBeCloseTo(26, 6);
  expect(feet(roof.rakes)).toBeCloseTo(2 * 15 * slope, 6);
  expect(feet(plan.line('roof-wall-length', 'step-flashing').net)).toBeCloseTo(2 * 15 * slope, 6);
  const gable = plan.lines('wall-sheathing-area', 'osb').filter(({ where }) => where.part === 'gables');
  expect(gable.map(({ net }) => amount(net, 'sf'))).toEqual([expect.closeTo((28 * 3.5) / 2, 6)]);
  // Seven rafters a side at 24 in along 12 ft.
  expect(plan.line('rafter-length', 'rafter').pieces?.map(({ count, length }) => [count.value, feet(length)])).toEqual([
    [14, expect.closeTo(15 * slope, 6)],
  ]);
});

test('a hip roof against the storey: two hips, and a ridge up to the wall', () => {
  const roof = roofFigures(
    planOf(
      "level main\n  footprint 20' x 32'\nlevel upper on main at 0, 12'\n  footprint 20' x 20'\nroof low over main beside upper\n  shape hip 6:12\n  overhang 12\"\n",
    ).model.list('roof')[0]!,
  )!;
  expect(amount(roof.area, 'sf')).toBeCloseTo(13 * 22 * Math.sqrt(1.25), 6);
  expect(feet(roof.ridge)).toBeCloseTo(2, 6);
  expect(feet(roof.hips)).toBeCloseTo(2 * 11 * Math.sqrt(2.25), 6);
  expect(feet(roof.eaves)).toBeCloseTo(2 * 13 + 22, 6);
  expect(feet(roof.eaveOn.south)).toBeCloseTo(22, 6);
  expect(feet(roof.againstWalls)).toBeCloseTo(2 * 11 * Math.sqrt(1.25), 6);
  // On plan, its slopes and lines come to the same.
  expect(amount({ ...roof.plan, value: roof.onPlan!.area }, 'sf')).toBeCloseTo(13 * 22, 6);
  expect(feet({ ...roof.ridge!, value: roof.onPlan!.ridge })).toBeCloseTo(2, 6);
  expect(feet({ ...roof.ridge!, value: roof.onPlan!.hips })).toBeCloseTo(22, 6);
});

test('pieces on both sides of the storey, and what runs along its wall or is too short for a hip, are asked for', () => {
  const codes = (upper: string, roof: string) => house(upper, roof).messages.map((message) => message.split(':')[0]);
  expect(codes(" at 0, 6'\n  footprint 28' x 20'", '  shape shed 3:12, high north\n')).toContain('takeoff/size-missing');
  expect(codes(" at 0, 12'\n  footprint 28' x 20'", '  shape gable 3:12, ridge east-west\n')).toContain('takeoff/size-missing');
  expect(codes(" at 0, 12'\n  footprint 28' x 20'", '  shape hip 3:12\n')).toContain('takeoff/size-missing');
  expect(codes(" at 8', 12'\n  footprint 20' x 20'", '  shape gable 3:12\n')).toContain('takeoff/size-missing');
});
