// How each dimension prints. Rounding here is for the eye only: nothing computes or compares with what is printed.
import { type Dimension, FOOT, INCH, METRE, MILLIMETRE } from '../dimension.ts';
import { formatMoney } from '../money.ts';
import { fromBase, rateNamed, type System, unitNamed } from '../units.ts';
import { formatNumber, formatUnitPrice } from './numbers.ts';
import { degreesOf } from './tangent.ts';

/** A value in base units, in `unit` where given, else in the usual unit of the system. */
export function printQuantity(value: number, dimension: Dimension | 'bare', unit: string | undefined, system: System): string {
  if (!Number.isFinite(value)) return '?';
  const chosen = unit === undefined || unit === '' ? usualUnit(value, dimension, system) : unit;
  return printIn(value, chosen, system);
}

/** Feet and inches to the sixteenth, or to the sixty-fourth that it is exactly: 12'-6 1/2", 9", 12'-0", 28'-0 1/2". */
export function printFeetInches(value: number): string {
  const parts = (value * 64) % INCH === 0 ? 64 : 16;
  const fractions = Math.round((Math.abs(value) * parts) / INCH);
  const sign = value < 0 && fractions > 0 ? '-' : '';
  const feet = Math.floor(fractions / (12 * parts));
  const inches = printFractions(fractions - feet * 12 * parts, parts);
  if (feet === 0) return `${sign}${inches}"`;
  return `${sign}${feet}'-${inches.includes('/') && !inches.includes(' ') ? `0 ${inches}` : inches}"`;
}

/** Whole inches and a fraction in lowest terms: 104 5/8. */
function printFractions(fractions: number, parts: number): string {
  const whole = Math.floor(fractions / parts);
  let over = fractions - whole * parts;
  let under = parts;
  if (over === 0) return `${whole}`;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
}

function printIn(value: number, unit: string, system: System): string {
  const amount = fromBase(value, unit) ?? value;
  switch (unit) {
    case '':
      return formatNumber(value, 3);
    case 'ft-in':
      return printFeetInches(value);
    case 'ft':
      return value % FOOT === 0 ? `${formatNumber(amount, 0)}'` : printFeetInches(value);
    case 'in':
      return printInches(value);
    case 'pitch':
      return `${formatNumber(value * 12, 2)}:12`;
    case ':':
      return value >= 1 || value <= 0 ? `${formatNumber(value, 3)}:1` : `1:${formatNumber(1 / value, 3)}`;
    case 'deg':
      return `${formatNumber(degreesOf(value), 2)} deg`;
    case 'in/ft':
      return `${printInches(value * FOOT)} per foot`;
    case '%':
      return `${formatNumber(amount, 2)}%`;
    case 'R':
      return `R-${formatNumber(amount, 1)}`;
    case 'RSI':
      return `RSI ${formatNumber(amount, 2)}`;
    case 'U':
      return `U ${formatNumber(amount, 2)} W/m2K`;
    case 'Btu/hft2F':
      return `U ${formatNumber(amount, 3)}`;
    case 'd':
    case 'w':
      return `${formatNumber(amount, 2)}${unit}`;
    default:
      return printOther(amount, unit, system);
  }
}

function printOther(amount: number, unit: string, system: System): string {
  const whole = unitNamed(unit);
  if (whole?.dimension === 'money') return formatMoney(amount * 100, unit);
  if (whole !== undefined) {
    const word = amount === 1 ? (whole.one ?? unit) : (whole.many ?? unit);
    return `${formatNumber(amount, decimalsOf(unit))} ${word}`;
  }
  const rate = rateNamed(unit);
  if (rate === undefined) return `${formatNumber(amount, 3)} ${unit}`;
  const bottom = unit.slice(unit.indexOf('/') + 1);
  if (rate.top.dimension === 'money') return `${formatUnitPrice(amount * 100, rate.top.unit)}/${bottom}`;
  if (rate.top.unit === 'in' || rate.top.unit === 'ft')
    return `${printIn(amount * rate.top.factor, rate.top.unit, system)}/${bottom}`;
  return `${formatNumber(amount, 4)} ${unit}`;
}

function printInches(value: number): string {
  // A slope's inches come from a division, so a fraction is a matter of nearness.
  const fractions = (value * 64) / INCH;
  const near = Math.round(fractions);
  if (Math.abs(fractions - near) > 1e-6) return `${formatNumber(value / INCH, 3)}"`;
  return `${near < 0 ? '-' : ''}${printFractions(Math.abs(near), 64)}"`;
}

function decimalsOf(unit: string): number {
  switch (unit) {
    case 'mm':
    case 'psi':
    case 'psf':
    case 'cfm':
      return 1;
    case 'm':
    case 't':
      return 3;
    case 'mil':
    case 'cy':
    case 'm2':
    case 'm3':
    case 'ton':
    case 'square':
      return 2;
    default:
      return 1;
  }
}

function usualUnit(value: number, dimension: Dimension | 'bare', system: System): string {
  const feet = system === 'feet';
  switch (dimension) {
    case 'bare':
    case 'number':
      return '';
    case 'length':
      // A hundred feet and more is a total rather than a dimension of a drawing.
      if (feet) return Math.abs(value) < 100 * FOOT ? 'ft-in' : 'lf';
      return Math.abs(value) < METRE || (value % (10 * MILLIMETRE) !== 0 && Math.abs(value) < 100 * METRE) ? 'mm' : 'm';
    case 'area':
      return feet ? 'sf' : 'm2';
    case 'volume':
      return feet ? 'cy' : 'm3';
    case 'weight':
      return feet ? 'lb' : 'kg';
    case 'money':
      return '$';
    case 'time':
      return 'h';
    case 'temperature':
      return feet ? 'F' : 'C';
    case 'slope':
      return feet ? 'pitch' : '%';
    case 'power':
      return Math.abs(value) >= 1000 ? 'kW' : 'W';
    case 'current':
      return 'A';
    case 'voltage':
      return 'V';
    case 'flow':
      return feet ? 'cfm' : 'l/s';
    case 'pressure':
      return feet ? 'psi' : 'kPa';
    case 'speed':
      return feet ? 'mph' : 'km/h';
    case 'resistance':
      return feet ? 'R' : 'RSI';
    case 'conductance':
      return feet ? 'Btu/hft2F' : 'U';
    case 'transfer':
      return feet ? 'Btu/hF' : 'W/K';
    default:
      return usualRate(dimension, system);
  }
}

function usualRate(dimension: `${string}/${string}`, system: System): string {
  const [top, bottom] = dimension.split('/') as [Dimension, Dimension];
  const under = bottom === 'length' ? (system === 'feet' ? 'lf' : 'm') : usualUnit(METRE, bottom, system);
  return `${top === 'length' ? (system === 'feet' ? 'in' : 'mm') : usualUnit(0, top, system)}/${under}`;
}
