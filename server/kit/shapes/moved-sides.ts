// An outline whose sides are moved outward, each as far as the way it looks says: a roof's overhang on every side.
import { crossesItself, type Direction, type Outline, type Point } from './outline.ts';

/** Undefined where sides that look at each other would meet. The outline is counter-clockwise and right-angled. */
export function withSidesMoved(outline: Outline, out: Readonly<Record<Direction, number>>): Outline | undefined {
  return withEachMoved(outline, (from, to) =>
    from.x === to.x ? (to.y > from.y ? out.east : out.west) : to.x > from.x ? out.south : out.north,
  );
}

/** The same for sides at any angle, each as far as `out` says; corners on whole base units. */
export function withEachMoved(outline: Outline, out: (from: Point, to: Point) => number): Outline | undefined {
  const count = outline.length;
  const lines = outline.map((from, index) => {
    const to = outline[(index + 1) % count]!;
    const [x, y] = [to.x - from.x, to.y - from.y];
    const length = Math.sqrt(x * x + y * y);
    // The inside lies to the left, so outward is to the right.
    return { x: y / length, y: -x / length, far: out(from, to) };
  });
  const moved = outline.map((corner, index) => {
    const [before, after] = [lines[(index + count - 1) % count]!, lines[index]!];
    const turn = before.x * after.y - before.y * after.x;
    return {
      x: Math.round(corner.x + (before.far * after.y - after.far * before.y) / turn),
      y: Math.round(corner.y + (after.far * before.x - before.far * after.x) / turn),
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
