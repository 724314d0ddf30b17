// Rectangles put together make the outline they cover: checked by area against a sweep over the same rectangles.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { outlineOfRectangles } from '#kit/shapes/joined-rectangles';
import { area, crossesItself } from '#kit/shapes/outline';
import { rectanglesOf, unionArea } from '#kit/shapes/region';
import { randomOutline } from './random-outline.ts';

test('an outline cut into rectangles and put together is the outline', () => {
  fc.assert(
    fc.property(randomOutline, (outline) => {
      const parts = rectanglesOf(outline).map((each) => ({ how: 'plus' as const, ...each }));
      const again = outlineOfRectangles(parts)!;
      expect(area(again)).toBe(unionArea(parts));
      expect(again).toHaveLength(outline.length);
      expect(crossesItself(again)).toBe(false);
    }),
    { numRuns: 100, seed: 20261125 },
  );
});
