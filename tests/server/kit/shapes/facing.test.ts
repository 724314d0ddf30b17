// Gaps between shapes: which sides face each other, over what stretch.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allFacings, facings, sidesOf } from '#kit/shapes/facing';
import { area, perimeter } from '#kit/shapes/outline';
import { type Rectangle, rectangleAt } from '#kit/shapes/region';
import { randomOutline } from './random-outline.ts';

const room = rectangleAt({ x: 0, y: 0 }, 10, 10);

describe('two rectangles', () => {
  test.each<[string, Rectangle, readonly unknown[]]>([
    ['east of it, a wall between', rectangleAt({ x: 12, y: 4 }, 5, 20), [{ looks: 'east', at: 10, from: 4, to: 10, gap: 2 }]],
    ['north of it, touching', rectangleAt({ x: -5, y: 10 }, 8, 5), [{ looks: 'north', at: 10, from: 0, to: 3, gap: 0 }]],
    ['west of it', rectangleAt({ x: -8, y: 2 }, 5, 2), [{ looks: 'west', at: 0, from: 2, to: 4, gap: 3 }]],
    ['south of it', rectangleAt({ x: 1, y: -9 }, 5, 8), [{ looks: 'south', at: 0, from: 1, to: 6, gap: 1 }]],
    ['at its corner', rectangleAt({ x: 10, y: 10 }, 5, 5), []],
    ['over it', rectangleAt({ x: 5, y: 5 }, 10, 10), []],
    ['within it', rectangleAt({ x: 2, y: 2 }, 2, 2), []],
  ])('%s', (_, other, expected) => {
    expect(facings(room, other)).toEqual(expected);
  });

  test('no further than asked', () => {
    expect(facings(room, rectangleAt({ x: 12, y: 0 }, 5, 5), 1)).toEqual([]);
    expect(facings(room, rectangleAt({ x: 12, y: 0 }, 5, 5), 2)).toHaveLength(1);
  });
});

test('an L faces what stands in its bay on two sides', () => {
  const ell = [
    { x: 0, y: 0 },
    { x: 20, y: 0 },
    { x: 20, y: 5 },
    { x: 8, y: 5 },
    { x: 8, y: 15 },
    { x: 0, y: 15 },
  ];
  expect(facings(ell, rectangleAt({ x: 10, y: 6 }, 5, 5))).toEqual([
    { looks: 'north', at: 5, from: 10, to: 15, gap: 1 },
    { looks: 'east', at: 8, from: 6, to: 11, gap: 2 },
  ]);
});

test('among many: every pair once, as by comparing all with all', () => {
  const rectangle = fc
    .tuple(
      fc.integer({ min: 0, max: 60 }),
      fc.integer({ min: 0, max: 60 }),
      fc.integer({ min: 1, max: 20 }),
      fc.integer({ min: 1, max: 20 }),
    )
    .map(([x, y, width, depth]) => rectangleAt({ x, y }, width, depth));
  fc.assert(
    fc.property(fc.array(rectangle, { maxLength: 15 }), fc.nat(10), (rectangles, reach) => {
      const expected = rectangles.flatMap((one, first) =>
        rectangles.flatMap((other, second) =>
          first < second ? facings(one, other, reach).map((facing) => ({ ...facing, first, second })) : [],
        ),
      );
      expect(allFacings(rectangles, reach)).toEqual(expected);
    }),
  );
});

test('the sides of any outline are its perimeter, and their faces give its area', () => {
  fc.assert(
    fc.property(randomOutline, (outline) => {
      const sides = sidesOf(outline);
      expect(sides.reduce((sum, { from, to }) => sum + (to - from), 0)).toBe(perimeter(outline));
      const signed = sides.reduce(
        (sum, { looks, at, from, to }) => sum + (looks === 'east' ? at : looks === 'west' ? -at : 0) * (to - from),
        0,
      );
      expect(signed).toBe(area(outline));
    }),
  );
});
