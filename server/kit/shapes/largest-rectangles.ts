// The rectangles in a right-angled outline that no other rectangle in it holds: the bar and the leg of an L, each to its
// full length.
import type { Outline } from './outline.ts';
import { type Rectangle, rectanglesOf } from './region.ts';

/** In order from west to east, then south to north. */
export function largestRectangles(outline: Outline): readonly Rectangle[] {
  const xs = values(outline.map(({ x }) => x));
  const ys = values(outline.map(({ y }) => y));
  const filled = cellsOf(outline, xs, ys);
  const found: Rectangle[] = [];
  for (let west = 0; west + 1 < xs.length; west++)
    for (let east = west + 1; east < xs.length; east++)
      for (let south = 0; south + 1 < ys.length; south++)
        for (let north = south + 1; north < ys.length; north++) {
          const fits = (w: number, s: number, e: number, n: number): boolean =>
            w >= 0 && s >= 0 && e < xs.length && n < ys.length && allFilled(filled, w, s, e, n);
          if (!fits(west, south, east, north)) continue;
          const grows =
            fits(west - 1, south, east, north) ||
            fits(west, south - 1, east, north) ||
            fits(west, south, east + 1, north) ||
            fits(west, south, east, north + 1);
          if (!grows) found.push({ west: xs[west]!, south: ys[south]!, east: xs[east]!, north: ys[north]! });
        }
  return found;
}

function values(list: readonly number[]): readonly number[] {
  return [...new Set(list)].sort((a, b) => a - b);
}

/** How many cells of the grid are inside, south-west of each of its points. */
function cellsOf(outline: Outline, xs: readonly number[], ys: readonly number[]): readonly (readonly number[])[] {
  const parts = rectanglesOf(outline);
  const sums: number[][] = [ys.map(() => 0)];
  for (let column = 0; column + 1 < xs.length; column++) {
    const west = xs[column]!;
    const before = sums[column]!;
    let here = 0;
    sums.push([
      0,
      ...ys.slice(1).map((north, row) => {
        const south = ys[row]!;
        if (parts.some((part) => part.west <= west && part.east > west && part.south <= south && part.north >= north)) here += 1;
        return before[row + 1]! + here;
      }),
    ]);
  }
  return sums;
}

function allFilled(sums: readonly (readonly number[])[], west: number, south: number, east: number, north: number): boolean {
  const count = sums[east]![north]! - sums[west]![north]! - sums[east]![south]! + sums[west]![south]!;
  return count === (east - west) * (north - south);
}
