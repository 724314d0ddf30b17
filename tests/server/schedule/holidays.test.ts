// Holiday rules as days. The library's rows of the United States' federal holidays are held against the package
// date-holidays.
import Holidays from 'date-holidays';
import { describe, expect, test } from 'vitest';
import { dayOf, isoDate, readIsoDate, weekday } from '#kit/dates';
import { easterSunday, type HolidayRule, holidayDays } from '#schedule/holidays';
import { holidayRule, holidaysOf } from '#schedule/plan-calendars';
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
const federal = rows
  .filter((row) => row.given.in?.value.some(({ value }) => value === 'US'))
  .map((row) => ({ name: row.name, rule: holidayRule(row)! }));
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

test('Easter Sunday, 1900 to 2099, equals date-holidays', () => {
  const referee = new Holidays('NO');
  for (let year = 1900; year < 2100; year += 7) {
    const told = referee.getHolidays(year).find(({ rule }) => rule === 'easter');
    expect(isoDate(easterSunday(year))).toBe(told?.date.slice(0, 10));
  }
});

test('the weekday before and after a date never is the date itself', () => {
  const beside = (side: 'before' | 'after'): HolidayRule => ({ kind: 'beside', side, weekday: MONDAY, month: 5, day: 24 });
  // 24 May 2027 is a Monday.
  expect(holidayDays(beside('before'), 2027, 2027).map(isoDate)).toEqual(['2027-05-17']);
  expect(holidayDays(beside('after'), 2027, 2027).map(isoDate)).toEqual(['2027-05-31']);
});

/** Days from Monday to Saturday that a plan keeps and the referee does not (+), or the other way round (-). */
function differences(country: string, region?: string): readonly string[] {
  const code = region === undefined ? country : `${country}-${region}`;
  const { model } = analyse({
    root: 'plan.screed',
    texts: { 'plan.screed': `plan p\n  holidays ${code}\n` },
    library: builtIn(),
  });
  const own = new Set(
    holidaysOf(model).flatMap((row) => holidayDays(holidayRule(row)!, Math.max(2024, row.given.since?.value ?? 0), 2035)),
  );
  const referee = region === undefined ? new Holidays(country) : new Holidays(country, region);
  const theirs = new Set<number>();
  for (let year = 2024; year <= 2036; year++)
    for (const { date, type } of referee.getHolidays(year)) if (type === 'public') theirs.add(readIsoDate(date.slice(0, 10))!);
  const [from, to] = [dayOf(2024, 1, 1), dayOf(2035, 12, 31)];
  return [...new Set([...own, ...theirs])]
    .filter((day) => day >= from && day <= to && weekday(day) < 6 && own.has(day) !== theirs.has(day))
    .sort((a, b) => a - b)
    .map((day) => `${own.has(day) ? '+' : '-'}${isoDate(day)}`);
}

test.each([
  ['CA', undefined],
  ['CA', 'ON'],
  ['CA', 'QC'],
  ['CA', 'BC'],
  ['CA', 'AB'],
  ['GB', 'ENG'],
  ['GB', 'WLS'],
  ['GB', 'SCT'],
  ['GB', 'NIR'],
  ['IE', undefined],
  ['DE', undefined],
  ...['BB', 'BE', 'BW', 'BY', 'HB', 'HE', 'HH', 'MV', 'NI', 'NW', 'RP', 'SH', 'SL', 'SN', 'ST', 'TH'].map(
    (land) => ['DE', land] as const,
  ),
  ['SE', undefined],
  ['FI', undefined],
  ['NO', undefined],
] as const)('holidays of %s %s from 2024 to 2035 equal date-holidays, but for what is named here', (country, region) => {
  expect(differences(country, region)).toEqual(KNOWN[region === undefined ? country : `${country}-${region}`] ?? []);
});

/** Where the rows and the package differ, and why. */
const KNOWN: Readonly<Record<string, readonly string[]>> = {
  // The package has Easter Monday in Ontario, which is none of the nine public holidays of its Employment Standards Act.
  'CA-ON': [
    '-2024-04-01',
    '-2025-04-21',
    '-2026-04-06',
    '-2027-03-29',
    '-2028-04-17',
    '-2029-04-02',
    '-2030-04-22',
    '-2031-04-14',
    '-2032-03-29',
    '-2033-04-18',
    '-2034-04-10',
    '-2035-03-26',
  ],
  // British Columbia keeps 30 September since 2023; the package has it for the public service alone.
  'CA-BC': ['2024', '2025', '2026', '2027', '2028', '2030', '2031', '2032', '2033', '2034'].map((year) => `+${year}-09-30`),
  // Saint Brigid's Day is the first Monday of February, but the 1st where that is a Friday: no row says so.
  IE: ['-2030-02-01', '+2030-02-04'],
  // Days of one year alone.
  'DE-BE': ['-2025-05-08', '-2028-06-17'],
};
