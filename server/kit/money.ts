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
export function shareCents(total: number, weights: readonly number[]): readonly number[] {
  if (weights.length === 0) return [];
  const sound = weights.map((weight) => (weight > 0 && weight < Number.POSITIVE_INFINITY ? weight : 0));
  const sum = sound.reduce((a, b) => a + b, 0);
  const parts = sum > 0 ? sound : sound.map(() => 1);
  const whole = sum > 0 ? sum : parts.length;
  const size = Math.abs(roundCents(total));
  if (!Number.isSafeInteger(size)) return parts.map(() => 0);
  const exact = parts.map((part) => (size * part) / whole);
  const shares = exact.map((share) => Math.floor(share * (1 + NOISE)));
  let left = size - shares.reduce((a, b) => a + b, 0);
  const byRemainder = exact
    .map((share, index) => ({ index, remainder: share - shares[index]! }))
    .filter(({ index }) => parts[index]! > 0)
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (let turn = 0; left !== 0; turn++) {
    const { index } = byRemainder[turn % byRemainder.length]!;
    const cent = left > 0 ? 1 : -1;
    shares[index] = shares[index]! + cent;
    left -= cent;
  }
  return total < 0 ? shares.map((share) => (share === 0 ? 0 : -share)) : shares;
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
