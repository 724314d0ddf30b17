// How an answer writes numbers: days of the plan's own hours, the plan's currency, the plan's units, ratios.
import { expect, test } from 'vitest';
import { spareText } from '#answers/schedule-table';
import { type Style, write, writeDays, writeMoney } from '#answers/view';
import { FOOT, INCH, METRE } from '#kit/dimension';

const feet: Style = { system: 'feet', currency: 'USD', minutesPerDay: 480, daysPerWeek: 5 };
const metric: Style = { system: 'metric', currency: 'EUR', minutesPerDay: 540, daysPerWeek: 4 };

test.each([
  [480, '1d'],
  [1536, '3.2d'],
  [30, '0.5 h'],
  [0, '0d'],
])('%s working minutes of an eight-hour day: %s', (minutes, text) => {
  expect(writeDays(minutes, feet)).toBe(text);
});

test('a day is a day of the plan, a week has its working days', () => {
  expect(write({ value: 3 * 540, dimension: 'time', unit: 'd' }, metric)).toBe('3d');
  expect(write({ value: 2 * 4 * 540, dimension: 'time', unit: 'w' }, metric)).toBe('2w');
});

test('money is the plan’s', () => {
  expect(writeMoney(123456, feet)).toBe('$1,234.56');
  expect(write({ value: 123456, dimension: 'money' }, metric)).toBe('€1,234.56');
  expect(write({ value: 5800 / 60, dimension: 'money/time' }, { ...feet, currency: 'CHF' })).toBe('CHF 58.00/h');
  expect(write({ value: 5800 / 60, dimension: 'money/time', unit: '$/h' }, feet)).toBe('$58.00/h');
});

test('what a library row or a drawing gives in the other system is printed in the plan’s', () => {
  expect(write({ value: 12 * FOOT, dimension: 'length', unit: 'ft' }, feet)).toBe("12'");
  expect(write({ value: 10 * METRE, dimension: 'length', unit: 'ft' }, metric)).toBe('10 m');
  expect(write({ value: 8 * INCH, dimension: 'length', unit: 'in' }, feet)).toBe('8"');
});

test('little water in litres', () => {
  expect(write({ value: 0.0144 * METRE * METRE * METRE, dimension: 'volume' }, metric)).toBe('14.4 l');
  expect(write({ value: 1.5 * METRE * METRE * METRE, dimension: 'volume' }, metric)).toBe('1.5 m3');
});

test.each([
  [8 / 12, '8:12'],
  [1, '12:12'],
  [1.5, '1.5:1'],
  [1 / 50, '1:50'],
  [0, '0:12'],
])('the slope %s is written %s', (value, text) => {
  expect(write({ value, dimension: 'slope', unit: ':' }, feet)).toBe(text);
});

test.each([
  [0, 'none'],
  [1, 'none'],
  [-1, 'none'],
  [960, '2d'],
  [-240, '4 h late'],
])('%s minutes to spare: %s', (minutes, text) => expect(spareText(minutes, feet)).toBe(text));
