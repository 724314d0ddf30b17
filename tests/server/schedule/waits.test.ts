// Waits by three clocks, and that the way back is the exact mirror of the way forth.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calendar, type WorkWeek } from '#schedule/calendar';
import {
  AROUND,
  afterFinish,
  afterStart,
  beforeFinish,
  beforeStart,
  CALENDAR_DAYS,
  type WaitClock,
  WORKING,
} from '#schedule/waits';
import { CONTINUOUS, OFFICE_WEEK } from '#tests/support/network-table';

const office = calendar(OFFICE_WEEK, [], 4, 60);
/** Day 4 is Monday 5 January 1970. */
const at = (days: number, hour: number): number => (4 + days) * 1440 + hour * 60;

describe('waits after a finish', () => {
  test('whole days end with the date; midnight belongs to the day it closes', () => {
    expect(afterFinish(office, at(4, 17), 2 * 1440, CALENDAR_DAYS)).toBe(at(7, 0));
    expect(afterFinish(office, at(5, 0), 2 * 1440, CALENDAR_DAYS)).toBe(at(7, 0));
    expect(afterFinish(office, at(4, 17), -2 * 1440, CALENDAR_DAYS)).toBe(at(3, 0));
  });

  test('working time runs on the calendar, clock time day and night, and no wait is no wait', () => {
    expect(afterFinish(office, at(4, 17), 480, WORKING)).toBe(at(7, 17));
    expect(afterFinish(office, at(4, 17), 1440, AROUND)).toBe(at(5, 17));
    for (const clock of [WORKING, CALENDAR_DAYS, AROUND]) expect(afterFinish(office, at(5, 3), 0, clock)).toBe(at(5, 3));
  });
});

test('a start one calendar day later is at the same hour', () => {
  expect(afterStart(office, at(0, 8), 1440, CALENDAR_DAYS)).toBe(at(1, 8));
});

describe('the way back is the latest moment whose wait is over by the bound', () => {
  const shifts = fc.constantFrom([480, 720], [780, 1020], [0, 1440], [0, 90], [1300, 1440]) as fc.Arbitrary<
    readonly [number, number]
  >;
  const week = fc
    .array(fc.array(shifts, { maxLength: 2 }), { minLength: 7, maxLength: 7 })
    .map((list): WorkWeek => ({ shifts: list.map((day, number) => (number === 2 ? [...day, [600, 900] as const] : day)) }));
  const bound = fc.integer({ min: 20 * 1440, max: 34 * 1440 });

  test.each([
    ['starts', afterStart, beforeStart],
    ['finishes', afterFinish, beforeFinish],
  ] as const)('%s', (_, forth, back) => {
    fc.assert(
      fc.property(
        week,
        bound,
        fc.integer({ min: -900, max: 900 }),
        fc.constantFrom<WaitClock>(0, 1, 2),
        (days, limit, minutes, clock) => {
          const works = calendar(days, [], 0, 60);
          const lag = clock === CALENDAR_DAYS ? Math.trunc(minutes / 200) * 1440 : minutes;
          const latest = back(works, limit, lag, clock);
          expect(forth(works, latest, lag, clock)).toBeLessThanOrEqual(limit);
          expect(forth(works, latest + 1, lag, clock)).toBeGreaterThan(limit);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('in continuous time it is plain subtraction', () => {
    expect([beforeStart(CONTINUOUS, 1000, 300, WORKING), beforeStart(CONTINUOUS, 1000, -300, WORKING)]).toEqual([700, 1300]);
  });
});
