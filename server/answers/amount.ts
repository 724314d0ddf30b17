// A quantity as a number and a unit, for programs: JSON and comma-separated values. Lengths are decimal feet or metres,
// money is whole cents.
import { type Dimension, FOOT, METRE } from '#kit/dimension';
import type { Quantity } from '#kit/quantity';
import { fromBase } from '#kit/units';
import type { Style } from './view.ts';

export interface Amount {
  readonly quantity: number;
  /** 'sf', 'cy', 'each', 'h', 'cents', 'cents/sf'. */
  readonly unit: string;
}

export function amountOf({ value, dimension, unit }: Pick<Quantity, 'value' | 'dimension' | 'unit'>, style: Style): Amount {
  if (dimension === 'money') return { quantity: value, unit: 'cents' };
  if (dimension === 'time') return { quantity: tidy(value / 60), unit: 'h' };
  const own = unit === undefined || WRITTEN_ONLY.has(unit) ? undefined : fromBase(value, unit);
  if (own !== undefined && unit !== undefined && !dimension.startsWith('money/')) return { quantity: tidy(own), unit };
  const [top, bottom] = dimension.split('/') as [Dimension, Dimension | undefined];
  const over = usual(top, style);
  if (bottom === undefined) return { quantity: tidy(value / over.factor), unit: over.unit };
  const under = usual(bottom, style);
  return { quantity: tidy((value / over.factor) * under.factor), unit: `${over.unit}/${under.unit}` };
}

/** Units that say how a number is written, not what it is counted in. */
const WRITTEN_ONLY: ReadonlySet<string> = new Set(['', 'ft-in', 'pitch', ':', 'deg', 'R', 'RSI', 'U', 'W/m2K', 'd', 'w']);

/** Noise of the last digits goes: fifteen digits of a double, at most six of them behind the point. */
function tidy(value: number): number {
  return Number.isFinite(value) ? Math.round(value * 1e6) / 1e6 : 0;
}

function usual(dimension: Dimension, { system }: Style): { readonly unit: string; readonly factor: number } {
  const feet = system === 'feet';
  switch (dimension) {
    case 'length':
      return feet ? { unit: 'ft', factor: FOOT } : { unit: 'm', factor: METRE };
    case 'area':
      return feet ? { unit: 'sf', factor: FOOT * FOOT } : { unit: 'm2', factor: METRE * METRE };
    case 'volume':
      return feet ? { unit: 'cy', factor: 27 * FOOT * FOOT * FOOT } : { unit: 'm3', factor: METRE * METRE * METRE };
    case 'weight':
      return feet ? { unit: 'lb', factor: POUND } : { unit: 'kg', factor: 1 };
    case 'money':
      return { unit: 'cents', factor: 1 };
    case 'time':
      return { unit: 'h', factor: 60 };
    case 'number':
      return { unit: 'each', factor: 1 };
    case 'slope':
      return { unit: 'rise/run', factor: 1 };
    case 'resistance':
      return { unit: 'm2K/W', factor: 1 };
    case 'conductance':
      return { unit: 'W/m2K', factor: 1 };
    case 'transfer':
      return { unit: 'W/K', factor: 1 };
    case 'temperature':
      return { unit: 'C', factor: 1 };
    case 'power':
      return { unit: 'W', factor: 1 };
    case 'current':
      return { unit: 'A', factor: 1 };
    case 'voltage':
      return { unit: 'V', factor: 1 };
    case 'flow':
      return { unit: 'l/s', factor: 1 };
    case 'pressure':
      return { unit: 'Pa', factor: 1 };
    case 'speed':
      return { unit: 'm/s', factor: 1 };
    default:
      return { unit: dimension, factor: 1 };
  }
}

/** Kilograms in a pound: exact by definition (NIST SP 811, appendix B.8). */
const POUND = 0.45359237;
