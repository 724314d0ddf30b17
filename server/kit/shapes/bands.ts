// Shapes cut into bands of one depth, as sheets and lengths off a roll lie on them: how far a shape reaches in each.
import type { Outline, Point } from './outline.ts';

export interface Band {
  readonly depth: number;
  /** Where the shapes lie in it, from west to east: as far as they reach anywhere in the band. */
  readonly reaches: readonly (readonly [from: number, to: number])[];
}

/** From the south edge of the shapes northward; the last band is as deep as what is left. Outlines do not cross themselves. */
export function bandsOf(shapes: readonly Outline[], depth: number): readonly Band[] {
  const ys = shapes.flatMap((shape) => shape.map(({ y }) => y));
  const [south, north] = [Math.min(...ys), Math.max(...ys)];
  if (!(depth > 0) || !(north > south)) return [];
  const bands: Band[] = [];
  for (let nth = 0; south + nth * depth < north - EXACT * (north - south); nth++) {
    const [low, high] = [south + nth * depth, Math.min(north, south + (nth + 1) * depth)];
    bands.push({ depth: high - low, reaches: joined(shapes.flatMap((shape) => reachesIn(shape, low, high))) });
  }
  return bands;
}

/** East becomes north: bands of it run upright. */
export function turned(shapes: readonly Outline[]): readonly Outline[] {
  return shapes.map((shape) => shape.map(({ x, y }) => ({ x: y, y: x })));
}

function reachesIn(shape: Outline, low: number, high: number): readonly (readonly [number, number])[] {
  const levels = [...new Set([low, high, ...shape.map(({ y }) => y).filter((y) => y > low && y < high)])].sort((a, b) => a - b);
  return levels.slice(1).flatMap((top, index) => {
    const foot = levels[index]!;
    const sides = crossing(shape, (foot + top) / 2).map(([from, to]) => ({ foot: at(from, to, foot), top: at(from, to, top) }));
    sides.sort((a, b) => a.foot + a.top - b.foot - b.top);
    return sides.flatMap((west, nth): (readonly [number, number])[] => {
      const east = sides[nth + 1];
      return nth % 2 === 1 || east === undefined ? [] : [[Math.min(west.foot, west.top), Math.max(east.foot, east.top)]];
    });
  });
}

function crossing(shape: Outline, y: number): readonly (readonly [Point, Point])[] {
  return shape.flatMap((from, index): (readonly [Point, Point])[] => {
    const to = shape[(index + 1) % shape.length]!;
    return from.y < y !== to.y < y ? [[from, to]] : [];
  });
}

function at(from: Point, to: Point, y: number): number {
  return from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y);
}

function joined(reaches: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const whole: [number, number][] = [];
  for (const [from, to] of [...reaches].sort((a, b) => a[0] - b[0])) {
    const last = whole[whole.length - 1];
    if (last !== undefined && from <= last[1] + EXACT * Math.abs(last[1])) last[1] = Math.max(last[1], to);
    else whole.push([from, to]);
  }
  return whole;
}

const EXACT = 1e-9;
