// The figures of a roof over an outline with corners inward: hip and gable roofs with valleys, and single slopes. Every
// number is made anew from the sides that were given, so that its working leads back to them.
import { constant, type Form, form, measure, type Quantity, total } from '#kit/quantity';
import { withSidesMoved } from '#kit/shapes/moved-sides';
import { area, type Direction, type Outline } from '#kit/shapes/outline';
import type { FloorShape, Made } from '#model/floor-shape';
import type { Runs } from './roof-bodies.ts';
import type { RoofFigures } from './roof-figures.ts';
import { type RoofOnPlan, roofOnPlan } from './roof-plan.ts';

type Length = Quantity<'length'>;

export interface Given {
  readonly form: 'gable' | 'shed' | 'hip' | 'flat';
  readonly pitch: Quantity<'slope'>;
  readonly ridge: Runs | undefined;
  readonly high: Direction | undefined;
  readonly eavesOut: Length;
  readonly highOut: Length;
  readonly rakesOut: Length;
  /** Sides that run up against walls: without overhang, edge or gutter. */
  readonly walled?: ReadonlySet<Direction>;
}

const onSlope = (pitch: number): number => Math.sqrt(1 + pitch * pitch);
const onDiagonal = (pitch: number): number => Math.sqrt(2 + pitch * pitch);
const surface = form(
  'surface of the roof',
  'plan with overhangs × √(1 + pitch²)',
  (plan = 0, pitch = 0) => plan * onSlope(pitch),
);
const sloped = form('on the slope', 'on plan × √(1 + pitch²)', (plan = 0, pitch = 0) => plan * onSlope(pitch));
const rafterOf = form(
  'rafter',
  '(span ÷ 2 + overhang) × √(1 + pitch²)',
  (span = 0, out = 0, pitch = 0) => (span / 2 + out) * onSlope(pitch),
);
const halfOf = form('run', 'span ÷ 2', (span = 0) => span / 2);
const riseOf = form('rise', 'run × pitch', (run = 0, pitch = 0) => run * pitch);
const navy = 'NAVEDTRA 14044, Builder, p. 2-28: bridge measure times the run of the common rafter';
const hipLength = form('hips', 'run of the hips × √(2 + pitch²)', (run = 0, pitch = 0) => run * onDiagonal(pitch), navy);
const valleyLength = form('valleys', 'run of the valleys × √(2 + pitch²)', (run = 0, pitch = 0) => run * onDiagonal(pitch), navy);
const none = constant('overhang', 0, 'length');

/** Undefined where the overhangs of two sides that look at each other would meet. */
export function figuresOverOutline(shape: FloorShape, given: Given): RoofFigures | undefined {
  return given.form === 'hip' || given.form === 'gable' ? pitched(shape, given, given.form) : single(shape, given, given.form);
}

function pitched(shape: FloorShape, given: Given, roofForm: 'hip' | 'gable'): RoofFigures | undefined {
  const { pitch, ridge, eavesOut, rakesOut } = given;
  const { made, outline } = shape;
  if (withSidesMoved(outline, all(eavesOut.value)) === undefined) return undefined;
  const onPlan = roofOnPlan(outline, roofForm, ridge, eavesOut.value, rakesOut.value);
  const forms = pitchedForms(made, roofForm, ridge);
  const inputs = [...made.lengths, eavesOut, rakesOut];
  const of = (how: Form): Length => measure('length', how, ...inputs);
  const plan = measure('area', forms.area, ...inputs);
  const span = of(forms.span);
  const run = measure('length', halfOf, span);
  const sides = SIDES.filter((side) => onPlan.eaves[side] > 0).map((side) => [side, of(forms.eaves[side])] as const);
  return {
    form: roofForm,
    pitch,
    span,
    along: of(forms.along),
    run,
    rise: measure('length', riseOf, run, pitch),
    eavesOut,
    rakesOut,
    rafter: measure('length', rafterOf, span, eavesOut, pitch),
    plan,
    area: measure('area', surface, plan, pitch),
    ridge: of(forms.ridge),
    hips: onPlan.hips > 0 ? measure('length', hipLength, of(forms.hips), pitch) : undefined,
    valleys: onPlan.valleys > 0 ? measure('length', valleyLength, of(forms.valleys), pitch) : undefined,
    eaves: total(
      'eaves',
      'length',
      sides.map(([, length]) => length),
    ),
    eaveOn: Object.fromEntries(sides),
    rakes: onPlan.rakes > 0 ? measure('length', sloped, of(forms.rakes), pitch) : none,
    gables: onPlan.gables.map((_, index) => of(gableForm(made, roofForm, ridge, index))),
    onPlan,
  };
}

const SIDES: readonly Direction[] = ['north', 'east', 'south', 'west'];
const all = (out: number): Readonly<Record<Direction, number>> => ({ north: out, east: out, south: out, west: out });

interface PlanForms {
  readonly of: (label: string, formula: string, pick: (plan: RoofOnPlan) => number) => Form;
  readonly area: Form;
  readonly ridge: Form;
  readonly hips: Form;
  readonly valleys: Form;
  readonly rakes: Form;
  readonly span: Form;
  readonly along: Form;
  readonly eaves: Readonly<Record<Direction, Form>>;
}
const kept = new Map<string, PlanForms>();
const gablesKept = new Map<string, Form>();

function keyOf({ key }: Made, roofForm: string, ridge: Runs | undefined): string {
  return `${roofForm} ${ridge ?? ''} ${key}`;
}

/** The last two inputs are the overhangs at eaves and gables; those before make the outline. */
function pitchedForms(made: Made, roofForm: 'hip' | 'gable', ridge: Runs | undefined): PlanForms {
  const key = keyOf(made, roofForm, ridge);
  let forms = kept.get(key);
  if (forms !== undefined) return forms;
  const planOf = lastKept((values: readonly number[]): RoofOnPlan | undefined => {
    const outline = made.outline(values.slice(0, -2));
    return outline === undefined ? undefined : roofOnPlan(outline, roofForm, ridge, values.at(-2) ?? 0, values.at(-1) ?? 0);
  });
  const of = (label: string, formula: string, pick: (plan: RoofOnPlan) => number): Form =>
    form(label, formula, (...values) => {
      const plan = planOf(values);
      return plan === undefined ? 0 : pick(plan);
    });
  const eave = (side: Direction): Form =>
    of(`eaves to the ${side}`, `low edges that look ${side}, with overhangs`, ({ eaves }) => eaves[side]);
  forms = {
    of,
    area: of('plan of the roof', 'area within the outline, overhangs in it', (plan) => plan.area),
    ridge: of('ridge', 'where slopes meet level, overhangs at gables in it', (plan) => plan.ridge),
    hips: of('run of the hips', 'how far hips go in from the eaves, added', (plan) => plan.hips),
    valleys: of('run of the valleys', 'how far valleys go in from the eaves, added', (plan) => plan.valleys),
    rakes: of('rakes on plan', 'sloping edges at gables, added', (plan) => plan.rakes),
    span: of('span', 'of the widest part', (plan) => plan.span),
    along: of('length', 'of the widest part', (plan) => plan.along),
    eaves: { north: eave('north'), east: eave('east'), south: eave('south'), west: eave('west') },
  };
  kept.set(key, forms);
  return forms;
}

function gableForm(made: Made, roofForm: 'hip' | 'gable', ridge: Runs | undefined, index: number): Form {
  const key = `${index} ${keyOf(made, roofForm, ridge)}`;
  let known = gablesKept.get(key);
  if (known === undefined) {
    const { of } = pitchedForms(made, roofForm, ridge);
    gablesKept.set(key, (known = of('wall under a gable', 'width of that part', ({ gables }) => gables[index] ?? 0)));
  }
  return known;
}

/** A dozen numbers are asked of the same plan one after another. */
function lastKept<T>(compute: (values: readonly number[]) => T): (values: readonly number[]) => T {
  let last: { readonly key: string; readonly value: T } | undefined;
  return (values) => {
    const key = values.join(' ');
    if (last?.key !== key) last = { key, value: compute(values) };
    return last.value;
  };
}

const NO_SIDES: ReadonlySet<Direction> = new Set();
const opposite: Readonly<Record<Direction, Direction>> = { north: 'south', south: 'north', east: 'west', west: 'east' };

/** A flat roof, or one slope over the whole outline; its walls above the low one are counted as a shed's. */
function single(shape: FloorShape, given: Given, roofForm: 'shed' | 'flat'): RoofFigures | undefined {
  const { pitch, high, eavesOut, highOut, rakesOut } = given;
  const { made } = shape;
  if (roofForm === 'shed' && high === undefined) return undefined;
  const low = high === undefined ? undefined : opposite[high];
  const walled = given.walled ?? NO_SIDES;
  const outs = (eaves: number, top: number, rakes: number): Record<Direction, number> => {
    const free = high === undefined || low === undefined ? all(eaves) : { ...all(rakes), [low]: eaves, [high]: top };
    return { ...free, ...Object.fromEntries([...walled].map((side) => [side, 0])) };
  };
  const inputs = [...made.lengths, eavesOut, highOut, rakesOut];
  const of = (label: string, formula: string, pick: (moved: Outline) => number): Form =>
    form(label, formula, (...values) => {
      const outline = made.outline(values.slice(0, -3));
      const [eaves = 0, top = 0, rakes = 0] = values.slice(-3);
      const moved = outline === undefined ? undefined : withSidesMoved(outline, outs(eaves, top, rakes));
      return moved === undefined ? 0 : pick(moved);
    });
  if (withSidesMoved(shape.outline, outs(eavesOut.value, highOut.value, rakesOut.value)) === undefined) return undefined;
  const plan = measure('area', of('plan of the roof', 'area within the outline, overhangs in it', area), ...inputs);
  const sideForm = (side: Direction): Form =>
    of(`edges to the ${side}`, `edges that look ${side}, with overhangs`, (moved) => sideLength(moved, side));
  const eaveSides = (low === undefined ? SIDES : [low]).filter((side) => !walled.has(side));
  const eaves = eaveSides.map((side) => [side, measure('length', sideForm(side), ...inputs)] as const);
  const edgeOf = (side: Direction): Length => {
    const edge = measure('length', sideForm(side), ...inputs);
    return side === high || side === low || low === undefined ? edge : measure('length', sloped, edge, pitch);
  };
  const others = SIDES.filter((side) => low !== undefined && side !== low && !walled.has(side)).map(edgeOf);
  const against = SIDES.filter((side) => walled.has(side)).map(edgeOf);
  const upright = high === 'north' || high === 'south';
  const [span, along] = upright || high === undefined ? [shape.depth, shape.width] : [shape.width, shape.depth];
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
    eaves: total(
      'eaves',
      'length',
      eaves.map(([, length]) => length),
    ),
    eaveOn: Object.fromEntries(eaves),
    rakes: others.length === 0 ? none : total('rakes and high edges', 'length', others),
    gables: [],
    wallAbove: low === undefined || walled.size > 0 ? undefined : measure('area', wallForm(made, low), ...made.lengths, pitch),
    ...(against.length === 0 ? {} : { againstWalls: total('against walls', 'length', against) }),
  };
}

/** Length of all sides of a counter-clockwise outline that look a way. */
function sideLength(outline: Outline, side: Direction): number {
  return outline.reduce((sum, from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    const looks: Direction = from.y === to.y ? (to.x > from.x ? 'south' : 'north') : to.y > from.y ? 'east' : 'west';
    return looks === side ? sum + Math.abs(to.x - from.x) + Math.abs(to.y - from.y) : sum;
  }, 0);
}

function wallForm({ outline: outlineOf }: Made, low: Direction): Form {
  return form('walls above the low one', 'each wall: length × its height on average, by the pitch', (...values) => {
    const outline = outlineOf(values.slice(0, -1));
    return outline === undefined ? 0 : aboveLow(outline, low) * (values.at(-1) ?? 0);
  });
}

/** Over all sides: length times how far its middle lies from the low edge. */
function aboveLow(outline: Outline, low: Direction): number {
  const far = ({ x, y }: Outline[number]): number => (low === 'south' ? y : low === 'north' ? -y : low === 'west' ? x : -x);
  const least = Math.min(...outline.map(far));
  return outline.reduce((sum, from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    const length = Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
    return sum + length * ((far(from) + far(to)) / 2 - least);
  }, 0);
}
