// What a roof of one pitch over an outline comes to on plan: surface, ridges, hips, valleys, eaves, rakes, and where its
// rafters lie. All of it level; the pitch is put in where it is measured.
import { INCH } from '#kit/dimension';
import { type Convex, convexArea, type Edge, lengthOf } from '#kit/shapes/convex';
import type { Direction, Outline } from '#kit/shapes/outline';
import { type Face, facesOf, type Line, linesOf } from '#kit/shapes/upper-envelope';
import { liesSideBySide, type RoofBody, type Runs, roofBodies } from './roof-bodies.ts';

export interface RoofOnPlan {
  readonly area: number;
  readonly ridge: number;
  /** Added over all hips, and all valleys: how far each goes in along either wall, so that it is as long on plan as the diagonal of that square. */
  readonly hips: number;
  readonly valleys: number;
  readonly rakes: number;
  readonly eaves: Readonly<Record<Direction, number>>;
  /** How wide the wall under each gable is. */
  readonly gables: readonly number[];
  /** The widest body's span, and its length. */
  readonly span: number;
  readonly along: number;
  /** The outline steps back beside a ridge, so that two ridges of the same run lie side by side. */
  readonly stepped: boolean;
  readonly bodies: readonly RoofBody[];
  readonly faces: readonly Face[];
  /** The hips and valleys one by one, as long as above. */
  readonly diagonals: readonly number[];
}

export function roofOnPlan(
  outline: Outline,
  form: 'hip' | 'gable',
  ridge: Runs | undefined,
  eavesOut: number,
  rakesOut: number,
): RoofOnPlan {
  return onPlanOf(roofBodies(outline, form, ridge, eavesOut, rakesOut), form);
}

export function onPlanOf(bodies: readonly RoofBody[], form: 'hip' | 'gable'): RoofOnPlan {
  const faces = facesOf(bodies);
  const lines = linesOf(faces);
  const isLevel = ({ face, other }: Line): boolean => {
    const [one, two] = [faces[face]!.slope, faces[other ?? face]!.slope];
    return one.a * two.b - one.b * two.a === 0;
  };
  const crests = lines.filter(({ kind }) => kind === 'crest');
  const hips = crests.filter((line) => !isLevel(line));
  const valleys = lines.filter(({ kind }) => kind === 'trough');
  const eaves: Record<Direction, number> = { north: 0, east: 0, south: 0, west: 0 };
  let rakes = 0;
  for (const { kind, edge, face } of lines) {
    if (kind === 'crest' || kind === 'trough') continue;
    const { slope } = faces[face]!;
    const side = sideBelow(slope, edge);
    if (side === undefined) rakes += lengthOf(edge);
    else eaves[side] += lengthOf(edge);
  }
  const [main] = [...bodies].sort((one, other) => spanOf(other) - spanOf(one));
  return {
    area: faces.reduce((sum, { pieces }) => sum + areaOf(pieces), 0),
    ridge: added(crests.filter(isLevel)),
    hips: hips.reduce((sum, { edge }) => sum + reach(edge), 0),
    valleys: valleys.reduce((sum, { edge }) => sum + reach(edge), 0),
    rakes,
    eaves,
    gables: bodies.flatMap((body) => body.gables.map(() => spanOf(body))),
    span: main === undefined ? 0 : spanOf(main),
    along: main === undefined ? 0 : alongOf(main),
    stepped: form === 'gable' && liesSideBySide(bodies),
    bodies,
    faces,
    diagonals: [...joined(hips), ...joined(valleys)],
  };
}

function added(lines: readonly Line[]): number {
  return lines.reduce((sum, { edge }) => sum + lengthOf(edge), 0);
}

/** How far a line goes in along either wall, where its slopes are alike. */
function reach({ from, to }: Edge): number {
  return Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y));
}

function areaOf(pieces: readonly Convex[]): number {
  return pieces.reduce((sum, piece) => sum + convexArea(piece), 0);
}

/** Stretches of one hip or valley, cut where a piece ends, are one rafter again. */
function joined(lines: readonly Line[]): readonly number[] {
  const whole = new Map<string, number>();
  for (const { edge } of lines) {
    const [{ x, y }, rising] = [edge.from, edge.to.x - edge.from.x > 0 === edge.to.y - edge.from.y > 0];
    const key = `${rising} ${Math.round((rising ? y - x : y + x) / 8)}`;
    whole.set(key, (whole.get(key) ?? 0) + reach(edge));
  }
  return [...whole.values()];
}

export function spanOf({ walls, runs }: RoofBody): number {
  return runs === 'east-west' ? walls.north - walls.south : walls.east - walls.west;
}

export function alongOf({ walls, runs }: RoofBody): number {
  return runs === 'east-west' ? walls.east - walls.west : walls.north - walls.south;
}

/** The side that the low edge of a slope looks to; undefined for an edge that runs up the slope. */
function sideBelow({ a, b }: Face['slope'], { from, to }: Edge): Direction | undefined {
  const rise = Math.abs(a * (to.x - from.x) + b * (to.y - from.y));
  if (rise > lengthOf({ from, to }) / 2) return undefined;
  if (a !== 0) return a > 0 ? 'west' : 'east';
  return b > 0 ? 'south' : 'north';
}

/** Rafters are told apart by a sixteenth of an inch. */
const STEP = INCH / 16;

/** Level lengths of the common and jack rafters at a spacing, each with how many there are; shorter than `least` is none. */
export function raftersAt({ bodies, faces }: RoofOnPlan, spacing: number, least: number): ReadonlyMap<number, number> {
  const lengths = new Map<number, number>();
  for (const { body, slope, pieces } of faces) {
    const { walls } = bodies[body]!;
    const [from, to] = slope.a === 0 ? [walls.west, walls.east] : [walls.south, walls.north];
    for (const at of positions(from, to, spacing)) {
      const length = Math.round(across(pieces, at, slope.a === 0) / STEP) * STEP;
      if (length > least) lengths.set(length, (lengths.get(length) ?? 0) + 1);
    }
  }
  return lengths;
}

/** How many trusses stand at a spacing: one wherever a body's long slopes are seen. */
export function trussesAt({ bodies, faces }: RoofOnPlan, spacing: number, least: number): number {
  let count = 0;
  bodies.forEach(({ walls, runs }, index) => {
    const level = runs === 'east-west';
    const [from, to] = level ? [walls.west, walls.east] : [walls.south, walls.north];
    const long = faces.filter(({ body, slope }) => body === index && (slope.a === 0) === level);
    for (const at of positions(from, to, spacing)) if (long.some(({ pieces }) => across(pieces, at, level) > least)) count += 1;
  });
  return count;
}

/** One at each end and the rest at the spacing from the first. */
function positions(from: number, to: number, spacing: number): readonly number[] {
  const length = to - from;
  const spaces = Math.ceil(length / spacing - 1e-9);
  if (!(spacing > 0) || spaces > 10_000) return [];
  // A hair inside, so that a rafter over an end wall lies in the roof that ends there.
  return Array.from({ length: spaces + 1 }, (_, index) => Math.min(Math.max(from + index * spacing, from + 1), to - 1));
}

/** How far pieces reach along a line across them, level or upright on the drawing. */
function across(pieces: readonly Convex[], at: number, upright: boolean): number {
  let length = 0;
  for (const piece of pieces) {
    const meets: number[] = [];
    piece.forEach((point, index) => {
      const next = piece[(index + 1) % piece.length]!;
      const [here, there] = upright ? [point.x, next.x] : [point.y, next.y];
      if (here > at === there > at) return;
      const [one, other] = upright ? [point.y, next.y] : [point.x, next.x];
      meets.push(one + ((other - one) * (at - here)) / (there - here));
    });
    if (meets.length > 1) length += Math.max(...meets) - Math.min(...meets);
  }
  return length;
}
