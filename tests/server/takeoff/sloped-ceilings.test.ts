// Rooms under sloped and vaulted ceilings: board, paint, insulation and volume follow the slope, by hand from plane geometry.
import { describe, expect, test } from 'vitest';
import { factsOf } from '#model/facts';
import { roomSlope } from '#model/facts/room';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const built = (text: string) => planOf(text, { library: 'built-in' });
const level = (more: string) => `
level main
  footprint 20' x 30'
  height 8'
  walls ext-2x6
${more}
`;
const room = (more: string) => `
room hall on main
  size 16' x 20'
  walls paint
  ceiling paint
${more}
`;

describe('a room of 16 by 20 ft that rises from 8 ft in the west to 12 ft in the east', () => {
  const plan = built(level('  ceiling flat-lid-batts') + room("  sloped 8' in west, 12' in east"));
  const slope = Math.sqrt(1 + (4 / 16) ** 2);

  test('walls: 20 ft at 8, 20 ft at 12, twice 16 ft at 10 on average', () => {
    const walls = 20 * 8 + 20 * 12 + 2 * 16 * 10;
    expect(amount(plan.line('painted-wall-area', 'paint').net, 'sf')).toBeCloseTo(walls, 6);
    const board = plan.lines('board-area', 'drywall').find(({ where }) => where.part === 'walls');
    expect(amount(board?.net, 'sf')).toBeCloseTo(walls, 6);
    const { 'wall-area': fact, volume } = factsOf(plan.model.list('room')[0]!);
    expect(amount(fact, 'sf')).toBeCloseTo(walls, 6);
    expect(amount(volume, 'cf')).toBeCloseTo(16 * 20 * 10, 6);
  });

  test('ceiling: along the slope, and the insulation over it', () => {
    expect(amount(plan.line('painted-ceiling-area', 'paint').net, 'sf')).toBeCloseTo(320 * slope, 6);
    const board = plan.lines('board-area', 'drywall').find(({ where }) => where.part === 'ceiling');
    expect(amount(board?.net, 'sf')).toBeCloseTo(320 * slope, 6);
    expect(amount(plan.line('ceiling-insulation-area', 'r38-batt').net, 'sf')).toBeCloseTo(600 + 320 * (slope - 1), 6);
  });
});

test('up to the middle: two low walls, two gable ends', () => {
  const plan = built(level('') + room("  sloped 8' in west, 14' in middle"));
  expect(amount(plan.line('painted-wall-area', 'paint').net, 'sf')).toBeCloseTo(2 * 20 * 8 + 2 * 16 * 11, 6);
  expect(amount(plan.line('painted-ceiling-area', 'paint').net, 'sf')).toBeCloseTo(2 * 20 * 10, 6);
  expect(amount(factsOf(plan.model.list('room')[0]!).volume, 'cf')).toBeCloseTo(320 * 11, 6);
});

test('a room of walked sides: an L that rises northward', () => {
  const plan = built(
    `level main\n  height 8'\nroom ell on main\n  outline east 20', north 10', west 10', north 10', west 10', south 20'\n  sloped 8' in south, 12' in north\n  walls paint\n`,
  );
  // South 20 ft at 8; east 10 ft at 9; inner 10 ft at 10; inner east 10 ft at 11; north 10 ft at 12; west 20 ft at 10.
  expect(amount(plan.line('painted-wall-area', 'paint').net, 'sf')).toBeCloseTo(160 + 90 + 100 + 110 + 120 + 200, 6);
  // 20 by 10 ft at 9 and 10 by 10 ft at 11.
  expect(amount(roomSlope(plan.model.list('room')[0]!)?.volume, 'cf')).toBeCloseTo(200 * 9 + 100 * 11, 6);
});

test('sides that do not lie across from each other are told, and the room is counted flat', () => {
  const plan = built(level('') + room("  sloped 8' in west, 12' in north"));
  expect(plan.messages.map((message) => message.split(':')[0])).toContain('takeoff/slope-across');
  expect(amount(plan.line('painted-wall-area', 'paint').net, 'sf')).toBeCloseTo(72 * 8, 6);
});

describe('a roof that is the ceiling: 20 by 30 ft, 12 in 12, 12 in out', () => {
  const roof = (more = '') =>
    `roof top over main\n  shape gable 12:12\n  overhang 12"\n  roofing standing-seam over felt\n${more}`;
  const plan = built(level('  ceiling vault-lid') + room("  sloped 8' in west, 16' in middle") + roof());
  const root = Math.SQRT2;

  test('its deck is roof deck over the overhangs, its batts and board follow the slope within the walls', () => {
    expect(amount(plan.line('roof-deck-area', 'osb').net, 'sf')).toBeCloseTo(22 * 32 * root, 6);
    expect(plan.lines('wall-sheathing-area', 'osb').every(({ where }) => where.part !== 'ceiling')).toBe(true);
    expect(amount(plan.line('ceiling-insulation-area', 'r38-batt').net, 'sf')).toBeCloseTo(600 * root, 6);
    expect(amount(plan.line('painted-ceiling-area', 'paint').net, 'sf')).toBeCloseTo(320 * root, 6);
  });

  test('its rafters are counted at their spacing: 30 ft at 16 in is 24 pairs of 11 ft of run', () => {
    const rafters = plan.line('rafter-length', 'rafter');
    expect(rafters.pieces?.map(({ count }) => count.value)).toEqual([48]);
    expect(amount(rafters.net, 'ft')).toBeCloseTo(48 * 11 * root, 6);
  });

  test('its gables close rooms: they are insulated and framed as the walls are', () => {
    const gables = plan.lines('wall-insulation-area', 'r21-batt').find(({ where }) => where.part === 'gables');
    expect(amount(gables?.net, 'sf')).toBeCloseTo(20 * 10, 6);
  });

  test('what the roof names itself is not counted twice', () => {
    const named = built(level('  ceiling vault-lid') + roof('  framed rafter 2x12 at 16" oc\n  deck osb 7/16"\n'));
    expect(named.lines('roof-deck-area', 'osb').map(({ where }) => where.part)).toEqual([undefined]);
    expect(named.lines('rafter-length', 'rafter').map(({ where }) => where.part)).toEqual([undefined]);
  });

  test('without a roof of one pitch over it, that is told', () => {
    const codes = (more: string) => built(level('  ceiling vault-lid') + more).messages.map((message) => message.split(':')[0]);
    expect(codes('')).toContain('takeoff/size-missing');
    expect(codes("roof top over main\n  shape gambrel 24:12, upper 6:12, break 4'\n")).toContain('takeoff/size-missing');
    expect(codes('roof top over main\n  shape flat\n')).toEqual([]);
  });

  test('a room that tells no height under it is asked for it', () => {
    const silent = built(level('  ceiling vault-lid') + room('') + roof());
    expect(silent.messages.map((message) => message.split(':')[0])).toContain('takeoff/vault-height');
  });
});
