// PERT against the books' printed figures: averages, variances, the longest chain, and the chance of a date.
import { describe, expect, test } from 'vitest';
import { dayOf } from '#kit/dates';
import { chanceBy, deviationOf, expectedLength, type Pert, pertOf } from '#schedule/risk/pert';
import type { Range } from '#schedule/risk/ranges';
import { normalBelow } from '#schedule/risk/shapes';
import type { Timeline } from '#schedule/timeline';
import { viewText } from '#tests/server/answers/plans';
import { ADVERTISING, FOURTEEN, MILWAUKEE, PORTA_VAC, RELIABLE, threePointPlan } from '#tests/support/three-points';

const DAY = 480;
const MONDAY = dayOf(2027, 1, 4);

function solved(rows: string): { pert: Pert; timeline: Timeline; days: number; sd: number; chain: string } {
  const { plan } = threePointPlan(rows);
  const { timeline } = plan;
  const pert = pertOf(plan.model, timeline)!;
  // From the plan's first morning, day by day.
  const whole = Math.floor(pert.end / 1440) - MONDAY;
  return {
    pert,
    timeline,
    days: whole + (pert.end - (MONDAY + whole) * 1440 - 480) / DAY,
    sd: pert.deviation / DAY,
    chain: pert.chain
      .map((step) => timeline.steps.list[step]!.label)
      .join('-')
      .toUpperCase(),
  };
}

/** The end of the nth day. */
function by(day: number): number {
  return (MONDAY + day - 1) * 1440 + 480 + DAY;
}

test('Heizer and Render, Milwaukee Paper: 15 weeks by A-C-E-G-H, variance 3.11, 0.71 by week 16', () => {
  const { pert, timeline, days, sd, chain } = solved(MILWAUKEE);
  expect(chain).toBe('A-C-E-G-H');
  expect(days).toBeCloseTo(15, 2);
  expect(sd * sd).toBeCloseTo(3.11, 2);
  expect(sd).toBeCloseTo(1.76, 2);
  expect(chanceBy(pert, by(16), timeline)).toBeCloseTo(0.7146, 3);
});

// A fault of a published answer to the same figures ("Durango Paper", solutioninn.com, question 184578): it adds up the weeks of
// all eight activities, 25, and all variances, 5.44, and so comes to z = (15 - 25) / 2.33 = -4.29. Only the longest chain counts.
test('Durango Paper: 15 weeks, not the sum of all, 25', () => {
  const lengths = [...MILWAUKEE.matchAll(/(\d+) (\d+) (\d+)/g)].map(
    ([, ...three]) => three.map(Number) as [number, number, number],
  );
  const sum = (of: readonly number[]): number => of.reduce((all, each) => all + each, 0);
  const weeks = sum(lengths.map(([least, likely, most]) => (least + 4 * likely + most) / 6));
  const spread = sum(lengths.map(([least, , most]) => ((most - least) / 6) ** 2));
  const { days, sd, pert, timeline } = solved(MILWAUKEE);
  expect([weeks, spread].map((each) => Number(each.toFixed(2)))).toEqual([25, 5.44]);
  expect([days, sd * sd].map((each) => Number(each.toFixed(2)))).toEqual([15, 3.11]);
  expect(chanceBy(pert, by(16), timeline)).toBeGreaterThan(0.7);
});

test('Hillier and Lieberman, Reliable Construction: 44 weeks, variance 9, 0.8413 by week 47', () => {
  const { pert, timeline, days, sd, chain } = solved(RELIABLE);
  expect(chain).toBe('A-B-C-E-F-J-L-N');
  expect(days).toBeCloseTo(44, 2);
  expect(sd * sd).toBeCloseTo(9, 2);
  expect(chanceBy(pert, by(47), timeline)).toBeCloseTo(0.8413, 3);
});

test('Anderson, Sweeney and Williams, Porta-Vac: 17 weeks by A-E-H-I-J, variance 2.72, 0.9655 by week 20', () => {
  const { pert, timeline, days, sd, chain } = solved(PORTA_VAC);
  expect(chain).toBe('A-E-H-I-J');
  expect(days).toBeCloseTo(17, 2);
  expect(sd * sd).toBeCloseTo(2.72, 2);
  expect(chanceBy(pert, by(20), timeline)).toBeCloseTo(0.9655, 3);
});

test('Stevenson, advertising: the longest chain D-F-G, 21.50 weeks, deviation 1.344, 0.9686 by week 24', () => {
  const { pert, timeline, days, sd, chain } = solved(ADVERTISING);
  expect(chain).toBe('D-F-G');
  expect(days).toBeCloseTo(21.5, 2);
  expect(sd).toBeCloseTo(1.344, 3);
  expect(chanceBy(pert, by(24), timeline)).toBeCloseTo(0.9686, 3);
});

test('the other two chains of Stevenson’s campaign: 20.50 and 19.50 weeks, deviations 1.118 and 0.726', () => {
  const first = solved('A 5 6 7; C 6 8 11 after A; E 5 6 9 after C');
  expect([first.days, first.sd]).toEqual([expect.closeTo(20.5, 2), expect.closeTo(1.118, 3)]);
  const third = solved('B 8 8 11; H 4 4 5 after B; I 5 7 8 after H');
  expect([third.days, third.sd]).toEqual([expect.closeTo(19.5, 2), expect.closeTo(0.726, 3)]);
});

test('fourteen activities (wizedu.com 717873): 50.83 weeks, deviation 3.346, 0.741 by 53 and 0.8935 by 55', () => {
  const { pert, timeline, days, sd, chain } = solved(FOURTEEN);
  expect(chain).toBe('A-C-E-H-I-K-M-N');
  expect(days).toBeCloseTo(50.83, 2);
  expect(sd).toBeCloseTo(3.346, 3);
  expect(chanceBy(pert, by(53), timeline)).toBeCloseTo(0.741, 3);
  expect(chanceBy(pert, by(55), timeline)).toBeCloseTo(0.8935, 3);
});

describe('single steps and sums', () => {
  test.each([
    [20, 30, 40, 30, 11.11],
    [20, 65, 80, 60, 100],
    [50, 60, 100, 65, 69.44],
    [30, 50, 100, 55, 136.11],
    [25, 30, 35, 30, 2.78],
    [10, 20, 30, 20, 11.11],
    [20, 25, 60, 30, 44.44],
    [8, 10, 12, 10, 0.44],
  ])('Hill Construction (a course case): %d, %d, %d is %d with variance %d', (least, likely, most, mean, variance) => {
    const range: Range = { step: 0, what: 'length', least, likely, most, from: 'step' };
    expect(expectedLength(range)).toBeCloseTo(mean, 10);
    expect(deviationOf(range) * deviationOf(range)).toBeCloseTo(variance, 2);
  });

  // z as the sources print it, with two figures.
  test.each([
    ['Hill Construction: 260 days, variance 319.43, by 270', (270 - 260) / Math.sqrt(319.43), 0.7123],
    ['studyxapp.com q413234033: mean 26, variance 4.11, by 25', (25 - 26) / Math.sqrt(4.11), 0.311],
    ['the same, by 30', (30 - 26) / Math.sqrt(4.11), 0.975],
    ['tutorsglobe.com 52220053: mean 21, variance 4, by 20', -0.5, 0.3085],
    ['the same, by 23', 1, 0.8413],
  ])('%s', (_, z, chance) => {
    expect(normalBelow(z)).toBeCloseTo(chance, 2);
  });

  test('the normal curve, as tables print it (0.5, 0.8413, 0.9772, 0.99865; 95 % at 1.6449)', () => {
    for (const [z, chance] of [
      [0, 0.5],
      [1, 0.8413447],
      [2, 0.9772499],
      [3, 0.9986501],
      [1.6448536, 0.95],
      [-1, 0.1586553],
    ] as const)
      expect(normalBelow(z)).toBeCloseTo(chance, 6);
  });
});

test('dates go by what is likely, else by the middle; the longest chain by what is average', () => {
  const { plan } = viewText('plan p\n  start 2027-01-04\ntask a takes 3d..8d likely 4d\ntask b takes 3d..8d');
  expect(plan.timeline.durations.map(({ minutes }) => minutes / DAY)).toEqual([4, 5.5]);
});

test('nothing uncertain, no figures', () => {
  const { plan } = viewText('plan p\n  start 2027-01-04\ntask a takes 3d');
  expect(pertOf(plan.model, plan.timeline)).toBeUndefined();
});
