// Roofs over random outlines, against the outline moved outward by the overhang: as much surface on plan, as much edge; and
// every rafter of it lies in it. The hip roof of a rectangle is that of the handbooks.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FOOT, INCH } from '#kit/dimension';
import { withSidesMoved } from '#kit/shapes/moved-sides';
import { area, type Outline, perimeter } from '#kit/shapes/outline';
import { outlineFromWalk } from '#kit/shapes/walk';
import { raftersAt, roofOnPlan, trussesAt } from '#takeoff/measure/roof-plan';
import { randomOutline } from '../kit/shapes/random-outline.ts';

/** A random outline whose least step is ten feet. */
const inTens = (outline: Outline): Outline => {
  const step = Math.min(
    ...outline.map(({ x, y }, index) => {
      const next = outline[(index + 1) % outline.length]!;
      return Math.abs(next.x - x) + Math.abs(next.y - y);
    }),
  );
  return outline.map(({ x, y }) => ({ x: Math.round(x / step) * 10 * FOOT, y: Math.round(y / step) * 10 * FOOT }));
};
const around = (out: number) => ({ north: out, east: out, south: out, west: out });

describe('over any outline', () => {
  test.each(['hip', 'gable'] as const)('%s: the plan with overhangs, eaves and rakes all round it', (form) => {
    fc.assert(
      fc.property(
        randomOutline,
        fc.constantFrom(undefined, 'east-west', 'north-south'),
        fc.constantFrom(0, 12, 18),
        (small, ridge, inches) => {
          const outline = inTens(small);
          const out = inches * INCH;
          const moved = withSidesMoved(outline, around(out));
          if (moved === undefined) return;
          const roof = roofOnPlan(outline, form, ridge, out, out);
          expect(roof.area / area(moved)).toBeCloseTo(1, 6);
          const eaves = roof.eaves.north + roof.eaves.east + roof.eaves.south + roof.eaves.west;
          // Where a gable stands in front of a higher wall of the same roof, its rake is an edge too.
          expect(eaves + roof.rakes).toBeGreaterThanOrEqual(perimeter(moved) * (1 - 1e-6));
          if (form === 'hip') expect((eaves + roof.rakes) / perimeter(moved)).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 80, seed: 20261125 },
    );
  });

  test('rafters at a spacing reach over the whole plan: their length by the spacing is its area, within a space a slope', () => {
    fc.assert(
      fc.property(randomOutline, (small) => {
        const outline = inTens(small);
        const roof = roofOnPlan(outline, 'hip', undefined, 0, 0);
        let length = 0;
        for (const [each, count] of raftersAt(roof, FOOT, 0)) length += each * count;
        const slack = roof.faces.length * 2 * roof.span * FOOT;
        expect(Math.abs(length * FOOT - roof.area)).toBeLessThanOrEqual(slack);
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });
});

test('a hip roof of 32 by 28 ft: four hips of 14 ft run, a ridge of 4 ft', () => {
  const outline = outlineFromWalk([
    { direction: 'east', length: 32 * FOOT },
    { direction: 'north', length: 28 * FOOT },
    { direction: 'west', length: 32 * FOOT },
    { direction: 'south', length: 28 * FOOT },
  ])!;
  const roof = roofOnPlan(outline, 'hip', undefined, 0, 0);
  expect(roof.ridge / FOOT).toBeCloseTo(4, 6);
  expect(roof.hips / FOOT).toBeCloseTo(4 * 14, 6);
  expect(roof.diagonals.map((run) => run / FOOT)).toEqual([14, 14, 14, 14].map((run) => expect.closeTo(run, 6)));
  expect(trussesAt(roof, 2 * FOOT, 0)).toBe(17);
});
