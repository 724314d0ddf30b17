// Time-cost examples with published answers, and for every end a linear program as referee (`highs`, the HiGHS solver).
// Activities are tasks that say "faster by"; a day stands for the example's unit.
import { describe, expect, test } from 'vitest';
import { type Faster, fasterOf } from '#answers/faster';
import { viewOf } from '#answers/view';
import { checked } from '#tests/support/checked';
import { type Activity, leastPrices, planOf, readActivities } from '#tests/support/shortening';

function faster(activities: readonly Activity[]): Faster {
  // By sets of steps, even where there are few enough to try every combination.
  return fasterOf(viewOf(checked(planOf(activities)).plan), 0);
}

/** Dollars by length, the usual length first. */
function prices(activities: readonly Activity[], normal: number): Map<number, number> {
  const { ends } = faster(activities);
  return new Map([[normal, 0], ...ends.map(({ gains, price }) => [normal - gains, price / 100] as const)]);
}

/** Every end is as cheap as the program's, and the last is as early as any can be. */
async function expectLeast(activities: readonly Activity[], normal: number): Promise<Map<number, number>> {
  const found = prices(activities, normal);
  const least = await leastPrices(activities);
  for (const [length, price] of found) expect([length, price]).toEqual([length, expect.closeTo(least(length)!, 1)]);
  const shortest = Math.min(...found.keys());
  expect([...found.keys()]).toEqual(Array.from({ length: normal - shortest + 1 }, (_, nth) => normal - nth));
  expect(least(shortest - 1)).toBeUndefined();
  return found;
}

// Heizer & Render, Operations Management, chapter on project management, Milwaukee Paper. Times and links as printed there;
// crash times and costs from memory of its table. The book stops at 13 weeks.
test('Milwaukee Paper: 15 weeks; 14 for $750, 13 for $2,250', async () => {
  const found = await expectLeast(
    readActivities(`
      A 2 > 1 | –    | 750
      B 3 > 1 | –    | 2000
      C 2 > 1 | A    | 1000
      D 4 > 3 | A, B | 1000
      E 4 > 2 | C    | 1000
      F 3 > 2 | C    | 500
      G 5 > 2 | D, E | 1500
      H 2 > 1 | F, G | 3000`),
    15,
  );
  expect([14, 13, 12, 11, 10].map((length) => found.get(length))).toEqual([750, 2250, 3750, 5250, 7250]);
});

// Hillier & Lieberman, Introduction to Operations Research, chapter on PERT/CPM, Reliable Construction Co.: 44 weeks, and 40
// for $140,000 more. Crash data from memory of its table; in thousands of dollars.
test('Reliable Construction: 44 weeks; 40 for $140,000', async () => {
  const found = await expectLeast(
    readActivities(`
      A 2 > 1  | –    | 100
      B 4 > 2  | A    | 50
      C 10 > 7 | B    | 80
      D 6 > 4  | C    | 40
      E 4 > 3  | C    | 160
      F 5 > 3  | E    | 40
      G 7 > 4  | D    | 40
      H 9 > 6  | E, G | 60
      I 7 > 5  | C    | 30
      J 8 > 6  | F, I | 30
      K 4 > 3  | J    | 40
      L 5 > 3  | J    | 50
      M 2 > 1  | H    | 100
      N 6 > 3  | K, L | 60`),
    44,
  );
  expect([43, 42, 41, 40, 39, 38].map((length) => found.get(length))).toEqual([30, 60, 100, 140, 190, 240]);
});

// A time-cost exercise of fifteen activities (homeworksource.com, page 1106151): usual length 175 days at $227,450. The page
// prints $1,500 a day for C but reckons with (31,000 − 21,000) ÷ 8 = $1,250. It says "25 days for $20,050" of
// A3 B8 C7 E1 F3 G3 K2 L7, which is a plan of 149 days: for those $20,050 is least, for 150 it is not.
describe('fifteen activities: 175 days', () => {
  const activities = readActivities(`
      A 15 > 12 | –    | 100
      B 30 > 22 | A    | 200
      C 45 > 37 | A    | 1250
      D 20 > 17 | C    | 2333.33
      E 5 > 4   | D    | 300
      F 10 > 7  | B    | 833.33
      G 30 > 25 | F    | 1000
      J 25 > 20 | F    | 1000
      H 50 > 45 | J, E | 1500
      K 35 > 33 | G    | 350
      L 40 > 33 | K    | 414.29
      M 15 > 13 | L    | 2100
      N 30 > 26 | K    | 1000
      P 20 > 15 | H    | 1650
      Q 5       | N, P |`);

  test('the published $20,050, at the end that its plan reaches', async () => {
    const found = await expectLeast(activities, 175);
    expect(found.get(149)).toBeCloseTo(20_050, 0);
    expect([174, 172, 164, 162, 150].map((length) => found.get(length))).toEqual([
      100,
      300,
      1900,
      2600,
      expect.closeTo(17_800, 0),
    ]);
  });
});

// Taylor, Introduction to Management Science, chapter 8, a house in 36 weeks (the case is stated on flylib.com, page
// 3.287.1.113; its figures from memory): 31 weeks for $2,000, 30 for $2,500.
test('a house: 36 weeks; 31 for $2,000, 30 for $2,500', async () => {
  const found = await expectLeast(
    readActivities(`
      design 12 > 7     | –                  | 400
      foundation 8 > 5  | design             | 500
      materials 4 > 3   | design             | 3000
      dummy 0           | materials, foundation |
      paint 4 > 1       | dummy              | 200
      build 12 > 9      | dummy              | 7000
      carpet 4 > 1      | paint              | 200
      finish 4 > 3      | build, carpet      | 7000`),
    36,
  );
  expect([31, 30, 28].map((length) => found.get(length))).toEqual([2000, 2500, 3500]);
});

// Networks that no book has: every end of every one against the program.
test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])('random network %i', async (seed) => {
  let state = seed;
  const roll = (most: number): number => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    return (state >>> 8) % most;
  };
  const activities = Array.from({ length: 9 }, (_, at): Activity => {
    const days = 1 + roll(6);
    const after = Array.from({ length: at }, (__, from) => from).filter(() => roll(3) === 0);
    return {
      name: `s${at}`,
      days,
      shortest: Math.max(1, days - roll(4)),
      after: after.map((from) => `s${from}`),
      price: 10 * (1 + roll(30)),
    };
  });
  const starts = new Map<string, number>();
  const normal = Math.max(
    ...activities.map(({ name, days, after }) => {
      const start = Math.max(0, ...after.map((each) => starts.get(each)!));
      starts.set(name, start + days);
      return start + days;
    }),
  );
  await expectLeast(activities, normal);
});
