// Gambrel roofs: on each side a steep slope up to a break, and a flatter one from there to the ridge.
import { form, measure, type Quantity } from '#kit/quantity';

type Length = Quantity<'length'>;
type Slope = Quantity<'slope'>;

export interface Gambrel {
  /** Level distance from the wall to the break. */
  readonly breakAt: Length;
  readonly upper: Slope;
  /** Rafters below the break, overhang in them, and above it. */
  readonly low: Length;
  readonly high: Length;
  /** Both, one after the other. */
  readonly rafter: Length;
  readonly rise: Length;
  readonly area: Quantity<'area'>;
  /** Of both ends. */
  readonly gables: Quantity<'area'>;
}

const onSlope = (pitch: number): number => Math.sqrt(1 + pitch * pitch);
const lowRafter = form(
  'rafter below the break',
  '(break + overhang) × √(1 + pitch²)',
  (at = 0, out = 0, pitch = 0) => (at + out) * onSlope(pitch),
);
const highRafter = form(
  'rafter above the break',
  '(run − break) × √(1 + upper pitch²)',
  (run = 0, at = 0, pitch = 0) => Math.max(0, run - at) * onSlope(pitch),
);
const together = form('both rafters', 'below the break + above it', (low = 0, high = 0) => low + high);
const riseOf = form(
  'rise',
  'break × pitch + (run − break) × upper pitch',
  (at = 0, pitch = 0, run = 0, upper = 0) => at * pitch + (run - at) * upper,
);
const surface = form('surface of the roof', '2 × ridge × both rafters', (ridge = 0, rafter = 0) => 2 * ridge * rafter);
const ends = form(
  'two gables',
  '2 × (up to the break: half height × break, and from there height × what is left + half of the rest), both sides',
  (run = 0, at = 0, pitch = 0, upper = 0) => {
    const [height, left] = [at * pitch, run - at];
    return 4 * ((at * height) / 2 + left * height + (left * left * upper) / 2);
  },
);

/** `ridge` is the length with overhangs at the gables. Undefined where the break does not lie between wall and ridge. */
export function gambrel(
  run: Length,
  pitch: Slope,
  upper: Slope | undefined,
  breakAt: Length | undefined,
  eavesOut: Length,
  ridge: Length,
): Gambrel | undefined {
  if (upper === undefined || breakAt === undefined || !(breakAt.value > 0) || breakAt.value >= run.value) return undefined;
  const low = measure('length', lowRafter, breakAt, eavesOut, pitch);
  const high = measure('length', highRafter, run, breakAt, upper);
  const rafter = measure('length', together, low, high);
  return {
    breakAt,
    upper,
    low,
    high,
    rafter,
    rise: measure('length', riseOf, breakAt, pitch, run, upper),
    area: measure('area', surface, ridge, rafter),
    gables: measure('area', ends, run, breakAt, pitch, upper),
  };
}
