// Wind that is forecast for days of work that does not bear it.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/too-windy';
const plan = (said: string, more = ''): string => `plan p
  start 2027-06-14
${more}  forecast ${said}
trade framing crew of 4
task trusses does set-trusses takes 2d by framing
task joists does frame-floor takes 1d by framing
`;

test('more wind than the row bears', () => {
  const windy = checked(plan('2027-06-15 wind 35 mph'));
  expect(windy.messages(CODE)).toEqual([
    'Falls and flying sheets: wind of 35 mph is forecast for 15 Jun, when "trusses" is under way, and "Set trusses" is not done in more than 20 mph. Wait for a calmer day, and tie down what lies loose. The crane operator, the makers of panels and trusses, and local rules decide.',
  ]);
  expect(windy.loud.filter((line) => line.includes(CODE))).toEqual([`warning ${CODE} trusses`]);
});

test('just as much is borne; another day does not matter', () => {
  expect(checked(plan('2027-06-15 wind 20 mph')).messages(CODE)).toEqual([]);
  expect(checked(plan('2027-06-16 wind 35 mph')).messages(CODE)).toEqual([]);
});

test('in kilometres an hour; a plan may give the work a limit of its own', () => {
  expect(checked(plan('2027-06-15 wind 40 km/h', '  units metric\n')).messages(CODE)[0]).toMatch(
    /wind of 40 km\/h .* not done in more than 32(\.\d+)? km\/h/,
  );
  const own = `${plan('2027-06-15 wind 35 mph')}work set-trusses\n  wind under 40 mph\n`;
  expect(checked(own).messages(CODE)).toEqual([]);
});
