// Money as whole cents: rounding once, sharing without a cent lost, and writing it.

/**
 * A computed number of cents to whole cents, half a cent away from zero. Float noise does not push a half down:
 * 1.005 × 100 is 100.49999999999999 and gives 101.
 */
export function roundCents(cents: number): number {
  const size = Math.abs(cents);
  const whole = Math.floor(size * (1 + NOISE) + 0.5);
  return cents < 0 && whole > 0 ? -whole : whole;
}

/**
 * Whole cents shared out by weight, so that the shares add up to the total exactly: each gets the whole cents of its
 * exact share, and the cents left over go to the largest remainders, the earlier first. Weights below zero count as
 * zero; where no weight is above zero the shares are equal. A total beyond all counting (not a number) gives zeros.
 */
export function shareCents(total: number, weights: ArrayLike<number>): readonly number[] {
  const count = weights.length;
  const parts = new Float64Array(count);
  let sum = 0;
  for (let at = 0; at < count; at++) {
    const weight = weights[at]!;
    parts[at] = weight > 0 && weight < Number.POSITIVE_INFINITY ? weight : 0;
    sum += parts[at]!;
  }
  if (sum <= 0) parts.fill(1);
  const whole = sum > 0 ? sum : count;
  const size = Math.abs(roundCents(total));
  const shares = new Array<number>(count).fill(0);
  if (count === 0 || !Number.isSafeInteger(size)) return shares;
  const remainders = new Float64Array(count);
  let left = size;
  for (let at = 0; at < count; at++) {
    const exact = (size * parts[at]!) / whole;
    shares[at] = Math.floor(exact * (1 + NOISE));
    left -= shares[at]!;
    remainders[at] = parts[at]! > 0 ? exact - shares[at]! : Number.NEGATIVE_INFINITY;
  }
  while (left !== 0) left -= handOut(left, shares, remainders);
  if (total < 0) for (let at = 0; at < count; at++) shares[at] = shares[at] === 0 ? 0 : -shares[at]!;
  return shares;
}

/** One cent more, or less, for each of the largest remainders, the earlier first; gives back how many cents that was. */
function handOut(left: number, shares: number[], remainders: Float64Array): number {
  // Numbers alone are sorted much faster than pairs: the least remainder that still gets a cent is all that is needed.
  const sorted = remainders.slice().sort();
  let served = sorted.length;
  while (served > 0 && sorted[sorted.length - served] === Number.NEGATIVE_INFINITY) served -= 1;
  const turns = Math.min(Math.abs(left), served);
  const least = sorted[sorted.length - turns]!;
  let above = 0;
  for (const remainder of remainders) if (remainder > least) above += 1;
  let equal = turns - above;
  const cent = left > 0 ? 1 : -1;
  for (let at = 0; at < shares.length; at++) {
    const remainder = remainders[at]!;
    if (remainder > least || (remainder === least && equal-- > 0)) shares[at]! += cent;
  }
  return cent * turns;
}

/** '$1,234.56', '-€4.20', 'CAD 18.00'. The currency is a sign or a code; common codes are written as their sign. */
export function formatMoney(cents: number, currency: string): string {
  const whole = roundCents(cents);
  const size = Math.abs(whole);
  const units = Math.floor(size / 100);
  const rest = String(size - units * 100).padStart(2, '0');
  return `${whole < 0 ? '-' : ''}${signOf(currency)}${groupThousands(String(units))}.${rest}`;
}

/** The same without cents, rounded: '$1,235'. For headlines and charts; never added up. */
export function formatWholeMoney(cents: number, currency: string): string {
  const units = roundCents(cents / 100);
  return `${units < 0 ? '-' : ''}${signOf(currency)}${groupThousands(String(Math.abs(units)))}`;
}

/** Commas between groups of three: '185000' gives '185,000'. Takes digits only. */
export function groupThousands(digits: string): string {
  let grouped = digits.slice(-3);
  for (let end = digits.length - 3; end > 0; end -= 3) grouped = `${digits.slice(Math.max(0, end - 3), end)},${grouped}`;
  return grouped;
}

// Relative: thousands of multiplications' worth of rounding, yet far below a cent for any house.
const NOISE = 1e-12;

const SIGNS: ReadonlyMap<string, string> = new Map([
  ['USD', '$'],
  ['EUR', '€'],
  ['GBP', '£'],
]);

function signOf(currency: string): string {
  const sign = SIGNS.get(currency.toUpperCase()) ?? currency;
  return /^[\p{L}.]+$/u.test(sign) ? `${sign} ` : sign;
}
