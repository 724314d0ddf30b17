// Storeys that stand out over the one below: by hand from the two outlines.
import { expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const house = (upper: string, more = '') =>
  planOf(
    `level main
  footprint 28' x 32'
  height 8'
  walls ext-2x6
  floor floor-2x10
level upper on main${upper}
  height 8'
  walls ext-2x6
${more}`,
    { library: 'built-in' },
  );
const soffit = (plan: ReturnType<typeof house>) =>
  plan.lines('soffit-area', 'soffit-board').reduce((sum, { net }) => sum + amount(net, 'sf'), 0);

test('two feet out to the south: 28 by 2 ft of soffit, insulated as the walls are, as deep as the joists', () => {
  const plan = house(" at 0, -2'\n  footprint 28' x 34'\n  floor floor-2x10-inner");
  expect(soffit(plan)).toBeCloseTo(56, 6);
  const under = plan.lines('floor-insulation-area', 'r21-batt').find(({ where }) => where.part === 'overhang');
  expect(amount(under?.net, 'sf')).toBeCloseTo(56, 6);
});

test('offset both ways: what lies over the outline below is no soffit', () => {
  expect(soffit(house(" at 4', 4'\n  footprint 28' x 32'"))).toBeCloseTo(28 * 32 - 24 * 28, 6);
  expect(soffit(house("\n  footprint 28' x 32'"))).toBe(0);
  expect(soffit(house(" at 4', -2'\n  footprint 20' x 20', plus 8' x 6' at 6', -6'"))).toBeCloseTo(8 * 2, 6);
});

test('a storey clear of the one it stands on, and a roof under a storey, are told', () => {
  const codes = (plan: ReturnType<typeof house>) => plan.messages.map((message) => message.split(':')[0]);
  expect(codes(house(" at 0, 40'\n  footprint 28' x 20'"))).toContain('takeoff/level-apart');
  const roof = 'roof low over main\n  shape shed 3:12, high north\n';
  expect(codes(house("\n  footprint 28' x 20'", roof))).toContain('takeoff/roof-under-storey');
  expect(codes(house("\n  footprint 28' x 20'", `${roof}  size 28' x 12'\n`))).not.toContain('takeoff/roof-under-storey');
});
