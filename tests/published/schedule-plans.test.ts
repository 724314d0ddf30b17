// Published networks, crews and calendars again, written as plans: what the language says of them, and what the dates come to.
// The tables themselves stand in schedule-critical-path, -crews and -calendar; where a source is at fault, it is said there.
import { describe, expect, test } from 'vitest';
import { dayOfFinish, isoDate, readIsoDate } from '#kit/dates';
import { workBetween } from '#schedule/calendar';
import { planOf } from '#tests/support/dated';

/** ES EF LS LF TF FF of each step, in working days from the first; letters are lower in a plan. */
function table(text: string): Record<string, string> {
  const { timeline } = planOf(`plan p\n  start 2027-01-04\n${text}`);
  const { steps, timing, byLinks, floats, minutesPerDay } = timeline;
  const calendar = timing.calendars[timing.planCalendar]!;
  const day = (moment: number): number => workBetween(calendar, timing.start, moment) / minutesPerDay;
  return Object.fromEntries(
    steps.list.map((step, at) => [
      step.name,
      [byLinks.start, byLinks.finish, floats.lateStart, floats.lateFinish]
        .map((column) => day(column[at]!))
        .concat(floats.totalFloat[at]! / minutesPerDay, floats.freeFloat[at]! / minutesPerDay)
        .join(' '),
    ]),
  );
}

describe('links of all four kinds', () => {
  test('"Network Construction – Precedence Diagram Method" (course note, 15 March 2019), start to start: "with"', () => {
    expect(
      table(`task a takes 2d
task b takes 10d with a
task c takes 13d after a
task d takes 12d after a
task e takes 12d after b
task f takes 7d after b
task g takes 10d after d
task h takes 16d after d
task i takes 6d after f
task j takes 12d after c, with g
task k takes 5d with i
task l takes 8d after e, i, k
task m takes 5d after h
task n takes 3d after g, j, l, m
`),
    ).toEqual({
      a: '0 2 0 2 0 0',
      b: '0 10 4 14 4 0',
      c: '2 15 10 23 8 0',
      d: '2 14 2 14 0 0',
      e: '10 22 15 27 5 1',
      f: '10 17 14 21 4 0',
      g: '14 24 23 33 9 1',
      h: '14 30 14 30 0 0',
      i: '17 23 21 27 4 0',
      j: '15 27 23 35 8 8',
      k: '17 22 22 27 5 1',
      l: '23 31 27 35 4 4',
      m: '30 35 30 35 0 0',
      n: '35 38 35 38 0 0',
    });
  });

  test('Mubarak, Construction Project Scheduling and Control, a ladder: "with" and "done with"', () => {
    const rows = table('task a takes 5d\ntask b takes 7d with a, done with a\ntask c takes 3d with b, done with b\n');
    expect(Object.values(rows).map((row) => row.split(' ').slice(0, 5).join(' '))).toEqual([
      '0 5 0 5 0',
      '0 7 0 7 0',
      '4 7 4 7 0',
    ]);
  });

  test('an exercise with leads and lags (posted on askfilo.com): "with d - 1d", "done with h + 3d", "done after start of f - 2d"', () => {
    // The posted solution lets F start on 18; with "H FF+3" it ends on 25 or later, so it starts on 19.
    expect(
      table(`task b takes 7d
task a takes 11d with b
task c takes 4d after a
task d takes 3d with c
task e takes 4d after b, with d - 1d
task h takes 7d after c
task f takes 6d after d + 2d, done with h + 3d
task g takes 9d after e, done after start of f - 2d
task i takes 3d after f
task k takes 12d after i + 2d
task j takes 4d after i, done with k - 3d
`),
    ).toEqual({
      b: '0 7 0 7 0 0',
      a: '0 11 0 11 0 0',
      c: '11 15 11 15 0 0',
      d: '11 14 14 17 3 0',
      e: '10 14 29 33 19 0',
      h: '15 22 15 22 0 0',
      f: '19 25 19 25 0 0',
      g: '14 23 33 42 19 19',
      i: '25 28 25 28 0 0',
      k: '30 42 30 42 0 0',
      j: '35 39 38 42 3 3',
    });
  });

  test('part of the way: "50% of a" is a start-to-start link with half the length as its lag', () => {
    const half = table('task a takes 10d\ntask b takes 10d after 50% of a\n');
    expect(half).toEqual(table('task a takes 10d\ntask b takes 10d with a + 5d\n'));
    expect(half.b).toBe('5 15 5 15 0 0');
  });
});

test('Hendrickson, Project Management for Construction, ch. 10, nine activities: 30 days', () => {
  expect(
    table(`task a "Site clearing" takes 4d
task b "Removal of trees" takes 3d
task c "General excavation" takes 8d after a
task d "Grading general area" takes 7d after a
task e "Excavation for trenches" takes 9d after b, c
task f "Formwork and reinforcement" takes 12d after b, c
task g "Sewer lines" takes 2d after d, e
task h "Other utilities" takes 5d after d, e
task i "Pouring concrete" takes 6d after f, g
`),
  ).toEqual({
    a: '0 4 0 4 0 0',
    b: '0 3 9 12 9 9',
    c: '4 12 4 12 0 0',
    d: '4 11 15 22 11 10',
    e: '12 21 13 22 1 0',
    f: '12 24 12 24 0 0',
    g: '21 23 22 24 1 1',
    h: '21 26 25 30 4 4',
    i: '24 30 24 30 0 0',
  });
});

describe('Tannenbaum, Excursions in Modern Mathematics, ch. 8: the habitat', () => {
  // The links but those of the published paths are from memory, confirmed by the published results.
  const tasks = `task ap takes 7h by workers
task af takes 5h by workers
task aw takes 6h by workers
task ad takes 8h by workers
task if takes 5h by workers after ap, af
task iw takes 7h by workers after if, aw
task id takes 5h by workers after ad, iw
task pl takes 4h by workers after if
task ip takes 4h by workers after iw
task pu takes 3h by workers after ip, id
task hu takes 4h by workers after ip
task ic takes 1h by workers after pl, hu
task fw takes 6h by workers after ic
task pd takes 3h by workers after hu
task eu takes 2h by workers after pu, hu
`;
  const hours = (crews: number): number => {
    const { timeline } = planOf(
      `plan p\n  start 2027-01-04\n  workweek mon-sun 0:00-24:00\ntrade workers crew of 1, crews ${crews}\n${tasks}`,
    );
    return (timeline.crews.end - timeline.timing.start) / 60;
  };

  test('two workers, a list by the longest way to the end: 36 hours; the critical time is 34', () => {
    // A plan's steps go by latest finish, which here makes the same 36 hours as the published list.
    expect(hours(2)).toBe(36);
    expect(hours(15)).toBe(34);
  });

  test('one worker does all of it one after the other: 70 hours', () => {
    expect(hours(1)).toBe(70);
  });
});

test('levelling (slides "Allocate and level project resources"): Σr² 743 at early dates, 779 at late ones', () => {
  // Rates are people: so many work on each day of a task.
  const rates: Record<string, number> = { a: 3, b: 2, c: 3, d: 4, e: 2, f: 1, g: 3, h: 2, i: 3, j: 4, k: 5 };
  const { timeline } = planOf(`plan p
  start 2027-01-04
task a takes 3d
task b takes 5d
task c takes 6d after a
task d takes 2d after a
task e takes 3d after d
task f takes 3d after d
task g takes 4d after b
task h takes 5d after g
task i takes 4d after c
task j takes 2d after e, f, i
task k takes 3d after j
`);
  const { steps, timing, byLinks, minutesPerDay } = timeline;
  const calendar = timing.calendars[timing.planCalendar]!;
  const use = (starts: Float64Array): number[] => {
    const days = new Array<number>(18).fill(0);
    steps.list.forEach(({ name }, at) => {
      const from = workBetween(calendar, timing.start, starts[at]!) / minutesPerDay;
      for (let day = from; day < from + timing.durations[at]! / minutesPerDay; day++) days[day]! += rates[name]!;
    });
    return days;
  };
  const squares = (days: readonly number[]): number => days.reduce((sum, each) => sum + each * each, 0);
  expect(use(byLinks.start)).toEqual([5, 5, 5, 9, 9, 9, 9, 9, 6, 5, 5, 5, 5, 6, 4, 5, 5, 5]);
  expect([squares(use(byLinks.start)), squares(use(byLinks.lateStart))]).toEqual([743, 779]);
});

describe('working days, as plans', () => {
  /** The day on which so many days of work are done that begin on a date, with days that are closed. */
  const done = (from: string, days: number, more = ''): string => {
    const { timeline } = planOf(`plan p\n  start ${from}\n${more}task a takes ${days}d\n`);
    return isoDate(dayOfFinish(timeline.crews.finish[0]!));
  };
  /** Working days from one date to another, both included. */
  const between = (from: string, to: string, more = ''): number => {
    const { timeline } = planOf(`plan p\n  start ${from}\n${more}task a takes 1d\n`);
    const { timing, minutesPerDay } = timeline;
    return workBetween(timing.calendars[0]!, timing.start, (readIsoDate(to)! + 1) * 1440) / minutesPerDay;
  };

  test('excel-formulas.blogspot.com, May 2009', () => {
    expect(between('2009-01-01', '2009-01-08')).toBe(6);
    expect(between('2009-01-01', '2009-01-08', '  closed 2009-01-01..2009-01-02\n')).toBe(4);
    // Six working days after the 1st begin with the 2nd.
    expect(done('2009-01-02', 6)).toBe('2009-01-09');
  });

  test('jabsto.com, Excel 2013 tutorial: 119 days; a spreadsheet manual, p. 61: 20 days after 2009-11-01', () => {
    expect(between('2014-01-15', '2014-06-30')).toBe(119);
    expect(done('2009-11-02', 20, '  closed 2009-11-11, 2009-11-26\n')).toBe('2009-12-01');
    // Both are federal holidays, and no other falls between.
    expect(done('2009-11-02', 20, '  holidays US\n')).toBe('2009-12-01');
  });

  test('a spreadsheet’s built-in help (from memory): 151 days after 2008-10-01, and 110, 109, 107', () => {
    expect(done('2008-10-02', 151)).toBe('2009-04-30');
    expect(done('2008-10-02', 151, '  closed 2008-11-26, 2008-12-04, 2009-01-21\n')).toBe('2009-05-05');
    expect(between('2012-10-01', '2013-03-01')).toBe(110);
    expect(between('2012-10-01', '2013-03-01', '  closed 2012-11-22\n')).toBe(109);
    expect(between('2012-10-01', '2013-03-01', '  closed 2012-11-22, 2012-12-04, 2013-01-21\n')).toBe(107);
  });

  test('numpy documentation, busday_offset: the next business day, weeks of one day', () => {
    expect(done('2011-10-01', 1)).toBe('2011-10-03');
    expect([done('2011-03-20', 1), done('2011-03-22', 1)]).toEqual(['2011-03-21', '2011-03-22']);
    expect(done('2011-01-01', 3, '  workweek wed 8h\n')).toBe('2011-01-19');
    expect(done('2012-05-01', 2, '  workweek sun 8h\n')).toBe('2012-05-13');
  });

  test('cnx.org module m37250 prints "7-Feb-06" for 10 working days after 2010-01-25: wrong, it is 2010-02-08', () => {
    expect(done('2010-01-26', 10)).toBe('2010-02-08');
  });
});
