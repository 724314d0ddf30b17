// Gambrel roofs, by hand: 24 by 30 ft, 24 in 12 for 4 ft in from each wall, then 6 in 12 to the ridge.
import { describe, expect, test } from 'vitest';
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
    expect(amount(studs?.pieces?.[0]?.length, 'ft')).toBeCloseTo(one / 24, 6);
  });
});

test('without its break, with one past the ridge, or over an L it is asked for, not guessed', () => {
  const codes = (roof: string, footprint?: string) => house(roof, footprint).messages.map((message) => message.split(':')[0]);
  expect(codes('  shape gambrel 24:12\n')).toContain('takeoff/size-missing');
  expect(codes("  shape gambrel 24:12, upper 6:12, break 13'\n")).toContain('takeoff/size-missing');
  expect(codes(shape, "40' x 16', plus 20' x 14' at 0, 16'")).toContain('takeoff/size-missing');
});
