// Concrete in the cold: what the forecast and the usual lows of a month say of the days on which it is poured and young.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/too-cold';
const plan = (said: string, work = '', units = ''): string => `plan p
  start 2027-11-22
${units}  ${said}
trade concrete crew of 3
trade painting crew of 2
${work}task footings does pour-footings takes 1d by concrete${work === '' ? '' : ' after blankets'}
`;
const COVER = 'task blankets does ready-cold-cover takes 2h by concrete\n';

// American Concrete Institute, ACI 306R: cold weather is air below 40 F during the time of protection; concrete is kept from
// freezing until it has 500 psi, which takes a day or two.
test('frost by the forecast, the day after the pour', () => {
  const frozen = checked(plan('forecast 2027-11-23 19 F'));
  expect(frozen.messages(CODE)).toEqual([
    '"footings": on 23 Nov, by the forecast, the low is 19 F, and "Pour the footings" is not done, nor left young, below 40 F: what is done too cold freezes, does not set or does not hold. Have "ready-cold-cover" before it, or move it to warmer days.',
  ]);
  expect(frozen.loud.filter((line) => line.startsWith(`error ${CODE}`))).toHaveLength(1);
});

test('with blankets before it, or past the two days', () => {
  expect(checked(plan('forecast 2027-11-23 19 F', COVER)).messages(CODE)).toEqual([]);
  expect(checked(plan('forecast 2027-11-27 19 F')).messages(CODE)).toEqual([]);
});

test('a cold month warns, a forecast of warmer nights answers it, 40 F itself is warm enough', () => {
  const usual = checked(plan('lows nov 30 F'));
  expect(usual.messages(CODE)).toEqual([
    '"footings": on 22 Nov, in a usual November, the low is 30 F, and "Pour the footings" is not done, nor left young, below 40 F: what is done too cold freezes, does not set or does not hold. Have "ready-cold-cover" before it, or move it to warmer days.',
  ]);
  expect(usual.loud.filter((line) => line.startsWith(`warning ${CODE}`))).toHaveLength(1);
  expect(checked(plan('lows nov 30 F\n  forecast 2027-11-22..2027-11-26 44 F')).messages(CODE)).toEqual([]);
  expect(checked(plan('lows nov 40 F')).messages(CODE)).toEqual([]);
});

test('silent where the plan says nothing of cold', () => {
  expect(checked(plan('code irc-2021')).messages(CODE)).toEqual([]);
});

test('metric', () => {
  expect(checked(plan('lows nov -3 C', '', '  units mm\n')).messages(CODE)[0]).toContain('the low is -3 C');
});

test('the lows of a climate count where the plan says none of its own', () => {
  const told = checked(plan('climate cold-inland')).messages(CODE);
  expect(told[0]).toContain('in a usual November, the low is 28 F');
  expect(checked(plan('climate cold-inland\n  lows nov 44 F')).messages(CODE)).toEqual([]);
});

test('the first day that is too cold is told beside the coldest', () => {
  // Painted from Monday 29 November to Wednesday 1 December: 35 F in the one month, 20 F in the other.
  const text = plan('lows nov 35 F, dec 20 F').replace(
    /task footings.*/,
    'task coat does paint-outside takes 3d by painting, not before 2027-11-29',
  );
  expect(checked(text).messages(CODE)[0]).toContain(
    'on 1 Dec, in a usual December, the low is 20 F (and 35 F already on 29 Nov), and',
  );
});
