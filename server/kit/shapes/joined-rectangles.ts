// An outline made of rectangles put together and cut away, in order.
import { type Outline, outlineFromCorners } from './outline.ts';
import type { Rectangle } from './region.ts';

export interface Part extends Rectangle {
  readonly how: 'plus' | 'less';
}

/** Undefined where nothing is left, or it is not one piece without a hole. Pieces that meet in a corner alone are two. */
export function outlineOfRectangles(parts: readonly Part[]): Outline | undefined {
  const xs = values(parts.flatMap(({ west, east }) => [west, east]));
  const ys = values(parts.flatMap(({ south, north }) => [south, north]));
  const filled = (column: number, row: number): boolean => {
    const [west, south] = [xs[column], ys[row]];
    if (west === undefined || south === undefined || column + 1 >= xs.length || row + 1 >= ys.length) return false;
    return parts.reduce(
      (so, part) =>
        part.west <= west && part.east > west && part.south <= south && part.north > south ? part.how === 'plus' : so,
      false,
    );
  };
  // Sides of filled cells that have none beyond them, each walked with the cell on its left: from its start to its end.
  const next = new Map<string, readonly [number, number]>();
  let sides = 0;
  const add = (fromX: number, fromY: number, toX: number, toY: number): void => {
    sides += 1;
    next.set(`${fromX} ${fromY}`, [toX, toY]);
  };
  for (let column = 0; column + 1 < xs.length; column++)
    for (let row = 0; row + 1 < ys.length; row++) {
      if (!filled(column, row)) continue;
      if (!filled(column, row - 1)) add(column, row, column + 1, row);
      if (!filled(column + 1, row)) add(column + 1, row, column + 1, row + 1);
      if (!filled(column, row + 1)) add(column + 1, row + 1, column, row + 1);
      if (!filled(column - 1, row)) add(column, row + 1, column, row);
    }
  // Two sides that begin in one point are pieces that meet in a corner.
  if (sides === 0 || next.size !== sides) return undefined;
  const [start] = next.values();
  const walked: [number, number][] = [];
  for (let at = start!; walked.length === 0 || at[0] !== start![0] || at[1] !== start![1]; at = next.get(`${at[0]} ${at[1]}`)!)
    walked.push([at[0], at[1]]);
  // What one walk does not come by is another piece, or a hole.
  if (walked.length !== sides) return undefined;
  return outlineFromCorners(walked.map(([column, row]) => ({ x: xs[column]!, y: ys[row]! })));
}

function values(list: readonly number[]): readonly number[] {
  return [...new Set(list)].sort((a, b) => a - b);
}
