// The simulation against figures of published projects, against closed forms (the longest of several, days lost, visits that
// fail), and against the dates shown where nothing is uncertain.
import { describe, expect, test } from 'vitest';
import { dayOf, isoMoment } from '#kit/dates';
import type { Shape } from '#schedule/risk/shapes';
import { chanceOf, doneIn, type Simulation, simulate } from '#schedule/risk/simulate';
import { viewSample, viewText } from '#tests/server/answers/plans';
import { ADVERTISING, MILWAUKEE, PORTA_VAC, RELIABLE, threePointPlan } from '#tests/support/three-points';

const DAY = 480;
const MONDAY = dayOf(2027, 1, 4);
const RUNS = 20_000;

/** Working days from the plan's first morning. */
function daysOf(moment: number): number {
  const whole = Math.floor(moment / 1440) - MONDAY;
  return whole + (moment - (MONDAY + whole) * 1440 - 480) / DAY;
}
function by(day: number): number {
  const whole = Math.ceil(day) - 1;
  return (MONDAY + whole) * 1440 + 480 + Math.round((day - whole) * DAY);
}

interface Ran {
  readonly simulation: Simulation;
  readonly mean: number;
  readonly sd: number;
  readonly onChain: (label: string) => number;
}

function ran(rows: string, shape: Shape, runs = RUNS, seed = 1): Ran {
  const { plan } = threePointPlan(rows);
  const simulation = simulate(plan.model, plan.timeline, { runs, seed, shape });
  const days = Array.from(simulation.ends, daysOf);
  const mean = days.reduce((sum, each) => sum + each, 0) / runs;
  const squares = days.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (runs - 1);
  const names = plan.timeline.steps.list.map(({ name }) => name);
  return {
    simulation,
    mean,
    sd: Math.sqrt(squares),
    onChain: (label) => simulation.onChain[names.indexOf(label.toLowerCase())]!,
  };
}

/**
 * Reference figures of 200,000 runs worked out independently of this program with another language's beta and triangular
 * generators; the projects are those of the books named in `three-points.ts`. What is printed has two or three figures; so an
 * error of half the last one comes on top of four standard errors.
 */
describe.each<[string, string, Shape, number, number, Record<number, number>, Record<string, number>, Record<string, number>]>([
  [
    'Reliable Construction',
    RELIABLE,
    'beta-pert',
    44.33,
    2.93,
    { 44: 0.474, 47: 0.817 },
    { 0.5: 44.2, 0.8: 46.81, 0.9: 48.21 },
    { D: 0.1, G: 0.1, H: 0.1, M: 0.1, I: 0.07, K: 0.16, L: 0.75 },
  ],
  [
    'Reliable Construction',
    RELIABLE,
    'triangular',
    46.25,
    3.69,
    { 44: 0.284, 47: 0.592 },
    { 0.5: 46.1, 0.8: 49.38, 0.9: 51.13 },
    { D: 0.32, I: 0.04, K: 0.21, L: 0.48 },
  ],
  [
    'Milwaukee Paper',
    MILWAUKEE,
    'beta-pert',
    15.24,
    1.71,
    { 15: 0.476, 16: 0.69 },
    { 0.5: 15.11, 0.8: 16.66, 0.9: 17.54 },
    { A: 0.74, B: 0.26, F: 0.001 },
  ],
  [
    'Milwaukee Paper',
    MILWAUKEE,
    'triangular',
    16.29,
    2.13,
    { 16: 0.483 },
    { 0.5: 16.1, 0.8: 18.15, 0.9: 19.24 },
    { A: 0.73, B: 0.27, F: 0.009 },
  ],
  [
    'Porta-Vac',
    PORTA_VAC,
    'beta-pert',
    17.33,
    1.7,
    { 17: 0.46, 20: 0.929 },
    { 0.5: 17.18, 0.8: 18.75, 0.9: 19.62 },
    { D: 0.27, G: 0.27, E: 0.73, H: 0.73, I: 0.73, C: 0 },
  ],
  [
    'Porta-Vac',
    PORTA_VAC,
    'triangular',
    19.18,
    2.26,
    { 20: 0.654, 21: 0.785 },
    { 0.5: 19.01, 0.8: 21.14, 0.9: 22.26 },
    { D: 0.39 },
  ],
  [
    'the advertising campaign',
    ADVERTISING,
    'beta-pert',
    21.89,
    1.21,
    { 24: 0.95 },
    { 0.5: 21.82, 0.8: 22.9, 0.9: 23.5 },
    { A: 0.29, C: 0.29, E: 0.29, D: 0.67, F: 0.67, G: 0.67, B: 0.04, H: 0.04, I: 0.04 },
  ],
  ['the advertising campaign', ADVERTISING, 'triangular', 22.51, 1.34, { 24: 0.86 }, { 0.5: 22.41, 0.8: 23.63, 0.9: 24.32 }, {}],
])('%s', (_, rows, shape, mean, sd, chances, quantiles, chains) => {
  const found = ran(rows, shape);

  test(`${shape}: mean ${mean}, deviation ${sd}`, () => {
    expect(Math.abs(found.mean - mean)).toBeLessThan((4 * sd) / Math.sqrt(RUNS) + 0.005 + 0.005);
    expect(Math.abs(found.sd - sd)).toBeLessThan((4 * sd) / Math.sqrt(2 * RUNS) + 0.01);
  });

  test(`${shape}: chances of dates, and dates by chance`, () => {
    for (const [day, chance] of Object.entries(chances)) {
      const error = Math.sqrt((chance * (1 - chance)) / RUNS);
      expect(Math.abs(chanceOf(found.simulation.ends, by(Number(day))) - chance), day).toBeLessThan(4 * error + 0.002);
    }
    for (const [share, day] of Object.entries(quantiles)) {
      const error = (sd * 1.5) / Math.sqrt(RUNS);
      expect(Math.abs(daysOf(doneIn(found.simulation.ends, Number(share))) - day), share).toBeLessThan(4 * error + 0.01);
    }
  });

  test(`${shape}: how often a step is on the longest chain`, () => {
    for (const [name, share] of Object.entries(chains)) {
      const error = Math.sqrt((share * (1 - share)) / RUNS);
      expect(Math.abs(found.onChain(name) - share), name).toBeLessThan(4 * error + 0.006);
    }
  });
});

describe('merge bias, by closed forms', () => {
  test('one triangular length: mean (a + m + b) ÷ 3', () => {
    const { mean, sd } = ran('A 10 14 30', 'triangular');
    expect(Math.abs(mean - 18)).toBeLessThan((4 * sd) / Math.sqrt(RUNS));
  });

  test('two even triangles side by side, each 0 to 2 about 1: the later one ends at 1 + 7/30 on average', () => {
    // E max = 2 − ∫F² over 0..2, with F = x²/2 up to 1 and 1 − (2 − x)²/2 beyond: 2 − 1/20 − 43/60 = 37/30.
    const { mean, sd } = ran('A 10 20 30; B 10 20 30', 'triangular');
    expect(Math.abs(mean - (10 + 10 * (37 / 30)))).toBeLessThan((4 * sd) / Math.sqrt(RUNS) + 0.005);
  });
});

describe('the plan as it is', () => {
  test('nothing uncertain: every run ends where the dates shown end, and the chain is that of no float', () => {
    const { plan } = viewSample('shed', 'shed.screed');
    const { model, timeline } = plan;
    const bare = simulate(model, { ...timeline }, { runs: 3, seed: 1, shape: 'beta-pert' });
    expect(bare.ranges).toEqual([]);
    if (!bare.weather) expect(Array.from(bare.ends)).toEqual([timeline.crews.end, timeline.crews.end, timeline.crews.end]);
  });

  test('a crew that is wanted twice: the second step waits in every run', () => {
    const { plan } = viewText(
      'plan p\n  start 2027-01-04\ntrade t\ntask a takes 2d..4d by t\ntask b takes 2d..4d by t\ntask c takes 1d',
    );
    const simulation = simulate(plan.model, plan.timeline, { runs: 4000, seed: 3, shape: 'triangular' });
    expect(simulation.onChain[0]).toBe(1);
    expect(simulation.onChain[1]).toBe(1);
    expect(simulation.onChain[2]).toBe(0);
  });

  test('rain: twenty days of outside work where one day in four is lost take 20 ÷ 0.75 worked days on average', () => {
    const { plan } = viewText(
      `plan p
  start 2027-01-04
  workweek mon-sun 8h
  bad-weather jan 25%, feb 25%, mar 25%, apr 25%
task dig does dig-foundation takes 20d`,
    );
    const { model, timeline } = plan;
    const { ends, weather } = simulate(model, timeline, { runs: 10_000, seed: 1, shape: 'beta-pert' });
    expect(weather).toBe(true);
    const days = Array.from(ends, daysOf);
    const mean = days.reduce((sum, each) => sum + each, 0) / days.length;
    // Negative binomial: n ÷ p, variance n (1 − p) ÷ p².
    expect(Math.abs(mean - 20 / 0.75)).toBeLessThan(4 * Math.sqrt((20 * 0.25) / 0.75 ** 2 / 10_000));
  });

  test('rain by the allowance: 5 days of the 20 worked in February 2027 are one in four', () => {
    const { plan } = viewText('plan p\n  start 2027-02-01\n  weather feb 5d\ntask dig does dig-foundation takes 1d');
    const { ends } = simulate(plan.model, plan.timeline, { runs: 10_000, seed: 1, shape: 'beta-pert' });
    const first = chanceOf(ends, (dayOf(2027, 2, 1) + 1) * 1440);
    expect(Math.abs(first - 0.75)).toBeLessThan(4 * Math.sqrt((0.75 * 0.25) / 10_000));
  });

  test('a visit that fails one time in five comes again on the inspector’s next day', () => {
    const { plan } = viewText(
      `plan p
  start 2027-01-04
trade city
  sees mon, wed, fri
task forms takes 1d
inspection footing-check of forms by city, call 1 day ahead, fails 20%`,
    );
    const { ends } = simulate(plan.model, plan.timeline, { runs: 10_000, seed: 1, shape: 'beta-pert' });
    const at = (day: number): number => chanceOf(ends, (dayOf(2027, 1, day) + 1) * 1440);
    const error = 4 * Math.sqrt((0.8 * 0.2) / 10_000);
    expect(at(5)).toBe(0);
    expect(Math.abs(at(6) - 0.8)).toBeLessThan(error);
    expect(Math.abs(at(8) - 0.96)).toBeLessThan(error);
    expect(Math.abs(at(11) - 0.992)).toBeLessThan(error);
  });

  test('a delivery that the diary expects from one day to another: the middle is shown, each day between comes', () => {
    const { plan } = viewText(
      `plan p
  start 2027-01-04
  workweek mon-sun 8h
delivery windows-here brings w from yard
supplier yard
window w 3' x 4'
task set takes 1d after windows-here
progress 2027-01-06
  windows-here now 2027-01-11..2027-01-21`,
    );
    expect(isoMoment(plan.timeline.crews.start[1]!).slice(0, 10)).toBe('2027-01-16');
    const { ends } = simulate(plan.model, plan.timeline, { runs: 20_000, seed: 1, shape: 'triangular' });
    const days = Array.from(ends, (end) => Math.floor(end / 1440) - dayOf(2027, 1, 16));
    expect([Math.min(...days), Math.max(...days)]).toEqual([-5, 5]);
    const mean = days.reduce((sum, each) => sum + each, 0) / days.length;
    const variance = days.reduce((sum, each) => sum + (each - mean) ** 2, 0) / days.length;
    // An even triangle ten days wide: variance 100 ÷ 24; whole days add a twelfth (Sheppard's correction).
    expect(Math.abs(mean)).toBeLessThan(0.06);
    expect(Math.abs(variance - (100 / 24 + 1 / 12))).toBeLessThan(0.15);
  });

  test('a lead of 8 to 12 weeks: the delivery comes within it, and what waits for it moves', () => {
    const { plan } = viewText(
      `plan p
  start 2027-01-04
delivery windows-here brings w from yard, lead 8..12 weeks
supplier yard
window w 3' x 4'
task set takes 1d after windows-here`,
    );
    expect(isoMoment(plan.timeline.crews.start[0]!).slice(0, 10)).toBe('2027-03-15');
    const { ends } = simulate(plan.model, plan.timeline, { runs: 4000, seed: 1, shape: 'beta-pert' });
    expect(isoMoment(ends[0]!) >= '2027-03-01').toBe(true);
    expect(isoMoment(ends.at(-1)!) <= '2027-03-30T17:00').toBe(true);
    expect(isoMoment(doneIn(ends, 0.5)).slice(0, 7)).toBe('2027-03');
  });
});

test('the seed says all: the same figures again, others with another', () => {
  const { plan } = threePointPlan(PORTA_VAC);
  const run = (seed: number): readonly number[] =>
    Array.from(simulate(plan.model, plan.timeline, { runs: 200, seed, shape: 'beta-pert' }).ends);
  expect(run(5)).toEqual(run(5));
  expect(run(5)).not.toEqual(run(6));
});

test('a step more does not change what is drawn for the others', () => {
  const [less, more] = ['A 2 4 9', 'A 2 4 9; B 1 1 1'].map((rows) => threePointPlan(rows).plan);
  const asked = { runs: 100, seed: 1, shape: 'beta-pert' as const };
  expect(Array.from(simulate(more!.model, more!.timeline, asked).ends)).toEqual(
    Array.from(simulate(less!.model, less!.timeline, asked).ends),
  );
});
