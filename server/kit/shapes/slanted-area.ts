// Areas of several outlines together where sides slant: a sweep from west to east over strips in which no sides cross, so that
// each strip is made of trapezoids.
import { INCH } from '../dimension.ts';
import type { Outline } from './outline.ts';

interface Edge {
  readonly west: number;
  readonly east: number;
  /** Its height at an x. */
  readonly at: (x: number) => number;
  /** 1 where its outline lies to the north of it, else -1. */
  readonly step: number;
  readonly second: boolean;
}

/** Corners of slanted sides lie on a grid, and drawings round them: slivers of less than four square inches are none. */
const LEAST = 4 * INCH * INCH;

/** The area of all places where so many outlines of the first and so many of the second set lie as `keep` asks. */
export function slantedAreaWhere(
  first: readonly Outline[],
  second: readonly Outline[],
  keep: (first: number, second: number) => boolean,
): number {
  const edges = [...first.flatMap((each) => edgesOf(each, false)), ...second.flatMap((each) => edgesOf(each, true))];
  const cuts = [...new Set([...edges.flatMap(({ west, east }) => [west, east]), ...crossings(edges)])].sort((a, b) => a - b);
  let sum = 0;
  for (let index = 0; index + 1 < cuts.length; index++) {
    const [west, east] = [cuts[index]!, cuts[index + 1]!];
    const middle = (west + east) / 2;
    const over = edges
      .filter((edge) => edge.west <= west && edge.east >= east)
      .map(({ at, step, second: other }) => ({ height: at(middle), step, other }))
      .sort((a, b) => a.height - b.height);
    let [inFirst, inSecond] = [0, 0];
    over.forEach(({ height, step, other }, nth) => {
      if (other) inSecond += step;
      else inFirst += step;
      const next = over[nth + 1];
      if (next !== undefined && keep(inFirst, inSecond)) sum += (east - west) * (next.height - height);
    });
  }
  return sum < LEAST ? 0 : sum;
}

/** Upright sides bound strips and lie in none. */
function edgesOf(outline: Outline, second: boolean): readonly Edge[] {
  return outline.flatMap((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    if (from.x === to.x) return [];
    const slope = (to.y - from.y) / (to.x - from.x);
    return [
      {
        west: Math.min(from.x, to.x),
        east: Math.max(from.x, to.x),
        at: (x: number) => from.y + (x - from.x) * slope,
        step: to.x > from.x ? 1 : -1,
        second,
      },
    ];
  });
}

/** Where two edges change places. */
function crossings(edges: readonly Edge[]): readonly number[] {
  const found: number[] = [];
  edges.forEach((one, index) => {
    for (const other of edges.slice(index + 1)) {
      const [west, east] = [Math.max(one.west, other.west), Math.min(one.east, other.east)];
      if (west >= east) continue;
      const [start, end] = [one.at(west) - other.at(west), one.at(east) - other.at(east)];
      if (start * end < 0) found.push(west + ((east - west) * start) / (start - end));
    }
  });
  return found;
}
