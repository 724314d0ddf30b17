// Working times as a plan tells them: weeks, hours of a month and of a date, half days, times of one step, yearly windows,
// days that weather takes by what a work bears, days the diary says were lost. Dates were counted by hand on a calendar.
import { describe, expect, test } from 'vitest';
import { dayOfFinish, isoMoment } from '#kit/dates';
import { analyse, emptyMemory } from '#server/pipeline';
import { builtIn } from '#tests/support/built-in';

const library = builtIn();

/** 'MM-DD hh:mm > MM-DD hh:mm' of each step, by name. */
function spans(text: string, memory = emptyMemory()): Record<string, string> {
  const { timeline } = analyse({ root: 'plan.screed', texts: { 'plan.screed': text }, library }, memory);
  const moment = (value: number): string => isoMoment(value).slice(5).replace('T', ' ');
  return Object.fromEntries(
    timeline.steps.list.map((step, at) => [
      step.name,
      `${moment(timeline.crews.start[at]!)} > ${moment(timeline.crews.finish[at]!)}`,
    ]),
  );
}

/** The days between the first and the last on which a step is not worked on, Monday to Friday. */
function skipped(text: string, name: string): readonly string[] {
  const { timeline } = analyse({ root: 'plan.screed', texts: { 'plan.screed': text }, library });
  const step = timeline.steps.byName.get(name)!;
  const calendar = timeline.timing.calendars[timeline.timing.calendarOf[step]!]!;
  const found: string[] = [];
  const last = dayOfFinish(timeline.crews.finish[step]!);
  for (let day = Math.floor(timeline.crews.start[step]! / 1440); day <= last; day++)
    if ((day + 3) % 7 < 5 && calendar.closed !== undefined && (calendar.closed as (day: number) => boolean)(day))
      found.push(isoMoment(day * 1440).slice(5, 10));
  return found;
}

describe('hours', () => {
  // 30 November 2026 is a Monday.
  test('a month with shorter days: eight hours of work take a day and a third of six hours', () => {
    expect(spans('plan p\n  start 2026-11-30\n  hours dec 6h\ntask a takes 1d\ntask b takes 1d after a\n')).toEqual({
      a: '11-30 08:00 > 11-30 16:00',
      b: '12-01 08:00 > 12-02 10:00',
    });
  });

  test('a half day and a worked Saturday, by date; lunch is cut out of a span', () => {
    const text = `plan p
  start 2026-12-23
  workweek mon-fri 7:00-15:30, lunch 30 min
  hours 2026-12-24 7:00-11:00, 2026-12-26 7:00-15:30
task a takes 4d
`;
    // Wed 23 (8 h), Thu 24 (4 h), Fri 25 (8 h, no holidays kept), Sat 26 (8 h), then 4 h of Monday: to 11:00.
    expect(spans(text).a).toBe('12-23 07:00 > 12-28 11:00');
  });

  test('a date with hours of its own is worked on a holiday, but not on a day that is closed', () => {
    const plan = (more: string): string =>
      `plan p\n  start 2027-07-02\n  holidays US\n  hours 2027-07-05 8h\n${more}task a takes 2d\n`;
    // Sunday 4 July 2027 is kept on Monday the 5th.
    expect(spans(plan('')).a).toBe('07-02 08:00 > 07-05 16:00');
    expect(spans(plan('  closed 2027-07-05\n')).a).toBe('07-02 08:00 > 07-06 16:00');
    expect(spans(plan('').replace('  hours 2027-07-05 8h\n', '')).a).toBe('07-02 08:00 > 07-06 16:00');
  });

  test('a trade’s own months go before the plan’s', () => {
    const text = `plan p
  start 2026-12-01
  hours dec 6h
trade roofers crew of 2
  hours dec 4h
trade board crew of 2
task a takes 12h by roofers
task b takes 12h by board
`;
    expect(spans(text)).toEqual({ a: '12-01 08:00 > 12-03 12:00', b: '12-01 08:00 > 12-02 14:00' });
  });

  test('a week of long and short days', () => {
    // Monday to Thursday nine hours, Friday four: a working day stays the nine hours of the first.
    expect(spans('plan p\n  start 2027-04-08\n  workweek mon-thu 9h, fri 4h\ntask a takes 2d\n').a).toBe(
      '04-08 08:00 > 04-12 13:00',
    );
  });
});

describe('times of one step', () => {
  test('a pour on a Saturday morning by a crew that works in the week', () => {
    const text = `plan p
  start 2027-04-07
trade concrete crew of 3
task forms takes 1d by concrete
task pour takes 4h by concrete, works sat 7:00-12:00, after forms
task strip takes 1d by concrete after pour + 1 day
`;
    expect(spans(text)).toEqual({
      forms: '04-07 08:00 > 04-07 16:00',
      pour: '04-10 07:00 > 04-10 11:00',
      strip: '04-12 08:00 > 04-12 16:00',
    });
  });

  test('a visit of its own days', () => {
    const text = 'plan p\n  start 2027-04-07\ntrade city\ninspection look by city, works thu 9:00-12:00\n';
    expect(spans(text).look).toBe('04-08 09:00 > 04-08 12:00');
  });

  test('a window that comes each year, also over the turn of the year', () => {
    const plan = (window: string): string => `plan p\n  start 2027-10-14\ntask seed takes 3d, between ${window}\n`;
    // Thursday and Friday of the old year's window, and the first day of the next, a Thursday.
    expect(spans(plan('apr 15 and oct 15')).seed).toBe('10-14 08:00 > 04-17 16:00');
    expect(spans(plan('nov 10 and feb 1')).seed).toBe('11-10 08:00 > 11-12 16:00');
  });
});

describe('weather', () => {
  const work = (said: string): string => `plan p
  start 2027-06-01
  ${said}
trade framing crew of 4
trade digging crew of 2
trade drywall crew of 3
task walls does frame-walls takes 20d by framing
task fence does place-silt-fence takes 20d by digging
task board does hang-board takes 20d by drywall
`;

  test('days lost in a month, spread over its working days, outside only', () => {
    // June 2027 has 22 working days from the 1st: two lost are the (0.5 × 22 / 2 =) 5th and the 16th of them, counted from 0.
    expect(skipped(work('weather jun 2d'), 'walls')).toEqual(['06-08', '06-23']);
    expect(skipped(work('weather jun 2d'), 'fence')).toEqual(['06-08', '06-23']);
    expect(skipped(work('weather jun 2d'), 'board')).toEqual([]);
  });

  test('lost to one kind of weather: only what it stops', () => {
    // Walls are exposed to rain and wind, the fence to frost, as their rows say.
    expect(skipped(work('weather jun 2d rain'), 'walls')).toEqual(['06-08', '06-23']);
    expect(skipped(work('weather jun 2d rain'), 'fence')).toEqual([]);
    expect(skipped(work('weather jun 2d frost'), 'walls')).toEqual([]);
    expect(skipped(work('weather jun 2d frost'), 'fence')).toEqual(['06-08', '06-23']);
    // One and one add up.
    expect(skipped(work('weather jun 1d rain, jun 1d wind'), 'walls')).toEqual(['06-08', '06-23']);
  });

  test('from the table of a climate, of the library or the plan; what the plan says goes before', () => {
    const own = 'climate by-the-lake\n  weather jun 2d rain\n';
    expect(skipped(work('climate by-the-lake') + own, 'walls')).toEqual(['06-08', '06-23']);
    expect(skipped(work('climate by-the-lake\n  weather jun 1d') + own, 'walls')).toEqual(['06-16']);
    expect(skipped(work('climate wet-coast'), 'walls')).toHaveLength(3);
  });

  const diary = (lost: string): string => `${work('weather jun 2d')}progress 2027-06-14
  walls started 2027-06-01
  board started 2027-06-01
${lost}`;

  test('days that were lost, by the diary: outside only, and only what that weather stops', () => {
    // The allowance counts from the status date on: its 8 June is past, the diary says what was lost.
    expect(skipped(diary(''), 'walls')).toEqual(['06-23']);
    expect(skipped(diary('  rain 2027-06-10..2027-06-11\n'), 'walls')).toEqual(['06-10', '06-11', '06-23']);
    expect(skipped(diary('  frost 2027-06-10..2027-06-11\n'), 'walls')).toEqual(['06-23']);
    expect(skipped(diary('  rain 2027-06-10..2027-06-11\n'), 'board')).toEqual([]);
    // Twenty days from 1 June are done on the 28th; three lost make it Thursday, 1 July.
    expect(spans(diary('')).walls).toBe('06-01 08:00 > 06-29 16:00');
    expect(spans(diary('  rain 2027-06-10..2027-06-11\n')).walls).toBe('06-01 08:00 > 07-01 16:00');
    expect(spans(diary('  rain 2027-06-10..2027-06-11\n')).board).toBe('06-01 08:00 > 06-28 16:00');
  });

  test('rain that the diary tells for days to come stops work too', () => {
    expect(skipped(diary('  rain 2027-06-15..2027-06-16\n'), 'walls')).toEqual(['06-15', '06-16', '06-23']);
  });

  test('typed and taken back: as a fresh look', () => {
    const memory = emptyMemory();
    const [dry, wet] = [diary(''), diary('  rain 2027-06-10..2027-06-11\n')];
    const before = spans(dry, memory);
    expect(spans(wet, memory)).toEqual(spans(wet));
    expect(spans(dry, memory)).toEqual(before);
    const other = dry.replace('weather jun 2d', 'climate wet-coast');
    expect(spans(other, memory)).toEqual(spans(other));
  });
});
