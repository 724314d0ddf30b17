// The largest rectangles of an outline: in no other rectangle of it, and together all of it.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { largestRectangles } from '#kit/shapes/largest-rectangles';
import { area } from '#kit/shapes/outline';
import { differenceArea, unionArea } from '#kit/shapes/region';
import { outlineFromWalk } from '#kit/shapes/walk';
import { randomOutline } from './random-outline.ts';

test('an L has its bar and its leg', () => {
  const outline = outlineFromWalk([
    { direction: 'east', length: 30 },
    { direction: 'north', length: 10 },
    { direction: 'west', length: 18 },
    { direction: 'north', length: 20 },
    { direction: 'west', length: 12 },
    { direction: 'south', length: 30 },
  ])!;
  expect(largestRectangles(outline)).toEqual([
    { west: 0, south: 0, east: 12, north: 30 },
    { west: 0, south: 0, east: 30, north: 10 },
  ]);
});

test('together they are the outline, and none lies in another', () => {
  fc.assert(
    fc.property(randomOutline, (outline) => {
      const all = largestRectangles(outline);
      expect(unionArea(all)).toBe(area(outline));
      expect(differenceArea(all, [outline])).toBe(0);
      for (const one of all)
        for (const other of all) if (one !== other) expect(differenceArea([one], [other])).toBeGreaterThan(0);
    }),
    { numRuns: 100, seed: 20261125 },
  );
});
