// Several bodies of sloping planes in one place: which parts of which planes are seen from above, and the lines where they
// meet: over a crest, in a trough, or one above another.
import {
  alongside,
  bareStretches,
  type Convex,
  cut,
  type Edge,
  edgesOf,
  type HalfPlane,
  lengthOf,
  middle,
  rectangleCorners,
  rectangleHalves,
  without,
} from './convex.ts';
import type { Point } from './outline.ts';
import type { Rectangle } from './region.ts';

/** Height over the plane: a x + b y + c. */
export type Plane = HalfPlane;

/** Over a rectangle, as high everywhere as the lowest of its planes. */
export interface Body {
  readonly over: Rectangle;
  readonly planes: readonly Plane[];
}

/** What is seen of one plane of one body. */
export interface Face {
  readonly body: number;
  readonly plane: number;
  readonly slope: Plane;
  readonly pieces: readonly Convex[];
}

export interface Line {
  readonly kind: 'crest' | 'trough' | 'above' | 'edge';
  /** Walked with the face on the left. */
  readonly edge: Edge;
  readonly face: number;
  /** The other face; absent at the edge of all. */
  readonly other: number | undefined;
}

/** Where two bodies are equally high, the earlier is seen. */
export function facesOf(bodies: readonly Body[]): readonly Face[] {
  return bodies.flatMap(({ over, planes }, body) =>
    planes.flatMap((slope, plane) => {
      let whole = rectangleCorners(over);
      planes.forEach((other, index) => {
        if (index !== plane && whole.length > 0) whole = cut(whole, less(other, slope));
      });
      let pieces: readonly Convex[] = whole.length === 0 ? [] : [whole];
      bodies.forEach((other, index) => {
        if (index === body || pieces.length === 0) return;
        const higher = higherThan(slope, other, index < body);
        if (higher !== undefined) pieces = pieces.flatMap((piece) => without(piece, higher));
      });
      return pieces.length === 0 ? [] : [{ body, plane, slope, pieces }];
    }),
  );
}

function less(high: Plane, low: Plane): HalfPlane {
  return { a: high.a - low.a, b: high.b - low.b, c: high.c - low.c };
}

const FLAT = 1e-9;
/** Heights that differ by less are the same. */
const LEVEL = 2;

/** Where a body stands higher than a plane, as half-planes; undefined where it does so nowhere. */
function higherThan(slope: Plane, { over, planes }: Body, andLevel: boolean): readonly HalfPlane[] | undefined {
  const halves: HalfPlane[] = [];
  for (const plane of planes) {
    const by = less(plane, slope);
    if (Math.abs(by.a) > FLAT || Math.abs(by.b) > FLAT) {
      halves.push(by);
      continue;
    }
    const higher = andLevel ? by.c >= -LEVEL : by.c > LEVEL;
    if (!higher) return undefined;
  }
  return [...rectangleHalves(over), ...halves];
}

export function heightAt({ a, b, c }: Plane, { x, y }: Point): number {
  return a * x + b * y + c;
}

/** Each line between two faces once, from the earlier face, or from the higher where one stands above the other. */
export function linesOf(faces: readonly Face[]): readonly Line[] {
  const edges = faces.flatMap(({ pieces }, face) =>
    pieces.flatMap((piece) =>
      edgesOf(piece).map((edge) => ({ edge, face, inside: middle(piece), taken: [] as [number, number][] })),
    ),
  );
  const lines: Line[] = [];
  for (let at = 0; at < edges.length; at++) {
    const one = edges[at]!;
    for (let next = at + 1; next < edges.length; next++) {
      const other = edges[next]!;
      const stretch = alongside(one.edge, other.edge);
      if (stretch === undefined) continue;
      one.taken.push([...stretch]);
      const back = alongside(other.edge, one.edge);
      if (back !== undefined) other.taken.push([...back]);
      if (one.face === other.face) continue;
      const line = meeting(one, other, stretch, faces);
      if (line !== undefined) lines.push(line);
    }
  }
  for (const { edge, face, taken } of edges)
    for (const bare of bareStretches(lengthOf(edge), taken))
      lines.push({ kind: 'edge', edge: stretchOf(edge, bare), face, other: undefined });
  return lines;
}

interface Side {
  readonly edge: Edge;
  readonly face: number;
  readonly inside: Point;
}

function meeting(one: Side, other: Side, stretch: readonly [number, number], faces: readonly Face[]): Line | undefined {
  const edge = stretchOf(one.edge, stretch);
  const at = { x: (edge.from.x + edge.to.x) / 2, y: (edge.from.y + edge.to.y) / 2 };
  const [a, b] = [faces[one.face]!.slope, faces[other.face]!.slope];
  const above = heightAt(a, at) - heightAt(b, at);
  if (above > LEVEL) return { kind: 'above', edge, face: one.face, other: other.face };
  if (above < -LEVEL) return { kind: 'above', edge: { from: edge.to, to: edge.from }, face: other.face, other: one.face };
  // On its own side each plane is seen: where it is the higher of the two there, they meet in a trough.
  const rises = heightAt(a, one.inside) - heightAt(b, one.inside);
  if (Math.abs(rises) <= LEVEL) return undefined;
  return { kind: rises > 0 ? 'trough' : 'crest', edge, face: one.face, other: other.face };
}

function stretchOf({ from, to }: Edge, [start, end]: readonly [number, number]): Edge {
  const length = lengthOf({ from, to });
  const at = (along: number): Point => ({
    x: from.x + ((to.x - from.x) * along) / length,
    y: from.y + ((to.y - from.y) * along) / length,
  });
  return { from: at(start), to: at(end) };
}
