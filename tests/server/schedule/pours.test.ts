// What comes by the truck is ordered pour by pour, each rounded up for itself; figures by hand.
import { expect, test } from 'vitest';
import { buyTable } from '#answers/buy-table';
import { countedLines, countedPurchases } from '#answers/takeoff-lines';
import { fromBase } from '#kit/units';
import { viewText } from '../answers/plans.ts';

/** Footing 100 ft of 16 in by 8 in: 88.9 cf; wall 100 ft less corners, 8 in by 4 ft. */
const house = (steps: string) => `plan p
  start 2027-03-01
level main
  footprint 30' x 20'
foundation under main
  footing 16" x 8"
  wall 8" x 48"
trade concrete crew of 3 at $58/h
${steps}`;
const pours = (steps: string) => {
  const view = viewText(house(steps));
  return countedPurchases(view, new Set(countedLines(view)))
    .filter(({ goods }) => goods.name === 'concrete')
    .map(({ pour, bought }) => `${pour?.label}: ${fromBase(bought.value, 'cy')?.toFixed(2)}`);
};

// Centre line 97.33 ft: footing 86.5 cf, 3.36 cy with 5 %; wall 259.6 cf, 10.09 cy.
test('by step, where steps pour; by kind of work, where none does', () => {
  expect(pours('')).toEqual(['Pour the footings: 3.50', 'Pour the walls: 10.25']);
  expect(pours('task low does pour-footings by concrete\ntask high does pour-stem-walls by concrete after low\n')).toEqual([
    'low: 3.50',
    'high: 10.25',
  ]);
});

test('what one step pours is one order', () =>
  expect(pours('task all does pour-footings, pour-stem-walls by concrete\n')).toEqual(['all: 13.50']));

test('the list says how many trucks', () => {
  const { rows } = buyTable(viewText(house('')));
  expect(rows.flat().filter((cell) => cell.includes(' cy in '))).toEqual(['3.5 cy in 1 truck, 10.25 cy in 2 trucks']);
});
