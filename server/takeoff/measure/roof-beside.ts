// What a storey leaves bare of the level that it stands on: the outline of a roof beside it, and where that touches its walls.
import { constant } from '#kit/quantity';
import { outlineOfRectangles } from '#kit/shapes/joined-rectangles';
import { contains, type Direction, type Outline } from '#kit/shapes/outline';
import { rectanglesOf } from '#kit/shapes/region';
import { levelBody } from '#model/facts/level';
import { type FloorShape, type Made, outlined } from '#model/floor-shape';
import type { Level } from '#model/model';

const nowhere = constant('from the south-west corner', 0, 'length');

export interface Beside {
  readonly shape: FloorShape;
  /** Its sides that lie along walls of the storey, all that look one way or none. */
  readonly walled: ReadonlySet<Direction>;
}

/** Undefined where nothing is left, or several pieces are. */
export function besideStorey(level: Level, storey: Level): Beside | undefined {
  const [lower, upper] = [levelBody(level), levelBody(storey)];
  if (lower === undefined || upper === undefined || !lower.square || !upper.square) return undefined;
  const east = storey.given.at?.value.east ?? nowhere;
  const north = storey.given.at?.value.north ?? nowhere;
  const count = lower.made.lengths.length;
  const made: Made = {
    key: `${lower.made.key} less ${upper.made.key}`,
    lengths: [...lower.made.lengths, ...upper.made.lengths, east, north],
    outline: (values) => {
      const whole = lower.made.outline(values.slice(0, count));
      const taken = upper.made.outline(values.slice(count, -2));
      if (whole === undefined || taken === undefined) return undefined;
      const parts = rectanglesOf(moved(taken, values.at(-2) ?? 0, values.at(-1) ?? 0));
      return outlineOfRectangles([
        ...rectanglesOf(whole).map((each) => ({ how: 'plus' as const, ...each })),
        ...parts.map((each) => ({ how: 'less' as const, ...each })),
      ]);
    },
  };
  const shape = outlined(made, 'of the level, less the storey that stands on it');
  if (shape === undefined) return undefined;
  return { shape, walled: walledSides(shape.outline, moved(upper.outline, east.value, north.value)) };
}

function moved(outline: Outline, east: number, north: number): Outline {
  return outline.map(({ x, y }) => ({ x: x + east, y: y + north }));
}

/** A hair outside the middle of a side lies the storey, or it does not. */
function walledSides(outline: Outline, storey: Outline): ReadonlySet<Direction> {
  const walled = new Set<Direction>();
  const free = new Set<Direction>();
  outline.forEach((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    const looks: Direction = from.y === to.y ? (to.x > from.x ? 'south' : 'north') : to.y > from.y ? 'east' : 'west';
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const out = {
      x: middle.x + (looks === 'east' ? 1 : looks === 'west' ? -1 : 0),
      y: middle.y + (looks === 'north' ? 1 : looks === 'south' ? -1 : 0),
    };
    (contains(storey, out) ? walled : free).add(looks);
  });
  for (const side of free) walled.delete(side);
  return walled;
}
