// Gambrel roofs, by hand: 24 by 30 ft, 24 in 12 for 4 ft in from each wall, then 6 in 12 to the ridge.
import { describe, expect, test } from 'vitest';
import { replay } from '#kit/quantity';
import { roofFigures } from '#takeoff/measure/roof-figures';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const house = (roof: string, footprint = "30' x 24'") =>
  planOf(
    `level main\n  footprint ${footprint}\n  height 8'\n  walls ext-2x6\nroof top over main\n${roof}  framed rafter 2x8 at 24" oc\n  deck osb 7/16"\n  roofing strip-shingle over felt\n`,
    { library: 'built-in' },
  );
const shape = "  shape gambrel 24:12, upper 6:12, break 4'\n";

describe('with 12 in overhang all round', () => {
  const plan = house(`${shape}  overhang 12"\n`);
  const low = 5 * Math.sqrt(5);
  const high = 8 * Math.sqrt(1.25);

  test('surface, ridge, eaves and rakes', () => {
    expect(amount(plan.line('roof-cover-area', 'strip-shingle').net, 'sf')).toBeCloseTo(2 * 32 * (low + high), 6);
    expect(amount(plan.line('ridge-length').net, 'ft')).toBeCloseTo(32, 6);
    expect(amount(plan.line('drip-edge-length').net, 'ft')).toBeCloseTo(2 * 32 + 4 * (low + high), 6);
  });

  test('two rafters a side at every spacing, in their own lengths', () => {
    const { pieces } = plan.line('rafter-length', 'rafter');
    expect(pieces?.map(({ count, length }) => [count.value, amount(length, 'ft')])).toEqual([
      [32, expect.closeTo(low, 6)],
      [32, expect.closeTo(high, 6)],
    ]);
  });

  test('each gable: 8 ft up to the break and 4 ft more to the ridge', () => {
    // Below the break two triangles of 4 by 8 ft and 16 ft between them; above, a triangle of 16 by 4 ft.
    const one = 4 * 8 + 16 * 8 + (16 * 4) / 2;
    const gables = plan.lines('wall-sheathing-area', 'osb').find(({ where }) => where.part === 'gables');
    expect(amount(gables?.net, 'sf')).toBeCloseTo(2 * one, 6);
    const studs = plan.lines('wall-stud-count', 'stud').find(({ where }) => where.part === 'gables');
    // At 16 in from one end: the middle one 12 ft from it stands 8 + 4 ft high, the first 16 in up the steep slope 2 ft 8 in.
    const pieces = studs!.pieces!;
    const lengths = pieces.map(({ length }) => amount(length, 'ft'));
    expect(lengths[0]).toBeCloseTo(12, 6);
    expect(lengths.at(-1)).toBeCloseTo(2 + 8 / 12, 6);
    expect(pieces.reduce((sum, { count }) => sum + count.value, 0)).toBe(studs!.net.value);
  });
});

describe('gambrels that run into each other over a T: 60 by 24 ft, and a wing 24 ft wide and 20 ft out', () => {
  const T = "60' x 24', plus 24' x 20' at 18', -20'";
  const plan = house(`${shape}  overhang 0\n`, T);
  const roof = roofFigures(plan.model.list('roof')[0]!)!;

  test('surface: 4 ft along all eaves steep, the rest flatter', () => {
    // Of 1,920 sf, 60 x 16 and 16 x (20 + 4) lie above the break.
    const above = 60 * 16 + 16 * 24;
    expect(amount(roof.area, 'sf')).toBeCloseTo((1920 - above) * Math.sqrt(5) + above * Math.sqrt(1.25), 4);
  });

  test('two valleys that break with the slopes; ridges of 60 and 32 ft; three gables', () => {
    expect(amount(roof.valleys, 'ft')).toBeCloseTo(2 * (4 * Math.sqrt(6) + 8 * Math.sqrt(2.25)), 4);
    expect(roof.hips).toBeUndefined();
    expect(amount(roof.ridge, 'ft')).toBeCloseTo(60 + 32, 4);
    expect(amount(roof.eaves, 'ft')).toBeCloseTo(60 + 36 + 40, 4);
    expect(amount(roof.rakes, 'ft')).toBeCloseTo(3 * 2 * (4 * Math.sqrt(5) + 8 * Math.sqrt(1.25)), 4);
    const gables = plan.lines('wall-sheathing-area', 'osb').find(({ where }) => where.part === 'gables');
    expect(amount(gables?.net, 'sf')).toBeCloseTo(3 * (4 * 8 + 16 * 8 + (16 * 4) / 2), 4);
    for (const each of [roof.area, roof.valleys!, roof.ridge!, roof.rakes]) expect(replay(each)).toBe(each.value);
  });

  test('rafters by surface and spacing, with the valleys', () => {
    expect(amount(plan.line('rafter-length', 'rafter').net, 'ft')).toBeCloseTo(
      amount(roof.area, 'sf') / 2 + amount(roof.valleys, 'ft'),
      4,
    );
  });
});

test('with both slopes of one pitch it is the gable roof of the outline', () => {
  const L = "40' x 16', plus 20' x 14' at 0, 16'";
  const of = (form: string) => roofFigures(house(`  shape ${form}\n  overhang 12"\n`, L).model.list('roof')[0]!)!;
  const [broken, plain] = [of("gambrel 6:12, upper 6:12, break 4'"), of('gable 6:12')];
  for (const word of ['area', 'plan', 'ridge', 'hips', 'valleys', 'eaves', 'rakes'] as const)
    expect(amount(broken[word], word === 'area' || word === 'plan' ? 'sf' : 'ft'), word).toBeCloseTo(
      amount(plain[word], word === 'area' || word === 'plan' ? 'sf' : 'ft'),
      4,
    );
});

test('without its break, or with one past the ridge, it is asked for, not guessed', () => {
  const codes = (roof: string, footprint?: string) => house(roof, footprint).messages.map((message) => message.split(':')[0]);
  expect(codes('  shape gambrel 24:12\n')).toContain('takeoff/size-missing');
  expect(codes("  shape gambrel 24:12, upper 6:12, break 13'\n")).toContain('takeoff/size-missing');
  expect(codes(shape, "40' x 16', plus 20' x 14' at 0, 16'")).toEqual([]);
  expect(codes("  shape gambrel 24:12, upper 6:12, break 13'\n", "40' x 16', plus 20' x 14' at 0, 16'")).toContain(
    'takeoff/size-missing',
  );
});
