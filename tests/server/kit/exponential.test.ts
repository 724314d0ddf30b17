// Exponential and logarithm by series, against values of Abramowitz and Stegun, Handbook of Mathematical Functions, tables 4.2
// and 4.4 (from memory), and against each other.
import { expect, test } from 'vitest';
import { exponential, logarithm } from '#kit/exponential';

test.each([
  [0, 1],
  [1, Math.E],
  [-1, 0.36787944117144233],
  [0.1, 1.1051709180756477],
  [10, 22026.465794806718],
])('e to the %d', (power, value) => {
  expect(exponential(power) / value).toBeCloseTo(1, 14);
});

test.each([
  [1, 0],
  [2, Math.LN2],
  [10, Math.LN10],
  [0.5, -Math.LN2],
])('ln %d', (value, power) => {
  expect(logarithm(value)).toBeCloseTo(power, 14);
});

test('they undo each other; there is no logarithm of nothing', () => {
  for (let power = -30; power <= 30; power += 0.7) expect(logarithm(exponential(power))).toBeCloseTo(power, 12);
  expect(logarithm(0)).toBeNaN();
  expect(logarithm(-1)).toBeNaN();
});
