// An outline whose sides are moved outward, each as far as the way it looks says: a roof's overhang on every side.
import { crossesItself, type Direction, type Outline } from './outline.ts';

/** Undefined where sides that look at each other would meet. The outline is counter-clockwise. */
export function withSidesMoved(outline: Outline, out: Readonly<Record<Direction, number>>): Outline | undefined {
  const count = outline.length;
  const moved = outline.map((point, index) => {
    const before = outline[(index + count - 1) % count]!;
    const after = outline[(index + 1) % count]!;
    const upright = before.x === point.x ? [before, point] : [point, after];
    const level = before.x === point.x ? [point, after] : [before, point];
    return {
      x: point.x + (upright[1]!.y > upright[0]!.y ? out.east : -out.west),
      y: point.y + (level[1]!.x > level[0]!.x ? -out.south : out.north),
    };
  });
  return crossesItself(moved) || !sameWay(outline, moved) ? undefined : moved;
}

/** Every side still runs the way it ran. */
function sameWay(outline: Outline, moved: Outline): boolean {
  return outline.every((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    const [start, end] = [moved[index]!, moved[(index + 1) % moved.length]!];
    return (to.x - from.x) * (end.x - start.x) + (to.y - from.y) * (end.y - start.y) > 0;
  });
}
