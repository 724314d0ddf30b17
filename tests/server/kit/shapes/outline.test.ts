// Right-angled outlines: walked, measured, and what a walk lacks.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, bounds, contains, corners, crossesItself, type Outline, perimeter } from '#kit/shapes/outline';
import { isClosed, outlineFromWalk, type Step, stepsToClose } from '#kit/shapes/walk';
import { randomOutline } from './random-outline.ts';

const walk = (words: string): readonly Step[] =>
  words.split(', ').map((word) => {
    const [direction, length] = word.split(' ');
    return { direction: direction as Step['direction'], length: Number(length) };
  });

const ELL = 'east 10, north 4, west 6, north 3, west 4, south 7';

describe('an L, walked round', () => {
  const outline = outlineFromWalk(walk(ELL))!;

  test('its measures', () => {
    expect(area(outline)).toBe(52);
    expect(perimeter(outline)).toBe(34);
    expect(corners(outline)).toEqual({ outside: 5, inside: 1 });
    expect(crossesItself(outline)).toBe(false);
    expect(bounds(outline)).toEqual({ west: 0, south: 0, east: 10, north: 7 });
  });

  test('begun in the middle of a side, or clockwise, it is the same', () => {
    const middle = outlineFromWalk(walk('east 3, north 4, west 6, north 3, west 4, south 7, east 7'), { x: 7, y: 0 })!;
    expect(new Set(middle.map(({ x, y }) => `${x} ${y}`))).toEqual(new Set(outline.map(({ x, y }) => `${x} ${y}`)));
    const clockwise = outlineFromWalk(walk('north 7, east 4, south 3, east 6, south 4, west 10'))!;
    expect([area(clockwise), perimeter(clockwise), corners(clockwise)]).toEqual([52, 34, { outside: 5, inside: 1 }]);
  });

  test.each([
    [1, 1, true],
    [10, 4, true],
    [4, 5, true],
    [4.5, 4.5, false],
    [0, 7, true],
    [11, 2, false],
    [-1, 0, false],
    [2, 7.5, false],
  ])('holds %d, %d: %s', (x, y, inside) => {
    expect(contains(outline, { x, y })).toBe(inside);
  });
});

test('what a walk lacks', () => {
  expect(isClosed(walk(ELL))).toBe(true);
  expect(stepsToClose(walk('east 10, north 4, west 7'))).toEqual(walk('west 3, south 4'));
  expect(stepsToClose(walk('west 10, south 4, east 10'))).toEqual(walk('north 4'));
  expect(outlineFromWalk(walk('east 10, north 4, west 7'))).toBeUndefined();
  expect(outlineFromWalk(walk('east 10, west 10'))).toBeUndefined();
  expect(outlineFromWalk([])).toBeUndefined();
});

test.each([
  ['a figure of eight', 'east 4, north 4, east 4, south 2, west 6, south 2, west 2'],
  ['a spike', 'east 10, north 4, east 3, west 3, north 2, west 10, south 6'],
  ['corner to corner', 'east 2, north 2, east 2, north 2, west 2, south 2, west 2, south 2'],
])('%s crosses itself', (_, words) => {
  expect(crossesItself(outlineFromWalk(walk(words))!)).toBe(true);
});

test('any outline: four more corners outward than inward, as many steps back as it has corners, counter-clockwise', () => {
  fc.assert(
    fc.property(randomOutline, (outline) => {
      const { outside, inside } = corners(outline);
      expect(outside - inside).toBe(4);
      expect(outside + inside).toBe(outline.length);
      expect(crossesItself(outline)).toBe(false);
      const again = outlineFromWalk(stepsOf(outline), outline[0]!)!;
      expect([area(again), perimeter(again), again.length]).toEqual([area(outline), perimeter(outline), outline.length]);
      const back = outlineFromWalk(stepsOf([...outline].reverse()), outline.at(-1)!)!;
      expect(area(back)).toBe(area(outline));
    }),
  );
});

test('areas stay exact far from the origin, for a lot of 20 acres in units of 1/320 mm', () => {
  const side = 285 * 1000 * 320;
  const lot = walk(`east ${side}, north ${side - 1}, west ${side}, south ${side - 1}`);
  const outline = outlineFromWalk(lot, { x: side * 40, y: -side * 40 })!;
  expect(area(outline)).toBe(side * (side - 1));
  expect(BigInt(area(outline))).toBe(BigInt(side) * BigInt(side - 1));
});

function stepsOf(outline: Outline): readonly Step[] {
  return outline.map((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    if (from.y === to.y) return { direction: to.x > from.x ? 'east' : 'west', length: Math.abs(to.x - from.x) };
    return { direction: to.y > from.y ? 'north' : 'south', length: Math.abs(to.y - from.y) };
  });
}
