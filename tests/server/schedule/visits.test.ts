// Visits of an inspector: called when the work is done, they come on the day the notice allows, and take that day.
import { describe, expect, test } from 'vitest';
import { dayOfFinish, isoDate } from '#kit/dates';
import { analyse } from '#server/pipeline';
import { builtIn } from '#tests/support/built-in';

/** Day of each step's start and finish, by name. */
function days(text: string): Record<string, string> {
  const { timeline } = analyse({ root: 'plan.screed', texts: { 'plan.screed': text }, library: builtIn() });
  return Object.fromEntries(
    timeline.steps.list.map((step, at) => [
      step.name,
      `${isoDate(Math.floor(timeline.crews.start[at]! / 1440))} ${isoDate(dayOfFinish(timeline.crews.finish[at]!))}`,
    ]),
  );
}

const plan = (notice: string, takes = '1d'): string => `plan p
  start 2027-05-03
  workweek mon-fri 8h
trade me "Us"
trade city "City"
task forms takes ${takes} by me
inspection look by city after forms${notice}
task pour takes 1d by me after look
`;

describe('notice', () => {
  test('a day ahead is the next day, whether the work ended at noon or in the evening', () => {
    for (const takes of ['1d', '4h']) {
      expect(days(plan(', call 1 day ahead', takes))).toEqual({
        forms: '2027-05-03 2027-05-03',
        look: '2027-05-04 2027-05-04',
        pour: '2027-05-05 2027-05-05',
      });
    }
  });

  test('three days ahead counts the visit’s own day; weekends run', () => {
    expect(days(plan(', call 3 days ahead', '3d')).look).toBe('2027-05-10 2027-05-10');
    expect(days(plan(', call 3 days ahead', '1d')).look).toBe('2027-05-06 2027-05-06');
  });

  test('an inspector comes on the days that the trade says', () => {
    const text = plan(', call 1 day ahead').replace('trade city "City"', 'trade city "City"\n  sees wed, fri');
    expect(days(text).look).toBe('2027-05-05 2027-05-05');
  });

  test('a failed visit opens a second, with its notice again', () => {
    const text = `${plan(', call 1 day ahead')}progress 2027-05-05
  forms finished 2027-05-03
  look  failed 2027-05-04 "no plans on site"
`;
    expect(days(text)).toMatchObject({ look: '2027-05-06 2027-05-06', pour: '2027-05-07 2027-05-07' });
  });
});

describe('a visit comes at some hour of its day, so the work must be ready when the day begins', () => {
  test('work done at noon is seen the next day, also without notice', () => {
    expect(days(plan('', '4h'))).toEqual({
      forms: '2027-05-03 2027-05-03',
      look: '2027-05-04 2027-05-04',
      pour: '2027-05-05 2027-05-05',
    });
  });

  test('a wait that ends at noon opens the next day on which the inspector comes, and never two half days', () => {
    const soaked = plan(' + 24h', '4h');
    expect(days(soaked)).toMatchObject({ look: '2027-05-05 2027-05-05', pour: '2027-05-06 2027-05-06' });
    const seldom = soaked.replace('trade city "City"', 'trade city "City"\n  sees mon, tue, fri');
    expect(days(seldom)).toMatchObject({ look: '2027-05-07 2027-05-07', pour: '2027-05-10 2027-05-10' });
  });

  test('it may slip by whole days alone', () => {
    const text = `${plan('', '4h')}task other takes 4d by me, not before 2027-05-10
milestone end after pour, other
`;
    const { timeline } = analyse({ root: 'plan.screed', texts: { 'plan.screed': text }, library: builtIn() });
    const look = timeline.steps.byName.get('look')!;
    // The pour may be as late as Thursday the 13th in the evening: the visit as late as Wednesday the 12th.
    expect(isoDate(Math.floor(timeline.byLinks.lateStart[look]! / 1440))).toBe('2027-05-12');
    expect(timeline.byLinks.lateStart[look]! % 1440).toBe(timeline.byLinks.start[look]! % 1440);
    expect(timeline.byLinks.totalFloat[look]).toBe(6 * 480);
  });
});
