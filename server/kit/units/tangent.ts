// The tangent of an angle in degrees and back, by series: the same bits in every engine, which Math.tan does not promise.

/** Rise over run of a slope of so many degrees (below 90). Taylor series of sine and cosine, 13 terms each. */
export function tangent(degrees: number): number {
  const angle = (degrees * Math.PI) / 180;
  const square = angle * angle;
  let sine = 0;
  let cosine = 0;
  let cosineTerm = 1;
  let sineTerm = angle;
  for (let step = 1; step <= 13; step += 1) {
    cosine += cosineTerm;
    sine += sineTerm;
    cosineTerm *= -square / ((2 * step - 1) * (2 * step));
    sineTerm *= -square / (2 * step * (2 * step + 1));
  }
  return sine / cosine;
}

/** Degrees of a slope given as rise over run: found by halving, so that it answers `tangent` exactly enough to print. */
export function degreesOf(slope: number): number {
  let low = 0;
  let high = 90;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (middle < 89.9 && tangent(middle) < Math.abs(slope)) low = middle;
    else high = middle;
  }
  return slope < 0 ? -(low + high) / 2 : (low + high) / 2;
}
