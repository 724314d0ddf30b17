// Shapes in bands: by hand, and that bands cover whatever they are laid on.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bandsOf, turned } from '#kit/shapes/bands';
import { area } from '#kit/shapes/outline';

const shape = (...points: readonly (readonly [number, number])[]) => points.map(([x, y]) => ({ x, y }));

test('a triangle of 28 by 7: upright by 4 it steps 2, 4, 6, 7, 6, 4, 2', () => {
  const gable = shape([0, 0], [28, 0], [14, 7]);
  expect(bandsOf(turned([gable]), 4).map(({ depth, reaches: [[from, to] = [0, 0]] }) => [depth, to - from])).toEqual([
    [4, 2],
    [4, 4],
    [4, 6],
    [4, 7],
    [4, 6],
    [4, 4],
    [4, 2],
  ]);
});

test('a shape with two arms has two pieces in a band, shapes side by side are one', () => {
  const fork = shape([0, 0], [10, 0], [10, 8], [7, 8], [7, 4], [3, 4], [3, 8], [0, 8]);
  expect(bandsOf([fork], 4).map(({ reaches }) => reaches)).toEqual([
    [[0, 10]],
    [
      [0, 3],
      [7, 10],
    ],
  ]);
  const halves = [shape([0, 0], [5, 0], [5, 4], [0, 4]), shape([5, 0], [9, 0], [9, 4], [5, 4])];
  expect(bandsOf(halves, 4)).toEqual([{ depth: 4, reaches: [[0, 9]] }]);
});

test('no band: nothing to lie on, or no depth', () => {
  expect(bandsOf([], 4)).toEqual([]);
  expect(bandsOf([shape([0, 0], [4, 0], [4, 4])], 0)).toEqual([]);
});

test('bands cover at least the area, whatever the shape', () => {
  const radius = fc.integer({ min: 10, max: 400 });
  fc.assert(
    fc.property(fc.array(radius, { minLength: 3, maxLength: 9 }), fc.integer({ min: 5, max: 96 }), (radii, depth) => {
      const outline = radii.map((far, at) => ({
        x: far * Math.cos((2 * Math.PI * at) / radii.length),
        y: far * Math.sin((2 * Math.PI * at) / radii.length),
      }));
      const covered = bandsOf([outline], depth)
        .flatMap((band) => band.reaches.map(([from, to]) => band.depth * (to - from)))
        .reduce((sum, each) => sum + each, 0);
      expect(covered).toBeGreaterThanOrEqual(Math.abs(area(outline)) * (1 - 1e-9));
    }),
    { numRuns: 200 },
  );
});
