// Which sides of two shapes look at each other, over what stretch, and how wide the gap between them is.
import type { Direction } from './outline.ts';
import { boundsOf, isRectangle, type Region } from './region.ts';

/** A side of a shape: which way its outer face looks, where it lies across that way, and from where to where it runs. */
export interface Side {
  readonly looks: Direction;
  /** x of a side that looks east or west, y of one that looks north or south. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** A stretch where a side of one shape faces a side of another. `looks` is seen from the first shape. */
export interface Facing {
  readonly looks: Direction;
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** 0 where the sides touch. */
  readonly gap: number;
}

/** The level and upright sides of a shape, counter-clockwise. The outline must not cross itself. */
export function sidesOf(region: Region): readonly Side[] {
  if (isRectangle(region)) {
    const { west, south, east, north } = region;
    return [
      { looks: 'south', at: south, from: west, to: east },
      { looks: 'east', at: east, from: south, to: north },
      { looks: 'north', at: north, from: west, to: east },
      { looks: 'west', at: west, from: south, to: north },
    ];
  }
  // Counter-clockwise, the inside lies to the left of every side.
  return region.flatMap((from, index): Side | [] => {
    const to = region[(index + 1) % region.length]!;
    if (from.y === to.y)
      return { looks: to.x > from.x ? 'south' : 'north', at: from.y, from: Math.min(from.x, to.x), to: Math.max(from.x, to.x) };
    if (from.x !== to.x) return [];
    return { looks: to.y > from.y ? 'east' : 'west', at: from.x, from: Math.min(from.y, to.y), to: Math.max(from.y, to.y) };
  });
}

/**
 * Where two shapes face each other with a gap of at most `reach`: for two rectangles one stretch or none. Shapes that
 * meet only in a corner do not face each other. What stands between them is not asked.
 */
export function facings(first: Region, second: Region, reach = Number.POSITIVE_INFINITY): readonly Facing[] {
  const found: Facing[] = [];
  const others = sidesOf(second);
  for (const { looks, at, from, to } of sidesOf(first)) {
    for (const other of others) {
      if (other.looks !== OPPOSITE[looks]) continue;
      const gap = looks === 'east' || looks === 'north' ? other.at - at : at - other.at;
      const start = Math.max(from, other.from);
      const end = Math.min(to, other.to);
      if (gap >= 0 && gap <= reach && start < end) found.push({ looks, at, from: start, to: end, gap });
    }
  }
  return found;
}

/** All facings among shapes, each pair once, in the order of the list; `first` and `second` are numbers in it. */
export function allFacings(
  regions: readonly Region[],
  reach: number,
): readonly (Facing & { readonly first: number; readonly second: number })[] {
  const boxes = regions.map(boundsOf);
  const byWest = boxes.map((_, index) => index).sort((a, b) => boxes[a]!.west - boxes[b]!.west || a - b);
  const found: (Facing & { first: number; second: number })[] = [];
  byWest.forEach((one, place) => {
    for (let next = place + 1; next < byWest.length; next++) {
      const other = byWest[next]!;
      if (boxes[other]!.west > boxes[one]!.east + reach) break;
      const [first, second] = one < other ? [one, other] : [other, one];
      for (const facing of facings(regions[first]!, regions[second]!, reach)) found.push({ ...facing, first, second });
    }
  });
  return found.sort((a, b) => a.first - b.first || a.second - b.second);
}

const OPPOSITE: { readonly [direction in Direction]: Direction } = { east: 'west', west: 'east', north: 'south', south: 'north' };
