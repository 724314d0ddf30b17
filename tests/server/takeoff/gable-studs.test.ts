// Studs in gables step with the roof, and are bought in sticks that the longest comes out of. Lengths by hand.
import { expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const house = (size: string, shape: string) =>
  planOf(
    `level main
  footprint ${size}
  height    8'
  walls     ext-2x4
roof main over main
  shape     ${shape}
  overhang  12" eaves, 12" rakes
  framed    rafter 2x8 at 24" oc
assembly ext-2x4 for wall
  layer stud 2x4 at 16" oc
`,
    { library: 'built-in' },
  );

function studs(plan: ReturnType<typeof house>, part: string) {
  const line = plan.lines('wall-stud-count', 'stud').find(({ where }) => where.part === part)!;
  return { count: line.net.value, pieces: line.pieces!.map(({ count, length }) => [count.value, amount(length, 'in')]) };
}

test('a gable of 16 ft at 12:12: studs at 16 in step by 16 in up to 96 in under the ridge', () => {
  const { count, pieces } = studs(house("16' x 24'", 'gable 12:12'), 'gables');
  // 16 ft is 12 spaces and 13 places in each of two gables; the two at its ends are cut as the first.
  expect(count).toBe(26);
  expect(pieces).toEqual([
    [2, expect.closeTo(96, 6)],
    [4, expect.closeTo(80, 6)],
    [4, expect.closeTo(64, 6)],
    [4, expect.closeTo(48, 6)],
    [4, expect.closeTo(32, 6)],
    [8, expect.closeTo(16, 6)],
  ]);
});

test('a span that is no whole number of spaces: each by its nearer end', () => {
  const { pieces } = studs(house("10' x 24'", 'gable 6:12'), 'gables');
  // 120 in: at 16, 32, 48 from one end, then 64, 80, 96, 112, which are 56, 40, 24, 8 from the other; at half of each.
  expect(pieces).toEqual([
    [2, expect.closeTo(28, 6)],
    [2, expect.closeTo(24, 6)],
    [2, expect.closeTo(20, 6)],
    [2, expect.closeTo(16, 6)],
    [2, expect.closeTo(12, 6)],
    [6, expect.closeTo(8, 6)],
    [2, expect.closeTo(4, 6)],
  ]);
});

test('a shed roof: the ends rise all the way to the high wall', () => {
  const { count, pieces } = studs(house("16' x 8'", 'shed 3:12, high north'), 'above the low wall');
  // 96 in at 16 in: 7 places at either end, a quarter of the distance high: 24 at the high wall, the one at the low end as the first.
  expect(count).toBe(14);
  expect(pieces).toEqual([24, 20, 16, 12, 8, 4].map((inches, nth) => [nth === 5 ? 4 : 2, expect.closeTo(inches, 6)]));
});

test('a ridge 10 ft up wants sticks longer than 8 ft, though the mean stud is 5 ft', () => {
  const plan = house("20' x 24'", 'gable 12:12');
  const longest = Math.max(...plan.purchase('stud 2x4').lines.flatMap(({ pieces }) => pieces!.map(({ length }) => length.value)));
  const { sticks, holds } = plan.purchase('stud 2x4');
  expect(Math.max(holds?.value ?? 0, ...(sticks ?? []).map((each) => each.holds.value))).toBeGreaterThanOrEqual(longest);
});
