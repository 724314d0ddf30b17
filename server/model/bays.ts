// Bays of three sides put to a floor: one along its wall's way in front, two that slant back to the wall.
import { constant, type Quantity } from '#kit/quantity';
import { bounds, crossesItself, type Direction, type Outline, outlineFromCorners, type Point } from '#kit/shapes/outline';
import { type FloorShape, type Made, outlined } from './floor-shape.ts';
import type { At } from './model.ts';

export interface BayGiven {
  /** Along the wall by out from it. */
  readonly size: { readonly left: Quantity<'length'>; readonly right: Quantity<'length'> };
  readonly side: Direction;
  /** From the west or the south end of the outline. */
  readonly at: Quantity<'length'>;
  readonly angle?: Quantity<'slope'> | undefined;
}

/** What its slanted sides make with the wall, where the plan does not say. */
const usualAngle = constant('angle of its sides', 1, 'slope', 'common practice: 45 degrees');

export function bayAngle({ angle }: BayGiven): Quantity<'slope'> {
  return angle ?? usualAngle;
}

export interface WithBays {
  readonly shape: FloorShape;
  /** The numbers of those that fit nowhere, and are not in the shape. */
  readonly misfits: readonly number[];
}

export function withBays(body: FloorShape, bays: readonly At<BayGiven>[]): WithBays {
  const misfits: number[] = [];
  let shape = body;
  bays.forEach(({ value }, index) => {
    const next = withBay(shape, body, value);
    if (next === undefined) misfits.push(index);
    else shape = next;
  });
  return { shape, misfits };
}

function withBay(shape: FloorShape, body: FloorShape, { size, side, at, angle }: BayGiven): FloorShape | undefined {
  const inputs = [size.left, size.right, at, angle ?? usualAngle];
  const [before, first] = [shape.made, shape.made.lengths.length];
  const bodyLengths = body.made.lengths.length;
  const made: Made = {
    key: `${before.key}, bay ${side}`,
    lengths: [...before.lengths, ...inputs],
    outline: (values) => {
      const outline = before.outline(values.slice(0, first));
      const corner = body.made.outline(values.slice(0, bodyLengths));
      const [width = 0, depth = 0, from = 0, slope = 1] = values.slice(first);
      return outline === undefined || corner === undefined
        ? undefined
        : baysOut(outline, bounds(corner), side, width, depth, from, slope);
    },
  };
  return outlined(made, 'of the floor with its bays');
}

/** Along a wall from west or south, and out from it: turned so that every side of a house can be worked like its south. */
interface Turned {
  readonly along: (point: Point) => number;
  readonly out: (point: Point) => number;
  readonly point: (along: number, out: number) => Point;
}
const TURNED: Readonly<Record<Direction, Turned>> = {
  south: { along: ({ x }) => x, out: ({ y }) => -y, point: (along, out) => ({ x: along, y: -out }) },
  north: { along: ({ x }) => x, out: ({ y }) => y, point: (along, out) => ({ x: along, y: out }) },
  east: { along: ({ y }) => y, out: ({ x }) => x, point: (along, out) => ({ x: out, y: along }) },
  west: { along: ({ y }) => y, out: ({ x }) => -x, point: (along, out) => ({ x: -out, y: along }) },
};

/** Undefined where no wall that looks that way is there for it, or its sides would meet before its front. */
function baysOut(
  outline: Outline,
  box: { readonly west: number; readonly south: number },
  side: Direction,
  width: number,
  depth: number,
  from: number,
  slope: number,
): Outline | undefined {
  const { along, out, point } = TURNED[side];
  const start = (side === 'south' || side === 'north' ? box.west : box.south) + from;
  const end = start + width;
  const back = Math.round(depth / slope);
  if (!(depth > 0 && slope > 0 && from >= 0) || 2 * back >= width) return undefined;
  // Of several walls that look that way, the one furthest out.
  let found: number | undefined;
  outline.forEach((corner, index) => {
    const next = outline[(index + 1) % outline.length]!;
    if (out(corner) !== out(next) || looksOf(corner, next) !== side) return;
    const [low, high] = [Math.min(along(corner), along(next)), Math.max(along(corner), along(next))];
    if (low <= start && high >= end && (found === undefined || out(corner) > out(outline[found]!))) found = index;
  });
  if (found === undefined) return undefined;
  const wall = out(outline[found]!);
  const bay = [point(start, wall), point(start + back, wall + depth), point(end - back, wall + depth), point(end, wall)];
  if (along(outline[found]!) > along(outline[(found + 1) % outline.length]!)) bay.reverse();
  const made = outlineFromCorners([...outline.slice(0, found + 1), ...bay, ...outline.slice(found + 1)]);
  return made === undefined || crossesItself(made) ? undefined : made;
}

function looksOf(from: Point, to: Point): Direction {
  if (from.y === to.y) return to.x > from.x ? 'south' : 'north';
  return to.y > from.y ? 'east' : 'west';
}
