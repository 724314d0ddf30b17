// Random right-angled outlines for the tests of shapes: columns side by side, each with its own foot and head.
import * as fc from 'fast-check';
import type { Outline, Point } from '#kit/shapes/outline';

/** Between one and six columns, touching over some length; sometimes turned by a quarter, so that bays look any way. */
export const randomOutline: fc.Arbitrary<Outline> = fc
  .record({
    west: fc.integer({ min: -50, max: 50 }),
    columns: fc.array(
      fc.record({
        width: fc.integer({ min: 1, max: 20 }),
        foot: fc.integer({ min: -20, max: 0 }),
        head: fc.integer({ min: 1, max: 20 }),
      }),
      {
        minLength: 1,
        maxLength: 6,
      },
    ),
    scale: fc.constantFrom(1, 127, 8128),
    turned: fc.boolean(),
  })
  .map(({ west, columns, scale, turned }) => {
    const feet: Point[] = [];
    const heads: Point[] = [];
    let x = west;
    for (const { width, foot, head } of columns) {
      feet.push({ x, y: foot }, { x: x + width, y: foot });
      heads.push({ x, y: head }, { x: x + width, y: head });
      x += width;
    }
    const points = [...feet, ...heads.reverse()].map((point) => ({ x: point.x * scale, y: point.y * scale }));
    return withoutStraights(turned ? points.map((point) => ({ x: -point.y, y: point.x })) : points);
  });

function withoutStraights(points: readonly Point[]): Outline {
  const distinct = points.filter((point, index) => {
    const before = points[(index + points.length - 1) % points.length]!;
    return point.x !== before.x || point.y !== before.y;
  });
  return distinct.filter((point, index) => {
    const before = distinct[(index + distinct.length - 1) % distinct.length]!;
    const after = distinct[(index + 1) % distinct.length]!;
    return !((before.x === point.x && point.x === after.x) || (before.y === point.y && point.y === after.y));
  });
}
