// A roof that runs into the slope of another: the gable or hip roof of a porch or wing, and dormers under a gable, a hip or a
// single slope.
// What it adds, and what it takes from the roof that it runs into. Distances are level ones from the wall under that slope.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Direction } from '#kit/shapes/outline';
import type { Roof } from '#model/model';
import { type RoofFigures, roofFigures } from './roof-figures.ts';

type Length = Quantity<'length'>;
type Area = Quantity<'area'>;
type Slope = Quantity<'slope'>;

export interface RunIn {
  readonly form: 'gable' | 'hip' | 'shed';
  readonly side: Direction;
  readonly pitch: Slope;
  readonly mainPitch: Slope;
  readonly width: Length;
  /** From the wall to its own front: how far back a dormer stands, or how far out a porch, then below nothing. */
  readonly front: Length;
  /** From the wall to where its ridge, or its slope, meets the other roof. */
  readonly meets: Length;
  readonly area: Area;
  readonly ridge: Length | undefined;
  /** Of a hip roof, in front. */
  readonly hips: Length | undefined;
  readonly valleys: Length | undefined;
  readonly eaves: Length;
  readonly rakes: Length;
  readonly eavesOut: Length;
  readonly rakesOut: Length;
  /** Of the other roof's surface, under it. */
  readonly hides: Area;
  /** Of the other roof's eave, before which it stands. */
  readonly takesEave: Length | undefined;
  /** Walls of a dormer: its front up to the plate, and both sides together; and the triangle under a gable. */
  readonly frontWall: Area | undefined;
  readonly sideWalls: Area | undefined;
  readonly gable: Area | undefined;
  /** Where the other roof runs up against its walls. */
  readonly flashing: Length | undefined;
}

const slope = (pitch: number): number => Math.sqrt(1 + pitch * pitch);
const none = constant('overhang', 0, 'length');
const level = constant('raised', 0, 'length');

const outside = form('front', '− how far it stands out', (out = 0) => -out);
const ridgeMeets = form(
  'from the wall to where the ridges meet the slope',
  '(raised + width ÷ 2 × pitch) ÷ pitch of the other roof',
  (raised = 0, width = 0, pitch = 0, other = 1) => (raised + (width / 2) * pitch) / other,
);
const slopeMeets = form(
  'from the wall to where the slopes meet',
  '(raised − pitch × front) ÷ (pitch of the other roof − pitch)',
  (raised = 0, pitch = 0, front = 0, other = 1) => (raised - pitch * front) / (other - pitch),
);
const gableSurface = form(
  'surface of the roof',
  '2 × half width with overhang × length on average × √(1 + pitch²)',
  (width = 0, out = 0, meets = 0, front = 0, rakesOut = 0, pitch = 0, other = 1) => {
    const half = width / 2 + out;
    return 2 * half * Math.max(0, meets - (half * pitch) / other / 2 - front + rakesOut) * slope(pitch);
  },
);
const shedSurface = form(
  'surface of the roof',
  '(width + 2 × overhang at the sides) × (how far in + overhang) × √(1 + pitch²)',
  (width = 0, side = 0, meets = 0, front = 0, out = 0, pitch = 0) => (width + 2 * side) * (meets - front + out) * slope(pitch),
);
const ridgeLength = form(
  'ridge',
  'from its end to where it meets the slope',
  (meets = 0, front = 0, out = 0) => meets - front + out,
);
const hippedRidge = form(
  'ridge',
  'from where its hips meet to where it meets the slope',
  (meets = 0, front = 0, width = 0) => meets - front - width / 2,
);
const twoHips = form(
  'hips',
  '2 × (width ÷ 2 + overhang) × √(2 + pitch²)',
  (width = 0, out = 0, pitch = 0) => 2 * (width / 2 + out) * Math.sqrt(2 + pitch * pitch),
  'NAVEDTRA 14044, Builder, p. 2-28: bridge measure times the run of the common rafter',
);
const threeEaves = form(
  'eaves',
  'both sides + width in front with overhangs',
  (sides = 0, width = 0, out = 0) => sides + width + 2 * out,
);
const twoValleys = form(
  'valleys',
  '2 × √(half width² + (half width × pitch ÷ pitch of the other)² + (half width × pitch)²), overhang in the half width',
  (width = 0, out = 0, pitch = 0, other = 1) => {
    const half = width / 2 + out;
    const [along, rise] = [(half * pitch) / other, half * pitch];
    return 2 * Math.sqrt(half * half + along * along + rise * rise);
  },
  'Griffith, Carpentry, fig. 88-a, uneven pitches: the valley lies over the half span and the run of the other roof that rises as far',
);
const twoEaves = form(
  'eaves',
  '2 × (from its end to where its eaves meet the slope)',
  (width = 0, out = 0, meets = 0, front = 0, rakesOut = 0, pitch = 0, other = 1) =>
    2 * Math.max(0, meets - ((width / 2 + out) * pitch) / other - front + rakesOut),
);
const oneEave = form('eave', 'width + 2 × overhang at the sides', (width = 0, side = 0) => width + 2 * side);
const twoRakes = form(
  'rakes',
  '2 × (width ÷ 2 + overhang) × √(1 + pitch²)',
  (width = 0, out = 0, pitch = 0) => 2 * (width / 2 + out) * slope(pitch),
);
const sideRakes = form(
  'rakes',
  '2 × (how far in + overhang) × √(1 + pitch²)',
  (meets = 0, front = 0, out = 0, pitch = 0) => 2 * (meets - front + out) * slope(pitch),
);
const gableHides = form(
  'roof under it',
  '(wedge between the valleys and the other roof’s eave, or the dormer’s front) × √(1 + its pitch²)',
  (width = 0, meets = 0, from = 0, pitch = 0, other = 1) => {
    // Half the wedge, from the middle out to where it is as far down as it begins, or to the wall of it.
    const half = Math.min(width / 2, ((meets - from) * other) / pitch);
    return half > 0 ? 2 * half * (meets - (half * pitch) / other / 2 - from) * slope(other) : 0;
  },
);
const shedHides = form(
  'roof under it',
  'width × how far in × √(1 + pitch of the other roof²)',
  (width = 0, meets = 0, front = 0, other = 0) => width * (meets - front) * slope(other),
);
const eaveEnd = form('eave of the other roof', '− its overhang', (out = 0) => -out);
const withBoth = form('width with overhangs', 'width + 2 × overhang', (width = 0, out = 0) => width + 2 * out);
const frontOf = form(
  'front wall',
  'width × (raised − pitch of the other roof × front)',
  (width = 0, raised = 0, other = 0, front = 0) => Math.max(0, width * (raised - other * front)),
);
const gableSides = form(
  'side walls',
  'two triangles: (raised − pitch of the other roof × front)² ÷ pitch of the other roof',
  (raised = 0, other = 1, front = 0) => {
    const height = Math.max(0, raised - other * front);
    return (height * height) / other;
  },
);
const shedSides = form(
  'side walls',
  'two triangles: (raised − pitch of the other roof × front) × how far in',
  (raised = 0, other = 0, front = 0, meets = 0) => Math.max(0, raised - other * front) * (meets - front),
);
const triangle = form('gable', 'width ÷ 2 × (width ÷ 2 × pitch)', (width = 0, pitch = 0) => (width / 2) * (width / 2) * pitch);
const gableFlashing = form(
  'flashing at the walls',
  'width + 2 sides along the slope of the other roof, until its plate meets it',
  (width = 0, raised = 0, front = 0, other = 1) => width + 2 * Math.max(0, raised / other - front) * slope(other),
);
const shedFlashing = form(
  'flashing at the walls',
  '2 × width (before its front, and where the slopes meet) + 2 sides along the slope of the other roof',
  (width = 0, meets = 0, front = 0, other = 0) => 2 * width + 2 * (meets - front) * slope(other),
);

/** Undefined where something is not given, or the two do not meet. */
export function runIn(roof: Roof, main: Roof): RunIn | undefined {
  const { into, shape, size, dormer, overhang } = roof.given;
  const other = roofFigures(main);
  const pitch = shape?.value.pitch;
  const shapeOf = shape?.value.form;
  const width = dormer?.value.wide ?? size?.value.left;
  if (into === undefined || other === undefined || pitch === undefined || width === undefined) return undefined;
  if (shapeOf !== 'gable' && shapeOf !== 'hip' && shapeOf !== 'shed') return undefined;
  if (shapeOf === 'shed' && dormer === undefined) return undefined;
  // There is no slope over a gable end.
  if (other.eaveOn[into.value.side] === undefined) return undefined;
  const mainPitch = other.pitch;
  const raised = dormer?.value.raised ?? level;
  const front = dormer?.value.back ?? measure('length', outside, size!.value.right);
  const eavesOut = overhang?.value.eaves ?? none;
  const rakesOut = shapeOf === 'hip' ? eavesOut : (overhang?.value.rakes?.length ?? eavesOut);
  const meets =
    shapeOf !== 'shed'
      ? measure('length', ridgeMeets, raised, width, pitch, mainPitch)
      : measure('length', slopeMeets, raised, pitch, front, mainPitch);
  // Above its break a gambrel has another pitch.
  if (other.gambrel !== undefined && meets.value > other.gambrel.breakAt.value) return undefined;
  if (!(meets.value > front.value) || !(mainPitch.value > 0) || (shapeOf === 'shed' && pitch.value >= mainPitch.value))
    return undefined;
  const common = { side: into.value.side, pitch, mainPitch, width, front, meets, eavesOut, rakesOut };
  const raisedWalls = dormer === undefined ? {} : { frontWall: measure('area', frontOf, width, raised, mainPitch, front) };
  if (shapeOf === 'shed')
    return {
      ...common,
      form: 'shed',
      area: measure('area', shedSurface, width, rakesOut, meets, front, eavesOut, pitch),
      ridge: undefined,
      hips: undefined,
      valleys: undefined,
      eaves: measure('length', oneEave, width, rakesOut),
      rakes: measure('length', sideRakes, meets, front, eavesOut, pitch),
      hides: measure('area', shedHides, width, meets, front, mainPitch),
      takesEave: undefined,
      frontWall: raisedWalls.frontWall,
      sideWalls: measure('area', shedSides, raised, mainPitch, front, meets),
      gable: undefined,
      flashing: measure('length', shedFlashing, width, meets, front, mainPitch),
    };
  // Under a porch the other roof begins at its own eave; a dormer stands behind it.
  const isPorch = dormer === undefined;
  const from = isPorch ? measure('length', eaveEnd, other.eavesOut) : front;
  const sides = measure('length', twoEaves, width, eavesOut, meets, front, rakesOut, pitch, mainPitch);
  // In front of a hip roof whose hips do not meet before the other slope there is no ridge, and what is left is not clear.
  if (shapeOf === 'hip' && (meets.value - front.value < width.value / 2 || !(sides.value > 0))) return undefined;
  const hipped = shapeOf === 'hip';
  return {
    ...common,
    form: shapeOf,
    area: measure('area', gableSurface, width, eavesOut, meets, front, rakesOut, pitch, mainPitch),
    ridge: hipped ? measure('length', hippedRidge, meets, front, width) : measure('length', ridgeLength, meets, front, rakesOut),
    hips: hipped ? measure('length', twoHips, width, eavesOut, pitch) : undefined,
    valleys: measure('length', twoValleys, width, eavesOut, pitch, mainPitch),
    eaves: hipped ? measure('length', threeEaves, sides, width, eavesOut) : sides,
    rakes: hipped ? none : measure('length', twoRakes, width, eavesOut, pitch),
    hides: measure(
      'area',
      gableHides,
      isPorch ? measure('length', withBoth, width, eavesOut) : width,
      meets,
      from,
      pitch,
      mainPitch,
    ),
    takesEave: isPorch ? measure('length', withBoth, width, eavesOut) : undefined,
    frontWall: raisedWalls.frontWall,
    sideWalls: isPorch ? undefined : measure('area', gableSides, raised, mainPitch, front),
    gable: hipped ? undefined : measure('area', triangle, width, pitch),
    flashing: isPorch ? undefined : measure('length', gableFlashing, width, raised, front, mainPitch),
  };
}

/** Its ridge would stand above that of the roof that it runs into. */
export function standsAbove({ meets }: RunIn, main: RoofFigures): boolean {
  return meets.value > main.run.value;
}
