// Draws and shapes against closed forms: moments of the triangular and the beta distribution, a beta whose distribution
// function is a polynomial, and dice that are fair.
import { describe, expect, test } from 'vitest';
import { drawOf, thingOf } from '#schedule/risk/draws';
import { quantile, quantilesOf, type Shape } from '#schedule/risk/shapes';

/** Mean and variance of what the table gives, over draws spread evenly. */
function moments(shape: Shape, mode: number, count = 200_000): readonly [mean: number, variance: number] {
  const table = quantilesOf(shape, mode);
  let [sum, squares] = [0, 0];
  for (let at = 0; at < count; at++) {
    const value = quantile(table, (at + 0.5) / count);
    sum += value;
    squares += value * value;
  }
  const mean = sum / count;
  return [mean, squares / count - mean * mean];
}

const MODES = [0, 0.05, 0.25, 1 / 3, 0.5, 0.8, 1];

test.each(MODES)('triangular with its mode at %d: mean (a + m + b) ÷ 3, variance (a² + m² + b² − am − ab − bm) ÷ 18', (mode) => {
  const [mean, variance] = moments('triangular', mode);
  expect(mean).toBeCloseTo((1 + mode) / 3, 4);
  expect(variance).toBeCloseTo((1 + mode * mode - mode) / 18, 5);
});

test.each(MODES)('beta-PERT with its mode at %d: mean (a + 4m + b) ÷ 6, variance (mean − a)(b − mean) ÷ 7', (mode) => {
  const [mean, variance] = moments('beta-pert', mode);
  const expected = (1 + 4 * mode) / 6;
  expect(mean).toBeCloseTo(expected, 4);
  expect(variance).toBeCloseTo((expected * (1 - expected)) / 7, 4);
});

test('beta(3, 3), the mode in the middle: its distribution function is 10x³ − 15x⁴ + 6x⁵', () => {
  const table = quantilesOf('beta-pert', 0.5);
  for (const chance of [0.01, 0.1, 0.25, 0.5, 0.8, 0.95, 0.999]) {
    const x = quantile(table, chance);
    expect(10 * x * x * x - 15 * x * x * x * x + 6 * x * x * x * x * x).toBeCloseTo(chance, 5);
  }
});

test('beta(1, 5), the mode at the least: 1 − (1 − x)⁵', () => {
  const table = quantilesOf('beta-pert', 0);
  for (const chance of [0.01, 0.2, 0.5, 0.9, 0.99]) expect(1 - (1 - quantile(table, chance)) ** 5).toBeCloseTo(chance, 5);
});

describe('dice', () => {
  test('are even: 200,000 throws into 100 boxes, chi-squared below its 99.9 % point of 148.2 for 99', () => {
    const boxes = new Array<number>(100).fill(0);
    for (let run = 0; run < 200_000; run++) boxes[Math.floor(drawOf(7, run, thingOf('length of dig')) * 100)]!++;
    const chi = boxes.reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0);
    expect(chi).toBeLessThan(148.2);
  });

  test('two things of one run, and two runs of one thing, have nothing to do with each other', () => {
    const pairs = (first: (run: number) => number, second: (run: number) => number): number => {
      let sum = 0;
      for (let run = 0; run < 100_000; run++) sum += (first(run) - 0.5) * (second(run) - 0.5);
      return sum / 100_000 / (1 / 12);
    };
    const [a, b] = [thingOf('length of a'), thingOf('length of b')];
    // The standard error of a correlation of 100,000 pairs is 0.003.
    expect(
      Math.abs(
        pairs(
          (run) => drawOf(1, run, a),
          (run) => drawOf(1, run, b),
        ),
      ),
    ).toBeLessThan(0.013);
    expect(
      Math.abs(
        pairs(
          (run) => drawOf(1, run, a),
          (run) => drawOf(1, run + 1, a),
        ),
      ),
    ).toBeLessThan(0.013);
    expect(
      Math.abs(
        pairs(
          (run) => drawOf(1, run, a),
          (run) => drawOf(2, run, a),
        ),
      ),
    ).toBeLessThan(0.013);
  });

  test('the same seed, run and thing give the same number, as written down', () => {
    expect([drawOf(1, 0, 0), drawOf(1, 1, 0), drawOf(2, 0, 5)]).toMatchInlineSnapshot(`
      [
        0.15575287712272257,
        0.13730842538643628,
        0.5435252623865381,
      ]
    `);
  });
});
