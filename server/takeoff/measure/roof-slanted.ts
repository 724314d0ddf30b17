// The figures of a roof over an outline with slanted sides: flat, a single slope, or a hip roof where no corner turns inward.
// There each plane is seen where it is the lowest, so hips and ridge follow from the planes. Surface is exact for all of
// them: the plan with overhangs by the pitch.
import { constant, type Form, form, measure, type Quantity } from '#kit/quantity';
import { type Convex, cut } from '#kit/shapes/convex';
import { withEachMoved } from '#kit/shapes/moved-sides';
import { area, type Direction, lengthOfSide, type Outline, type Point } from '#kit/shapes/outline';
import { type Face, heightAt, linesOf, type Plane } from '#kit/shapes/upper-envelope';
import type { FloorShape } from '#model/floor-shape';
import type { RoofFigures } from './roof-figures.ts';

type Length = Quantity<'length'>;

export interface Given {
  readonly form: RoofFigures['form'];
  readonly pitch: Quantity<'slope'>;
  readonly high: Direction | undefined;
  readonly eavesOut: Length;
  readonly highOut: Length;
  readonly rakesOut: Length;
}

export function countsOverSlanted(shape: FloorShape, roofForm: string): boolean {
  return roofForm === 'flat' || roofForm === 'shed' || (roofForm === 'hip' && shape.inside === 0);
}

const none = constant('overhang', 0, 'length');
const onSlope = (pitch: number): number => Math.sqrt(1 + pitch * pitch);
const surface = form(
  'surface of the roof',
  'plan with overhangs × √(1 + pitch²)',
  (plan = 0, pitch = 0) => plan * onSlope(pitch),
);
const sloped = form('on the slope', 'on plan × √(1 + pitch²)', (plan = 0, pitch = 0) => plan * onSlope(pitch));
const riseOf = form('rise', 'run × pitch', (run = 0, pitch = 0) => run * pitch);
const rafterOf = form(
  'rafter',
  '(run + overhang) × √(1 + pitch²)',
  (run = 0, out = 0, pitch = 0) => (run + out) * onSlope(pitch),
);

/** Undefined where such a roof is not counted, or overhangs meet. */
export function figuresOverSlanted(shape: FloorShape, given: Given): RoofFigures | undefined {
  if (!countsOverSlanted(shape, given.form)) return undefined;
  return given.form === 'hip' ? hip(shape, given) : single(shape, given);
}

function hip(shape: FloorShape, { pitch, eavesOut, rakesOut }: Given): RoofFigures | undefined {
  const { made } = shape;
  const inputs = [...made.lengths, eavesOut, pitch];
  if (withEachMoved(shape.outline, () => eavesOut.value) === undefined) return undefined;
  const of = (label: string, formula: string, pick: (roof: HipRoof, pitch: number) => number): Form =>
    form(label, formula, (...values) => {
      const outline = made.outline(values.slice(0, -2));
      const roof = outline === undefined ? undefined : hipRoof(outline, values.at(-2) ?? 0);
      return roof === undefined ? 0 : pick(roof, values.at(-1) ?? 0);
    });
  const plan = measure(
    'area',
    of('plan of the roof', 'area within the outline, overhangs in it', ({ moved }) => area(moved)),
    ...inputs,
  );
  const run = measure(
    'length',
    of('run', 'from a wall to the ridge, where that is furthest', ({ run: far }) => far),
    ...inputs,
  );
  const length = (how: Form): Length => measure('length', how, ...inputs);
  const eaves = length(of('eaves', 'all edges, with overhangs', ({ moved }) => round(moved)));
  return {
    form: 'hip',
    pitch,
    along: shape.width,
    span: shape.depth,
    run,
    rise: measure('length', riseOf, run, pitch),
    eavesOut,
    rakesOut,
    rafter: measure('length', rafterOf, run, eavesOut, pitch),
    plan,
    area: measure('area', surface, plan, pitch),
    ridge: length(of('ridge', 'where slopes meet level', ({ crests }) => added(crests.filter(({ rise }) => rise < LEVEL)))),
    hips: length(
      of('hips', 'each √(run² + rise²), added', ({ crests }, slope) =>
        crests
          .filter(({ rise }) => rise >= LEVEL)
          .reduce((sum, { plan: far, rise }) => sum + Math.sqrt(far * far + rise * rise * slope * slope), 0),
      ),
    ),
    valleys: undefined,
    eaves,
    eaveOn: eavesOn(shape, eavesOut, () => true),
    rakes: none,
    gables: [],
    bySurface: true,
  };
}

/** Lines that rise by less than this are level: a hundredth of a millimetre and rounding. */
const LEVEL = 16;

interface Crest {
  readonly plan: number;
  /** At pitch 1. */
  readonly rise: number;
}
interface HipRoof {
  readonly moved: Outline;
  readonly crests: readonly Crest[];
  readonly run: number;
}

let last: { readonly key: string; readonly roof: HipRoof | undefined } | undefined;

/** The plane over each wall rises away from it; over a floor without inward corners the lowest plane is the roof. */
function hipRoof(outline: Outline, out: number): HipRoof | undefined {
  const key = `${out} ${outline.map(({ x, y }) => `${x} ${y}`).join(' ')}`;
  if (last?.key === key) return last.roof;
  const moved = withEachMoved(outline, () => out);
  const planes = outline.map((from, index) => risingFrom(from, outline[(index + 1) % outline.length]!));
  const faces: readonly Face[] = planes.flatMap((slope, plane) => {
    let piece: Convex = moved ?? [];
    for (const other of planes)
      if (other !== slope && piece.length > 0)
        piece = cut(piece, { a: other.a - slope.a, b: other.b - slope.b, c: other.c - slope.c });
    return piece.length === 0 ? [] : [{ body: 0, plane, slope, pieces: [piece] }];
  });
  const crests = linesOf(faces)
    .filter(({ kind }) => kind === 'crest')
    .map(({ edge: { from, to }, face }) => {
      const { slope } = faces[face]!;
      const [x, y] = [to.x - from.x, to.y - from.y];
      return { plan: Math.sqrt(x * x + y * y), rise: Math.abs(heightAt(slope, to) - heightAt(slope, from)) };
    });
  const run = Math.max(
    0,
    ...faces.flatMap(({ slope, pieces }) => pieces.flatMap((piece) => piece.map((at) => heightAt(slope, at)))),
  );
  const roof = moved === undefined ? undefined : { moved, crests, run };
  last = { key, roof };
  return roof;
}

function risingFrom(from: Point, to: Point): Plane {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(x * x + y * y);
  const [a, b] = [-y / length, x / length];
  return { a, b, c: -(a * from.x + b * from.y) };
}

function added(crests: readonly Crest[]): number {
  return crests.reduce((sum, { plan }) => sum + plan, 0);
}

function round(outline: Outline): number {
  return outline.reduce((sum, from, index) => sum + lengthOfSide(from, outline[(index + 1) % outline.length]!), 0);
}

const opposite: Readonly<Record<Direction, Direction>> = { north: 'south', south: 'north', east: 'west', west: 'east' };

/** A flat roof, or one slope; edges that look neither to the low side nor to the high one slope with it. */
function single(shape: FloorShape, { form: roofForm, pitch, high, eavesOut, highOut, rakesOut }: Given): RoofFigures | undefined {
  const { made } = shape;
  if (roofForm === 'shed' && high === undefined) return undefined;
  const low = high === undefined ? undefined : opposite[high];
  const outOf =
    (eaves: number, top: number, rakes: number) =>
    (from: Point, to: Point): number => {
      if (high === undefined) return eaves;
      const looks = squareLook(from, to);
      return looks === low ? eaves : looks === high ? top : rakes;
    };
  const outs = [eavesOut, highOut, rakesOut];
  if (withEachMoved(shape.outline, outOf(eavesOut.value, highOut.value, rakesOut.value)) === undefined) return undefined;
  const inputs = [...made.lengths, ...outs, pitch];
  const of = (label: string, formula: string, pick: (moved: Outline, pitch: number) => number): Form =>
    form(label, formula, (...values) => {
      const [eaves = 0, top = 0, rakes = 0, slope = 0] = values.slice(-4);
      const outline = made.outline(values.slice(0, -4));
      const moved = outline === undefined ? undefined : withEachMoved(outline, outOf(eaves, top, rakes));
      return moved === undefined ? 0 : pick(moved, slope);
    });
  const lengthWhere = (label: string, formula: string, which: (looks: Direction | undefined) => boolean): Length =>
    measure(
      'length',
      of(label, formula, (moved, slope) => edges(moved, slope, low, which)),
      ...inputs,
    );
  const plan = measure('area', of('plan of the roof', 'area within the outline, overhangs in it', area), ...inputs);
  const upright = high === 'north' || high === 'south' || high === undefined;
  const [span, along] = upright ? [shape.depth, shape.width] : [shape.width, shape.depth];
  const wall = of('walls above the low one', 'each wall: length × its height on average, by the pitch', (_, slope) => slope);
  return {
    form: roofForm,
    pitch,
    span,
    along,
    run: span,
    rise: measure('length', riseOf, span, pitch),
    eavesOut,
    rakesOut,
    rafter: measure('length', sloped, span, pitch),
    plan,
    area: measure('area', surface, plan, pitch),
    ridge: undefined,
    hips: undefined,
    valleys: undefined,
    eaves: lengthWhere('eaves', 'low edges, with overhangs', (looks) => low === undefined || looks === low),
    eaveOn: eavesOn(shape, eavesOut, (side) => low === undefined || side === low),
    rakes:
      low === undefined
        ? none
        : lengthWhere('rakes and high edges', 'the other edges, along the slope', (looks) => looks !== low),
    gables: [],
    wallAbove: low === undefined ? undefined : measure('area', aboveLow(shape, low, wall), ...made.lengths, pitch),
    bySurface: true,
  };
}

function squareLook(from: Point, to: Point): Direction | undefined {
  if (from.y === to.y) return to.x > from.x ? 'south' : 'north';
  return from.x === to.x ? (to.y > from.y ? 'east' : 'west') : undefined;
}

/** The length along the slope of the edges that look a way. */
function edges(
  outline: Outline,
  pitch: number,
  low: Direction | undefined,
  which: (looks: Direction | undefined) => boolean,
): number {
  return outline.reduce((sum, from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    if (!which(squareLook(from, to))) return sum;
    const rise = low === undefined ? 0 : Math.abs(farFrom(low)(to) - farFrom(low)(from)) * pitch;
    const plan = lengthOfSide(from, to);
    return sum + (rise === 0 ? plan : Math.sqrt(plan * plan + rise * rise));
  }, 0);
}

function farFrom(low: Direction): (point: Point) => number {
  return ({ x, y }) => (low === 'south' ? y : low === 'north' ? -y : low === 'west' ? x : -x);
}

function aboveLow({ made }: FloorShape, low: Direction, { label, formula }: Form): Form {
  return form(label, formula ?? '', (...values) => {
    const outline = made.outline(values.slice(0, -1));
    if (outline === undefined) return 0;
    const far = farFrom(low);
    const least = Math.min(...outline.map(far));
    const sum = outline.reduce((so, from, index) => {
      const to = outline[(index + 1) % outline.length]!;
      return so + lengthOfSide(from, to) * ((far(from) + far(to)) / 2 - least);
    }, 0);
    return sum * (values.at(-1) ?? 0);
  });
}

/** The square edges among them, for gutters named by their side. */
function eavesOn(
  { made, outline }: FloorShape,
  out: Length,
  which: (side: Direction) => boolean,
): Readonly<Partial<Record<Direction, Length>>> {
  const sides = [...new Set(outline.map((from, index) => squareLook(from, outline[(index + 1) % outline.length]!)))];
  return Object.fromEntries(
    sides.flatMap((side) => {
      if (side === undefined || !which(side)) return [];
      const how = form(`eaves to the ${side}`, `edges that look ${side}, with overhangs`, (...values) => {
        const base = made.outline(values.slice(0, -1));
        const moved = base === undefined ? undefined : withEachMoved(base, () => values.at(-1) ?? 0);
        return moved === undefined ? 0 : edges(moved, 0, undefined, (looks) => looks === side);
      });
      return [[side, measure('length', how, ...made.lengths, out)] as const];
    }),
  );
}
