// A roof of one pitch over any right-angled outline, as bodies: the largest rectangles of the outline, each with its own
// ridge, and eaves or a gable at its ends. Seen from above, what stands highest is the roof.
//
// That this makes the hip roof of the outline: its height at a point is the pitch times the half side of the largest upright
// square about the point that the outline holds, and that square lies in one of the largest rectangles.
import { largestRectangles } from '#kit/shapes/largest-rectangles';
import type { Direction, Outline } from '#kit/shapes/outline';
import type { Rectangle } from '#kit/shapes/region';
import type { Body, Plane } from '#kit/shapes/upper-envelope';

export type Runs = 'north-south' | 'east-west';

export interface RoofBody extends Body {
  /** Between the walls. */
  readonly walls: Rectangle;
  readonly runs: Runs;
  /** The sides that each plane rises from, in the order of the planes. */
  readonly sides: readonly Direction[];
  readonly gables: readonly Direction[];
}

const SIDES: readonly Direction[] = ['north', 'east', 'south', 'west'];

/** With pitch 1: heights are level distances. `ridge` is the way that the main body runs, where the plan says so. */
export function roofBodies(
  outline: Outline,
  form: 'hip' | 'gable',
  ridge: Runs | undefined,
  eavesOut: number,
  rakesOut: number,
): readonly RoofBody[] {
  return largestRectangles(outline).map((walls) => {
    const runs = runsOf(walls, ridge);
    const gables = form === 'hip' ? [] : gablesOf(walls, runs, ridge, outline);
    return bodyOver(walls, runs, gables, (side) => (gables.includes(side) ? rakesOut : eavesOut));
  });
}

/** One body with upright ends where `gables` says, standing out beyond its walls as far as `out` says. */
export function bodyOver(walls: Rectangle, runs: Runs, gables: readonly Direction[], out: (side: Direction) => number): RoofBody {
  const sides = SIDES.filter((side) => !gables.includes(side));
  return {
    walls,
    runs,
    sides,
    gables,
    over: {
      west: walls.west - out('west'),
      south: walls.south - out('south'),
      east: walls.east + out('east'),
      north: walls.north + out('north'),
    },
    planes: sides.map((side) => risingFrom(walls, side)),
  };
}

function runsOf({ west, south, east, north }: Rectangle, ridge: Runs | undefined): Runs {
  const [width, depth] = [east - west, north - south];
  if (width === depth) return ridge ?? 'east-west';
  return width > depth ? 'east-west' : 'north-south';
}

/**
 * An end is a gable where it is a whole side of the outline, between two corners that turn outward; of bodies that run the
 * way the plan says, wherever it lies on the outline. Elsewhere ridges meet over a hip, or run into a higher roof.
 */
function gablesOf(walls: Rectangle, runs: Runs, ridge: Runs | undefined, outline: Outline): readonly Direction[] {
  const ends: readonly Direction[] = runs === 'east-west' ? ['east', 'west'] : ['north', 'south'];
  return ends.filter((side) => {
    const at = walls[side];
    const level = side === 'north' || side === 'south';
    const [from, to] = level ? [walls.west, walls.east] : [walls.south, walls.north];
    return outline.some((point, index) => {
      const next = outline[(index + 1) % outline.length]!;
      const [here, there, one, other] = level ? [point.y, next.y, point.x, next.x] : [point.x, next.x, point.y, next.y];
      if (here !== at || there !== at) return false;
      const [low, high] = [Math.min(one, other), Math.max(one, other)];
      return runs === ridge ? low <= from && high >= to : low === from && high === to;
    });
  });
}

function risingFrom({ west, south, east, north }: Rectangle, side: Direction): Plane {
  switch (side) {
    case 'west':
      return { a: 1, b: 0, c: -west };
    case 'east':
      return { a: -1, b: 0, c: east };
    case 'south':
      return { a: 0, b: 1, c: -south };
    case 'north':
      return { a: 0, b: -1, c: north };
  }
}

/** Two bodies that run the same way and overlap: where the outline steps back beside a ridge. */
export function liesSideBySide(bodies: readonly RoofBody[]): boolean {
  return bodies.some((one, index) =>
    bodies
      .slice(index + 1)
      .some(
        (other) =>
          one.runs === other.runs &&
          one.walls.west < other.walls.east &&
          other.walls.west < one.walls.east &&
          one.walls.south < other.walls.north &&
          other.walls.south < one.walls.north,
      ),
  );
}
