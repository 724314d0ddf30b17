// Rain that is forecast for days of outside work, or before it is dry.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/too-wet';
const plan = (said: string): string => `plan p
  start 2027-06-14
  forecast ${said}
trade painting crew of 2
trade drywall crew of 3
task coat-outside does paint-outside takes 2d by painting
task board does hang-board takes 5d by drywall
`;

test('on a day of work, outside only', () => {
  const wet = checked(plan('2027-06-15 rain'));
  expect(wet.messages(CODE)).toEqual([
    '"coat-outside": rain is forecast for 15 Jun, and "Paint outside" is not done in rain. Plan work inside for that day; when the day is lost, write it in the diary ("rain"), and the dates follow.',
  ]);
});

test('the day after, while it is not dry; two days after, it is', () => {
  expect(checked(plan('2027-06-16 54 F, rain, wind 10 mph')).messages(CODE)).toEqual([
    '"coat-outside": rain is forecast for 16 Jun, when "Paint outside" is not yet dry: rain spoils it. Move it, or cover it.',
  ]);
  expect(checked(plan('2027-06-17 rain')).messages(CODE)).toEqual([]);
});

test('a forecast without rain, and a weekend within the work', () => {
  expect(checked(plan('2027-06-15 54 F')).messages(CODE)).toEqual([]);
  const overWeekend = plan('2027-06-19..2027-06-20 rain').replace('takes 2d', 'takes 7d');
  expect(checked(overWeekend).messages(CODE)).toEqual([]);
});

test('each of several days is told', () => {
  expect(checked(plan('2027-06-14..2027-06-15 rain')).messages(CODE)[0]).toContain(
    'rain is forecast for 14 Jun and 15 Jun, and "Paint outside" is not done in rain. Plan work inside for those days;',
  );
});
