// Earned value against printed examples, each as a plan with a diary, bills and a schedule that was kept.
import { describe, expect, test } from 'vitest';
import { explain } from '#answers/explain';
import { viewOf } from '#answers/view';
import { replay } from '#kit/quantity';
import { EARNED_FACTS, type EarnedFact, earnedOf } from '#money/earned';
import { checked } from '#tests/support/checked';

/** Dollars, and indexes to three places. */
function figures(text: string): Partial<Record<EarnedFact, number>> {
  const { model, timeline } = checked(text).plan;
  const earned = earnedOf(model, timeline);
  return Object.fromEntries(
    EARNED_FACTS.flatMap((fact) => {
      const value = earned?.[fact];
      if (value === undefined) return [];
      expect(replay(value)).toBe(value.value);
      return [[fact, value.dimension === 'money' ? value.value / 100 : Math.round(value.value * 1000) / 1000]];
    }),
  );
}

// A fence of four sides at $1,000, one a day; at the end of day 3 two are done, one is half done, and $2,800 is spent (studylib.net,
// document 5898152, after a text for the PMP examination). It prints EAC 4,479, ETC 1,679 and VAC −479, because it rounds CPI
// to 0.893 first; unrounded they are 4,480, 1,680 and −480.
const FENCE = `plan p "Fence"
  start 2027-05-03
task north takes 1d
task east takes 1d after north
task south takes 1d after east
task west takes 1d after south
as-planned start on 2027-05-01
  north begins 2027-05-03, done 2027-05-03, costs $1,000
  east  begins 2027-05-04, done 2027-05-04, costs $1,000
  south begins 2027-05-05, done 2027-05-05, costs $1,000
  west  begins 2027-05-06, done 2027-05-06, costs $1,000
paid crew $1,000 on 2027-05-03 for north
paid crew $1,200 on 2027-05-04 for east
paid crew $600 on 2027-05-05 for south
progress 2027-05-05
  north finished 2027-05-03
  east  finished 2027-05-04
  south started 2027-05-05, 50% done
`;

test('the fence', () => {
  expect(figures(FENCE)).toEqual({
    'planned-value': 3000,
    'earned-value': 2500,
    'actual-cost': 2800,
    'schedule-variance': -500,
    'cost-variance': -300,
    'schedule-performance': 0.833,
    'cost-performance': 0.893,
    'budget-at-completion': 4000,
    'estimate-at-completion': 4480,
    'estimate-to-complete': 1680,
    'variance-at-completion': -480,
  });
});

// theicpm.com, page 5323: on 31 March PV 45, EV 50, AC 55; SV 5, CV −5, SPI 1.11, CPI 0.91.
test('ahead of time and over budget', () => {
  const found = figures(`plan p
  start 2027-03-01
task a takes 5d
task b takes 20d after a
as-planned start
  a begins 2027-03-01, done 2027-03-05, costs $45
  b begins 2027-04-05, done 2027-04-30, costs $5
paid crew $55 on 2027-03-31 for a, b
progress 2027-03-31
  a finished 2027-03-05
  b finished 2027-03-31
`);
  expect(found).toMatchObject({
    'planned-value': 45,
    'earned-value': 50,
    'actual-cost': 55,
    'schedule-variance': 5,
    'cost-variance': -5,
    'schedule-performance': 1.111,
    'cost-performance': 0.909,
  });
});

// gristprojectmanagement.us: BAC 40,000; PV 10,000, EV 6,000, AC 8,000; SV −4,000, CV −2,000, SPI 0.60, CPI 0.75.
test('late and dear', () => {
  const found = figures(`plan p
  start 2027-05-03
task a takes 20d
as-planned start
  a begins 2027-05-03, done 2027-05-28, costs $40,000
paid crew $8,000 on 2027-05-07
progress 2027-05-07
  a started 2027-05-03, 15% done
`);
  expect(found).toMatchObject({
    'planned-value': 10_000,
    'earned-value': 6000,
    'actual-cost': 8000,
    'schedule-variance': -4000,
    'cost-variance': -2000,
    'schedule-performance': 0.6,
    'cost-performance': 0.75,
    'estimate-at-completion': 53_333.33,
    'variance-at-completion': -13_333.33,
  });
});

describe('what counts', () => {
  test('an invoice and its payment are one bill; what comes later does not count', () => {
    const more = 'invoice crew $1,300 on 2027-05-04 for east\npaid crew $900 on 2027-05-06 for west\n';
    expect(figures(FENCE + more)['actual-cost']).toBe(2900);
  });

  test('what is left says how much is done, too; a step that is gone earns nothing', () => {
    expect(figures(FENCE.replace('50% done', 'left 2h'))['earned-value']).toBe(2750);
    expect(
      figures(
        FENCE.replace('task west takes 1d after south\n', '').replace(
          'south started 2027-05-05, 50% done',
          'south finished 2027-05-05',
        ),
      )['earned-value'],
    ).toBe(3000);
  });

  test('without a diary, a kept schedule or its costs there is nothing to tell', () => {
    expect(figures(FENCE.replace(/progress[\s\S]*/, ''))).toEqual({});
    expect(figures(FENCE.replace(/as-planned[\s\S]*west {2}begins.*\n/, ''))).toEqual({});
    expect(figures(FENCE.replaceAll(', costs $1,000', ''))).toEqual({});
  });
});

test('explain tells each by its name, with what it means and its working', () => {
  const view = viewOf(checked(FENCE).plan);
  const [found] = explain('p.cost-performance', view).found;
  expect(found?.why).toBe('It is 0.89 (under 1: dearer than planned).');
  expect(found?.reasons[0]?.formula).toBe('earned value ÷ actual cost');
  expect(found?.reasons[0]?.inputs[0]?.inputs.map(({ text }) => text)).toEqual(['$1,000.00', '$1,000.00', '$500.00']);
  const plan = explain('plan', view).found[0]!.reasons.find(({ label }) => label === 'earned value');
  expect(plan?.text).toBe('as of Wed 5 May 2027, against "start" of Sat 1 May 2027');
  expect(plan?.inputs).toHaveLength(11);
});
