// Working time by prefix tables, against a walk minute by minute over the same days.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayOf, isoMoment } from '#kit/dates';
import {
  advance,
  calendar,
  canBegin,
  isBeyond,
  nextWork,
  previousWork,
  REACH_DAYS,
  retreat,
  type WorkWeek,
  workBetween,
} from '#schedule/calendar';
import { OFFICE_WEEK } from '#tests/support/network-table';

const monday = dayOf(2027, 4, 5);
const at = (day: number, hour: number, minute = 0): number => (monday + day) * 1440 + hour * 60 + minute;
const office = calendar(OFFICE_WEEK, [[monday + 7, monday + 7]], monday, monday + 30);

describe('a week of eight hours, Monday to Friday, with one Monday closed', () => {
  test('work begins at openings and ends at closings', () => {
    expect(nextWork(office, at(0, 0))).toBe(at(0, 8));
    expect(nextWork(office, at(0, 12))).toBe(at(0, 13));
    expect(nextWork(office, at(4, 17))).toBe(at(8, 8));
    expect(previousWork(office, at(8, 8))).toBe(at(4, 17));
    expect(previousWork(office, at(0, 13))).toBe(at(0, 12));
    expect([canBegin(office, at(0, 8)), canBegin(office, at(0, 17)), canBegin(office, at(7, 9))]).toEqual([true, false, false]);
  });

  test('a one-day task from Monday morning ends Monday evening, not Tuesday morning', () => {
    expect(advance(office, at(0, 8), 480)).toBe(at(0, 17));
    expect(advance(office, at(4, 17), 480)).toBe(at(8, 17));
    expect(retreat(office, at(8, 17), 480)).toBe(at(8, 8));
    expect(retreat(office, at(8, 8), 480)).toBe(at(4, 8));
  });

  test('no work moves nothing, and less than none runs the other way', () => {
    expect(advance(office, at(5, 3), 0)).toBe(at(5, 3));
    expect(advance(office, at(8, 8), -480)).toBe(at(4, 8));
    expect(retreat(office, at(4, 17), -60)).toBe(at(8, 9));
  });

  test('the table grows for later and earlier moments', () => {
    expect(isoMoment(advance(office, at(0, 8), 480 * 600))).toBe('2029-07-23T17:00');
    expect(workBetween(office, at(0, 8), at(0, 8) + 1440 * 7 * 520)).toBe(480 * (5 * 520 - 1));
    expect(workBetween(office, at(0, 8), at(0, 8) - 1440 * 7 * 520)).toBe(-480 * 5 * 520);
    expect(retreat(office, at(0, 8), 480 * 5 * 1000)).toBe(at(0, 8) - 1440 * 7 * 1000);
  });
});

test('a calendar that never works still answers, a hundred years off, and says so', () => {
  const never = calendar(OFFICE_WEEK, () => true, monday, monday + 10);
  const end = advance(never, at(0, 8), 480);
  expect(end).toBe((monday + 10 + REACH_DAYS + 1) * 1440 + 480);
  expect(isBeyond(never, end)).toBe(true);
  expect(isBeyond(never, at(100, 0))).toBe(false);
  expect(isBeyond(never, retreat(never, at(0, 8), 1))).toBe(true);
  expect(previousWork(never, nextWork(never, at(3, 0)))).toBeLessThan(at(0, 0));
  expect(workBetween(never, at(0, 0), at(9, 0))).toBe(0);
});

test('a table that ends on an evening or begins on a morning knows the neighbouring shifts', () => {
  const oneDay = calendar(OFFICE_WEEK, [], monday, monday);
  expect(nextWork(oneDay, at(0, 17))).toBe(at(1, 8));
  const again = calendar(OFFICE_WEEK, [], monday, monday);
  expect(previousWork(again, at(0, 8))).toBe(at(-3, 17));
  expect(retreat(calendar(OFFICE_WEEK, [], monday, monday), at(0, 9), 120)).toBe(at(-3, 16));
});

test('shifts are put in order, joined and kept inside the day; closed ranges may overlap', () => {
  const odd: WorkWeek = {
    shifts: [
      [
        [780, 2000],
        [480, 600],
        [600, 720],
        [500, 520],
        [900, 900],
      ],
    ],
  };
  const works = calendar(
    odd,
    [
      [monday + 7, monday + 20],
      [monday + 8, monday + 9],
    ],
    monday,
    monday + 60,
  );
  expect(workBetween(works, at(0, 0), at(1, 0))).toBe(240 + 660);
  expect(workBetween(works, at(1, 0), at(21, 0))).toBe(0);
  expect(workBetween(works, at(21, 0), at(22, 0))).toBe(900);
});

test('bad moments give no answer rather than an endless search', () => {
  expect(nextWork(office, Number.NaN)).toBeNaN();
  expect(workBetween(office, 0, Number.NaN)).toBeNaN();
});

describe('random weeks, closed days and moments, against a walk minute by minute', () => {
  const shift = fc.tuple(fc.integer({ min: 0, max: 1440 }), fc.integer({ min: 0, max: 1440 }));
  const week = fc.array(fc.array(shift, { maxLength: 3 }), { minLength: 7, maxLength: 7 });
  const closed = fc.uniqueArray(fc.integer({ min: 0, max: 13 }), { maxLength: 6 });
  const span = fc.tuple(fc.integer({ min: 0, max: 13 }), fc.integer({ min: 0, max: 13 }));
  const moment = fc.integer({ min: 0, max: 14 * 1440 });

  test('every question, inside and outside the first table', () => {
    fc.assert(
      fc.property(
        week,
        closed,
        span,
        moment,
        moment,
        fc.integer({ min: 1, max: 4000 }),
        (shifts, days, [one, other], a, b, minutes) => {
          // Days outside 0..13 are closed, but for a whole open day far on either side to stop the walk.
          const isClosed = (day: number): boolean => day < -1 || day > 14 || days.includes(day);
          const open = shifts.map((list) => list.filter(([start, end]) => end > start));
          const made = calendar({ shifts: open }, isClosed, Math.min(one, other), Math.max(one, other));
          const works = (minute: number): boolean => {
            const day = Math.floor(minute / 1440);
            const within = minute - day * 1440;
            const list = open[(((day + 3) % 7) + 7) % 7]!;
            return !isClosed(day) && list.some(([start, end]) => within >= start && within < end);
          };
          const first = -2 * 1440;
          const last = 16 * 1440;
          const prefix = new Int32Array(last - first + 1);
          for (let minute = first; minute < last; minute++)
            prefix[minute - first + 1] = prefix[minute - first]! + (works(minute) ? 1 : 0);
          const by = (m: number): number => prefix[m - first]!;
          const total = by(last);

          expect(workBetween(made, a, b)).toBe(by(b) - by(a));
          expect(canBegin(made, a)).toBe(works(a));
          let next = a;
          while (next < last && !works(next)) next++;
          if (next < last) expect(nextWork(made, a)).toBe(next);
          let previous = a;
          while (previous > first && !works(previous - 1)) previous--;
          if (previous > first) expect(previousWork(made, a)).toBe(previous);
          if (by(a) + minutes <= total) {
            let end = a;
            while (by(end) < by(a) + minutes) end++;
            expect(advance(made, a, minutes)).toBe(end);
            expect(workBetween(made, a, end)).toBe(minutes);
          }
          if (by(a) - minutes >= 0) {
            let begin = a;
            while (by(begin) > by(a) - minutes) begin--;
            expect(retreat(made, a, minutes)).toBe(nextWork(made, begin));
            expect(workBetween(made, retreat(made, a, minutes), a)).toBe(minutes);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
