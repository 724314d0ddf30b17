// Areas of several outlines together. The referee is the npm package polygon-clipping (Martinez–Rueda clipping),
// which shares nothing with our sweep.
import * as fc from 'fast-check';
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { area, contains, type Outline } from '#kit/shapes/outline';
import {
  boundsOf,
  differenceArea,
  holds,
  overlapArea,
  overlaps,
  type Rectangle,
  rectangleAt,
  rectanglesOf,
  regionContains,
  sharedArea,
  unionArea,
} from '#kit/shapes/region';
import { randomOutline } from './random-outline.ts';

describe('by hand', () => {
  const living: Rectangle = rectangleAt({ x: 0, y: 0 }, 16, 12);
  const bath: Rectangle = rectangleAt({ x: 14, y: 10 }, 6, 8);

  test('two rectangles that overlap', () => {
    expect(unionArea([living, bath])).toBe(192 + 48 - 4);
    expect(overlapArea([living, bath])).toBe(4);
    expect(sharedArea([living], [bath])).toBe(4);
    expect(differenceArea([living], [bath])).toBe(188);
    expect(overlaps([living, bath, rectangleAt({ x: 16, y: 0 }, 4, 10)])).toEqual([{ first: 0, second: 1, area: 4 }]);
  });

  test('three on one spot count twice only once; touching is no overlap', () => {
    expect(overlapArea([living, living, living])).toBe(192);
    expect(overlapArea([living, rectangleAt({ x: 16, y: 0 }, 4, 12)])).toBe(0);
    expect(overlapArea([])).toBe(0);
    expect(unionArea([rectangleAt({ x: 3, y: 3 }, 0, 5)])).toBe(0);
  });

  test('one within another', () => {
    expect(holds(living, rectangleAt({ x: 0, y: 0 }, 4, 4))).toBe(true);
    expect(holds(living, bath)).toBe(false);
    expect(regionContains(living, { x: 16, y: 12 })).toBe(true);
    expect(regionContains(living, { x: 17, y: 12 })).toBe(false);
  });
});

describe('against polygon-clipping', () => {
  const set = fc.array(randomOutline, { minLength: 1, maxLength: 4 });

  test('union, difference, and what two sets share', () => {
    fc.assert(
      fc.property(set, set, (first, second) => {
        const [a, b] = [merged(first), merged(second)];
        expect(unionArea(first)).toBe(areaOf(a));
        expect(differenceArea(first, second)).toBe(areaOf(polygonClipping.difference(a, b)));
        expect(sharedArea(first, second)).toBe(areaOf(polygonClipping.intersection(a, b)));
      }),
      { numRuns: 300 },
    );
  });

  test('covered twice: every pair shared, then united', () => {
    fc.assert(
      fc.property(set, (outlines) => {
        const shared = outlines.flatMap((one, index) =>
          outlines.slice(index + 1).map((other) => polygonClipping.intersection(polygon(one), polygon(other))),
        );
        const twice = shared.length === 0 ? [] : polygonClipping.union(shared[0]!, ...shared.slice(1));
        expect(overlapArea(outlines)).toBe(areaOf(twice));
        const pairs = overlaps(outlines);
        expect(pairs.map((pair) => pair.area)).toEqual(shared.map(areaOf).filter((size) => size > 0));
      }),
    );
  });
});

test('an outline in rectangles is the outline', () => {
  fc.assert(
    fc.property(randomOutline, fc.integer({ min: -100, max: 200 }), fc.integer({ min: -100, max: 200 }), (outline, x, y) => {
      const pieces = rectanglesOf(outline);
      expect(pieces.reduce((sum, { west, east, south, north }) => sum + (east - west) * (north - south), 0)).toBe(area(outline));
      expect(unionArea(pieces)).toBe(area(outline));
      expect(overlapArea(pieces)).toBe(0);
      expect(holds(boundsOf(outline), outline)).toBe(true);
      const point = { x: x / 2, y: y / 2 };
      expect(pieces.some((piece) => regionContains(piece, point))).toBe(contains(outline, point));
    }),
  );
});

function polygon(outline: Outline): Polygon {
  return [outline.map(({ x, y }) => [x, y])];
}

function merged(outlines: readonly Outline[]): MultiPolygon {
  const [first, ...rest] = outlines.map(polygon);
  return polygonClipping.union(first!, ...rest);
}

/** Outer rings less the holes in them, exactly: all corners are whole numbers. */
function areaOf(polygons: MultiPolygon): number {
  return polygons.flat().reduce((sum, ring, index, rings) => sum + (isHole(polygons, rings, index) ? -1 : 1) * ringArea(ring), 0);
}

function isHole(polygons: MultiPolygon, rings: MultiPolygon[number], index: number): boolean {
  return !polygons.some((each) => each[0] === rings[index]);
}

function ringArea(ring: Polygon[number]): number {
  return area(ring.map(([x, y]) => ({ x, y })));
}
