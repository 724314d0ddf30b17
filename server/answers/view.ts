// A plan as somebody looks at it: its units and currency, the length of its days, and how its files are called where they
// are printed. Every answer takes a view, so that all of them write a number the same way.
import { METRE } from '#kit/dimension';
import { formatMoney, formatWholeMoney } from '#kit/money';
import type { Quantity } from '#kit/quantity';
import { formatQuantity, type System, unitNamed } from '#kit/units';
import type { Plan } from '#server/pipeline';

/** How numbers are written. */
export interface Style {
  readonly system: System;
  /** A currency's code or sign. */
  readonly currency: string;
  readonly minutesPerDay: number;
  readonly daysPerWeek: number;
}

export interface View {
  readonly plan: Plan;
  readonly style: Style;
  /** A file's path as it is shown to whoever asked. */
  readonly fileName: (path: string) => string;
}

export function viewOf(plan: Plan, fileName: (path: string) => string = (path) => path): View {
  return { plan, style: styleOf(plan), fileName };
}

export function styleOf({ model }: Pick<Plan, 'model'>): Style {
  const { units, minutesPerDay, daysPerWeek } = model.settings;
  return {
    system: units === 'feet' ? 'feet' : 'metric',
    currency: model.plan?.given.currency?.value ?? 'USD',
    minutesPerDay,
    daysPerWeek,
  };
}

/** A quantity as a person reads it, unit included: 433.3 sf, 3d, €58/h. */
export function write(quantity: Pick<Quantity, 'value' | 'dimension' | 'unit'>, style: Style): string {
  const { value, dimension, unit } = quantity;
  if (dimension === 'time' && (unit === 'd' || unit === 'w')) return writeDays(value, style, unit);
  if (dimension === 'money') return formatMoney(value, style.currency);
  if (unit === ':') return writeRatio(value, style);
  const text = formatQuantity(
    unit === undefined || isForeign(unit, style) ? usual(value, dimension, style) : quantity,
    style.system,
  );
  // Money over something, where nobody wrote it in a currency of its own, is the plan's.
  return dimension.startsWith('money/') && unit === undefined ? text.replace('$', currencySign(style)) : text;
}

/** Small volumes of a metric plan are litres; the rest as the system has it. */
function usual(
  value: number,
  dimension: Quantity['dimension'],
  { system }: Style,
): Pick<Quantity, 'value' | 'dimension' | 'unit'> {
  const litres = system === 'metric' && dimension === 'volume' && Math.abs(value) < LITRES_TO;
  return litres ? { value, dimension, unit: 'l' } : { value, dimension };
}

/** A tenth of a cubic metre. */
const LITRES_TO = 0.1 * METRE * METRE * METRE;

/** Whether a unit belongs to the system that the plan is not printed in. */
function isForeign(unit: string | undefined, { system }: Style): boolean {
  const known = unit === undefined ? undefined : unitNamed(unit)?.system;
  return known !== undefined && known !== 'both' && known !== system;
}

/** Whole cents in the plan's currency: $1,234.56. */
export function writeMoney(cents: number, style: Style): string {
  return formatMoney(cents, style.currency);
}

/** Without cents, for headlines. */
export function writeWholeMoney(cents: number, style: Style): string {
  return formatWholeMoney(cents, style.currency);
}

/** Working minutes in working days of the plan's own hours: 3.2d; less than a day in hours: 1.5 h. */
export function writeDays(minutes: number, style: Style, unit: 'd' | 'w' = 'd'): string {
  const days = minutes / style.minutesPerDay;
  if (Math.abs(days) < 1 && minutes !== 0) return formatQuantity({ value: minutes, dimension: 'time' }, style.system);
  const count = unit === 'w' ? days / style.daysPerWeek : days;
  // Tenths, for the eye only.
  return `${formatQuantity({ value: Math.round(count * 10) / 10, dimension: 'number' }, style.system)}${unit}`;
}

/** A pitch as 8:12, a steep slope as 1.5:1, a fall as 1:50. */
function writeRatio(value: number, { system }: Style): string {
  const write = (number: number): string =>
    formatQuantity({ value: Math.round(number * 100) / 100, dimension: 'number' }, system);
  if (value > 1) return `${write(value)}:1`;
  return value * 12 >= 1 || value <= 0 ? `${write(value * 12)}:12` : `1:${write(1 / value)}`;
}

/** What stands before an amount in the plan's currency: '$', 'CHF '. */
function currencySign({ currency }: Style): string {
  return formatMoney(0, currency).slice(0, -'0.00'.length);
}
