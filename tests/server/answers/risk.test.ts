// What `screed risk`, `explain` and a hover say of ranges: on the cottage, and on plans small enough to work out by hand.
import { describe, expect, test } from 'vitest';
import { explain, explanationText } from '#answers/explain';
import { pertAnswer, riskAnswer } from '#answers/risk';
import { riskTables } from '#answers/risk-table';
import type { View } from '#answers/view';
import { viewOf } from '#answers/view';
import { drawTable } from '#cli/output';
import { tellBriefly } from '#editor/things';
import { dayOf } from '#kit/dates';
import { messageOf } from '#kit/finding';
import { simulate } from '#schedule/risk/simulate';
import { analyse } from '#server/pipeline';
import { builtIn, sampleTexts } from '#tests/support/built-in';
import { viewSample, viewText } from './plans.ts';

const asked = { runs: 400, seed: 1, shape: 'beta-pert' } as const;

function told(view: View): string {
  return riskTables(riskAnswer(view, asked), view)
    .map((table) => drawTable(table))
    .join('\n');
}

/** The cottage without whatever is uncertain in it. */
function certainCottage(): View {
  const texts = Object.fromEntries(
    Object.entries(sampleTexts('cottage')).map(([path, text]) => [
      path,
      text
        .replaceAll(/^ {2}(?:weather|lengths|fails) .*\n/gm, '')
        .replaceAll(/takes \d+d\.\.\d+d likely (\d+d)/g, 'takes $1')
        .replaceAll('now 2027-06-21..2027-07-05', 'now 2027-06-28')
        .replaceAll('7..9 weeks', '8 weeks')
        .replaceAll('4..6 weeks', '5 weeks'),
    ]),
  );
  return viewOf(analyse({ root: 'samples/cottage/plan.screed', texts, library: builtIn() }));
}

describe('the cottage', () => {
  test('without ranges, weather and failures each run gives the dates shown', () => {
    const { model, timeline } = certainCottage().plan;
    const { ends, ranges, visits, weather } = simulate(model, timeline, { ...asked, runs: 3 });
    expect([ranges.length, visits.length, weather]).toEqual([0, 0, false]);
    expect(Array.from(ends)).toEqual([timeline.crews.end, timeline.crews.end, timeline.crews.end]);
  });

  test('with them, later; what is done takes no part, and chances lie in order', () => {
    const view = viewSample('cottage');
    const answer = riskAnswer(view, asked);
    const finishes = answer.done.map(({ finish }) => finish);
    expect([...finishes].sort()).toEqual(finishes);
    expect(answer.done[1]!.beyondShown).toBeGreaterThan(0);
    expect(answer.targetChance).toBe(1);
    const names = answer.steps.map(({ name }) => name);
    expect(names).not.toContain('footings');
    expect(answer.steps.find(({ name }) => name === 'windows-in')!.onChain).toBeGreaterThan(0.9);
    expect(answer.steps.find(({ name }) => name === 'touch-up')!.range).toMatchObject({ from: 'step', least: 480, most: 1440 });
    expect(answer.steps.find(({ name }) => name === 'wires')!.range).toMatchObject({ from: 'plan', of: 'length' });
  });

  test('every figure again by the same seed', () => {
    expect(riskAnswer(viewSample('cottage'), asked)).toEqual(riskAnswer(viewSample('cottage'), asked));
  });
});

// Of one length between 4 and 16 days, likely 10, beta-PERT is beta(3, 3): its median is 10 days, its 80 % point 4 + 12 × 0.6754.
test('one length: by when with which chance, and what a target needs', () => {
  const text = told(
    viewText(`plan p "Garage"
  start    2027-01-04
  target   2027-01-14
  workweek mon-sun 8h
task frame takes 4d..16d likely 10d`),
  );
  expect(text).toContain('Garage: by the dates shown done Wed 13 Jan 2027, 1 working day before its target of 14 Jan.');
  expect(text).toMatch(/50% +(?:Wed 13|Thu 14) Jan 2027/);
  expect(text).toMatch(/80% +(?:Fri 15|Sat 16) Jan 2027/);
  expect(text).toMatch(
    /The target of 14 Jan is held in 6\d% of the runs; the work must come [12]d earlier to hold it in 80%, and [34]d/,
  );
  expect(text).toContain(
    'By PERT: done Wed 13 Jan 2027 on average, standard deviation 2d, the target of 14 Jan with a chance of 69%.',
  );
  expect(text).toContain('a hopeful figure');
});

test('nothing uncertain: it says so, and how a range is written', () => {
  const text = told(viewText('plan p "Garage"\n  start 2027-01-04\ntask frame takes 4d'));
  expect(text).toContain('Nothing in this plan is uncertain');
  expect(text).toContain('takes 3d..6d likely 4d');
});

test('explain tells the range, the average and the deviation with their formulas', () => {
  const view = viewText('plan p\n  start 2027-01-04\ntask frame takes 3d..9d likely 4d\nmilestone dry after frame');
  const text = explanationText(explain('frame', view).found[0]!);
  expect(text).toContain('range  3d to 9d, likely 4d');
  // (3 + 16 + 9) ÷ 6 and (9 − 3) ÷ 6.
  expect(text).toContain('average, by PERT  4.7d  = (least + 4 × likely + most) ÷ 6');
  expect(text).toContain('standard deviation, by PERT  1d  = (most − least) ÷ 6');
  expect(explanationText(explain('dry', view).found[0]!)).toContain(
    'by PERT, along one chain  Fri 8 Jan 2027 on average, standard deviation 1d',
  );
});

test('a hover of the plan and of a milestone tells PERT’s figures and makes no run', () => {
  const view = viewText(
    'plan p\n  start 2027-01-04\n  target 2027-01-08\ntask frame takes 3d..9d likely 4d\nmilestone dry after frame',
  );
  const { model } = view.plan;
  const of = (kind: 'plan' | 'milestone'): string => JSON.stringify(tellBriefly(model.list(kind)[0]!, view).reasons);
  expect(of('plan')).toContain('standard deviation 1d, the target of 8 Jan with a chance of');
  expect(of('milestone')).toContain('standard deviation 1d');
  expect(pertAnswer(view)!.chain).toEqual(['frame', 'dry']);
});

test('what is likely lies within its range', () => {
  const { plan } = viewText('plan p\n  start 2027-01-04\ntask frame takes 3d..6d likely 9d');
  expect(plan.findings.map(messageOf)).toContain(
    '"frame" is likely to take 9d, which does not lie between 3d and 6d. The dates go by what is likely, the risk by the range. Widen the range, or mend what is likely.',
  );
});

test('how far lengths stray is said from and to', () => {
  const { plan } = viewText('plan p\n  start 2027-01-04\n  lengths 140%\ntask frame takes 3d');
  expect(plan.findings.map(messageOf)).toContain(
    '"lengths" says how far lengths stray, from and to; of 140% alone nothing can be told, so they count as certain. Write both: lengths 85%..140%.',
  );
});

test('another date than the target may be asked about', () => {
  const view = viewText(
    'plan p\n  start 2027-01-04\n  target 2027-12-31\n  workweek mon-sun 8h\ntask frame takes 4d..16d likely 10d',
  );
  const answer = riskAnswer(view, { ...asked, runs: 4000 }, dayOf(2027, 1, 13));
  expect(answer.target).toBe('2027-01-13');
  // The median of beta(3, 3) is its middle: ten days, with a standard error of 0.008 over 4,000 runs.
  expect(Math.abs(answer.targetChance! - 0.5)).toBeLessThan(0.032);
  expect(answer.pert!.targetChance).toBeCloseTo(0.5, 2);
});
