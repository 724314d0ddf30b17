// Working-day questions with published answers, asked of a Monday-to-Friday calendar.
import { expect, test } from 'vitest';
import { dayOfFinish, dayOfStart, isoDate, readIsoDate, shortDate } from '#kit/dates';
import { advance, calendar, nextWork, previousWork, retreat, workBetween } from '#schedule/calendar';
import { holidayDays } from '#schedule/holidays';

const DAY = 480;
const SHIFT = [[480, 960]] as const;
const day = (text: string): number => readIsoDate(text)!;

function weekdays(...closed: readonly string[]) {
  const shifts = [0, 1, 2, 3, 4, 5, 6].map((number) => (number < 5 ? SHIFT : []));
  return calendar(
    { shifts },
    closed.map((text) => [day(text), day(text)] as const),
    day('2006-01-01'),
    day('2006-12-31'),
  );
}

/** Working days from one date to another, both included. */
function workingDays(from: string, to: string, ...closed: readonly string[]): number {
  return workBetween(weekdays(...closed), day(from) * 1440, (day(to) + 1) * 1440) / DAY;
}

/** The last of `count` working days that follow a date. */
function daysAfter(date: string, count: number, ...closed: readonly string[]): string {
  return isoDate(dayOfFinish(advance(weekdays(...closed), (day(date) + 1) * 1440, count * DAY)));
}

test('excel-formulas.blogspot.com, May 2009: working days from 2009-01-01 to 2009-01-08', () => {
  expect(workingDays('2009-01-01', '2009-01-08')).toBe(6);
  expect(workingDays('2009-01-01', '2009-01-08', '2009-01-01', '2009-01-02')).toBe(4);
  expect(daysAfter('2009-01-01', 6)).toBe('2009-01-09');
});

test('jabsto.com, Excel 2013 tutorial: working days from 2014-01-15 to 2014-06-30', () => {
  expect(workingDays('2014-01-15', '2014-06-30')).toBe(119);
});

test('a spreadsheet manual, p. 61: 20 working days after 2009-11-01 with 11 and 26 November off', () => {
  expect(daysAfter('2009-11-01', 20, '2009-11-11', '2009-11-26')).toBe('2009-12-01');
});

test('a spreadsheet’s built-in help (from memory): 151 working days after 2008-10-01', () => {
  expect(daysAfter('2008-10-01', 151)).toBe('2009-04-30');
  expect(daysAfter('2008-10-01', 151, '2008-11-26', '2008-12-04', '2009-01-21')).toBe('2009-05-05');
});

test('a spreadsheet’s built-in help (from memory): working days from 2012-10-01 to 2013-03-01', () => {
  expect(workingDays('2012-10-01', '2013-03-01')).toBe(110);
  expect(workingDays('2012-10-01', '2013-03-01', '2012-11-22')).toBe(109);
  expect(workingDays('2012-10-01', '2013-03-01', '2012-11-22', '2012-12-04', '2013-01-21')).toBe(107);
});

test('numpy documentation, busday_offset: days rolled forward and backward', () => {
  const works = weekdays();
  const forward = (text: string): string => isoDate(dayOfStart(nextWork(works, day(text) * 1440)));
  expect(forward('2011-10-01')).toBe('2011-10-03');
  expect(isoDate(dayOfFinish(previousWork(works, day('2012-03-01') * 1440)))).toBe('2012-02-29');
  expect([forward('2011-03-20'), forward('2011-03-22')]).toEqual(['2011-03-21', '2011-03-22']);
  expect([daysAfter('2011-03-20', 1), daysAfter('2011-03-22', 1)]).toEqual(['2011-03-21', '2011-03-23']);
  expect(isoDate(dayOfStart(retreat(works, day('2012-03-01') * 1440, DAY)))).toBe('2012-02-29');
});

test('numpy documentation, busday_offset with a week mask: the third Wednesday of January 2011, the second Sunday of May 2012', () => {
  expect(holidayDays({ kind: 'nth', nth: 3, weekday: 2, month: 1 }, 2011, 2011).map(shortDate)).toEqual(['Wed 19 Jan 2011']);
  expect(holidayDays({ kind: 'nth', nth: 2, weekday: 6, month: 5 }, 2012, 2012).map(shortDate)).toEqual(['Sun 13 May 2012']);
});

test('cnx.org module m37250 prints "7-Feb-06" for 10 working days after 2010-01-25: wrong, it is 2010-02-08', () => {
  expect(daysAfter('2010-01-25', 10)).toBe('2010-02-08');
});
