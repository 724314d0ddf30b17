// The exponential and the natural logarithm by series: the same bits in every engine, which the built-in ones do not promise.

/** Between its reciprocal and this lies what the series is asked of. */
// biome-ignore lint/suspicious/noApproximativeNumericConstant: written out, so that it is the same everywhere.
const ROOT_OF_2 = 1.4142135623730951;
/** ln 2, to the last bit of a double. */
// biome-ignore lint/suspicious/noApproximativeNumericConstant: the same.
const LN_2 = 0.6931471805599453;

/** e to the power of x. Halves and doubles are taken out exactly; a Taylor series of 18 terms is left for at most ln 2 ÷ 2. */
export function exponential(x: number): number {
  const doublings = Math.round(x / LN_2);
  const rest = x - doublings * LN_2;
  let sum = 1;
  for (let step = 18; step >= 1; step -= 1) sum = 1 + (rest * sum) / step;
  for (let step = 0; step < Math.abs(doublings); step += 1) sum = doublings > 0 ? sum * 2 : sum / 2;
  return sum;
}

/** The natural logarithm of a number above 0, by 2 · artanh((m − 1) ÷ (m + 1)) after doublings are taken out. */
export function logarithm(value: number): number {
  if (!(value > 0) || !Number.isFinite(value)) return Number.NaN;
  let doublings = 0;
  let near = value;
  for (; near > ROOT_OF_2; near /= 2) doublings += 1;
  for (; near < 1 / ROOT_OF_2; near *= 2) doublings -= 1;
  const ratio = (near - 1) / (near + 1);
  const square = ratio * ratio;
  let sum = 0;
  for (let odd = 31; odd >= 1; odd -= 2) sum = 1 / odd + square * sum;
  return 2 * ratio * sum + doublings * LN_2;
}
