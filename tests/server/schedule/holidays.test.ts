// Holiday rules as days. The library's rows of the United States' federal holidays are held against the package
// date-holidays.
import Holidays from 'date-holidays';
import { describe, expect, test } from 'vitest';
import { dayOf, isoDate } from '#kit/dates';
import { type HolidayRule, holidayDays } from '#schedule/holidays';
import { holidayRule } from '#schedule/plan-calendars';
import { analyse } from '#server/pipeline';
import { builtIn } from '#tests/support/built-in';

const MONDAY = 0;
const fixed = (month: number, day: number): HolidayRule => ({ kind: 'fixed', month, day, observed: 'nearest-weekday' });
const nth = (number: 1 | 2 | 3 | 4 | 5 | 'last', weekday: number, month: number): HolidayRule => ({
  kind: 'nth',
  nth: number,
  weekday,
  month,
});

/** The rows of the built-in library: United States Code, title 5, section 6103. */
const rows = analyse({ root: 'plan.screed', texts: { 'plan.screed': 'plan p\n' }, library: builtIn() }).model.rows('holiday');
const federal = rows.filter((row) => row.given.in?.value === 'US').map((row) => ({ name: row.name, rule: holidayRule(row)! }));
const rules = federal.map(({ rule }) => rule);

function days(rules: readonly HolidayRule[], from: number, to: number): string[] {
  return [...new Set(rules.flatMap((rule) => holidayDays(rule, from, to)))].sort((a, b) => a - b).map(isoDate);
}

describe('federal holidays of the United States, 2024 to 2035', () => {
  const referee = new Holidays('US');
  const told = new Set<string>();
  for (let year = 2024; year <= 2035; year++) {
    for (const holiday of referee.getHolidays(year)) if (holiday.type === 'public') told.add(holiday.date.slice(0, 10));
  }
  // New Year's Day 2028 is kept on the last day of 2027: a row of the year after.
  const expected = [...told].filter((date) => date >= '2024' && date < '2036').sort();

  test('equal date-holidays 3.37, which does not move Veterans Day', () => {
    const unmoved = federal.map(
      ({ name, rule }): HolidayRule => (name === 'veterans-day' ? { kind: 'fixed', month: 11, day: 11, observed: 'none' } : rule),
    );
    expect(days(unmoved, 2024, 2035)).toEqual(expected);
  });

  test('by the statute Veterans Day is kept on a weekday too: the four years in which that differs', () => {
    const missing = days(rules, 2024, 2035).filter((date) => !expected.includes(date));
    expect(missing).toEqual(['2028-11-10', '2029-11-12', '2034-11-10', '2035-11-12']);
  });
});

test('a weekday kept for a holiday of the next year belongs to this one', () => {
  expect(holidayDays(fixed(1, 1), 2027, 2027).map(isoDate)).toEqual(['2027-01-01', '2027-12-31']);
  expect(holidayDays(fixed(1, 1), 2028, 2028).map(isoDate)).toEqual(['2028-01-01']);
});

test('months without a fifth Monday, and dates that do not exist, give no day', () => {
  expect(holidayDays(nth(5, MONDAY, 2), 2027, 2027)).toEqual([]);
  expect(holidayDays(nth(5, MONDAY, 3), 2027, 2027)).toEqual([dayOf(2027, 3, 29)]);
  expect(holidayDays({ kind: 'fixed', month: 2, day: 29, observed: 'none' }, 2026, 2029).map(isoDate)).toEqual(['2028-02-29']);
  expect(holidayDays({ kind: 'fixed', month: 14, day: 1, observed: 'none' }, 2026, 2029)).toEqual([]);
});
