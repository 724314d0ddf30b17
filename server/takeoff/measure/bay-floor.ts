// The joists of bays: they run out from the wall, each as long as the bay is there; where the bay hangs on them, they reach
// back into the floor twice as far as they stand out.
import { constant } from '#kit/quantity';
import { spansAcross } from '#kit/shapes/spans-across';
import { bayAngle } from '#model/bays';
import { bayMisfits } from '#model/facts/level';
import type { Level } from '#model/model';
import type { Pieces } from '../lines.ts';

const BACK = 'reaching back twice as far: common practice';

export function bayJoists(level: Level, spacing: number): readonly Pieces[] {
  const misfits = bayMisfits(level);
  return level.given.bay.flatMap(({ value, deeper }, index): readonly Pieces[] => {
    if (misfits.includes(index)) return [];
    const [width, depth] = [value.size.left.value, value.size.right.value];
    const back = Math.round(depth / bayAngle(value).value);
    const outline = [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width - back, y: depth },
      { x: back, y: depth },
    ];
    const hung = deeper.hung !== undefined;
    return [...spansAcross(outline, 'north-south', spacing)]
      .sort(([one], [other]) => other - one)
      .map(([length, count]) => ({
        count: constant('joists', count, 'number'),
        length: hung
          ? constant('joist that carries a bay', 3 * length, 'length', BACK)
          : constant('joist in a bay', length, 'length'),
      }));
  });
}
