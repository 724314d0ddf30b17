// A link that begins when a share of a step is done: the share is worked on that step's own days, what the diary says of it
// counts, and the link's own wait comes on top. Dates worked by hand; 3 May 2027 is a Monday.
import { describe, expect, test } from 'vitest';
import { emptyMemory } from '#server/pipeline';
import { daysOf, planOf, spareOf, whyOf } from '#tests/support/dated';

const WEEK = 'plan p\n  start 2027-05-03\n  workweek mon-fri 7:00-15:30, lunch 30 min\n';

describe('after a share of a step', () => {
  test('with a wait of its own', () => {
    const text = (wait: string): string => `${WEEK}task b takes 6d\ntask g takes 1d after 50% of b ${wait}\n`;
    // Three of six days are done with Wednesday the 5th; a day later, Thursday is over.
    expect(daysOf(planOf(text('')))).toMatchObject({ b: '05-03 05-10', g: '05-06' });
    expect(daysOf(planOf(text('+ 1d'))).g).toBe('05-07');
    expect(whyOf(planOf(text('+ 1d')), 'g')).toContain('because "b" begins 3 May and must be 50% done, + 1d');
    // Two whole days, Thursday and Friday, then the weekend; what goes before the half: Wednesday, the third day.
    expect(daysOf(planOf(text('+ 2 days'))).g).toBe('05-10');
    expect(daysOf(planOf(text('- 1d'))).g).toBe('05-05');
  });

  test('on the days of those who do that step', () => {
    const text = `${WEEK}trade pl crew of 1\n  away 2027-05-04..2027-05-11\ntask a takes 4d by pl\ntask b takes 2d after 50% of a\n`;
    // Monday the 3rd and Wednesday the 12th.
    expect(daysOf(planOf(text))).toEqual({ a: '05-03 05-14', b: '05-13 05-14' });
  });

  test('on days with other hours, and beside a day off and an absence', () => {
    // Wednesday the 5th has four hours, Friday is closed, the crew is away on the 11th and 12th: a is Monday, Tuesday and
    // half of Wednesday and of Thursday; b begins on Thursday at eleven: half of it and Monday are one day and a half, and
    // after the absence half of Thursday the 13th makes it two.
    const text = `${WEEK}  hours 2027-05-05 4h
  closed 2027-05-07
trade one crew of 1
  away 2027-05-11..2027-05-12
task a takes 3d by one
task b takes 4d by one after a
task later takes 1d after 50% of b
`;
    expect(daysOf(planOf(text)).later).toBe('05-13 05-14');
  });

  test.each([
    // One day of four is done on Thursday the 6th; Friday is the second.
    ['started 2027-05-03, 25% done', '05-10 05-11'],
    // The half was reached; it is still to begin.
    ['started 2027-05-03, 50% done', '05-07 05-10'],
    ['started 2027-05-03, left 3d', '05-10 05-11'],
    // More is left than was planned: nothing is done, and the half of six days ends on Tuesday.
    ['started 2027-05-03, left 6d', '05-12 05-13'],
    ['started 2027-05-03, finished 2027-05-06', '05-07 05-10'],
  ])('as far as the diary says: %s', (said, b) => {
    const diary = `progress 2027-05-06\n  a ${said}\n`;
    expect(daysOf(planOf(`${WEEK}task a takes 4d\ntask b takes 2d after 50% of a\n${diary}`)).b).toBe(b);
  });

  test('days to spare: the share may be done as late as its wait lets it', () => {
    const text = `${WEEK}task a takes 4d to the end\ntask b takes 2d after 50% of a + 1d\ntask long takes 10d\n`;
    // Two days, a day's wait and two days are five; the long one is ten.
    expect([spareOf(planOf(text), 'a'), spareOf(planOf(text), 'b')]).toEqual([5, 5]);
    const tight = planOf(text.replace('takes 10d', 'takes 1d'));
    expect([spareOf(tight, 'a'), spareOf(tight, 'b')]).toEqual([0, 0]);
  });

  test('the same after an edit of the length as anew', () => {
    const text = (length: string): string => `${WEEK}task b takes ${length}\ntask g takes 1d after 50% of b + 1d\n`;
    const memory = emptyMemory();
    for (const length of ['6d', '8d', '2d', '6d'])
      expect(daysOf(planOf(text(length), memory))).toEqual(daysOf(planOf(text(length))));
  });
});

describe('a link to a finish', () => {
  test('a day off of those who do it is not their last', () => {
    const text = `${WEEK}trade pl crew of 1
  works tue-sat 7:00-15:30
task b takes 6d
task c takes 2d by pl done with b
task d takes 1d after c
`;
    // b ends on Monday the 10th, when nobody of pl works: c is done on Tuesday, and begins on Saturday.
    expect(daysOf(planOf(text))).toEqual({ b: '05-03 05-10', c: '05-08 05-11', d: '05-12' });
    // b may end a day later, and c still does on Tuesday.
    expect([spareOf(planOf(text), 'b'), spareOf(planOf(text), 'c')]).toEqual([1, 0]);
    // What dries may end on a Sunday: two days after Friday the 7th.
    const dries = planOf(`${WEEK}task b takes 5d\ntask c takes 5d done with b + 2 days\n`);
    expect(daysOf(dries).c).toBe('05-03 05-09');
  });

  test('on a day that they work, later than they do, it ends when that does', () => {
    const text = `${WEEK}trade early crew of 1\n  works mon-fri 6:00-12:00\ntask b takes 2d\ntask c takes 6h by early done with b\n`;
    expect(daysOf(planOf(text))).toEqual({ b: '05-03 05-04', c: '05-04' });
  });
});
