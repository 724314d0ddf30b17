// Dates a step is bound to by its own words, and steps that stand from the start of one to the end of another.
import { describe, expect, test } from 'vitest';
import { emptyMemory } from '#server/pipeline';
import { daysOf, planOf, spareOf, whyOf } from '#tests/support/dated';

// 5 April 2027 is a Monday.
const START = 'plan p\n  start 2027-04-05\n';

describe('must start', () => {
  test('not before its day; what leads to it has the days until then', () => {
    const plan = planOf(`${START}task dig takes 2d\ntask pour takes 1d, must start 2027-04-12, after dig\n`);
    expect(daysOf(plan)).toEqual({ dig: '04-05 04-06', pour: '04-12' });
    expect(whyOf(plan, 'pour')).toBe(
      'It takes 1d as given, begins Mon 12 Apr 2027 because it must start on 12 Apr, and cannot slip without moving the end.',
    );
    expect([spareOf(plan, 'dig'), spareOf(plan, 'pour')]).toEqual([3, 0]);
    // With more to do at the end it may still not slip, nor is any free: its day is its day.
    const more = planOf(`${START}task pour takes 1d, must start 2027-04-12\ntask other takes 20d\n`);
    expect([spareOf(more, 'pour'), more.timeline.floats.freeFloat[0]]).toEqual([0, 0]);
  });

  test('too late for it: the days missing stand along the chain', () => {
    const plan = planOf(`${START}task dig takes 7d\ntask pour takes 1d, must start 2027-04-12, after dig\ntask more takes 9d\n`);
    // Seven days end on Tuesday the 13th; the pour begins on Wednesday, two days late.
    expect(daysOf(plan).pour).toBe('04-14');
    expect([spareOf(plan, 'dig'), spareOf(plan, 'pour'), spareOf(plan, 'more')]).toEqual([-2, -2, 0]);
  });

  test('a day on which its trade does not work is never met', () => {
    const plan = planOf(`${START}task pour takes 1d, must start 2027-04-10\n`);
    expect(daysOf(plan).pour).toBe('04-12');
    expect(spareOf(plan, 'pour')).toBeLessThan(0);
  });
});

describe('between two days', () => {
  test('not before the first, and done by the last', () => {
    const text = `${START}task grass takes 3d, between 2027-04-15 and 2027-04-20\ntask other takes 20d\n`;
    const plan = planOf(text);
    expect(daysOf(plan).grass).toBe('04-15 04-19');
    expect(spareOf(plan, 'grass')).toBe(1);
    expect(whyOf(plan, 'grass')).toContain('begins Thu 15 Apr 2027 because its dates begin on 15 Apr');
    const late = planOf(text.replace('takes 3d,', 'takes 3d, after other,'));
    // Twenty days end on Friday, 30 April; grass from 3 to 5 May is eleven working days over.
    expect(daysOf(late).grass).toBe('05-03 05-05');
    expect(spareOf(late, 'grass')).toBe(-11);
  });
});

describe('stands from one step to another', () => {
  const text = `${START}trade siding crew of 2
task wrap     takes 2d
task lap      takes 3d by siding after wrap
task paint    takes 2d after lap + 2 days
task scaffold stands from lap to paint
task clear    takes 1d after scaffold
task yard     takes 12d
`;

  test('from the start of the first to the end of the last, and as long as they take', () => {
    const plan = planOf(text);
    // Lap Wednesday to Friday; Saturday and Sunday dry; paint Monday and Tuesday.
    expect(daysOf(plan)).toMatchObject({ lap: '04-07 04-09', paint: '04-12 04-13', scaffold: '04-07 04-13', clear: '04-14' });
    expect(whyOf(plan, 'scaffold')).toBe(
      'It takes 5d, as long as what it stands for, begins Wed 7 Apr 2027 because "lap" begins 7 Apr, and can slip 4d before the end moves.',
    );
  });

  test('it follows both, and holds neither of them', () => {
    const later = planOf(text.replace('task wrap     takes 2d', 'task wrap     takes 4d'));
    expect(daysOf(later)).toMatchObject({ lap: '04-09 04-13', paint: '04-16 04-19', scaffold: '04-09 04-19', clear: '04-20' });
    const alone = planOf(text.replace('task scaffold stands from lap to paint\n', '').replace('after scaffold', 'after paint'));
    for (const name of ['wrap', 'lap', 'paint']) expect(spareOf(planOf(text), name)).toBe(spareOf(alone, name));
  });

  test('a phase means its first step, and all of them', () => {
    const plan = planOf(`${START}phase shell in order
  task walls takes 2d
  task roof  takes 3d
task toilet stands from shell to shell
task end takes 1d after shell
`);
    expect(daysOf(plan).toilet).toBe('04-05 04-09');
  });

  test('begun, by the diary, it stands until what it stands for is done', () => {
    const plan = planOf(`${text}progress 2027-04-09
  wrap     finished 2027-04-06
  lap      started 2027-04-07, left 2d
  scaffold started 2027-04-06
`);
    expect(daysOf(plan)).toMatchObject({ lap: '04-07 04-13', paint: '04-16 04-19', scaffold: '04-06 04-19' });
  });
});

test('typed and taken back: as a fresh look', () => {
  const memory = emptyMemory();
  const base = `${START}task a takes 2d\ntask b takes 3d after a\ntask c takes 1d\n`;
  const before = daysOf(planOf(base, memory));
  for (const edited of [
    base.replace('task c takes 1d', 'task c stands from a to b'),
    base.replace('takes 3d', 'takes 3d, must start 2027-04-09'),
    base.replace('takes 3d', 'takes 3d, between 2027-04-09 and 2027-04-20'),
    base.replace('takes 3d', 'takes 3d, between apr 20 and may 1'),
    base.replace('takes 3d', 'takes 3d, works sat-sun 6h'),
  ]) {
    expect(daysOf(planOf(edited, memory))).toEqual(daysOf(planOf(edited)));
  }
  expect(daysOf(planOf(base, memory))).toEqual(before);
});

describe('less than no time: the sentence says whose date it is', () => {
  test('its own, or that of a step further on, through links and crews', () => {
    const plan = planOf(`${START}trade concrete crew of 3
task dig takes 7d
task pour takes 1d by concrete, must start 2027-04-12, after dig
task walls takes 2d by concrete, after dig, deadline 2027-04-20
task more takes 9d
`);
    expect(whyOf(plan, 'dig')).toContain('and is 2d later than the day on which "pour" must start allows.');
    expect(whyOf(plan, 'pour')).toContain('and is 2d later than the day on which it must start allows.');
    const late = planOf(`${START}task a takes 5d\ntask b takes 2d after a\ntask c takes 1d after b, deadline 2027-04-13\n`);
    expect(whyOf(late, 'a')).toContain('and is 1d later than the deadline of "c" allows.');
    expect(whyOf(late, 'c')).toContain('and is 1d later than its deadline allows.');
    const window = planOf(`${START}task a takes 5d\ntask c takes 1d after a, between 2027-04-05 and 2027-04-09\n`);
    expect(whyOf(window, 'a')).toContain('and is 1d later than the last day of "c" allows.');
  });
});
