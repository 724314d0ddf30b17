// Gambrels that run into each other, over a right-angled outline: every slope rises alike from its wall and breaks as far in, so
// on plan ridges, hips and valleys lie where those of a roof of one pitch lie, and only heights differ above the break.
import { constant, type Form, form, measure, type Quantity, total } from '#kit/quantity';
import { type Convex, convexArea, cut, type Edge } from '#kit/shapes/convex';
import { withSidesMoved } from '#kit/shapes/moved-sides';
import type { Direction } from '#kit/shapes/outline';
import { heightAt, linesOf, type Plane } from '#kit/shapes/upper-envelope';
import type { FloorShape } from '#model/floor-shape';
import type { Runs } from './roof-bodies.ts';
import type { RoofFigures } from './roof-figures.ts';
import { gambrel } from './roof-gambrel.ts';
import { type RoofOnPlan, roofOnPlan } from './roof-plan.ts';

type Length = Quantity<'length'>;
type Slope = Quantity<'slope'>;

export interface Given {
  readonly pitch: Slope;
  readonly upper: Slope | undefined;
  readonly breakAt: Length | undefined;
  readonly ridge: Runs | undefined;
  readonly eavesOut: Length;
  readonly rakesOut: Length;
}

const onSlope = (pitch: number): number => Math.sqrt(1 + pitch * pitch);
const SIDES: readonly Direction[] = ['north', 'east', 'south', 'west'];
const none = constant('none', 0, 'length');

interface Whole {
  readonly plan: RoofOnPlan;
  readonly eavesOut: number;
  readonly breakAt: number;
  readonly pitch: number;
  readonly upper: number;
}

/** Undefined where pitch or break is missing, overhangs meet, or the break lies beyond the widest ridge. */
export function gambrelsOverOutline(shape: FloorShape, given: Given): RoofFigures | undefined {
  const { pitch, upper, breakAt, ridge, eavesOut, rakesOut } = given;
  const { made, outline } = shape;
  if (!shape.square || upper === undefined || breakAt === undefined || !(breakAt.value > 0)) return undefined;
  const out = eavesOut.value;
  if (withSidesMoved(outline, { north: out, east: out, south: out, west: out }) === undefined) return undefined;
  const onPlan = roofOnPlan(outline, 'gable', ridge, out, rakesOut.value);
  if (breakAt.value >= onPlan.span / 2) return undefined;
  const inputs = [...made.lengths, eavesOut, rakesOut, breakAt, pitch, upper];
  const of = (label: string, formula: string, pick: (whole: Whole) => number): Form =>
    form(label, formula, (...values) => {
      const whole = wholeOf(made.outline(values.slice(0, -5)), ridge, values.slice(-5));
      return whole === undefined ? 0 : pick(whole);
    });
  const length = (label: string, formula: string, pick: (whole: Whole) => number): Length =>
    measure('length', of(label, formula, pick), ...inputs);
  const lines = (kind: 'crest' | 'trough') => (whole: Whole) => slopingLines(whole, kind);
  const sides = SIDES.filter((side) => onPlan.eaves[side] > 0);
  const eaveOn = sides.map(
    (side) =>
      [
        side,
        length(`eaves to the ${side}`, `low edges that look ${side}, with overhangs`, ({ plan }) => plan.eaves[side]),
      ] as const,
  );
  const span = length('span', 'of the widest part', ({ plan }) => plan.span);
  const run = length('run', 'half the widest span', ({ plan }) => plan.span / 2);
  const ridgeLine = length('ridge', 'where slopes meet level, overhangs at gables in it', ({ plan }) => plan.ridge);
  const widest = gambrel(run, pitch, upper, breakAt, eavesOut, ridgeLine);
  if (widest === undefined) return undefined;
  const gables = onPlan.gables.map((_, index) =>
    length('wall under a gable', 'width of that part', ({ plan }) => plan.gables[index] ?? 0),
  );
  const hips = length('hips', 'each along its slopes, below the break and above it', lines('crest'));
  const valleys = length('valleys', 'each along its slopes, below the break and above it', lines('trough'));
  const area = measure(
    'area',
    of('surface of the roof', 'what lies below the break × √(1 + pitch²) + the rest × √(1 + upper pitch²)', surfaceOf),
    ...inputs,
  );
  return {
    form: 'gambrel',
    pitch,
    along: length('length', 'of the widest part', ({ plan }) => plan.along),
    span,
    run,
    rise: widest.rise,
    eavesOut,
    rakesOut,
    rafter: widest.rafter,
    area,
    plan: measure(
      'area',
      of('plan of the roof', 'area within the outline, overhangs in it', ({ plan }) => plan.area),
      ...inputs,
    ),
    ridge: ridgeLine,
    hips: hips.value > 0 ? hips : undefined,
    valleys: valleys.value > 0 ? valleys : undefined,
    eaves: total(
      'eaves',
      'length',
      eaveOn.map(([, each]) => each),
    ),
    eaveOn: Object.fromEntries(eaveOn),
    rakes: gables.length === 0 ? none : length('rakes', 'along both slopes of each gable', rakesOf),
    gables,
    gambrel: {
      ...widest,
      area,
      gables: measure('area', of('gables', 'up to the break and above it, added', gablesOf), ...inputs),
    },
    bySurface: true,
  };
}

/** Whether its break lies between wall and ridge, where no overhang stands in the way. */
export function gambrelFits({ outline }: FloorShape, breakAt: number): boolean {
  return breakAt > 0 && breakAt < roofOnPlan(outline, 'gable', undefined, 0, 0).span / 2;
}

let last: { readonly key: string; readonly whole: Whole } | undefined;

/** `values` are overhangs, break and pitches. */
function wholeOf(
  outline: FloorShape['outline'] | undefined,
  ridge: Runs | undefined,
  values: readonly number[],
): Whole | undefined {
  const [eavesOut = 0, rakesOut = 0, breakAt = 0, pitch = 0, upper = 0] = values;
  if (outline === undefined) return undefined;
  const key = `${ridge} ${values.join(' ')} ${outline.map(({ x, y }) => `${x} ${y}`).join(' ')}`;
  if (last?.key !== key)
    last = { key, whole: { plan: roofOnPlan(outline, 'gable', ridge, eavesOut, rakesOut), eavesOut, breakAt, pitch, upper } };
  return last.whole;
}

/** Height over the plates, so far in from a wall. */
function heightOf({ breakAt, pitch, upper }: Whole, far: number): number {
  return far <= breakAt ? far * pitch : breakAt * pitch + (far - breakAt) * upper;
}

function surfaceOf({ plan, breakAt, pitch, upper }: Whole): number {
  return plan.faces.reduce((sum, { slope, pieces }) => {
    const above = areaOf(pieces.map((piece) => cut(piece, { ...slope, c: slope.c - breakAt })));
    return sum + above * onSlope(upper) + (areaOf(pieces) - above) * onSlope(pitch);
  }, 0);
}

function areaOf(pieces: readonly Convex[]): number {
  return pieces.reduce((sum, piece) => sum + convexArea(piece), 0);
}

/** Hips or valleys: on the diagonal of two slopes that rise alike, so √2 as far on plan as they go in. */
function slopingLines({ plan, breakAt, pitch, upper }: Whole, kind: 'crest' | 'trough'): number {
  return linesOf(plan.faces).reduce((sum, line) => {
    if (line.kind !== kind || line.other === undefined) return sum;
    const { slope } = plan.faces[line.face]!;
    const [from, to] = ends(slope, line.edge);
    if (to - from < LEVEL) return sum;
    const below = Math.max(0, Math.min(to, breakAt) - from);
    const above = to - from - below;
    return sum + below * Math.sqrt(2 + pitch * pitch) + above * Math.sqrt(2 + upper * upper);
  }, 0);
}
const LEVEL = 16;

/** How far in from the wall a line begins and ends. */
function ends(slope: Plane, { from, to }: Edge): readonly [number, number] {
  const [one, other] = [heightAt(slope, from), heightAt(slope, to)];
  return [Math.min(one, other), Math.max(one, other)];
}

/** From the outer edge of the eaves up to the ridge, on both sides of each gable. */
function rakesOf({ plan, eavesOut, breakAt, pitch, upper }: Whole): number {
  return plan.gables.reduce((sum, width) => {
    const half = width / 2;
    const below = Math.min(half, breakAt);
    return sum + 2 * ((below + eavesOut) * onSlope(pitch) + (half - below) * onSlope(upper));
  }, 0);
}

function gablesOf(whole: Whole): number {
  const { plan, breakAt } = whole;
  return plan.gables.reduce((sum, width) => {
    const half = width / 2;
    const below = Math.min(half, breakAt);
    const [middle, top] = [heightOf(whole, below), heightOf(whole, half)];
    return sum + below * middle + (half - below) * (middle + top);
  }, 0);
}
