// Numbers and unit prices as text, with commas every three digits: the same in every language setting.
import { groupThousands } from '../money.ts';

/** At most so many decimals; zeros at the end are left away. */
export function formatNumber(value: number, decimals: number): string {
  const fixed = fixedPoint(value, decimals);
  return fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
}

/** Cents a unit, as '$4.20': unit prices keep up to four decimals, and at least two. */
export function formatUnitPrice(cents: number, currency: string): string {
  const fixed = fixedPoint(Math.abs(cents) / 100, 4).replace(/(\.\d\d\d*?)0+$/, '$1');
  const sign = cents < 0 && /[1-9]/.test(fixed) ? '-' : '';
  return currency.length > 1 ? `${sign}${currency} ${fixed}` : `${sign}${currency}${fixed}`;
}

function fixedPoint(value: number, decimals: number): string {
  // Half a unit in the last place and float noise below it round the way a person would: 2.675 is 2.68.
  const scale = Number(`1e${decimals}`);
  const steps = Math.round(Math.abs(value) * scale + Math.abs(value) * scale * 1e-12);
  const digits = Number.isSafeInteger(steps)
    ? String(steps).padStart(decimals + 1, '0')
    : Math.abs(value).toFixed(decimals).replace('.', '');
  const whole = digits.slice(0, digits.length - decimals);
  const grouped = groupThousands(whole);
  const sign = value < 0 && /[1-9]/.test(digits) ? '-' : '';
  return decimals === 0 ? `${sign}${grouped}` : `${sign}${grouped}.${digits.slice(digits.length - decimals)}`;
}
