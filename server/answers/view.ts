// A plan as somebody looks at it: its units and currency, the length of its days, and how its files are called where they
// are printed. Every answer takes a view, so that all of them write a number the same way.
import { formatMoney, formatWholeMoney } from '#kit/money';
import type { Quantity } from '#kit/quantity';
import { formatQuantity, type System } from '#kit/units';
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
  const text = formatQuantity(quantity, style.system);
  // Money over something, where nobody wrote it in a currency of its own, is the plan's.
  return dimension.startsWith('money/') && unit === undefined ? text.replace('$', currencySign(style)) : text;
}

/** Whole cents in the plan's currency: $1,234.56. */
export function writeMoney(cents: number, style: Style): string {
  return formatMoney(cents, style.currency);
}

/** Without cents, for headlines. */
export function writeWholeMoney(cents: number, style: Style): string {
  return formatWholeMoney(cents, style.currency);
}

/** Working minutes in working days of the plan's own hours: 3.2d. */
export function writeDays(minutes: number, style: Style, unit: 'd' | 'w' = 'd'): string {
  const days = minutes / style.minutesPerDay / (unit === 'w' ? style.daysPerWeek : 1);
  return `${formatQuantity({ value: days, dimension: 'number' }, style.system)}${unit}`;
}

/** What stands before an amount in the plan's currency: '$', 'CHF '. */
function currencySign({ currency }: Style): string {
  return formatMoney(0, currency).slice(0, -'0.00'.length);
}
