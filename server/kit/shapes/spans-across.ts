// Lines laid across an outline at a spacing, and how long each is inside it.
import { INCH } from '../dimension.ts';
import { bounds, type Outline, type Point } from './outline.ts';

/** Lengths are told apart by a sixteenth of an inch. */
const STEP = INCH / 16;
/** Corners of slanted sides lie on whole units, and lines a hair inside an end. */
const ROUNDING = 2;

/** The lengths of lines that run one way, one at each space and one at the far end, each with how many there are. */
export function spansAcross(outline: Outline, run: 'north-south' | 'east-west', spacing: number): ReadonlyMap<number, number> {
  const lengths = new Map<number, number>();
  const box = bounds(outline);
  const [from, to] = run === 'north-south' ? [box.west, box.east] : [box.south, box.north];
  const spaces = Math.ceil((to - from) / spacing - 1e-9);
  if (!(spacing > 0) || spaces > 10_000) return lengths;
  const turned = ({ x, y }: Point): Point => (run === 'north-south' ? { x, y } : { x: y, y: x });
  for (let index = 0; index <= spaces; index++) {
    // A hair to both sides: what lies along a side is as long as that, or as what lies beyond it.
    const at = Math.min(Math.max(from + index * spacing, from + 1), to - 1);
    const [before, after] = [lengthsAt(outline.map(turned), at - 0.5), lengthsAt(outline.map(turned), at + 0.5)];
    for (const length of added(after) > added(before) ? after : before) {
      const long = Math.ceil((length - ROUNDING) / STEP) * STEP;
      if (long > 0) lengths.set(long, (lengths.get(long) ?? 0) + 1);
    }
  }
  return lengths;
}

function added(lengths: readonly number[]): number {
  return lengths.reduce((sum, length) => sum + length, 0);
}

function lengthsAt(outline: Outline, at: number): readonly number[] {
  const meets: number[] = [];
  outline.forEach((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    if (from.x > at !== to.x > at) meets.push(from.y + ((to.y - from.y) * (at - from.x)) / (to.x - from.x));
  });
  meets.sort((a, b) => a - b);
  return meets.flatMap((low, index) => (index % 2 === 0 && meets[index + 1] !== undefined ? [meets[index + 1]! - low] : []));
}
