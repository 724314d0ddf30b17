// Right-angled outlines in the plane: made by walking along their sides, measured exactly. x runs east, y north; all
// numbers are whole base units, and areas their squares, so every result here is exact.

export interface Point {
  readonly x: number;
  readonly y: number;
}

export type Direction = 'east' | 'north' | 'west' | 'south';

/** One side of a walk round an outline: which way, how far. */
export interface Step {
  readonly direction: Direction;
  readonly length: number;
}

/** The corners in order, counter-clockwise; the last side runs from the last corner to the first. */
export type Outline = readonly Point[];

export const ORIGIN: Point = { x: 0, y: 0 };

/**
 * The outline that a walk goes round, wherever along it the walk begins and whichever way round it goes: corners only,
 * counter-clockwise. Undefined where the walk does not come back to its beginning or encloses nothing.
 */
export function outlineFromWalk(steps: readonly Step[], from: Point = ORIGIN): Outline | undefined {
  if (!isClosed(steps)) return undefined;
  let { x, y } = from;
  const points = steps.map(({ direction, length }) => {
    x += EAST[direction] * length;
    y += NORTH[direction] * length;
    return { x, y };
  });
  const outline = cornersOnly(points);
  if (outline.length < 4) return undefined;
  return twiceSignedArea(outline) < 0 ? [...outline].reverse() : outline;
}

/**
 * The outline round points in order, either way round. Undefined where a side runs neither level nor upright on the
 * drawing, or nothing is enclosed.
 */
export function outlineFromCorners(points: readonly Point[]): Outline | undefined {
  const upright = points.every((point, index) => {
    const next = points[(index + 1) % points.length]!;
    return point.x === next.x || point.y === next.y;
  });
  if (!upright) return undefined;
  const outline = cornersOnly(points);
  if (outline.length < 4) return undefined;
  return twiceSignedArea(outline) < 0 ? [...outline].reverse() : outline;
}

/** Whether a walk ends where it began. */
export function isClosed(steps: readonly Step[]): boolean {
  return stepsToClose(steps).length === 0;
}

/** What a walk lacks to come back to its beginning: no step, one, or two. */
export function stepsToClose(steps: readonly Step[]): readonly Step[] {
  let x = 0;
  let y = 0;
  for (const { direction, length } of steps) {
    x += EAST[direction] * length;
    y += NORTH[direction] * length;
  }
  const missing: readonly Step[] = [
    { direction: x > 0 ? 'west' : 'east', length: Math.abs(x) },
    { direction: y > 0 ? 'south' : 'north', length: Math.abs(y) },
  ];
  return missing.filter(({ length }) => length !== 0);
}

/** The area inside, in squared base units. Only for outlines that do not cross themselves. */
export function area(outline: Outline): number {
  return Math.abs(twiceSignedArea(outline)) / 2;
}

export function perimeter(outline: Outline): number {
  return outline.reduce((sum, from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    return sum + Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
  }, 0);
}

/**
 * How many corners point outward (four more than inward, for an outline that does not cross itself) and how many
 * inward.
 */
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

/** Whether a point lies inside or on the edge. */
export function contains(outline: Outline, point: Point): boolean {
  let crossings = 0;
  for (let index = 0; index < outline.length; index++) {
    const from = outline[index]!;
    const to = outline[(index + 1) % outline.length]!;
    if (onSide(from, to, point)) return true;
    // Sides that run north or south and lie east of the point; half-open, so that a shared corner counts once.
    if (from.x === to.x && from.x > point.x && from.y > point.y !== to.y > point.y) crossings++;
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

const EAST: { readonly [direction in Direction]: number } = { east: 1, north: 0, west: -1, south: 0 };
const NORTH: { readonly [direction in Direction]: number } = { east: 0, north: 1, west: 0, south: -1 };

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
  const alongX = before.y === point.y && point.y === after.y && (point.x - before.x) * (after.x - point.x) > 0;
  const alongY = before.x === point.x && point.x === after.x && (point.y - before.y) * (after.y - point.y) > 0;
  return alongX || alongY;
}

function onSide(from: Point, to: Point, point: Point): boolean {
  return between(from.x, point.x, to.x) && between(from.y, point.y, to.y);
}

function between(one: number, value: number, other: number): boolean {
  return Math.min(one, other) <= value && value <= Math.max(one, other);
}

function touch(outline: Outline, one: number, other: number): boolean {
  const a = outline[one]!;
  const b = outline[(one + 1) % outline.length]!;
  const c = outline[other]!;
  const d = outline[(other + 1) % outline.length]!;
  return meet(a.x, b.x, c.x, d.x) && meet(a.y, b.y, c.y, d.y);
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
  return (before.x === corner.x && corner.x === after.x) || (before.y === corner.y && corner.y === after.y);
}
