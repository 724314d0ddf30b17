// Goods that are not ordered when they must have been. The four weeks of the steel beams are those of viretta.blogspot.com,
// "More waiting".
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'deliveries/order-by-passed';
const plan = (beams: string, diary = '2026-12-07'): string => `plan steel
  start 2026-12-01
trade framing crew of 4
task floor takes 4d by framing
delivery beams-here ${beams}
task beams takes 1d by framing after beams-here, floor, not before 2026-12-14
progress ${diary}
  floor started 2026-12-04
`;

describe('not ordered', () => {
  test('says by when, when it comes, and who waits', () => {
    const late = checked(plan('lead 4 weeks, after floor'));
    // All else lets the beams go up on 14 December, four weeks after 16 November.
    expect(late.messages(CODE)).toEqual([
      '"beams-here" had to be ordered by 16 Nov to be there when "beams" could begin (14 Dec), and nothing says that it was. The dates shown count on an order on 7 Dec: it comes on 4 Jan then, and each day without one moves them. Order it now and write the day ("ordered"), or write when it was ordered.',
    ]);
    expect(late.marks(CODE)).toEqual(['line 5: beams-here']);
    expect(late.plan.findings.find(({ code }) => code === CODE)?.fixes?.[0]).toMatchObject({ text: ', ordered 2026-12-07' });
  });

  test('in time, by a day', () => {
    expect(checked(plan('lead 7 days')).messages(CODE)).toEqual([]);
    expect(checked(plan('lead 8 days')).messages(CODE)).toHaveLength(1);
  });
});

test('silent where it is ordered, here, on its way, or measured first', () => {
  expect(checked(plan('lead 4 weeks, ordered 2026-12-07')).messages(CODE)).toEqual([]);
  expect(checked(`${plan('lead 4 weeks')}  beams-here finished 2026-12-07\n`).messages(CODE)).toEqual([]);
  expect(checked(`${plan('lead 4 weeks')}  beams-here now 2026-12-20\n`).messages(CODE)).toEqual([]);
  expect(checked(plan('lead 4 weeks, measured after floor')).messages(CODE)).toEqual([]);
});

test('silent without a diary, for nobody knows what day it is', () => {
  expect(checked(plan('lead 4 weeks').replace(/progress[\s\S]*/, '')).messages(CODE)).toEqual([]);
});
