// The rim of a framed floor: the outside of the walls runs on over it. Sheathing and siding that cover rim and sill down to
// the concrete are common practice; dressed sizes are those of PS 20, American Softwood Lumber Standard, table 3.
import { describe, expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const built = (text: string) => planOf(text, { library: 'built-in' });
const main = (more = '') => `
level main
  footprint 28' x 32'
  height    8'
  walls     ext-2x6-foam
  floor     floor-2x10
${more}
`;
const stemWalls = 'foundation perimeter under main\n  footing 20" x 8"\n  wall 8" x 32"\n';
const rim = (plan: ReturnType<typeof built>, measure: Parameters<ReturnType<typeof built>['lines']>[0]) =>
  plan.lines(measure).filter(({ where }) => where.part === 'rim');
const inches = (plan: ReturnType<typeof built>, round = 120): number =>
  (amount(rim(plan, 'wall-sheathing-area')[0]?.net, 'sf') / round) * 12;

describe('a floor of 2x10 on a stem wall', () => {
  const plan = built(main() + stemWalls);

  test('its rim is subfloor, joists and sill: 23/32 + 9 1/4 + 1 1/2 in, for every layer outside the framing', () => {
    const area = (120 * (23 / 32 + 9.25 + 1.5)) / 12;
    for (const measure of ['wall-sheathing-area', 'wall-barrier-area', 'wall-foam-area', 'wall-cladding-area'] as const)
      expect(amount(rim(plan, measure)[0]?.net, 'sf')).toBeCloseTo(area, 6);
    expect(amount(rim(plan, 'outside-paint-area')[0]?.net, 'sf')).toBeCloseTo(area, 6);
  });

  test('what lies inside stays as high as the wall, and battens run down in one length', () => {
    expect(rim(plan, 'board-area')).toEqual([]);
    expect(rim(plan, 'wall-stud-count')).toEqual([]);
    expect(amount(plan.lines('wall-gross-area')[0]?.net, 'sf')).toBeCloseTo(960, 6);
    const battens = plan.line('wall-stud-count', 'batten').pieces;
    expect(amount(battens?.[0]?.length, 'in')).toBeCloseTo(96 + 23 / 32 + 9.25 + 1.5, 6);
  });

  test('a floor that is filled insulates its own rim', () => {
    expect(rim(plan, 'wall-insulation-area')).toEqual([]);
  });
});

test('on piers there is no sill, and without a floor no rim', () => {
  expect(inches(built(`${main()}foundation piers under main\n  piers 4 by 3, 12" x 30"\n`))).toBeCloseTo(23 / 32 + 9.25, 6);
  const slab = "level main\n  footprint 28' x 32'\n  height 8'\n  walls ext-2x6\nfoundation slab under main\n  slab 4\"\n";
  expect(rim(built(slab), 'wall-cladding-area')).toEqual([]);
});

test('between storeys the rim belongs to the floor above it, and is insulated as the walls are', () => {
  const plan = built(`${main()}${stemWalls}level upper
  footprint 20' x 32'
  height    8'
  walls     ext-2x6
  floor     floor-2x10-inner
`);
  const upper = rim(plan, 'wall-cladding-area').find(
    ({ where, item }) => where.level === plan.model.list('level')[1]?.slot && item.startsWith('lap-siding'),
  );
  expect(amount(upper?.net, 'sf')).toBeCloseTo((104 * (23 / 32 + 9.25)) / 12, 6);
  const filled = rim(plan, 'wall-insulation-area').filter(({ item }) => item.endsWith('batt'));
  expect(filled.map(({ item }) => item)).toEqual(['r21-batt']);
  expect(amount(filled[0]?.net, 'sf')).toBeCloseTo((104 * 9.25) / 12, 6);
});

test('a plan says another height, what fills it, or none', () => {
  const told = built(main('  rim 14 1/2", filled with r15-batt') + stemWalls);
  expect(inches(told)).toBeCloseTo(14.5, 6);
  expect(amount(rim(told, 'wall-insulation-area')[0]?.net, 'sf')).toBeCloseTo((120 * 9.25) / 12, 6);
  expect(rim(built(main('  rim none') + stemWalls), 'wall-cladding-area')).toEqual([]);
});

test('a floor of panels is covered as deep as the panels are', () => {
  const plan = built('level main\n  footprint 6 m x 9.6 m\n  height 2.4 m\n  walls ext-sip-165\n  floor floor-sip-215\n');
  expect(amount(rim(plan, 'wall-cladding-area')[0]?.net, 'm2')).toBeCloseTo(31.2 * 0.215, 6);
});
