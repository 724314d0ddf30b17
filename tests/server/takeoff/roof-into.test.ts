// Roofs that run into another: the gable of a porch and dormers, against a published valley, against the roof of a T worked
// out as one, and by hand.
import { describe, expect, test } from 'vitest';
import { replay } from '#kit/quantity';
import { roofFigures } from '#takeoff/measure/roof-figures';
import { runIn } from '#takeoff/measure/roof-into';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const house = (main: string, other: string) =>
  planOf(
    `level main
  footprint 60' x 40'
  height 8'
  walls ext-2x6
roof top over main
  shape gable ${main}, ridge east-west
  framed rafter 2x8 at 24" oc
  deck osb 7/16"
  roofing strip-shingle over felt
roof other into top in south
${other}`,
    { library: 'built-in' },
  );
const figures = (main: string, other: string) => {
  const [top, second] = house(main, other).model.list('roof');
  return runIn(second!, top!)!;
};
const feet = (quantity: Parameters<typeof amount>[0]) => amount(quantity, 'ft');

test('Griffith, Carpentry, fig. 88-a, uneven pitches: half spans of 6 ft at 10 in 12 into a roof of 8 in 12: 7.5 ft in, a valley run of 9.60 ft', () => {
  const run = figures('8:12\n  overhang 0', "  size 12' x 4'\n  shape gable 10:12\n  overhang 0\n");
  expect(feet(run.meets)).toBeCloseTo(7.5, 6);
  const valley = feet(run.valleys) / 2;
  expect(Math.sqrt(valley ** 2 - 5 ** 2)).toBeCloseTo(9.6, 2);
});

describe('a wing of 30 by 20 ft at the pitch of the house is the stem of a T', () => {
  const run = figures('9:12\n  overhang 18"', "  size 30' x 20'\n  shape gable 9:12\n  overhang 18\"\n");
  const T = "footprint east 60', north 40', west 15', north 20', west 30', south 20', west 15', south 40'";
  const whole = roofFigures(
    planOf(`level main\n  ${T}\nroof top over main\n  shape gable 9:12\n  overhang 18"\n`).model.list('roof')[0]!,
  )!;
  const main = roofFigures(house('9:12\n  overhang 18"', "  size 30' x 20'\n  shape gable 9:12\n").model.list('roof')[0]!)!;

  test('surface, valleys, ridges and edges add up to those of the T', () => {
    const surface = amount(main.area, 'sf') - amount(run.hides, 'sf') + amount(run.area, 'sf');
    expect(surface).toBeCloseTo(amount(whole.area, 'sf'), 6);
    expect(feet(run.valleys)).toBeCloseTo(feet(whole.valleys), 6);
    expect(feet(main.ridge) + feet(run.ridge)).toBeCloseTo(feet(whole.ridge), 6);
    expect(feet(main.eaves) - feet(run.takesEave) + feet(run.eaves)).toBeCloseTo(feet(whole.eaves), 6);
    expect(feet(main.rakes) + feet(run.rakes)).toBeCloseTo(feet(whole.rakes), 6);
  });

  test('and replay from what was given', () => {
    for (const each of [run.area, run.hides, run.valleys, run.ridge, run.eaves, run.rakes])
      expect(replay(each!)).toBe(each!.value);
  });
});

describe('a gable dormer 8 ft wide, 4 ft back, its plate 6 ft up, 12 in 12 on 6 in 12', () => {
  const other = "  dormer 8' wide, 4' back, 6' raised\n  shape gable 12:12\n";
  const run = figures('6:12', other);

  test('its walls: 4 ft of front under a gable of 4 ft, and two triangles of 4 by 8 ft', () => {
    expect(amount(run.frontWall, 'sf')).toBeCloseTo(8 * 4, 6);
    expect(amount(run.gable, 'sf')).toBeCloseTo(4 * 4, 6);
    expect(amount(run.sideWalls, 'sf')).toBeCloseTo(2 * 0.5 * 4 * 8, 6);
    expect(feet(run.flashing)).toBeCloseTo(8 + 2 * 8 * Math.sqrt(1.25), 6);
  });

  test('its ridge, 10 ft up, meets the slope 20 ft in: 16 ft long; its plates meet it 12 ft in', () => {
    expect(feet(run.ridge)).toBeCloseTo(16, 6);
    expect(feet(run.eaves)).toBeCloseTo(2 * 8, 6);
    expect(amount(run.area, 'sf')).toBeCloseTo(2 * 4 * 12 * Math.SQRT2, 6);
    // Each valley: 4 ft out, 8 ft along, 4 ft up.
    expect(feet(run.valleys)).toBeCloseTo(2 * Math.sqrt(16 + 64 + 16), 6);
    expect(amount(run.hides, 'sf')).toBeCloseTo(8 * 12 * Math.sqrt(1.25), 6);
  });

  test('is taken off: its walls closed and insulated, the roof under it cut out, valleys and walls flashed', () => {
    const plan = house('6:12', other);
    const at = (measure: Parameters<typeof plan.lines>[0], item: string) =>
      plan.lines(measure, item).filter(({ id }) => id.includes('@roof.other'));
    const siding = at('wall-cladding-area', 'lap-siding').reduce((sum, { net }) => sum + amount(net, 'sf'), 0);
    expect(siding).toBeCloseTo(32 + 16 + 32, 6);
    expect(at('wall-insulation-area', 'r21-batt').length).toBe(3);
    const deck = plan.lines('roof-deck-area', 'osb').find(({ id }) => id.includes('@roof.top'));
    expect(amount(deck?.net, 'sf')).toBeCloseTo(60 * 40 * Math.sqrt(1.25) - 96 * Math.sqrt(1.25), 6);
    expect(amount(plan.line('valley-length', 'valley-metal').net, 'ft')).toBeCloseTo(feet(run.valleys), 6);
    expect(amount(plan.line('roof-wall-length', 'step-flashing').net, 'ft')).toBeCloseTo(feet(run.flashing), 6);
    expect(amount(at('roof-cover-area', 'strip-shingle')[0]?.net, 'sf')).toBeCloseTo(amount(run.area, 'sf'), 6);
  });
});

describe('the same dormer with a hip in front', () => {
  const other = "  dormer 8' wide, 4' back, 6' raised\n  shape hip 12:12\n";
  const run = figures('6:12', other);

  test('has the surface of the gable one; its ridge begins 4 ft further back, over two hips of 4 x √3 ft', () => {
    expect(amount(run.area, 'sf')).toBeCloseTo(2 * 4 * 12 * Math.SQRT2, 6);
    expect(feet(run.ridge)).toBeCloseTo(16 - 4, 6);
    expect(feet(run.hips)).toBeCloseTo(2 * 4 * Math.sqrt(3), 6);
    expect(feet(run.eaves)).toBeCloseTo(2 * 8 + 8, 6);
    expect(feet(run.rakes)).toBe(0);
    expect(run.gable).toBeUndefined();
    expect(amount(run.frontWall, 'sf')).toBeCloseTo(8 * 4, 6);
    for (const each of [run.area, run.ridge, run.hips, run.eaves]) expect(replay(each!)).toBe(each!.value);
  });

  test('is taken off with its hips, and no gable', () => {
    const plan = house('6:12', other);
    const at = (measure: Parameters<typeof plan.lines>[0]) => plan.lines(measure).filter(({ id }) => id.includes('@roof.other'));
    expect(amount(at('hip-length')[0]?.net, 'ft')).toBeCloseTo(2 * 4 * Math.sqrt(3), 6);
    expect([...new Set(at('wall-cladding-area').map(({ where }) => where.part))].sort()).toEqual(['front', 'sides']);
    expect(plan.messages).toEqual([]);
  });
});

test('a shed dormer 20 ft wide, 2 ft back, its front plate 8 ft up, 3 in 12 on 12 in 12', () => {
  const run = figures('12:12', "  dormer 20' wide, 2' back, 8' raised\n  shape shed 3:12\n");
  // 8 ft + (d − 2) ÷ 4 = d: 10 ft in.
  expect(feet(run.meets)).toBeCloseTo(10, 6);
  expect(amount(run.area, 'sf')).toBeCloseTo(20 * 8 * Math.sqrt(1 + 1 / 16), 6);
  expect(amount(run.frontWall, 'sf')).toBeCloseTo(20 * 6, 6);
  expect(amount(run.sideWalls, 'sf')).toBeCloseTo(2 * 0.5 * 6 * 8, 6);
  expect(amount(run.hides, 'sf')).toBeCloseTo(20 * 8 * Math.SQRT2, 6);
});

describe('a porch roof 12 by 6 ft', () => {
  const plan = house('6:12\n  overhang 12"\n  gutters south', "  size 12' x 6'\n  shape gable 6:12\n  overhang 12\"\n");

  test('takes the eave and the gutter it stands before, and covers roofing but not deck', () => {
    expect(feet(plan.lines('gutter-length')[0]?.net)).toBeCloseTo(62 - 14, 6);
    const [cover] = plan.lines('roof-cover-area', 'strip-shingle').filter(({ id }) => id.includes('@roof.top'));
    const slope = Math.sqrt(1.25);
    expect(amount(cover?.net, 'sf')).toBeCloseTo((62 * 42 - 7 * 7) * slope, 6);
    const [deck] = plan.lines('roof-deck-area', 'osb').filter(({ id }) => id.includes('@roof.top'));
    expect(amount(deck?.net, 'sf')).toBeCloseTo(62 * 42 * slope, 6);
  });
});

test('what does not meet, or rises over the ridge, is told', () => {
  const codes = (main: string, other: string) => house(main, other).messages.map((message) => message.split(':')[0]);
  // Of a porch 12 ft wide and 2 ft out the hips meet 6 ft in, behind the 8 ft between its front and the slope; of one as wide
  // and 5 ft raised on a steeper roof they do not.
  expect(codes('6:12', "  size 12' x 6'\n  shape hip 6:12\n")).toEqual([]);
  expect(codes('12:12', "  dormer 12' wide, 3' back, 4' raised\n  shape hip 3:12\n")).toContain('takeoff/runs-into-nothing');
  expect(codes('3:12', "  dormer 8' wide, 3' back, 5' raised\n  shape shed 4:12\n")).toContain('takeoff/runs-into-nothing');
  const east = planOf(
    `level main\n  footprint 60' x 40'\nroof top over main\n  shape gable 6:12, ridge east-west\nroof low into top in east\n  size 8' x 6'\n  shape gable 6:12\n`,
  );
  expect(east.messages.map((message) => message.split(':')[0])).toContain('takeoff/runs-into-nothing');
  expect(codes('3:12', "  size 30' x 6'\n  shape gable 12:12\n")).toContain('takeoff/roof-above-ridge');
});
