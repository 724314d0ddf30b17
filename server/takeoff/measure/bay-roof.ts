// The roofs over the bays of a level: three slopes of one pitch that rise against the wall over each bay. In closed form, with
// the angle that a bay's sides make with the wall; its overhang goes round it.
import { type Finding, finding } from '#kit/finding';
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import { type BayGiven, bayAngle } from '#model/bays';
import { bayMisfits } from '#model/facts/level';
import type { Level, Roof } from '#model/model';
import type { Where } from '../lines.ts';
import { bayWithoutRoof, pitchMissing, sizeMissing } from '../problems.ts';
import type { Measured } from './portion.ts';
import { edgePortions, layerPortions, nothingTaken } from './roof.ts';
import type { RoofFigures } from './roof-figures.ts';
import { framePortions } from './roof-frame.ts';

type Length = Quantity<'length'>;

/** On plan, with the overhang: depth, width at the wall, width in front, and how far a hip goes in. */
interface OnPlan {
  readonly depth: number;
  readonly back: number;
  readonly front: number;
  /** Level distance from the front edge to where its hips end: at the wall, or where they meet before it. */
  readonly reach: number;
  readonly sine: number;
  /** Tangent of half the angle. */
  readonly half: number;
}

function onPlan(width: number, depth: number, slope: number, out: number): OnPlan {
  const sine = slope / Math.sqrt(1 + slope * slope);
  const half = (Math.sqrt(1 + slope * slope) - 1) / slope;
  const whole = depth + out;
  const back = width + (2 * out) / sine;
  const front = back - (2 * whole) / slope;
  return { depth: whole, back, front, reach: Math.min(whole, front / 2 / half), sine, half };
}

const planArea = form('plan of the roof', '(width at the wall + width in front) ÷ 2 × depth, overhang in them', (...values) => {
  const { depth, back, front } = onPlan(values[0]!, values[1]!, values[2]!, values[3]!);
  return ((back + front) / 2) * depth;
});
const surface = form(
  'surface of the roof',
  'plan with overhangs × √(1 + pitch²): three slopes of one pitch',
  (plan = 0, pitch = 0) => plan * Math.sqrt(1 + pitch * pitch),
);
const eavesOf = form('eaves', 'front + 2 sides, overhang in them', (...values) => {
  const { depth, front, sine } = onPlan(values[0]!, values[1]!, values[2]!, values[3]!);
  return front + (2 * depth) / sine;
});
const frontOf = form(
  'eave in front',
  'width in front, overhang in it',
  (...values) => onPlan(values[0]!, values[1]!, values[2]!, values[3]!).front,
);
const hipsOf = form('hips', '2 × how far in × √(1 + tangent² of half the angle + pitch²)', (...values) => {
  const { reach, half } = onPlan(values[0]!, values[1]!, values[2]!, values[3]!);
  const pitch = values[4]!;
  return 2 * reach * Math.sqrt(1 + half * half + pitch * pitch);
});
const ridgeOf = form('ridge', 'depth − how far in the hips meet', (...values) => {
  const { depth, reach } = onPlan(values[0]!, values[1]!, values[2]!, values[3]!);
  return depth - reach;
});
const againstWall = form('edge at the wall', 'up both slopes, and level between them', (...values) => {
  const { depth, back, sine } = onPlan(values[0]!, values[1]!, values[2]!, values[3]!);
  const up = Math.min(depth / sine, back / 2);
  const rise = sine * values[4]!;
  return 2 * up * Math.sqrt(1 + rise * rise) + (back - 2 * up);
});
const rafterOf = form(
  'rafter',
  '(depth + overhang) × √(1 + pitch²)',
  (depth = 0, out = 0, pitch = 0) => (depth + out) * Math.sqrt(1 + pitch * pitch),
);
const riseOf = form('rise', 'depth × pitch', (depth = 0, pitch = 0) => depth * pitch);
const none = constant('overhang', 0, 'length');

/** Whether a level has bays that no roof and no bay of a storey on it covers, in a plan that has roofs. */
export function baysLackRoof(level: Level, roofs: readonly Roof[], levels: readonly Level[]): boolean {
  if (level.given.bay.length === 0 || roofs.length === 0) return false;
  if (roofs.some(({ given }) => given['over bays of']?.value === level)) return false;
  return !levels.some(({ given }) => given.on?.value === level.slot && given.bay.length >= level.given.bay.length);
}

export function bayRoofMissing(level: Level): Measured {
  return { portions: [], findings: [finding(bayWithoutRoof, level.given.bay[0]!.place, level.name)] };
}

export function measureBayRoof(roof: Roof): Measured {
  const { shape, overhang } = roof.given;
  const level = roof.given['over bays of']!.value;
  const misfits = bayMisfits(level);
  const bays = level.given.bay.filter((_, index) => !misfits.includes(index)).map(({ value }) => value);
  const lack = (what: string): Measured => ({ portions: [], findings: [finding(sizeMissing, roof.place, roof.label, what)] });
  if (shape?.value.form !== 'hip') return lack('the shape that roofs over bays are counted in ("shape hip 6:12")');
  if (shape.value.pitch === undefined) return { portions: [], findings: [finding(pitchMissing, shape.place, roof.label)] };
  if (bays.length === 0) return lack(`a bay of "${level.name}" ("bay 8' x 2' in south at 6'")`);
  const figures = together(bays, shape.value.pitch, overhang?.value.eaves ?? none);
  const where: Where = { element: roof.slot, level: level.slot };
  const findings: Finding[] = [];
  return {
    portions: [
      ...framePortions(roof, figures, where, findings),
      ...layerPortions(roof, figures, nothingTaken, where),
      ...edgePortions(roof, figures, where),
    ],
    findings,
  };
}

function together(bays: readonly BayGiven[], pitch: Quantity<'slope'>, out: Length): RoofFigures {
  const first = bays[0]!;
  const inputsOf = ({ size, ...bay }: BayGiven) => [size.left, size.right, bayAngle({ size, ...bay }), out];
  const lengths = (label: string, how: typeof hipsOf, of = bays): Length =>
    total(
      label,
      'length',
      of.map((bay) => measure('length', how, ...inputsOf(bay), pitch)),
    );
  const plan = total(
    'plan of the roof',
    'area',
    bays.map((bay) => measure('area', planArea, ...inputsOf(bay))),
  );
  const sides = [...new Set(bays.map(({ side }) => side))];
  return {
    form: 'hip',
    pitch,
    along: first.size.left,
    span: first.size.right,
    run: first.size.right,
    rise: measure('length', riseOf, first.size.right, pitch),
    eavesOut: out,
    rakesOut: none,
    rafter: measure('length', rafterOf, first.size.right, out, pitch),
    plan,
    area: measure('area', surface, plan, pitch),
    ridge: lengths('ridge', ridgeOf),
    hips: lengths('hips', hipsOf),
    valleys: undefined,
    eaves: lengths('eaves', eavesOf),
    eaveOn: Object.fromEntries(
      sides.map((side) => [
        side,
        lengths(
          'eaves in front',
          frontOf,
          bays.filter((bay) => bay.side === side),
        ),
      ]),
    ),
    rakes: none,
    gables: [],
    againstWalls: lengths('edge at the wall', againstWall),
    bySurface: true,
  };
}
