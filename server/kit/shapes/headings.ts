// Sides at any angle: which of eight ways each looks, and where slanted sides of two shapes lie along each other.
import type { Outline, Point } from './outline.ts';
import { lengthOfSide } from './outline.ts';
import { isRectangle, type Region } from './region.ts';
import type { Heading } from './walk.ts';

/** A side of a counter-clockwise outline, from corner to corner. */
export interface LookingSide {
  /** The nearest of eight ways that its outer face looks. */
  readonly looks: Heading;
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

export function sidesLooking(outline: Outline): readonly LookingSide[] {
  return outline.map((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    return { looks: looksOf(from, to), from, to, length: lengthOfSide(from, to) };
  });
}

/** The tangent of 22.5 degrees: nearer than that to north, south, east or west is that way. */
const EIGHTH = Math.sqrt(2) - 1;

function looksOf(from: Point, to: Point): Heading {
  // The inside lies to the left, so outward is to the right.
  const [x, y] = [to.y - from.y, from.x - to.x];
  const level = x > 0 ? 'east' : 'west';
  const upright = y > 0 ? 'north' : 'south';
  if (Math.abs(y) <= Math.abs(x) * EIGHTH) return level;
  return Math.abs(x) <= Math.abs(y) * EIGHTH ? upright : `${upright}${level}`;
}

/** Where one side lies along another, at most so far away. */
export interface Along {
  readonly gap: number;
  readonly length: number;
  /** The middle of the strip between them, and where its middle line begins and ends. */
  readonly middle: Point;
  readonly ends: readonly [Point, Point];
}

/** Sides that differ by less than about a degree run alike. */
const ALIKE = 1 / 64;

/**
 * Undefined where they do not run alike, nowhere beside each other, or further apart than `reach`. The gap is counted outward
 * from the first, and is never less than 0 by more than rounding.
 */
export function alongEachOther(one: LookingSide, other: LookingSide, reach: number): Along | undefined {
  const length = Math.sqrt(squareOf(one.from, one.to));
  if (!(length > 0)) return undefined;
  const [x, y] = [(one.to.x - one.from.x) / length, (one.to.y - one.from.y) / length];
  const along = (point: Point): number => (point.x - one.from.x) * x + (point.y - one.from.y) * y;
  const out = (point: Point): number => (point.x - one.from.x) * y - (point.y - one.from.y) * x;
  const [a, b] = [other.from, other.to];
  if (Math.abs(out(a) - out(b)) > ALIKE * Math.sqrt(squareOf(a, b))) return undefined;
  const gap = (out(a) + out(b)) / 2;
  const [from, to] = [Math.max(0, Math.min(along(a), along(b))), Math.min(length, Math.max(along(a), along(b)))];
  if (gap < -ROUNDING || gap > reach || !(to > from)) return undefined;
  const at = (far: number): Point => ({ x: one.from.x + x * far + (y * gap) / 2, y: one.from.y + y * far - (x * gap) / 2 });
  return {
    gap: Math.max(0, Math.round(gap)),
    length: Math.round(to - from),
    middle: at((from + to) / 2),
    ends: [at(from), at(to)],
  };
}
const ROUNDING = 4;

function squareOf(from: Point, to: Point): number {
  return (to.x - from.x) * (to.x - from.x) + (to.y - from.y) * (to.y - from.y);
}

export function isSlantedSide({ from, to }: LookingSide): boolean {
  return from.x !== to.x && from.y !== to.y;
}

/** A stretch where slanted sides of two shapes face each other. */
export interface SlantedFacing extends Along {
  /** Seen from the first shape. */
  readonly looks: Heading;
}

export function slantedFacings(first: Region, second: Region, reach: number): readonly SlantedFacing[] {
  if (isRectangle(first) || isRectangle(second)) return [];
  const others = sidesLooking(second).filter(isSlantedSide);
  return sidesLooking(first)
    .filter(isSlantedSide)
    .flatMap((side) =>
      others.flatMap((other) => {
        const against =
          (side.to.x - side.from.x) * (other.to.x - other.from.x) + (side.to.y - side.from.y) * (other.to.y - other.from.y) < 0;
        const found = against ? alongEachOther(side, other, reach) : undefined;
        return found === undefined ? [] : [{ looks: side.looks, ...found }];
      }),
    );
}
