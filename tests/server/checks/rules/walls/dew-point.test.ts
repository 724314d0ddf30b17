// Walls screened by the dew-point method. The two walls are those of Journal of Light Construction, Where Does the Dew Drop:
// 70 degrees and 50 percent indoors (dew point about 50), 32 outdoors on average; R-7 of R-18 outside of the framing is at 47
// degrees and condenses, R-14 of R-25 at 53 and does not.
import { describe, expect, test } from 'vitest';
import { constant } from '#kit/quantity';
import { toBase } from '#kit/units';
import { dewPoint, screenedWall } from '#takeoff/heat/dew-point';
import { amount } from '#tests/support/amounts';
import { checked } from '#tests/support/checked';

const CODE = 'walls/dew-point';
/** R-11 between the studs and at the inner face, the rest outside; air films (0.17 and 0.68) are part of both. */
const house = (outside: number, plan = '  indoors 70 F, 50% humidity\n  outdoors 5 F, 32 F on average\n') => `plan p
  units feet
${plan}material fill laid batts
  insulates R-${11 - 0.68}
material sheath "Sheathing" laid sheets
  insulates R-${outside - 0.17}
assembly outer "Outside wall" for wall
  layer stud 2x4 at 16" oc, filled with fill
  layer sheath
level main
  footprint 20' x 24'
  walls outer
`;
const screened = (text: string) => {
  const { model } = checked({ 'plan.screed': text }).plan;
  return screenedWall(model.list('level')[0]!.given.walls!.value, model)!;
};

describe('as published', () => {
  test('wall A, 7 of 18: 47 degrees, condensation likely', () => {
    const { face, dew } = screened(house(7));
    expect(Math.round(amount(face, 'F'))).toBe(47);
    expect(amount(dew, 'F')).toBeCloseTo(50.5, 1);
    const { messages, told } = checked({ 'plan.screed': house(7) });
    expect(messages(CODE)[0]).toMatch(
      /^In "Outside wall" the inner face of "Sheathing" is at 46\.8 F on average in the coldest months, below 50\.5 F, /,
    );
    expect(told.filter((line) => line.includes(CODE))).toEqual([`note ${CODE} main`]);
  });
  test('wall B, 14 of 25: 53 degrees, safe', () => {
    expect(Math.round(amount(screened(house(14)).face, 'F'))).toBe(53);
    expect(checked({ 'plan.screed': house(14) }).messages(CODE)).toEqual([]);
  });
});

test('dew points from saturation pressures of 2,337 Pa at 20 degrees and 1,169 at 9.3 (ISO 13788 formulas, from memory)', () => {
  const at = (celsius: number, share: number) =>
    dewPoint(constant('indoors', celsius, 'temperature'), constant('humidity', share, 'number')).value;
  expect(at(20, 0.5)).toBeCloseTo(9.27, 2);
  expect(at(20, 1)).toBeCloseTo(20, 9);
  expect(at((70 - 32) / 1.8, 0.5)).toBeCloseTo(toBase(50.5, 'F')!, 1);
});

describe('silent', () => {
  test.each([
    ['where the plan gives no humidity', house(7, '  indoors 70 F\n  outdoors 5 F, 32 F on average\n')],
    ['where it gives no average', house(7, '  indoors 70 F, 50% humidity\n  outdoors 5 F\n')],
    ['where nothing fills the framing', house(7).replace(', filled with fill', '')],
    ['where the filling tells no R', house(7).replace(/ {2}insulates R-10.*\n/, '')],
    ['of a basement', house(7).replace('level main', 'level main basement')],
  ])('%s', (_, text) => {
    expect(checked({ 'plan.screed': text }).messages(CODE)).toEqual([]);
  });
});
