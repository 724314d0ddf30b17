// Whether two rows of numbers are the same; NaN, which stands for "nothing", equals itself.
type Numbers = Int32Array | Float64Array | Uint8Array;

export function sameNumbers(a: Numbers | undefined, b: Numbers | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined || a.length !== b.length) return false;
  for (let at = 0; at < a.length; at++) if (!Object.is(a[at], b[at])) return false;
  return true;
}
