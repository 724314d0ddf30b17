// Outlines walked along their sides, in eight directions; and what a walk lacks to come back to its beginning.
import { INCH } from '../dimension.ts';
import { type Direction, ORIGIN, type Outline, outlineFromCorners, type Point } from './outline.ts';

/** The four sides and the four ways between them, at 45 degrees. */
export type Heading = Direction | 'northeast' | 'southeast' | 'southwest' | 'northwest';

/** One side of a walk round an outline: which way, how far. */
export interface Step {
  readonly direction: Heading;
  readonly length: number;
}

/**
 * A walk with slanted sides closes where it comes back within an eighth of an inch: their lengths are hardly ever whole. They
 * take up what is left, and the other sides stay as they were given.
 */
const SLACK = INCH / 8;

/**
 * The outline that a walk goes round, wherever along it the walk begins and whichever way round it goes: corners only,
 * counter-clockwise. Undefined where the walk does not come back to its beginning or encloses nothing.
 */
export function outlineFromWalk(steps: readonly Step[], from: Point = ORIGIN): Outline | undefined {
  const moves = closedMoves(straightened(steps));
  if (moves === undefined) return undefined;
  let { x, y } = from;
  return outlineFromCorners(moves.map((move) => ({ x: (x += move.x), y: (y += move.y) })));
}

/** Whether a walk ends where it began. */
export function isClosed(steps: readonly Step[]): boolean {
  return stepsToClose(steps).length === 0;
}

/** What a walk lacks to come back to its beginning: no step, one, or two. */
export function stepsToClose(steps: readonly Step[]): readonly Step[] {
  const { x, y } = endOf(steps.map(moveOf));
  if (closes(steps, x, y)) return [];
  const missing: readonly Step[] = [
    { direction: x > 0 ? 'west' : 'east', length: Math.abs(x) },
    { direction: y > 0 ? 'south' : 'north', length: Math.abs(y) },
  ];
  return missing.filter(({ length }) => length !== 0);
}

const EAST: { readonly [heading in Heading]: number } = {
  east: 1,
  north: 0,
  west: -1,
  south: 0,
  northeast: 1,
  southeast: 1,
  southwest: -1,
  northwest: -1,
};
const NORTH: { readonly [heading in Heading]: number } = {
  east: 0,
  north: 1,
  west: 0,
  south: -1,
  northeast: 1,
  southeast: -1,
  southwest: -1,
  northwest: 1,
};

function moveOf({ direction, length }: Step): Point {
  const far = slants(direction) ? Math.round(length * Math.sqrt(0.5)) : length;
  return { x: EAST[direction] * far, y: NORTH[direction] * far };
}

function slants(heading: Heading): boolean {
  return EAST[heading] !== 0 && NORTH[heading] !== 0;
}

function endOf(moves: readonly Point[]): Point {
  return moves.reduce((so, move) => ({ x: so.x + move.x, y: so.y + move.y }), ORIGIN);
}

function closes(steps: readonly Step[], x: number, y: number): boolean {
  if (x === 0 && y === 0) return true;
  return Math.abs(x) <= SLACK && Math.abs(y) <= SLACK && steps.some(({ direction }) => slants(direction));
}

/** Undefined where they do not come back; what slanted sides lack or have too much is shared among them. */
function closedMoves(steps: readonly Step[]): readonly Point[] | undefined {
  const moves = steps.map(moveOf);
  let { x, y } = endOf(moves);
  if (!closes(steps, x, y)) return undefined;
  let left = steps.filter(({ direction }) => slants(direction)).length;
  return moves.map((move, index) => {
    if (!slants(steps[index]!.direction)) return move;
    const [takesX, takesY] = [Math.round(x / left), Math.round(y / left)];
    left -= 1;
    x -= takesX;
    y -= takesY;
    return { x: move.x - takesX, y: move.y - takesY };
  });
}

/** Steps that go on the same way are one. */
function straightened(steps: readonly Step[]): readonly Step[] {
  const found: Step[] = [];
  for (const step of steps) {
    const last = found.at(-1);
    if (last?.direction === step.direction) found[found.length - 1] = { ...last, length: last.length + step.length };
    else found.push(step);
  }
  return found;
}
