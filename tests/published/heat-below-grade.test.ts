// Heat from basements into the earth: average U-factors of walls and floors below grade, from memory: ASHRAE Handbook of
// Fundamentals, residential loads (after Latta and Boileau), soil of 0.8 Btu an hour for a foot and degree.
import { expect, test } from 'vitest';
import { envelopeOf } from '#takeoff/heat/envelope';
import { heatLossOf } from '#takeoff/heat/heat-loss';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const cellar = (deep: number, more = '', size = "20' x 40'") => `plan p
  units feet
  indoors 70 F
  outdoors 0 F
level cellar basement
  footprint ${size}
  height 8'
  ground ${deep}' above
foundation under cellar
  footing 16" x 8"
  wall 8" x 8'
${more}`;

/** UA of a part over its area, in Btu/h sf F. */
function conductance(text: string, label: string, area: number): number {
  const { model } = planOf(text, { library: 'built-in' });
  const part = envelopeOf(model.list('level')[0]!, model)!.parts.find(({ form }) => form.label === label);
  return amount(part!, 'Btu/hF') / area;
}

const WALLS: readonly (readonly [deep: number, bare: number, r5: number, r10: number, r15: number])[] = [
  [1, 0.432, 0.135, 0.08, 0.057],
  [2, 0.331, 0.121, 0.075, 0.054],
  [4, 0.235, 0.101, 0.066, 0.05],
  [8, 0.157, 0.078, 0.055, 0.043],
];
test.each(WALLS)('a wall %d feet in the earth: bare, R-5, R-10, R-15', (deep, ...printed) => {
  const insulated = ['', '  insulated R-5\n', '  insulated R-10\n', '  insulated R-15\n'];
  insulated.forEach((line, at) => {
    expect(conductance(cellar(deep, line), 'basement wall in the earth', 120 * deep)).toBeCloseTo(printed[at]!, 2.9);
  });
});

const FLOORS: readonly (readonly [deep: number, wide: number, u: number])[] = [
  [1, 20, 0.064],
  [4, 20, 0.042],
  [7, 20, 0.032],
  [4, 28, 0.035],
  [7, 32, 0.026],
];
test.each(FLOORS)('a floor %d feet down, %d feet wide', (deep, wide, u) =>
  expect(conductance(cellar(deep, '', `${wide}' x 40'`), 'basement floor', wide * 40)).toBeCloseTo(u, 2.9),
);

test('what stands above the ground meets the air; the earth is warmer where the plan says so', () => {
  const plain = cellar(6);
  expect(conductance(plain, 'basement wall above the ground', 120 * 2)).toBeCloseTo(1 / (1.47 + 0.17), 9);
  const warm = plain.replace('outdoors 0 F', 'outdoors 0 F, earth 35 F');
  const ratio = conductance(warm, 'basement floor', 800) / conductance(plain, 'basement floor', 800);
  expect(ratio).toBeCloseTo(0.5, 9);
  const { model } = planOf(plain, { library: 'built-in' });
  expect(heatLossOf(model.list('level')[0]!, model)!.without).toContain('warmth of the earth (taken as cold as the air)');
});
