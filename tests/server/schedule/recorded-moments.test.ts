// What follows from what the diary says of other steps: what stands for them, milestones, work of which nothing is left, and
// goods that nobody ordered. Dates worked by hand; 3 May 2027 is a Monday.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';
import { daysOf, planOf, whyOf } from '#tests/support/dated';

const WEEK = 'plan p\n  start 2027-05-03\n  workweek mon-fri 7:00-15:30, lunch 30 min\n';

describe('what stands from one step to another', () => {
  const base = `${WEEK}task a takes 4d\ntask b takes 4d after a\ntask c takes 4d after b\ntask w stands from a to b\n`;

  test('stood as long as they took, where both are done', () => {
    const plan = planOf(
      `${base}progress 2027-05-20\n  a started 2027-05-03, finished 2027-05-06\n  b started 2027-05-10, finished 2027-05-13\n`,
    );
    expect(daysOf(plan)).toMatchObject({ w: '05-03 05-13', c: '05-21 05-26' });
    expect(whyOf(plan, 'w')).toBe('It stood from Mon 3 May 2027 to Thu 13 May 2027, as long as what it stands for.');
  });

  test('began with the first, by its record, and goes on', () => {
    const plan = planOf(`${base}progress 2027-05-07\n  a started 2027-05-04\n`);
    // a is four days from Tuesday: done on Friday the 7th. b is 10 to 13 May.
    expect(daysOf(plan).w).toBe('05-04 05-13');
    expect(whyOf(plan, 'w')).toContain('It stands from Tue 4 May 2027 to Thu 13 May 2027, as long as what it stands for;');
  });

  test('also from before the plan’s first day, and where only the end of the first is known', () => {
    expect(daysOf(planOf(`${base}progress 2027-05-07\n  a started 2027-04-29, finished 2027-05-04\n`)).w).toMatch(/^04-29 /);
    expect(daysOf(planOf(`${base}progress 2027-05-07\n  a finished 2027-05-06\n`)).w).toMatch(/^05-03 /);
  });

  test('not begun, it waits with them', () => {
    expect(daysOf(planOf(`${base}progress 2027-05-07\n  c not before 2027-05-10\n`)).w).toBe('05-10 05-19');
  });
});

describe('done by the diary is done on its day', () => {
  test('nothing left, with and without a first day, and the milestone behind', () => {
    const text = `${WEEK}task a takes 8d\ntask b takes 4d after a\nmilestone m to the end after b\nprogress 2027-05-07\n  a started 2027-05-03, 100% done\n  b left 0d\n`;
    const { plan, messages } = checked(text);
    expect(daysOf(plan)).toEqual({ a: '05-03 05-07', b: '05-07', m: '05-07' });
    expect(messages('progress/no-start')).toEqual([]);
    expect(messages('progress/not-closed').map((each) => each.split(';')[0])).toEqual([
      '"a" began on 3 May, and by the diary nothing of it is left on 7 May',
      'By the diary nothing of "b" is left on 7 May',
    ]);
    expect(whyOf(plan, 'b')).toContain('taken as done by Fri 7 May 2027: by the diary nothing of it is left');
  });

  test('on the working day before, where the diary is written on a Sunday', () => {
    const text = `${WEEK}task a takes 8d\ntask b takes 4d\nmilestone m after a, b\nprogress 2027-05-09\n  a started 2027-05-03, 100% done\n  b left 0d\n`;
    expect(daysOf(planOf(text))).toEqual({ a: '05-03 05-07', b: '05-07', m: '05-07' });
  });

  test('a milestone all before which is done; one that is set for a later day, or waits, is still to come', () => {
    const text = (more: string): string =>
      `${WEEK}task a takes 2d\ntask b takes 2d\nmilestone m ${more}\nprogress 2027-05-07\n  a finished 2027-05-04\n`;
    const plan = planOf(text('after a'));
    expect(daysOf(plan).m).toBe('05-07');
    expect(whyOf(plan, 'm')).toContain('because the diary stands at 7 May and all before it is done');
    expect(daysOf(planOf(text('on 2027-05-12 after a'))).m).toBe('05-12');
    expect(daysOf(planOf(text('after a + 14 days'))).m).toBe('05-19');
    // b is Monday and Tuesday.
    expect(daysOf(planOf(text('after a, b'))).m).toBe('05-11');
  });
});

describe('goods that nobody says are ordered', () => {
  const text = (more: string, diary = ''): string =>
    `${WEEK}delivery goods lead 8 weeks${more}\ntask c takes 1d after goods\n${diary}`;

  test('come no sooner than their lead after the diary’s day', () => {
    const diary = 'progress 2027-05-07\n';
    // 56 days after 3 May are 28 June; after 7 May, 2 July.
    expect(daysOf(planOf(text(''))).goods).toBe('06-28');
    expect(daysOf(planOf(text('', diary)))).toEqual({ goods: '07-02', c: '07-02' });
    expect(whyOf(planOf(text('', diary)), 'goods')).toContain(
      'because it is not ordered yet, and ordered on 7 May it comes on 2 Jul',
    );
    expect(daysOf(planOf(text(', ordered 2027-05-03', diary))).goods).toBe('06-28');
    expect(whyOf(planOf(text(', ordered 2027-05-03', diary)), 'goods')).toContain('it is on its way until 28 Jun');
  });

  test('come when the diary expects them', () => {
    expect(daysOf(planOf(text('', 'progress 2027-05-07\n  goods now 2027-06-30\n'))).goods).toBe('06-30');
  });
});
