// Random outlines with slanted sides for the tests of shapes: right-angled ones with corners cut off.
import * as fc from 'fast-check';
import type { Outline } from '#kit/shapes/outline';
import { randomOutline } from './random-outline.ts';

/** Corners are cut at up to a third of both sides, so that no two cuts meet; everything a hundred times as large. */
export const randomSlanted: fc.Arbitrary<Outline> = fc
  .record({ outline: randomOutline, cuts: fc.array(fc.option(fc.tuple(share(), share())), { minLength: 4, maxLength: 24 }) })
  .map(({ outline, cuts }) =>
    outline.flatMap((corner, index) => {
      const cut = cuts[index % cuts.length];
      const at = { x: corner.x * 100, y: corner.y * 100 };
      if (cut === null || cut === undefined) return [at];
      const [before, after] = [outline[(index + outline.length - 1) % outline.length]!, outline[(index + 1) % outline.length]!];
      const towards = (to: { x: number; y: number }, part: number) => ({
        x: Math.round(at.x + (to.x * 100 - at.x) * part),
        y: Math.round(at.y + (to.y * 100 - at.y) * part),
      });
      return [towards(before, cut[0]), towards(after, cut[1])];
    }),
  );

function share() {
  return fc.constantFrom(0.1, 0.2, 0.25, 1 / 3);
}
