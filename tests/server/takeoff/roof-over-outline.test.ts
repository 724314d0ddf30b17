// Roofs over L, T and U outlines: surface, ridges, hips, valleys, edges, gables and rafters, against a published valley, and
// against lengths worked out by hand from the straight skeleton: slopes that rise alike from two walls meet on the line that
// halves the corner.
import { describe, expect, test } from 'vitest';
import { replay } from '#kit/quantity';
import { roofFigures } from '#takeoff/measure/roof-figures';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const L = "east 40', north 16', west 20', north 14', west 20', south 30'";
const T = "east 60', north 40', west 15', north 20', west 30', south 20', west 15', south 40'";
const U = "east 50', north 30', west 16', south 14', west 18', north 14', west 16', south 30'";
const over = (sides: string, roof: string, more = '') =>
  planOf(`level main\n  footprint ${sides}\n  height 8'\n${more}roof top over main\n  shape ${roof}\n`, { library: 'built-in' });
const figures = (sides: string, roof: string) => roofFigures(over(sides, roof).model.list('roof')[0]!)!;
const feet = (quantity: Parameters<typeof amount>[0]) => (quantity === undefined ? 0 : amount(quantity, 'ft'));

describe('an L of a bar 40 by 16 ft and a leg 20 ft wide, 6 in 12, no overhang', () => {
  const slope = Math.sqrt(1.25);
  const diagonal = Math.sqrt(2.25);

  test('hips: the plan on the slope; ridges, hips and a valley as the corners are halved', () => {
    const roof = figures(L, 'hip 6:12\n  overhang 0');
    expect(amount(roof.area, 'sf')).toBeCloseTo(920 * slope, 6);
    // Bar: from 8 ft inside its end to 12 ft, where the valley comes up: 20 ft. Leg: from 10 ft inside either end: 10 ft.
    expect(feet(roof.ridge)).toBeCloseTo(20 + 10, 6);
    // Two at the bar's end, two at the leg's, one at the outer corner up to the leg's ridge, and the 2 ft between the ridges.
    expect(feet(roof.hips)).toBeCloseTo((2 * 8 + 2 * 10 + 10 + 2) * diagonal, 6);
    expect(feet(roof.valleys)).toBeCloseTo(8 * diagonal, 6);
    expect(feet(roof.eaves)).toBeCloseTo(140, 6);
    expect(feet(roof.rakes)).toBe(0);
  });

  test('gables: the ends stand up, and the ridges run out to them', () => {
    const roof = figures(L, 'gable 6:12\n  overhang 0');
    expect(amount(roof.area, 'sf')).toBeCloseTo(920 * slope, 6);
    expect(feet(roof.ridge)).toBeCloseTo(28 + 20, 6);
    expect(feet(roof.hips)).toBeCloseTo((10 + 2) * diagonal, 6);
    expect(feet(roof.valleys)).toBeCloseTo(8 * diagonal, 6);
    expect(feet(roof.eaves)).toBeCloseTo(140 - 16 - 20, 6);
    expect(feet(roof.rakes)).toBeCloseTo((16 + 20) * slope, 6);
  });

  test('with the ridge said to run north and south the leg is the house, with two gables, and the bar runs into it', () => {
    const roof = figures(L, 'gable 6:12, ridge north-south\n  overhang 0');
    expect(amount(roof.area, 'sf')).toBeCloseTo(920 * slope, 6);
    expect(feet(roof.ridge)).toBeCloseTo(30 + 28, 6);
    expect(feet(roof.hips)).toBe(0);
    expect(feet(roof.valleys)).toBeCloseTo(2 * 8 * diagonal, 6);
    expect(roof.gables.map(feet)).toEqual([20, 20, 16]);
  });

  test('with overhangs the plan grows by them, and every number replays from the sides', () => {
    const roof = figures(L, 'hip 6:12\n  overhang 18"');
    expect(amount(roof.plan, 'sf')).toBeCloseTo(920 + 140 * 1.5 + 4 * 1.5 ** 2, 6);
    expect(feet(roof.eaves)).toBeCloseTo(140 + 8 * 1.5, 6);
    // Five corners turn outward and one inward: each hip and the valley begins an overhang further out.
    expect(feet(roof.hips)).toBeCloseTo((48 + 5 * 1.5) * diagonal, 6);
    expect(feet(roof.valleys)).toBeCloseTo((8 + 1.5) * diagonal, 6);
    for (const each of [roof.area, roof.plan, roof.ridge, roof.hips, roof.valleys, roof.eaves, roof.rafter])
      expect(replay(each!)).toBe(each!.value);
  });
});

test('NAVEDTRA 14044, Builder, p. 2-28: an addition of 30 ft span at 9 in 12 has a shorter valley rafter of 24.01 ft', () => {
  // The line where the slopes meet is twice the shorter rafter; the longer one runs on under the main roof.
  const roof = figures(T, 'gable 9:12\n  overhang 0');
  expect(feet(roof.valleys) / 2).toBeCloseTo(24.01, 2);
  // One valley rafter goes up to the ridge of the main roof, whose span is 40 ft: 19.21 in for each foot of its run.
  expect(feet(roof.valleys) / 2 / 15).toBeCloseTo(19.21 / 12, 3);
});

describe('a T and a U', () => {
  test('a T under gables has three of them, two valleys and no hip', () => {
    const roof = figures(T, 'gable 12:12\n  overhang 0');
    expect(roof.gables.map(feet).sort()).toEqual([30, 40, 40]);
    expect(roof.hips).toBeUndefined();
    expect(feet(roof.ridge)).toBeCloseTo(60 + 20 + 15, 6);
    expect(feet(roof.rakes)).toBeCloseTo((40 + 40 + 30) * Math.SQRT2, 6);
  });

  test('a U of equal spans has two gables, and at each outer corner a hip against a valley', () => {
    const roof = figures(U, 'gable 6:12\n  overhang 0');
    expect(roof.gables.map(feet)).toEqual([16, 16]);
    expect(feet(roof.hips)).toBeCloseTo(2 * 8 * 1.5, 6);
    expect(feet(roof.valleys)).toBeCloseTo(2 * 8 * 1.5, 6);
    expect(feet(roof.ridge)).toBeCloseTo(34 + 22 + 22, 6);
    expect(amount(roof.area, 'sf')).toBeCloseTo((50 * 16 + 2 * 16 * 14) * Math.sqrt(1.25), 6);
  });
});

describe('what is taken off', () => {
  const built = over(
    L,
    `gable 6:12
  overhang 12"
  framed   rafter 2x8 at 24" oc
  deck     osb 7/16"
  roofing  strip-shingle over felt
  gutters  south, west
`,
    '  walls ext-2x6\n',
  );

  test('valleys are flashed, gables carry the siding, gutters hang where eaves are', () => {
    expect(amount(built.line('valley-length', 'valley-metal').net, 'ft')).toBeCloseTo(9 * 1.5, 6);
    const gables = built.lines('wall-sheathing-area', 'osb').filter(({ where }) => where.part === 'gables');
    expect(amount(gables[0]?.net, 'sf')).toBeCloseTo((16 * 16 + 20 * 20) / 8, 6);
    expect(amount(built.line('gutter-length', 'gutter').net, 'ft')).toBeCloseTo(42 + 32, 6);
  });

  test('rafters one by one: commons, jacks that shorten by the spacing, hips and a valley', () => {
    const { pieces, net } = built.line('rafter-length', 'rafter');
    const slope = Math.sqrt(1.25);
    // Walls a foot inside the eaves: the leg's half span of 10 ft makes rafters of 11 ft on plan.
    const commons = pieces!.find(({ length }) => Math.abs(amount(length, 'ft') - 11 * slope) < 0.01)!;
    expect(commons.count.value).toBe(19);
    const whole = pieces!.reduce((sum, { count, length }) => sum + count.value * length.value, 0);
    expect(net.value).toBeCloseTo(whole, 3);
    // As a check of the whole: surface over spacing, hips and valleys, half a rafter more at each end of each slope.
    const rough = (1064 * slope) / 2 + (2 + 11 + 9) * 1.5;
    expect(amount(net, 'ft') / rough).toBeGreaterThan(0.98);
    expect(amount(net, 'ft') / rough).toBeLessThan(1.08);
  });

  test('a plain hip roof too: 40 by 20 ft at 2 ft spacing, 11 pairs of commons, one at each end, four jacks on either side of every hip', () => {
    const hip = planOf(
      "level main\n  footprint 40' x 20'\nroof top over main\n  shape hip 12:12\n  framed rafter 2x8 at 24\" oc\n",
      { library: 'built-in' },
    );
    const { pieces, net } = hip.line('rafter-length', 'rafter');
    const ten = pieces!.find(({ length }) => Math.abs(amount(length, 'ft') - 10 * Math.SQRT2) < 0.01);
    // Along the sides from 10 to 30 ft, and one in the middle of each end.
    expect(ten?.count.value).toBe(2 * 11 + 2);
    const hips = pieces!.filter(({ length }) => Math.abs(amount(length, 'ft') - 10 * Math.sqrt(3)) < 0.01);
    expect(hips.reduce((sum, { count }) => sum + count.value, 0)).toBe(4);
    // Jacks of 2, 4, 6 and 8 ft of run, on both faces of four hips.
    const jacks = 4 * 2 * (2 + 4 + 6 + 8) * Math.SQRT2;
    expect(amount(net, 'ft')).toBeCloseTo(24 * 10 * Math.SQRT2 + jacks + 4 * 10 * Math.sqrt(3), 1);
  });

  test('trusses where roofs meet are counted, and sent to the truss maker', () => {
    const trussed = over(L, 'gable 6:12\n  framed truss at 24" oc\n');
    expect(trussed.messages.map((message) => message.split(':')[0])).toContain('takeoff/trusses-meet');
    expect(trussed.line('truss-count', 'truss').net.value).toBeGreaterThan(25);
  });
});

describe('what cannot be said for certain is told', () => {
  const codes = (sides: string, roof: string) => over(sides, roof).messages.map((message) => message.split(':')[0]);
  const jog = "east 40', north 26', west 10', north 2', west 30', south 28'";

  test('a step beside a ridge, overhangs that meet, a single slope without its high side', () => {
    expect(codes(jog, 'gable 6:12')).toContain('takeoff/ridges-side-by-side');
    expect(codes(L, 'gable 6:12')).not.toContain('takeoff/ridges-side-by-side');
    expect(
      codes("east 20', north 20', west 9', south 10', west 2', north 10', west 9', south 20'", 'hip 6:12\n  overhang 18"'),
    ).toContain('takeoff/overhangs-meet');
    expect(codes(L, 'shed 3:12')).toContain('takeoff/size-missing');
  });

  test('a single slope over an L: the plan on the slope, its low edges, and the walls up to it', () => {
    const roof = figures(L, 'shed 3:12, high north\n  overhang 0');
    expect(amount(roof.area, 'sf')).toBeCloseTo(920 * Math.sqrt(1 + 1 / 16), 6);
    expect(feet(roof.eaves)).toBeCloseTo(40, 6);
    expect(feet(roof.rakes)).toBeCloseTo(40 + 60 * Math.sqrt(1 + 1 / 16), 6);
    // North walls 20 ft at 16 and 20 ft at 30; east 16 ft at 8 and 14 ft at 23; west 30 ft at 15; times a quarter.
    expect(amount(roof.wallAbove, 'sf')).toBeCloseTo((20 * 16 + 20 * 30 + 16 * 8 + 14 * 23 + 30 * 15) / 4, 6);
  });

  test('a flat roof over an L: the plan with its overhang', () => {
    const roof = figures(L, 'flat\n  overhang 12"');
    expect(amount(roof.area, 'sf')).toBeCloseTo(920 + 140 + 4, 6);
    expect(feet(roof.eaves)).toBeCloseTo(148, 6);
  });
});
