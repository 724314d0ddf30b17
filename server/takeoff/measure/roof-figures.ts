// The figures of a roof: run, slope factors, length of rafters, surface, ridge, hips, eaves and rakes.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Direction } from '#kit/shapes/outline';
import { levelBody } from '#model/facts/level';
import { type FloorShape, isRectangular, rectangleOutline } from '#model/floor-shape';
import type { Roof } from '#model/model';
import { figuresAgainstWall } from './roof-against-wall.ts';
import { type Beside, besideStorey } from './roof-beside.ts';
import { type Gambrel, gambrel } from './roof-gambrel.ts';
import { gambrelsOverOutline } from './roof-gambrels.ts';
import { figuresOverOutline } from './roof-over-outline.ts';
import { type RoofOnPlan, roofOnPlan } from './roof-plan.ts';
import { figuresOverSlanted } from './roof-slanted.ts';

type Length = Quantity<'length'>;

export interface RoofFigures {
  readonly form: 'gable' | 'shed' | 'hip' | 'flat' | 'gambrel';
  readonly pitch: Quantity<'slope'>;
  /** Along the ridge, or along the low eave, without overhangs; and across it. Of the widest part, where there are several. */
  readonly along: Length;
  readonly span: Length;
  /** Level distance that a rafter covers, without overhang. */
  readonly run: Length;
  readonly rise: Length;
  readonly eavesOut: Length;
  readonly rakesOut: Length;
  /** Along the slope, overhangs in it. */
  readonly rafter: Length;
  readonly area: Quantity<'area'>;
  /** Level, overhangs in it: what the rain falls on. */
  readonly plan: Quantity<'area'>;
  readonly ridge: Length | undefined;
  readonly hips: Length | undefined;
  readonly valleys: Length | undefined;
  /** The low edges, added; and those that look each way, for gutters. */
  readonly eaves: Length;
  readonly eaveOn: Readonly<Partial<Record<Direction, Length>>>;
  /** The sloping edges, and the high edge of a shed, added. */
  readonly rakes: Length;
  /** How wide the wall under each gable is. */
  readonly gables: readonly Length[];
  /** Walls above the low one, where a shed does not cover a rectangle. */
  readonly wallAbove?: Quantity<'area'> | undefined;
  readonly gambrel?: Gambrel;
  /** Where it runs up against the walls of a storey beside it. */
  readonly againstWalls?: Length;
  /** Its rafters are reckoned from its surface: those over slanted sides are cut on the site. */
  readonly bySurface?: true;
  /** Of a roof with hips or valleys: where its slopes and lines lie. */
  readonly onPlan?: RoofOnPlan;
}

const none = constant('overhang', 0, 'length');
const flatPitch = constant('pitch', 0, 'slope');
const factor = (pitch: number): number => Math.sqrt(1 + pitch * pitch);

const halfSpan = form('run', 'span ÷ 2', (span = 0) => span / 2);
const riseOf = form('rise', 'run × pitch', (run = 0, pitch = 0) => run * pitch);
const rafterOf = form('rafter', '(run + overhang) × √(1 + pitch²)', (run = 0, out = 0, pitch = 0) => (run + out) * factor(pitch));
const rafterBoth = form(
  'rafter',
  '(run + overhang below + overhang above) × √(1 + pitch²)',
  (run = 0, low = 0, high = 0, pitch = 0) => (run + low + high) * factor(pitch),
);
const withBoth = form('with both overhangs', 'length + 2 × overhang', (length = 0, out = 0) => length + 2 * out);
const withEach = form(
  'with both overhangs',
  'length + overhang below + overhang above',
  (length = 0, low = 0, high = 0) => length + low + high,
);
const twoSlopes = form(
  'surface of the roof',
  '2 × ridge × rafter',
  (ridge = 0, rafter = 0) => 2 * ridge * rafter,
  'Dagostino & Peterson, Estimating in Building Construction, 7th ed., p. 181',
);
const oneSlope = form('surface of the roof', 'length × rafter', (length = 0, rafter = 0) => length * rafter);
const planSlope = form(
  'surface of the roof',
  'plan with overhangs × √(1 + pitch²)',
  (plan = 0, pitch = 0) => plan * factor(pitch),
  'Dagostino & Peterson, Estimating in Building Construction, 7th ed., p. 181: a hip roof has the surface of a gable roof of the same plan and pitch',
);
const planOf = form('plan of the roof', 'length × width, overhangs in them', (length = 0, width = 0) => length * width);
const twice = form('both edges', '2 × length', (length = 0) => 2 * length);
const fourRakes = form('rakes', '4 × rafter', (rafter = 0) => 4 * rafter);
const shedRakes = form('rakes and high edge', '2 × rafter + length', (rafter = 0, length = 0) => 2 * rafter + length);
const around = form('edges', '2 × (length + width)', (length = 0, width = 0) => 2 * (length + width));
const hipRidge = form('ridge', 'length − width', (length = 0, width = 0) => length - width);
const fourHips = form(
  'hips',
  '4 × (run + overhang) × √(2 + pitch²)',
  (run = 0, out = 0, pitch = 0) => 4 * (run + out) * Math.sqrt(2 + pitch * pitch),
);

const both = (one: Direction, other: Direction, length: Length) => ({ [one]: length, [other]: length });

const kept = new WeakMap<Roof, { readonly figures: RoofFigures | undefined }>();

/** Undefined where the roof has no plan, or a sloped roof no pitch. */
export function roofFigures(roof: Roof): RoofFigures | undefined {
  let known = kept.get(roof);
  if (known === undefined) kept.set(roof, (known = { figures: byFactorGiven(roof, figuresOf(roof)) }));
  return known.figures;
}

const planByFactor = form('surface of the roof', 'plan with overhangs × factor', (plan = 0, times = 1) => plan * times);
/** The surface by a factor from a table, where the plan names one. */
function byFactorGiven({ given }: Roof, figures: RoofFigures | undefined): RoofFigures | undefined {
  if (figures === undefined || given.factor === undefined) return figures;
  return { ...figures, area: measure('area', planByFactor, figures.plan, given.factor.value) };
}

/** East–west and north–south extent of what the roof covers. */
export function roofPlan(roof: Roof): { readonly width: Length; readonly depth: Length } | undefined {
  const size = roof.given.size?.value;
  if (size !== undefined) return { width: size.left, depth: size.right };
  const level = roof.given.over?.value;
  return level === undefined ? undefined : levelBody(level);
}

/** The part of its level that a storey leaves bare. */
export function besideOf({ given: { over, beside } }: Roof): Beside | undefined {
  return over === undefined || beside === undefined ? undefined : besideStorey(over.value, beside.value);
}

/** The level's floor without its bays, where it is no rectangle. */
export function outlineUnder(roof: Roof): FloorShape | undefined {
  const level = roof.given.size === undefined ? roof.given.over?.value : undefined;
  const shape = level === undefined ? undefined : levelBody(level);
  return shape === undefined || isRectangular(shape) ? undefined : shape;
}

function figuresOf(roof: Roof): RoofFigures | undefined {
  const plan = roofPlan(roof);
  const shape = roof.given.shape?.value;
  if (plan === undefined || shape === undefined) return undefined;
  const pitch = shape.pitch ?? (shape.form === 'flat' ? flatPitch : undefined);
  if (pitch === undefined) return undefined;
  const ridgeRuns = runsOf(shape, plan);
  const level = ridgeRuns === 'east-west';
  const lowSides: readonly [Direction, Direction] = level ? ['north', 'south'] : ['east', 'west'];
  const ends: readonly [Direction, Direction] = level ? ['east', 'west'] : ['north', 'south'];
  const [along, span] = ridgeRuns === 'east-west' ? [plan.width, plan.depth] : [plan.depth, plan.width];
  const overhang = roof.given.overhang?.value;
  const second = overhang?.rakes;
  // `18" high, 12" low` names the two ends of a shed's slope; else the first is for the eaves and the second for the rakes.
  const eavesOut = (second?.where === 'low' ? second.length : overhang?.eaves) ?? none;
  const highOut = overhang?.eaves ?? none;
  const rakesOut = shape.form === 'hip' || second === undefined || second.where === 'low' ? eavesOut : second.length;
  const beside = besideOf(roof);
  if (roof.given.beside !== undefined) {
    if (beside === undefined) return undefined;
    const { ridge, high } = shape;
    if (shape.form === 'gable' || shape.form === 'hip')
      return figuresAgainstWall(beside, shape.form, pitch, ridge, eavesOut, rakesOut);
    if (shape.form !== 'shed' && shape.form !== 'flat') return undefined;
    const { walled } = beside;
    return figuresOverOutline(beside.shape, { form: shape.form, pitch, ridge, high, eavesOut, highOut, rakesOut, walled });
  }
  const outline = outlineUnder(roof);
  if (outline !== undefined && !outline.square)
    return figuresOverSlanted(outline, { form: shape.form, pitch, high: shape.high, eavesOut, highOut, rakesOut });
  if (outline !== undefined && shape.form === 'gambrel')
    return gambrelsOverOutline(outline, {
      pitch,
      upper: shape.upper,
      breakAt: shape.break,
      ridge: shape.ridge,
      eavesOut,
      rakesOut,
    });
  if (outline !== undefined && shape.form !== 'gambrel')
    return figuresOverOutline(outline, {
      form: shape.form,
      pitch,
      ridge: shape.ridge,
      high: shape.high,
      eavesOut,
      highOut,
      rakesOut,
    });
  const length = measure('length', withBoth, along, rakesOut);
  const width =
    highOut === eavesOut ? measure('length', withBoth, span, eavesOut) : measure('length', withEach, span, eavesOut, highOut);
  const surface = measure('area', planOf, length, width);
  const common = { form: shape.form, pitch, along, span, eavesOut, rakesOut, plan: surface, valleys: undefined, gables: [] };
  switch (shape.form) {
    case 'gable': {
      const run = measure('length', halfSpan, span);
      const rafter = measure('length', rafterOf, run, eavesOut, pitch);
      const eaves = measure('length', twice, length);
      const rakes = measure('length', fourRakes, rafter);
      const area = measure('area', twoSlopes, length, rafter);
      return {
        ...common,
        run,
        rise: measure('length', riseOf, run, pitch),
        rafter,
        area,
        ridge: length,
        hips: undefined,
        eaves,
        eaveOn: both(...lowSides, length),
        rakes,
        gables: [span, span],
      };
    }
    case 'gambrel': {
      const run = measure('length', halfSpan, span);
      const broken = gambrel(run, pitch, shape.upper, shape.break, eavesOut, length);
      if (broken === undefined) return undefined;
      return {
        ...common,
        run,
        rise: broken.rise,
        rafter: broken.rafter,
        area: broken.area,
        ridge: length,
        hips: undefined,
        eaves: measure('length', twice, length),
        eaveOn: both(...lowSides, length),
        rakes: measure('length', fourRakes, broken.rafter),
        gables: [span, span],
        gambrel: broken,
      };
    }
    case 'hip': {
      const run = measure('length', halfSpan, span);
      return {
        ...common,
        run,
        rise: measure('length', riseOf, run, pitch),
        rafter: measure('length', rafterOf, run, eavesOut, pitch),
        area: measure('area', planSlope, surface, pitch),
        ridge: measure('length', hipRidge, along, span),
        hips: measure('length', fourHips, run, eavesOut, pitch),
        eaves: measure('length', around, length, width),
        eaveOn: { ...both(...lowSides, length), ...both(...ends, width) },
        rakes: none,
        onPlan: roofOnPlan(
          rectangleOutline([plan.width.value, plan.depth.value]),
          'hip',
          undefined,
          eavesOut.value,
          eavesOut.value,
        ),
      };
    }
    case 'shed': {
      const rafter = measure('length', rafterBoth, span, eavesOut, highOut, pitch);
      const area = measure('area', oneSlope, length, rafter);
      const rakes = measure('length', shedRakes, rafter, length);
      return {
        ...common,
        run: span,
        rise: measure('length', riseOf, span, pitch),
        rafter,
        area,
        ridge: undefined,
        hips: undefined,
        eaves: length,
        eaveOn: both(...lowSides, length),
        rakes,
      };
    }
    case 'flat': {
      const rafter = measure('length', rafterBoth, span, eavesOut, highOut, pitch);
      const eaves = measure('length', around, length, width);
      const area = measure('area', planSlope, surface, pitch);
      return {
        ...common,
        run: span,
        rise: measure('length', riseOf, span, pitch),
        rafter,
        area,
        ridge: undefined,
        hips: undefined,
        eaves,
        eaveOn: { ...both(...lowSides, length), ...both(...ends, width) },
        rakes: none,
      };
    }
  }
}

type Shape = NonNullable<Roof['given']['shape']>['value'];

/** The way given, or seen from the high side; else along the longer side. */
function runsOf(shape: Shape, plan: { readonly width: Length; readonly depth: Length }): 'north-south' | 'east-west' {
  const longer = plan.width.value >= plan.depth.value ? 'east-west' : 'north-south';
  // A hip roof has its ridge along the longer side whatever else is said: the other way it has none.
  if (shape.form === 'hip') return longer;
  if (shape.ridge !== undefined) return shape.ridge;
  if (shape.high !== undefined) return shape.high === 'north' || shape.high === 'south' ? 'east-west' : 'north-south';
  return longer;
}
