// Day numbers, dates and how they are read and printed. The platform's own Date is the referee.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addMonths,
  civil,
  clock,
  dayOf,
  dayOfFinish,
  dayOfStart,
  daysInMonth,
  isLeapYear,
  isoDate,
  isoMoment,
  monthName,
  readIsoDate,
  shortDate,
  weekday,
} from '#kit/dates';

const anyDay = fc.integer({ min: -719_000, max: 2_900_000 });

test('every day from year 1 to 9999, in steps, agrees with the platform calendar', () => {
  for (let day = -719_162; day < 2_932_896; day += 499) {
    const referee = new Date(day * 86_400_000);
    expect(civil(day)).toEqual({ year: referee.getUTCFullYear(), month: referee.getUTCMonth() + 1, day: referee.getUTCDate() });
    expect(weekday(day)).toBe((referee.getUTCDay() + 6) % 7);
    expect(isoDate(day)).toBe(referee.toISOString().slice(0, 10));
  }
});

test('day number and date are inverse', () => {
  fc.assert(
    fc.property(anyDay, (day) => {
      const date = civil(day);
      expect(dayOf(date.year, date.month, date.day)).toBe(day);
      expect(readIsoDate(isoDate(day))).toBe(day);
    }),
  );
});

test('known days', () => {
  expect(dayOf(1970, 1, 1)).toBe(0);
  expect(weekday(0)).toBe(3);
  expect(dayOf(2000, 2, 29) + 1).toBe(dayOf(2000, 3, 1));
  expect(dayOf(2027, 13, 1)).toBe(dayOf(2028, 1, 1));
  expect(dayOf(2027, 0, 1)).toBe(dayOf(2026, 12, 1));
  expect([1900, 2000, 2024, 2027].map(isLeapYear)).toEqual([false, true, true, false]);
  expect([daysInMonth(2027, 2), daysInMonth(2028, 2), daysInMonth(2027, 12)]).toEqual([28, 29, 31]);
});

describe('printing', () => {
  test('dates and moments', () => {
    const day = dayOf(2027, 4, 5);
    expect(shortDate(day)).toBe('Mon 5 Apr 2027');
    expect(isoMoment(day * 1440 + 480)).toBe('2027-04-05T08:00');
    expect(isoMoment(-1)).toBe('1969-12-31T23:59');
    expect(monthName(4)).toBe('April');
    expect(monthName(13)).toBe('');
    expect(clock(1440)).toBe('24:00');
    expect(isoDate(dayOf(33, 1, 2))).toBe('0033-01-02');
  });

  test('midnight opens a day for a start and closes one for a finish', () => {
    expect(dayOfStart(1440)).toBe(1);
    expect(dayOfFinish(1440)).toBe(0);
    expect(dayOfFinish(1441)).toBe(1);
    expect(dayOfFinish(0)).toBe(-1);
  });
});

test('only real dates written in full are read', () => {
  expect(readIsoDate('2028-02-29')).toBe(dayOf(2028, 2, 29));
  for (const wrong of ['2027-02-29', '2027-13-01', '2027-00-10', '2027-4-5', '27-04-05', '2027-04-05 ', '', '2027-04-31']) {
    expect(readIsoDate(wrong)).toBeUndefined();
  }
});

test('months are added on the calendar, to the last day of a short one', () => {
  expect(isoDate(addMonths(dayOf(2027, 1, 31), 1))).toBe('2027-02-28');
  expect(isoDate(addMonths(dayOf(2027, 11, 30), 3))).toBe('2028-02-29');
  expect(isoDate(addMonths(dayOf(2027, 3, 15), -3))).toBe('2026-12-15');
});
