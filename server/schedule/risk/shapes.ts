// How lengths scatter between the least and the most, with the likely one between them: as tables of quantiles, so that a
// draw costs one look-up. Beta-PERT weighs the likely length four times (Malcolm, Roseboom, Clark and Fazar, "Application of
// a technique for research and development program evaluation", Operations Research 7, 1959; with the exponents by Vose, "Risk
// Analysis", 3rd edition, ch. "Modelling expert opinion"); the triangle has more in its tails.
import { exponential, logarithm } from '#kit/exponential';

export type Shape = 'beta-pert' | 'triangular';

/** Quantiles of a table: at 0, 1/CELLS, … 1. */
const CELLS = 4096;
/** Steps of the sum that the beta density is added up by. */
const STEPS = 8192;

const tables = new Map<string, Float64Array>();

/** Quantiles of the shape from 0 to 1 whose likely value stands at `mode`. Made once; it depends on nothing else. */
export function quantilesOf(shape: Shape, mode: number): Float64Array {
  const key = `${shape} ${mode}`;
  let table = tables.get(key);
  if (table === undefined) {
    if (tables.size > MOST_TABLES) tables.clear();
    tables.set(key, (table = shape === 'triangular' ? triangle(mode) : betaPert(mode)));
  }
  return table;
}

const MOST_TABLES = 500;

/** The value below which a share `chance` of all draws lies. */
export function quantile(table: Float64Array, chance: number): number {
  const at = chance * CELLS;
  const cell = Math.min(CELLS - 1, Math.floor(at));
  const low = table[cell]!;
  return low + (table[cell + 1]! - low) * (at - cell);
}

/** F⁻¹(u) = √(u·m) up to the likely value m, 1 − √((1 − u)(1 − m)) beyond it. */
function triangle(mode: number): Float64Array {
  const table = new Float64Array(CELLS + 1);
  for (let cell = 0; cell <= CELLS; cell++) {
    const chance = cell / CELLS;
    table[cell] = chance < mode ? Math.sqrt(chance * mode) : 1 - Math.sqrt((1 - chance) * (1 - mode));
  }
  return table;
}

/** Density x^(α−1) · (1 − x)^(β−1) with α = 1 + 4m, β = 5 − 4m, added up by Simpson's rule and read backward. */
function betaPert(mode: number): Float64Array {
  const [left, right] = [4 * mode, 4 - 4 * mode];
  const density = (x: number): number => power(x, left) * power(1 - x, right);
  const sums = new Float64Array(STEPS + 1);
  for (let step = 0, low = density(0); step < STEPS; step++) {
    const high = density((step + 1) / STEPS);
    sums[step + 1] = sums[step]! + low + 4 * density((step + 0.5) / STEPS) + high;
    low = high;
  }
  const table = new Float64Array(CELLS + 1);
  for (let cell = 1, step = 0; cell < CELLS; cell++) {
    const wanted = (cell / CELLS) * sums[STEPS]!;
    while (sums[step + 1]! < wanted) step++;
    table[cell] = (step + (wanted - sums[step]!) / (sums[step + 1]! - sums[step]!)) / STEPS;
  }
  table[CELLS] = 1;
  return table;
}

function power(base: number, exponent: number): number {
  if (exponent === 0) return 1;
  return base <= 0 ? 0 : exponential(exponent * logarithm(base));
}

/** Share of a standard normal below z: Abramowitz and Stegun, "Handbook of Mathematical Functions" (1964), 26.2.17, to 7.5e-8. */
export function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    exponential(-(z * z) / 2) *
    0.3989422804014327 *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}
