// Outlines with slanted sides: walked, moved, and areas of several together. The referee is the npm package polygon-clipping.
import * as fc from 'fast-check';
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { FOOT, INCH } from '#kit/dimension';
import { sidesLooking, slantedFacings } from '#kit/shapes/headings';
import { withEachMoved } from '#kit/shapes/moved-sides';
import { area, contains, corners, crossesItself, type Outline, perimeter, turnsOf } from '#kit/shapes/outline';
import { differenceArea, sharedArea, unionArea } from '#kit/shapes/region';
import { spansAcross } from '#kit/shapes/spans-across';
import { outlineFromWalk, type Step, stepsToClose } from '#kit/shapes/walk';
import { randomSlanted } from './random-slanted.ts';

const walk = (words: string): readonly Step[] =>
  words.split(', ').map((word) => {
    const [direction, feet] = word.split(' ');
    return { direction: direction as Step['direction'], length: Number(feet) * FOOT };
  });

describe('walked in eight directions', () => {
  // 3 ft back along both walls: a side of 3 x 1.41421 = 4.24264 ft, which a tape reads as 4 ft 2 15/16 in.
  const clipped = 'east 20, north 13, northwest 4.24479, west 17, south 16';

  test('a corner cut off: 20 by 16 ft less a triangle of 3 by 3, 317 - 1.5 sf', () => {
    const outline = outlineFromWalk(walk(clipped))!;
    expect(area(outline) / FOOT ** 2).toBeCloseTo(320 - 4.5, 9);
    expect(perimeter(outline) / FOOT).toBeCloseTo(20 + 13 + 3 * Math.sqrt(2) + 17 + 16, 3);
    expect(corners(outline)).toEqual({ outside: 5, inside: 0 });
    // Three square corners, and two that turn by 45 degrees: tangent of 22.5 is 0.41421.
    expect(turnsOf(outline)).toBeCloseTo(3 + 2 * 0.41421356, 6);
    expect(sidesLooking(outline).map(({ looks }) => looks)).toEqual(['east', 'northeast', 'north', 'west', 'south']);
  });

  test('what is more than an eighth of an inch short is told, and the slanted side takes up what is less', () => {
    expect(stepsToClose(walk(clipped))).toEqual([]);
    const [short] = stepsToClose(walk('east 20, north 13, northwest 4, west 17, south 16'));
    // 4 ft go 2.828 ft west, 0.172 ft too few.
    expect(short!.direction).toBe('west');
    expect(short!.length / FOOT).toBeCloseTo(3 - 4 * Math.sqrt(0.5), 4);
    const octagon = outlineFromWalk(
      walk('east 5, northeast 5, north 5, northwest 5, west 5, southwest 5, south 5, southeast 5'),
    )!;
    expect(area(octagon) / FOOT ** 2).toBeCloseTo(2 * (1 + Math.sqrt(2)) * 25, 3);
  });

  test('it may cross itself', () => {
    const bow = [0, 1, 2, 3].map((at) => ({ x: at === 1 || at === 2 ? 4 : 0, y: at % 2 === 0 ? 0 : 4 }));
    const [first, second, third, last] = bow;
    expect(crossesItself([first!, second!, third!, last!])).toBe(true);
    expect(
      crossesItself([
        { x: 0, y: 0 },
        { x: 4, y: 0 },
        { x: 4, y: 4 },
        { x: 1, y: 2 },
      ]),
    ).toBe(false);
  });
});

describe('against polygon-clipping', () => {
  const set = fc.array(randomSlanted, { minLength: 1, maxLength: 3 });
  // Slivers of less than four square inches are none.
  const close = (ours: number, theirs: number): void =>
    expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(4 * INCH * INCH + 1e-6 * theirs);

  test('area, union, difference, and what two sets share', () => {
    fc.assert(
      fc.property(set, set, (first, second) => {
        const [a, b] = [merged(first), merged(second)];
        expect(area(first[0]!)).toBeCloseTo(areaOf(polygonClipping.union(polygon(first[0]!))), 3);
        close(unionArea(first), areaOf(a));
        close(differenceArea(first, second), areaOf(polygonClipping.difference(a, b)));
        close(sharedArea(first, second), areaOf(polygonClipping.intersection(a, b)));
      }),
      { numRuns: 200 },
    );
  });

  test('moved outward, the sides grow by their turns: area + perimeter x out + turns x out^2', () => {
    fc.assert(
      fc.property(randomSlanted, (outline) => {
        const large = outline.map(({ x, y }) => ({ x: x * 100, y: y * 100 }));
        const moved = withEachMoved(large, () => 50);
        if (moved === undefined) return;
        const expected = area(large) + perimeter(large) * 50 + turnsOf(large) * 2500;
        // Corners are rounded to whole units.
        expect(Math.abs(area(moved) - expected)).toBeLessThanOrEqual(perimeter(moved));
      }),
      { numRuns: 100 },
    );
  });

  test('a point is inside where a small square about it is covered', () => {
    fc.assert(
      fc.property(
        randomSlanted,
        fc.integer({ min: -2000, max: 2000 }),
        fc.integer({ min: -2000, max: 2000 }),
        (outline, x, y) => {
          const square: Polygon = [
            [
              [x - 0.25, y - 0.25],
              [x + 0.25, y - 0.25],
              [x + 0.25, y + 0.25],
              [x - 0.25, y + 0.25],
            ],
          ];
          const covered = areaOf(polygonClipping.intersection(polygon(outline), square));
          if (covered > 0.2499) expect(contains(outline, { x, y })).toBe(true);
          if (covered < 0.0001) expect(contains(outline, { x, y })).toBe(false);
        },
      ),
      { numRuns: 200 },
    );
  });
});

test('lines laid across a corner cut off: 16 ft each 2 ft up to 17 ft, and 15 and 13 ft beyond', () => {
  const outline = outlineFromWalk(walk('east 20, north 13, northwest 4.242641, west 17, south 16'))!;
  const spans = [...spansAcross(outline, 'north-south', 2 * FOOT)].map(([length, count]) => [length / FOOT, count]);
  expect(spans).toEqual([
    [16, 9],
    [15, 1],
    [13, 1],
  ]);
});

test('two rooms on both sides of a slanted wall 4 1/2 in thick face each other', () => {
  const low = outlineFromWalk(walk('east 10, northwest 14.142136, south 10'))!;
  const far = 4.5 * INCH * Math.sqrt(2);
  const high = outlineFromWalk(walk('north 10, west 10, southeast 14.142136'))!.map(({ x, y }) => ({
    x: x + 10 * FOOT + far,
    y,
  }));
  const [facing, ...others] = slantedFacings(low, high, FOOT);
  expect(others).toEqual([]);
  expect(facing!.looks).toBe('northeast');
  expect(facing!.gap / INCH).toBeCloseTo(4.5, 3);
});

function polygon(outline: Outline): Polygon {
  return [outline.map(({ x, y }): [number, number] => [x, y])];
}

function merged(outlines: readonly Outline[]): MultiPolygon {
  const [first, ...others] = outlines.map(polygon);
  return polygonClipping.union(first!, ...others);
}

function areaOf(shape: MultiPolygon): number {
  return shape.reduce((sum, rings) => sum + rings.reduce((so, ring) => so + signed(ring), 0), 0);
}

/** Outer rings run counter-clockwise, holes clockwise. */
function signed(ring: readonly (readonly [number, number])[]): number {
  const [originX, originY] = ring[0]!;
  let twice = 0;
  for (let index = 0; index + 1 < ring.length; index++) {
    const [one, other] = [ring[index]!, ring[index + 1]!];
    twice += (one[0] - originX) * (other[1] - originY) - (other[0] - originX) * (one[1] - originY);
  }
  return twice / 2;
}
