// The surfaces that sheets, rolls and tile are laid out on: each wall of a room or level, each part of a floor or ceiling.
// Made when somebody lays something: areas need none.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { isSlanted, type Outline, type Point } from '#kit/shapes/outline';
import { rectanglesOf } from '#kit/shapes/region';
import type { FloorShape } from '#model/floor-shape';
import type { Room } from '#model/model';
import type { Face, FaceOpening } from '../lines.ts';
import type { Beside } from './layout.ts';
import type { Held } from './openings.ts';
import { facesOfParts, type Hung, partsIn, partsLess, sidesOfFloor, wholeParts, withHung } from './wall-parts.ts';

type Length = Quantity<'length'>;

const restOf = form('rest of the wall', 'wall − stretch taken out', (wall = 0, out = 0) => Math.max(0, wall - out));
const stretch = form('stretch taken out', 'area ÷ height', (area = 0, height = 1) => (height > 0 ? area / height : 0));

/** The walls round a floor, each named by the way its outside looks; `spots` are the places of openings, where they are known. */
export function sideFaces(
  shape: FloorShape,
  height: Length,
  held: readonly Held[],
  spots: readonly (Point | undefined)[] = [],
): readonly Face[] {
  const sides = sidesOfFloor(shape);
  const hung = held.map((each, nth): Hung => ({ held: each, spot: spots[nth] }));
  return facesOfParts(withHung(wholeParts(sides), sides, hung, []), height);
}

/** Of a room's sides only what lies along some rooms, or all but that. */
export type Where = { readonly only: readonly Beside[] } | { readonly less: readonly Beside[] };

/** The walls of a room among others: without what is open to them. */
export function roomFaces(
  shape: FloorShape,
  height: Length,
  hung: readonly Hung[],
  beside: readonly Beside[],
  where: Where,
): readonly Face[] {
  const sides = sidesOfFloor(shape);
  const parts =
    'only' in where
      ? partsIn(sides, where.only)
      : partsLess(wholeParts(sides), [...beside.filter(({ open }) => open), ...where.less]);
  return facesOfParts(withHung(parts, sides, hung, beside, 'only' in where), height);
}

/** The walls of a room whose lengths alone are told: openings hang in the longest. */
export function toldFaces(told: readonly Length[], height: Length, hung: readonly Hung[]): readonly Face[] {
  const longest = told.reduce((best, { value }, at) => (value > told[best]!.value ? at : best), 0);
  const openings = hung.flatMap(({ held }) => openingsOf(held));
  return told.map((length, at) => ({ label: `wall ${at + 1}`, length, height, openings: at === longest ? openings : [] }));
}

/** Each closet's walls, seen from the room and from inside, both with the closet's door. `doors` are those of closets that have one. */
export function closetFaces(room: Room, walls: readonly Length[], height: Length, doors: readonly Held[]): readonly Face[] {
  let next = 0;
  return room.given.closet.flatMap(({ value }, nth) => {
    const door = value.door === undefined ? undefined : doors[next++];
    const openings = door === undefined ? [] : openingsOf(door);
    const name = value.side === undefined ? 'closet' : `closet in the ${value.side}`;
    return [`${name}, front`, `${name}, inside`].map((label): Face => ({ label, length: walls[nth]!, height, openings }));
  });
}

function openingsOf({ type, count, width, height }: Held): readonly FaceOpening[] {
  if (width === undefined || height === undefined) return [];
  const sill = type?.kind === 'window' ? type.given.sill?.value : undefined;
  const one = { label: type?.label ?? 'cased opening', width, height, sill, at: undefined };
  return Array.from({ length: Math.min(count.value, MOST) }, () => one);
}
/** More of one sort stand in no wall. */
const MOST = 1000;

/** A floor or flat ceiling: cut into rectangles where it has corners inward, as it is where it has slanted sides. */
export function flatFaces(shape: FloorShape, label: string): readonly Face[] {
  const { outline, width, depth } = shape;
  if (isSlanted(outline)) return [{ label, length: width, height: depth, openings: [], shapes: [outline] }];
  if (shape.inside === 0) return [{ label, length: width, height: depth, openings: [] }];
  return rectanglesOf(outline).map(({ west, east, south, north }, at) => ({
    label: `${label} ${at + 1}`,
    length: constant('east to west', east - west, 'length'),
    height: constant('south to north', north - south, 'length'),
    openings: [],
  }));
}

/** A surface of any shape, with the rectangle round it. */
export function shapedFace(label: string, shapes: readonly Outline[]): Face {
  const points = shapes.flat();
  const extent = (name: string, list: readonly number[]): Length =>
    constant(name, Math.max(...list) - Math.min(...list), 'length');
  return {
    label,
    length: extent(
      'length',
      points.map(({ x }) => x),
    ),
    height: extent(
      'height',
      points.map(({ y }) => y),
    ),
    openings: [],
    shapes,
  };
}

/** Stretches of full height that nobody tells the place of, each taken from the shortest wall that it fits in, else the longest. */
export function without(faces: readonly Face[], lengths: readonly Length[]): readonly Face[] {
  const rest = [...faces];
  for (const out of lengths) {
    const fitting = rest.filter(({ length }) => length.value >= out.value);
    const from = fitting.length > 0 ? extreme(fitting, -1) : extreme(rest, 1);
    if (from === undefined) break;
    const left = measure('length', restOf, from.length, out);
    rest[rest.indexOf(from)] = { ...from, length: left };
  }
  return rest.filter(({ length }) => length.value > 0);
}

/** An area that something else lies on, as a stretch of full height. */
export function asStretch(area: Quantity<'area'>, height: Length): Length {
  return measure('length', stretch, area, height);
}

function extreme(faces: readonly Face[], sign: 1 | -1): Face | undefined {
  return faces.reduce<Face | undefined>(
    (best, face) => (best === undefined || sign * (face.length.value - best.length.value) > 0 ? face : best),
    undefined,
  );
}
