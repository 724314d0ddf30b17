// The figures of a roof: run, slope factors, length of rafters, surface, ridge, hips, eaves and rakes.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { levelShape } from '#model/facts/level';
import type { Roof } from '#model/model';

type Length = Quantity<'length'>;

export interface RoofFigures {
  readonly form: 'gable' | 'shed' | 'hip' | 'flat';
  readonly pitch: Quantity<'slope'>;
  /** Along the ridge, or along the low eave, without overhangs; and across it. */
  readonly along: Length;
  readonly span: Length;
  /** Which way the ridge, or the low eave, runs. */
  readonly ridgeRuns: 'north-south' | 'east-west';
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
  /** The low edges, added. */
  readonly eaves: Length;
  /** The sloping edges, and the high edge of a shed, added. */
  readonly rakes: Length;
  /** One low edge, for gutters on one side. */
  readonly eave: Length;
  /** The low edges along the other two sides of a hip or flat roof. */
  readonly end: Length | undefined;
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
  return level === undefined ? undefined : levelShape(level);
}

function figuresOf(roof: Roof): RoofFigures | undefined {
  const plan = roofPlan(roof);
  const shape = roof.given.shape?.value;
  if (plan === undefined || shape === undefined) return undefined;
  const pitch = shape.pitch ?? (shape.form === 'flat' ? flatPitch : undefined);
  if (pitch === undefined) return undefined;
  const ridgeRuns = runsOf(shape, plan);
  const [along, span] = ridgeRuns === 'east-west' ? [plan.width, plan.depth] : [plan.depth, plan.width];
  const overhang = roof.given.overhang?.value;
  const second = overhang?.rakes;
  // `18" high, 12" low` names the two ends of a shed's slope; else the first is for the eaves and the second for the rakes.
  const eavesOut = (second?.where === 'low' ? second.length : overhang?.eaves) ?? none;
  const highOut = overhang?.eaves ?? none;
  const rakesOut = shape.form === 'hip' || second === undefined || second.where === 'low' ? eavesOut : second.length;
  const length = measure('length', withBoth, along, rakesOut);
  const width =
    highOut === eavesOut ? measure('length', withBoth, span, eavesOut) : measure('length', withEach, span, eavesOut, highOut);
  const surface = measure('area', planOf, length, width);
  const common = { form: shape.form, pitch, along, span, ridgeRuns, eavesOut, rakesOut, plan: surface, eave: length };
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
        rakes,
        end: undefined,
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
        rakes: none,
        end: width,
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
        rakes,
        end: undefined,
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
        rakes: none,
        end: width,
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
