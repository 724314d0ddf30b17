// Which days a holiday rule names. The rules themselves are rows of the library; nothing here knows a country.
import { dayOf, daysInMonth, weekday } from '#kit/dates';

export type HolidayRule =
  | {
      readonly kind: 'fixed';
      /** 1 to 12. */
      readonly month: number;
      readonly day: number;
      /** Whether a date on a weekend is also kept on the Friday before a Saturday or the Monday after a Sunday. */
      readonly observed: 'nearest-weekday' | 'none';
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
  if (rule.month < 1 || rule.month > 12) return [];
  switch (rule.kind) {
    case 'fixed': {
      // 29 February is no day in most years.
      if (rule.day < 1 || rule.day > daysInMonth(year, rule.month)) return [];
      const day = dayOf(year, rule.month, rule.day);
      if (rule.observed === 'none') return [day];
      const shift = weekday(day) === SATURDAY ? -1 : weekday(day) === SUNDAY ? 1 : 0;
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
