// The rectangles that a surface is made of: each wall of a room or level, each part of a floor or ceiling. Sheets, rolls and
// tile are laid out on them. Made when somebody lays something: areas need none.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { sidesOf } from '#kit/shapes/facing';
import { rectanglesOf } from '#kit/shapes/region';
import type { FloorShape } from '#model/floor-shape';
import type { Face, FaceOpening } from '../lines.ts';
import type { Held } from './openings.ts';

type Length = Quantity<'length'>;

const restOf = form('rest of the wall', 'wall − stretch taken out', (wall = 0, out = 0) => Math.max(0, wall - out));
const stretch = form('stretch taken out', 'area ÷ height', (area = 0, height = 1) => (height > 0 ? area / height : 0));

/** The walls round a floor, each named by the way its outside looks; `held` hang in the side they name, else in the longest. */
export function sideFaces(shape: FloorShape, height: Length, held: readonly Held[]): readonly Face[] {
  const seen = new Map<string, number>();
  const faces = sidesOf(shape.outline).map(({ looks, from, to }): Face => {
    const nth = (seen.get(looks) ?? 0) + 1;
    seen.set(looks, nth);
    const across = looks === 'north' || looks === 'south' ? shape.width : shape.depth;
    const length = across.value === to - from ? across : constant('side', to - from, 'length');
    return { label: nth === 1 ? looks : `${looks} ${nth}`, length, height, openings: [] };
  });
  return withOpenings(faces, held);
}

/** The walls of a room whose lengths alone are told. */
export function toldFaces(told: readonly Length[], height: Length, held: readonly Held[]): readonly Face[] {
  return withOpenings(
    told.map((length, at) => ({ label: `wall ${at + 1}`, length, height, openings: [] })),
    held,
  );
}

/** Each closet wall, seen from both its sides. */
export function bothSides(walls: readonly Length[], height: Length): readonly Face[] {
  return walls.flatMap((length) =>
    ['closet front', 'closet back'].map((label): Face => ({ label, length, height, openings: [] })),
  );
}

/** A floor or flat ceiling, cut into rectangles where it has corners inward. */
export function flatFaces(shape: FloorShape, label: string): readonly Face[] {
  if (shape.inside === 0) return [{ label, length: shape.width, height: shape.depth, openings: [] }];
  return rectanglesOf(shape.outline).map(({ west, east, south, north }, at) => ({
    label: `${label} ${at + 1}`,
    length: constant('east to west', east - west, 'length'),
    height: constant('south to north', north - south, 'length'),
    openings: [],
  }));
}

/** Stretches of full height that carry something else, each taken from the shortest wall that it fits in, else the longest. */
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

function withOpenings(faces: readonly Face[], held: readonly Held[]): readonly Face[] {
  if (held.length === 0 || faces.length === 0) return faces;
  const own = faces.map(() => [] as FaceOpening[]);
  const longest = faces.indexOf(extreme(faces, 1)!);
  for (const { type, count, width, height, side, at } of held) {
    if (width === undefined || height === undefined) continue;
    const named = side === undefined ? -1 : faces.findIndex(({ label }) => label === side || label.startsWith(`${side} `));
    const sill = type?.kind === 'window' ? type.given.sill?.value : undefined;
    for (let nth = 0; nth < count.value && nth < MOST; nth++)
      own[named < 0 ? longest : named]!.push({
        label: type?.label ?? 'cased opening',
        width,
        height,
        sill,
        at: named < 0 ? undefined : at[nth],
      });
  }
  return faces.map((face, nth) => (own[nth]!.length === 0 ? face : { ...face, openings: own[nth]! }));
}

/** More of one sort stand in no wall. */
const MOST = 1000;
