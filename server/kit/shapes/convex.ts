// Convex pieces of the plane: cut by half-planes, taken out of one another, and where their edges lie along each other.
import type { Point } from './outline.ts';
import type { Rectangle } from './region.ts';

/** Corners in order, counter-clockwise. */
export type Convex = readonly Point[];

/** All points where a x + b y + c is not negative. */
export interface HalfPlane {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** What is smaller than a hundred square base units is no piece: rounding left it. */
const LEAST_AREA = 100;

export function rectangleCorners({ west, south, east, north }: Rectangle): Convex {
  return [
    { x: west, y: south },
    { x: east, y: south },
    { x: east, y: north },
    { x: west, y: north },
  ];
}

export function rectangleHalves({ west, south, east, north }: Rectangle): readonly HalfPlane[] {
  return [
    { a: 1, b: 0, c: -west },
    { a: -1, b: 0, c: east },
    { a: 0, b: 1, c: -south },
    { a: 0, b: -1, c: north },
  ];
}

/** The part of a piece in a half-plane; empty where there is none. */
export function cut(piece: Convex, { a, b, c }: HalfPlane): Convex {
  const at = piece.map(({ x, y }) => a * x + b * y + c);
  const kept: Point[] = [];
  piece.forEach((point, index) => {
    const next = piece[(index + 1) % piece.length]!;
    const [here, there] = [at[index]!, at[(index + 1) % piece.length]!];
    if (here >= 0) kept.push(point);
    if (here > 0 === there > 0 || here === 0 || there === 0) return;
    const share = here / (here - there);
    kept.push({ x: point.x + share * (next.x - point.x), y: point.y + share * (next.y - point.y) });
  });
  return kept.length < 3 || convexArea(kept) < LEAST_AREA ? [] : kept;
}

/** What is left of a piece when all that lies in every one of the half-planes is taken out, in convex pieces. */
export function without(piece: Convex, halves: readonly HalfPlane[]): readonly Convex[] {
  const left: Convex[] = [];
  let inside = piece;
  for (const half of halves) {
    const outside = cut(inside, { a: -half.a, b: -half.b, c: -half.c });
    if (outside.length > 0) left.push(outside);
    inside = cut(inside, half);
    if (inside.length === 0) return left;
  }
  return left;
}

export function convexArea(piece: Convex): number {
  const origin = piece[0];
  if (origin === undefined) return 0;
  let twice = 0;
  for (let index = 1; index + 1 < piece.length; index++) {
    const [one, other] = [piece[index]!, piece[index + 1]!];
    twice += (one.x - origin.x) * (other.y - origin.y) - (other.x - origin.x) * (one.y - origin.y);
  }
  return twice / 2;
}

/** Where it would balance; of any outline that does not cross itself. */
export function middleOfArea(piece: Convex): Point {
  const origin = piece[0]!;
  let [twice, x, y] = [0, 0, 0];
  for (let index = 1; index + 1 < piece.length; index++) {
    const [one, other] = [piece[index]!, piece[index + 1]!];
    const part = (one.x - origin.x) * (other.y - origin.y) - (other.x - origin.x) * (one.y - origin.y);
    twice += part;
    x += part * (one.x + other.x - 2 * origin.x);
    y += part * (one.y + other.y - 2 * origin.y);
  }
  return { x: origin.x + x / (3 * twice), y: origin.y + y / (3 * twice) };
}

export function middle(piece: Convex): Point {
  const sum = piece.reduce((so, { x, y }) => ({ x: so.x + x, y: so.y + y }), { x: 0, y: 0 });
  return { x: sum.x / piece.length, y: sum.y / piece.length };
}

/** An edge walked with its piece on the left. */
export interface Edge {
  readonly from: Point;
  readonly to: Point;
}

export function edgesOf(piece: Convex): readonly Edge[] {
  return piece.map((from, index) => ({ from, to: piece[(index + 1) % piece.length]! }));
}

export function lengthOf({ from, to }: Edge): number {
  return Math.sqrt((to.x - from.x) * (to.x - from.x) + (to.y - from.y) * (to.y - from.y));
}

/** Two base units: a hundredth of a millimetre and less is the same place. */
const SAME = 2;

/** The stretch of an edge, from and to along it, that another walked the other way lies on. */
export function alongside(edge: Edge, other: Edge): readonly [number, number] | undefined {
  const length = lengthOf(edge);
  if (length <= SAME) return undefined;
  const ux = (edge.to.x - edge.from.x) / length;
  const uy = (edge.to.y - edge.from.y) / length;
  const off = ({ x, y }: Point): number => (x - edge.from.x) * -uy + (y - edge.from.y) * ux;
  const along = ({ x, y }: Point): number => (x - edge.from.x) * ux + (y - edge.from.y) * uy;
  if (Math.abs(off(other.from)) > SAME || Math.abs(off(other.to)) > SAME) return undefined;
  const [end, start] = [along(other.from), along(other.to)];
  const from = Math.max(0, start);
  const to = Math.min(length, end);
  return to - from > SAME ? [from, to] : undefined;
}

/** What of a stretch of a length the stretches given leave bare. */
export function bareStretches(
  length: number,
  taken: readonly (readonly [number, number])[],
): readonly (readonly [number, number])[] {
  const bare: [number, number][] = [];
  let at = 0;
  for (const [from, to] of [...taken].sort((one, other) => one[0] - other[0])) {
    if (from - at > SAME) bare.push([at, from]);
    at = Math.max(at, to);
  }
  if (length - at > SAME) bare.push([at, length]);
  return bare;
}
