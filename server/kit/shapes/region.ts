// Areas of several outlines together: what they cover, what they cover twice, what of one set the other leaves bare. One
// sweep from west to east over exact numbers serves all that are right-angled; slanted ones have their own.
import { bounds, contains, isSlanted, type Outline, type Point } from './outline.ts';
import { slantedAreaWhere } from './slanted-area.ts';

/** An upright rectangle by its four edges. */
export interface Rectangle {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** A rectangle, or an outline that does not cross itself. */
export type Region = Rectangle | Outline;

/** The rectangle of a size, placed by its south-west corner. */
export function rectangleAt(corner: Point, width: number, depth: number): Rectangle {
  return { west: corner.x, south: corner.y, east: corner.x + width, north: corner.y + depth };
}

/** The area covered by at least one of the regions. */
export function unionArea(regions: readonly Region[]): number {
  return areaWhere(regions, [], (first) => first > 0);
}

/** The area covered by two or more of the regions (counted once, however many lie there). */
export function overlapArea(regions: readonly Region[]): number {
  return areaWhere(regions, [], (first) => first > 1);
}

/** The area covered by both sets. */
export function sharedArea(first: readonly Region[], second: readonly Region[]): number {
  return areaWhere(first, second, (a, b) => a > 0 && b > 0);
}

/** The area that the first set covers and the second leaves bare. */
export function differenceArea(first: readonly Region[], second: readonly Region[]): number {
  return areaWhere(first, second, (a, b) => a > 0 && b === 0);
}

/** Whether all of the inner region lies within the outer one; edges may touch. */
export function holds(outer: Region, inner: Region): boolean {
  return differenceArea([inner], [outer]) === 0;
}

/** The pairs of regions that overlap, by their numbers in the list, with the area each pair shares. */
export function overlaps(
  regions: readonly Region[],
): readonly { readonly first: number; readonly second: number; readonly area: number }[] {
  const boxes = regions.map(boundsOf);
  const found: { first: number; second: number; area: number }[] = [];
  for (let first = 0; first < regions.length; first++) {
    for (let second = first + 1; second < regions.length; second++) {
      if (!boxesOverlap(boxes[first]!, boxes[second]!)) continue;
      const area = sharedArea([regions[first]!], [regions[second]!]);
      if (area > 0) found.push({ first, second, area });
    }
  }
  return found;
}

const slanted = (region: Region): boolean => !isRectangle(region) && isSlanted(region);

function cornersOf(region: Region): Outline {
  if (!isRectangle(region)) return region;
  const { west, south, east, north } = region;
  return [
    { x: west, y: south },
    { x: east, y: south },
    { x: east, y: north },
    { x: west, y: north },
  ];
}

/** A right-angled outline cut into rectangles at every corner's x; they do not overlap and together are the outline. */
export function rectanglesOf(region: Region): readonly Rectangle[] {
  if (isRectangle(region)) return [region];
  const columns = [...new Set(region.map(({ x }) => x))].sort((a, b) => a - b);
  const found: Rectangle[] = [];
  for (let index = 0; index + 1 < columns.length; index++) {
    const west = columns[index]!;
    const east = columns[index + 1]!;
    const heights = sidesOver(region, west, east);
    for (let pair = 0; pair + 1 < heights.length; pair += 2) {
      found.push({ west, east, south: heights[pair]!, north: heights[pair + 1]! });
    }
  }
  return found;
}

export function boundsOf(region: Region): Rectangle {
  return isRectangle(region) ? region : bounds(region);
}

export function isRectangle(region: Region): region is Rectangle {
  return 'west' in region;
}

/** Whether a point lies inside a region or on its edge. */
export function regionContains(region: Region, point: Point): boolean {
  if (!isRectangle(region)) return contains(region, point);
  return point.x >= region.west && point.x <= region.east && point.y >= region.south && point.y <= region.north;
}

interface Piece extends Rectangle {
  readonly second: boolean;
}

/** The area of all places where so many regions of the first and so many of the second set lie as `keep` asks. */
function areaWhere(
  first: readonly Region[],
  second: readonly Region[],
  keep: (first: number, second: number) => boolean,
): number {
  if (first.some(slanted) || second.some(slanted)) return slantedAreaWhere(first.map(cornersOf), second.map(cornersOf), keep);
  const pieces = [...piecesOf(first, false), ...piecesOf(second, true)].sort((a, b) => a.west - b.west);
  const columns = [...new Set(pieces.flatMap(({ west, east }) => [west, east]))].sort((a, b) => a - b);
  let active: Piece[] = [];
  let next = 0;
  let sum = 0;
  for (let index = 0; index + 1 < columns.length; index++) {
    const west = columns[index]!;
    active = active.filter(({ east }) => east > west);
    while (next < pieces.length && pieces[next]!.west === west) active.push(pieces[next++]!);
    sum += (columns[index + 1]! - west) * heightWhere(active, keep);
  }
  return sum;
}

function piecesOf(regions: readonly Region[], second: boolean): readonly Piece[] {
  return regions
    .flatMap(rectanglesOf)
    .filter(({ west, east, south, north }) => west < east && south < north)
    .map((rectangle) => ({ ...rectangle, second }));
}

function heightWhere(active: readonly Piece[], keep: (first: number, second: number) => boolean): number {
  const edges = active
    .flatMap(({ south, north, second }) => [
      { at: south, step: 1, second },
      { at: north, step: -1, second },
    ])
    .sort((a, b) => a.at - b.at);
  let inFirst = 0;
  let inSecond = 0;
  let height = 0;
  edges.forEach(({ at, step, second }, index) => {
    if (second) inSecond += step;
    else inFirst += step;
    const following = edges[index + 1];
    if (following !== undefined && keep(inFirst, inSecond)) height += following.at - at;
  });
  return height;
}

/** Where the outline's level sides lie over a column, from south to north. */
function sidesOver(outline: Outline, west: number, east: number): readonly number[] {
  const heights: number[] = [];
  outline.forEach((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    if (from.y === to.y && Math.min(from.x, to.x) <= west && Math.max(from.x, to.x) >= east) heights.push(from.y);
  });
  return heights.sort((a, b) => a - b);
}

function boxesOverlap(a: Rectangle, b: Rectangle): boolean {
  return a.west < b.east && b.west < a.east && a.south < b.north && b.south < a.north;
}
