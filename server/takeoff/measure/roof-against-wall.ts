// A gable or hip roof over the rectangle that a storey leaves bare, its ridge running square against the storey's wall: one
// end is a gable or a hip, the other is that wall, without edge or overhang.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Direction } from '#kit/shapes/outline';
import { boundsOf } from '#kit/shapes/region';
import { isRectangular } from '#model/floor-shape';
import type { Beside } from './roof-beside.ts';
import { bodyOver } from './roof-bodies.ts';
import type { RoofFigures } from './roof-figures.ts';
import { onPlanOf } from './roof-plan.ts';

type Length = Quantity<'length'>;

const slope = (pitch: number): number => Math.sqrt(1 + pitch * pitch);
const none = constant('overhang', 0, 'length');
const half = form('run', 'span ÷ 2', (span = 0) => span / 2);
const riseOf = form('rise', 'run × pitch', (run = 0, pitch = 0) => run * pitch);
const rafterOf = form('rafter', '(run + overhang) × √(1 + pitch²)', (run = 0, out = 0, pitch = 0) => (run + out) * slope(pitch));
const oneOut = form('with the overhang at its end', 'length + overhang', (length = 0, out = 0) => length + out);
const bothOut = form('with both overhangs', 'length + 2 × overhang', (length = 0, out = 0) => length + 2 * out);
const planOf = form('plan of the roof', 'length × width, overhangs in them', (length = 0, width = 0) => length * width);
const surface = form('surface of the roof', 'plan with overhangs × √(1 + pitch²)', (plan = 0, pitch = 0) => plan * slope(pitch));
const twice = form('both edges', '2 × length', (length = 0) => 2 * length);
const around = form('edges', '2 × length + width', (length = 0, width = 0) => 2 * length + width);
const hipRidge = form('ridge', 'length − run', (length = 0, run = 0) => length - run);
const twoHips = form(
  'hips',
  '2 × (run + overhang) × √(2 + pitch²)',
  (run = 0, out = 0, pitch = 0) => 2 * (run + out) * Math.sqrt(2 + pitch * pitch),
  'NAVEDTRA 14044, Builder, p. 2-28: bridge measure times the run of the common rafter',
);

const OPPOSITE: Readonly<Record<Direction, Direction>> = { north: 'south', south: 'north', east: 'west', west: 'east' };

/** Undefined where not one side alone of a rectangle is walled, or a hip roof is shorter than half its span. */
export function figuresAgainstWall(
  { shape, walled }: Beside,
  roofForm: 'gable' | 'hip',
  pitch: Quantity<'slope'>,
  ridge: 'north-south' | 'east-west' | undefined,
  eavesOut: Length,
  rakesOut: Length,
): RoofFigures | undefined {
  const [wall] = walled;
  if (wall === undefined || walled.size !== 1 || !isRectangular(shape)) return undefined;
  const runs = wall === 'east' || wall === 'west' ? 'east-west' : 'north-south';
  // With its slope against the wall it would drain into it: that is drawn, and built, otherwise.
  if (ridge !== undefined && ridge !== runs) return undefined;
  const [along, span] = runs === 'east-west' ? [shape.width, shape.depth] : [shape.depth, shape.width];
  const run = measure('length', half, span);
  const hip = roofForm === 'hip';
  if (hip && along.value < run.value) return undefined;
  const end = OPPOSITE[wall];
  const length = measure('length', oneOut, along, hip ? eavesOut : rakesOut);
  const width = measure('length', bothOut, span, eavesOut);
  const rafter = measure('length', rafterOf, run, eavesOut, pitch);
  const plan = measure('area', planOf, length, width);
  const lowSides: readonly Direction[] = runs === 'east-west' ? ['north', 'south'] : ['east', 'west'];
  const out = (side: Direction): number => (side === wall ? 0 : side === end && !hip ? rakesOut.value : eavesOut.value);
  return {
    form: roofForm,
    pitch,
    along,
    span,
    run,
    rise: measure('length', riseOf, run, pitch),
    eavesOut,
    rakesOut: hip ? eavesOut : rakesOut,
    rafter,
    plan,
    area: measure('area', surface, plan, pitch),
    ridge: hip ? measure('length', hipRidge, along, run) : length,
    hips: hip ? measure('length', twoHips, run, eavesOut, pitch) : undefined,
    valleys: undefined,
    eaves: hip ? measure('length', around, length, width) : measure('length', twice, length),
    eaveOn: Object.fromEntries([...lowSides.map((side) => [side, length] as const), ...(hip ? [[end, width] as const] : [])]),
    rakes: hip ? none : measure('length', twice, rafter),
    gables: hip ? [] : [span],
    againstWalls: measure('length', twice, rafter),
    ...(hip ? { onPlan: onPlanOf([bodyOver(boundsOf(shape.outline), runs, [wall], out)], 'hip') } : {}),
  };
}
