// What is good only for a time by the plan's own words. Days by hand: 2026-10-01 and 180 days are over with 30 March 2027; fourteen
// days from Monday 3 May are over with the 17th.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'work/runs-out';
const told = (lines: string): readonly string[] => checked(`plan p\n  start 2027-05-03\n${lines}`).messages(CODE);

test('marks: what waits for them', () => {
  const plan = (wait: string, more = ''): string =>
    `task locate takes 1h, good for 14 days\n${more}task dig takes 2d after locate + ${wait}${more === '' ? '' : ', again'}\ntask paint takes 2d after dig, not before 2027-09-01\n`;
  expect(told(plan('20 days'))).toEqual([
    '"dig" begins on 24 May, but "locate" (3 May) is good for 14 days: it runs out with 17 May. Work that goes on without it is stopped, or done twice. Bring "dig" forward, get "locate" later, or plan to have it renewed before that day and say how long it is good for then.',
  ]);
  expect(told(plan('13 days'))).toEqual([]);
  expect(told(plan('20 days', 'task again takes 1h, not before 2027-05-17, good for 14 days\n'))).toEqual([]);
});

describe('a paper: all that follows it', () => {
  const plan = (permit: string, more = '', diary = ''): string =>
    `milestone permit ${permit}, good for 180 days\ntask dig takes 2d after permit\n${more}task late takes 2d after dig, not before 2028-01-10\n${diary}`;

  test('it is told where the last of it comes too late', () => {
    expect(told(plan('on 2027-05-03'))[0]).toContain(
      '"late" begins on 10 Jan, but "permit" (3 May 2027) is good for 180 days: it runs out with 30 Oct 2027.',
    );
  });

  test('got before work begins it runs from its own day, in the line or in the diary', () => {
    const said = '"dig" begins on 3 May, but "permit" (1 Oct 2026) is good for 180 days: it runs out with 30 Mar.';
    expect(told(plan('on 2026-10-01'))[0]).toContain(said);
    expect(told(plan('on 2026-10-01', '', 'progress 2027-04-30\n  permit passed 2026-10-01\n'))[0]).toContain(said);
  });

  test('a visit that is passed renews it', () => {
    const visit = 'trade city\ninspection look of dig by city, not before 2027-09-01\n';
    expect(told(plan('on 2027-05-03', visit))).toEqual([]);
  });

  test('what is begun is begun', () => {
    expect(told(plan('on 2026-10-01', '', 'progress 2027-05-03\n  dig started 2027-05-03\n'))[0]).toContain('"late" begins');
  });
});

test('what a row of the library judges is told once', () => {
  const plan = checked(
    'plan p\n  start 2027-05-03\ntrade ex\nmilestone permit-issued on 2026-10-01, good for 180 days\ntask dig does dig-foundation takes 2d by ex after permit-issued\n',
  );
  expect(plan.messages(CODE)).toEqual([]);
  expect(plan.messages('sequence/permit-lapsed')[0]).toContain(
    '"dig" begins on 3 May, but "permit-issued" (1 Oct 2026) is good for 180 days, to 30 Mar, and nothing renews it before.',
  );
  expect(plan.messages('sequence/work-before-permit')).toEqual([]);
});
