// Outlines in the plane: made from their corners, measured. x runs east, y north; corners
// lie on whole base units, so areas are exact. A slanted side is as long as the nearest whole number of them.

export interface Point {
  readonly x: number;
  readonly y: number;
}

export type Direction = 'east' | 'north' | 'west' | 'south';

/** The corners in order, counter-clockwise; the last side runs from the last corner to the first. */
export type Outline = readonly Point[];

export const ORIGIN: Point = { x: 0, y: 0 };

/** The outline round points in order, either way round. Undefined where nothing is enclosed. */
export function outlineFromCorners(points: readonly Point[]): Outline | undefined {
  const outline = cornersOnly(points);
  if (outline.length < 3) return undefined;
  return twiceSignedArea(outline) < 0 ? [...outline].reverse() : outline;
}

/** Whether any side of an outline runs neither level nor upright on the drawing. */
export function isSlanted(outline: Outline): boolean {
  return outline.some((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    return from.x !== to.x && from.y !== to.y;
  });
}

export function lengthOfSide(from: Point, to: Point): number {
  const [x, y] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  return x === 0 || y === 0 ? x + y : Math.round(Math.sqrt(x * x + y * y));
}

/** The area inside, in squared base units. Only for outlines that do not cross themselves. */
export function area(outline: Outline): number {
  return Math.abs(twiceSignedArea(outline)) / 2;
}

export function perimeter(outline: Outline): number {
  return outline.reduce((sum, from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    return sum + lengthOfSide(from, to);
  }, 0);
}

/** How many corners point outward (four more than inward, where all are square and no sides cross) and how many inward. */
export function corners(outline: Outline): { readonly outside: number; readonly inside: number } {
  const way = Math.sign(twiceSignedArea(outline));
  let outside = 0;
  let inside = 0;
  outline.forEach((corner, index) => {
    const before = outline[(index + outline.length - 1) % outline.length]!;
    const after = outline[(index + 1) % outline.length]!;
    const turn = (corner.x - before.x) * (after.y - corner.y) - (corner.y - before.y) * (after.x - corner.x);
    if (turn * way > 0) outside++;
    else if (turn * way < 0) inside++;
  });
  return { outside, inside };
}

/**
 * How much longer the outline grows with each unit that all its sides are moved outward, halved: the tangents of half the
 * angle that each corner turns by, added; 4 where all corners are square.
 */
export function turnsOf(outline: Outline): number {
  return outline.reduce((sum, _, index) => sum + turnAt(outline, index), 0);
}

/** The tangent of half the angle that a corner turns by: 1 where it turns square outward, -1 inward. */
export function turnAt(outline: Outline, index: number): number {
  const before = outline[(index + outline.length - 1) % outline.length]!;
  const corner = outline[index % outline.length]!;
  const after = outline[(index + 1) % outline.length]!;
  const [ax, ay, bx, by] = [corner.x - before.x, corner.y - before.y, after.x - corner.x, after.y - corner.y];
  const lengths = Math.sqrt(ax * ax + ay * ay) * Math.sqrt(bx * bx + by * by);
  return (ax * by - ay * bx) / (lengths + ax * bx + ay * by);
}

export function turnsSquare(outline: Outline, index: number): boolean {
  return Math.abs(Math.abs(turnAt(outline, index)) - 1) < 1e-4;
}

/** Whether a point lies inside or on the edge. */
export function contains(outline: Outline, point: Point): boolean {
  let crossings = 0;
  for (let index = 0; index < outline.length; index++) {
    const from = outline[index]!;
    const to = outline[(index + 1) % outline.length]!;
    if (onSide(from, to, point)) return true;
    // Sides that cross the line east of the point; half-open, so that a shared corner counts once.
    if (from.y > point.y === to.y > point.y) continue;
    if (side(from, to, point) > 0 === to.y > from.y) crossings++;
  }
  return crossings % 2 === 1;
}

/** Whether two sides cross, touch or lie on one another: such an outline has no clear inside. */
export function crossesItself(outline: Outline): boolean {
  for (let one = 0; one < outline.length; one++) {
    for (let other = one + 1; other < outline.length; other++) {
      const neighbours = other === one + 1 || (one === 0 && other === outline.length - 1);
      if (!neighbours && touch(outline, one, other)) return true;
      if (neighbours && foldsBack(outline, one, other)) return true;
    }
  }
  return false;
}

/** The smallest upright rectangle round an outline. */
export function bounds(outline: Outline): {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
} {
  let west = Number.POSITIVE_INFINITY;
  let south = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (const { x, y } of outline) {
    west = Math.min(west, x);
    south = Math.min(south, y);
    east = Math.max(east, x);
    north = Math.max(north, y);
  }
  return { west, south, east, north };
}

/** Positive for counter-clockwise. Counted from the first corner, so that far-off places lose no digits. */
function twiceSignedArea(outline: Outline): number {
  const origin = outline[0] ?? ORIGIN;
  let sum = 0;
  outline.forEach((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    sum += (from.x - origin.x) * (to.y - origin.y) - (to.x - origin.x) * (from.y - origin.y);
  });
  return sum;
}

/** Leaves out points where the walk stands still or goes straight on, the first one included. */
function cornersOnly(points: readonly Point[]): readonly Point[] {
  let kept = points;
  for (;;) {
    const next = kept.filter((point, index) => {
      const before = kept[(index + kept.length - 1) % kept.length]!;
      const after = kept[(index + 1) % kept.length]!;
      const still = before.x === point.x && before.y === point.y;
      return !still && !goesStraightOn(before, point, after);
    });
    if (next.length === kept.length) return kept;
    kept = next;
  }
}

function goesStraightOn(before: Point, point: Point, after: Point): boolean {
  const on = (point.x - before.x) * (after.x - point.x) + (point.y - before.y) * (after.y - point.y);
  return on > 0 && side(before, point, after) === 0;
}

/** Positive where a point lies to the left of the way from one to the other, 0 on its line. */
function side(from: Point, to: Point, point: Point): number {
  return (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
}

function onSide(from: Point, to: Point, point: Point): boolean {
  return between(from.x, point.x, to.x) && between(from.y, point.y, to.y) && side(from, to, point) === 0;
}

function between(one: number, value: number, other: number): boolean {
  return Math.min(one, other) <= value && value <= Math.max(one, other);
}

function touch(outline: Outline, one: number, other: number): boolean {
  const a = outline[one]!;
  const b = outline[(one + 1) % outline.length]!;
  const c = outline[other]!;
  const d = outline[(other + 1) % outline.length]!;
  if (!meet(a.x, b.x, c.x, d.x) || !meet(a.y, b.y, c.y, d.y)) return false;
  const apart = (p: number, q: number): boolean => (p > 0 && q > 0) || (p < 0 && q < 0);
  return !apart(side(a, b, c), side(a, b, d)) && !apart(side(c, d, a), side(c, d, b));
}

function meet(a: number, b: number, c: number, d: number): boolean {
  return Math.max(Math.min(a, b), Math.min(c, d)) <= Math.min(Math.max(a, b), Math.max(c, d));
}

/** Neighbouring sides share one corner; they fold back where they share more than that. */
function foldsBack(outline: Outline, one: number, other: number): boolean {
  const [first, second] = other === one + 1 ? [one, other] : [other, one];
  const before = outline[first]!;
  const corner = outline[second]!;
  const after = outline[(second + 1) % outline.length]!;
  return side(before, corner, after) === 0;
}
