// Which days a holiday rule names. The rules themselves are rows of the library; nothing here knows a country.
import { dayOf, daysInMonth, weekday } from '#kit/dates';

export type HolidayRule =
  | {
      readonly kind: 'fixed';
      /** 1 to 12. */
      readonly month: number;
      readonly day: number;
      /** On which weekday a date on a weekend is also kept: the nearest, the Monday after, or two days later. */
      readonly observed: 'nearest-weekday' | 'next-monday' | 'two-days-later' | 'none';
    }
  | {
      readonly kind: 'easter';
      /** Days after Easter Sunday; below zero before it. */
      readonly offset: number;
    }
  | {
      /** The first such weekday after a date, or the last before it. */
      readonly kind: 'beside';
      readonly side: 'before' | 'after';
      /** 0 for Monday. */
      readonly weekday: number;
      /** 1 to 12. */
      readonly month: number;
      readonly day: number;
    }
  | {
      readonly kind: 'nth';
      readonly nth: 1 | 2 | 3 | 4 | 5 | 'last';
      /** 0 for Monday. */
      readonly weekday: number;
      /** 1 to 12. */
      readonly month: number;
    };

/**
 * The days a rule names from the first day of `fromYear` to the last of `toYear`, ascending. A holiday that is also kept
 * on a weekday gives both days; that weekday may lie in the year before (New Year's Day on a Saturday).
 */
export function holidayDays(rule: HolidayRule, fromYear: number, toYear: number): number[] {
  const first = dayOf(fromYear, 1, 1);
  const last = dayOf(toYear, 12, 31);
  const days: number[] = [];
  for (let year = fromYear - 1; year <= toYear + 1; year++) days.push(...daysOfYear(rule, year));
  return days.filter((day) => day >= first && day <= last).sort((a, b) => a - b);
}

function daysOfYear(rule: HolidayRule, year: number): readonly number[] {
  if (rule.kind !== 'easter' && (rule.month < 1 || rule.month > 12)) return [];
  switch (rule.kind) {
    case 'easter':
      return [easterSunday(year) + rule.offset];
    case 'beside': {
      const day = dayOf(year, rule.month, rule.day);
      const ahead = (rule.weekday - weekday(day) + 7) % 7;
      if (rule.side === 'after') return [day + (ahead === 0 ? 7 : ahead)];
      return [day + ahead - 7];
    }
    case 'fixed': {
      // 29 February is no day in most years.
      if (rule.day < 1 || rule.day > daysInMonth(year, rule.month)) return [];
      const day = dayOf(year, rule.month, rule.day);
      const shift = shiftOf(rule.observed, weekday(day));
      return shift === 0 ? [day] : [day, day + shift];
    }
    case 'nth': {
      const length = daysInMonth(year, rule.month);
      const first = dayOf(year, rule.month, 1);
      const offset = (rule.weekday - weekday(first) + 7) % 7;
      const number = rule.nth === 'last' ? Math.floor((length - 1 - offset) / 7) : rule.nth - 1;
      return offset + number * 7 < length ? [first + offset + number * 7] : [];
    }
  }
}

const SATURDAY = 5;
const SUNDAY = 6;

function shiftOf(observed: Extract<HolidayRule, { kind: 'fixed' }>['observed'], on: number): number {
  if (observed === 'none' || on < SATURDAY) return 0;
  switch (observed) {
    case 'nearest-weekday':
      return on === SUNDAY ? 1 : -1;
    case 'next-monday':
      return on === SUNDAY ? 1 : 2;
    case 'two-days-later':
      return 2;
  }
}

/** Easter Sunday of the Gregorian calendar ("A New York correspondent", Nature, 20 April 1876; the anonymous algorithm). */
export function easterSunday(year: number): number {
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const g = Math.floor((8 * b + 13) / 25);
  const h = (19 * a + b - Math.floor(b / 4) - g + 15) % 30;
  const l = (32 + 2 * (b % 4) + 2 * Math.floor(c / 4) - h - (c % 4)) % 7;
  const m = Math.floor((a + 11 * h + 19 * l) / 433);
  const month = Math.floor((h + l - 7 * m + 90) / 25);
  return dayOf(year, month, (h + l - 7 * m + 33 * month + 19) % 32);
}
