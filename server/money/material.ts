// What the goods of an item cost: bought packages, or the quantity, by the price that counts; shared out among the lines
// that need them so that every grouping closes to the cent.
import { overDimension } from '#kit/dimension';
import { shareCents } from '#kit/money';
import { type Form, form, measure, type Quantity } from '#kit/quantity';
import type { Price } from '#model/model';
import type { Purchase } from '#takeoff/lines';

export interface MaterialCost {
  readonly purchase: Purchase;
  readonly price: Price;
  readonly cents: number;
  /** Cents of each line of the purchase, in its order: they add up to the whole. */
  readonly byLine: () => readonly number[];
  readonly working: () => Quantity<'money'>;
}

const byPackage = form('cost', 'packages × price of one', (packages = 0, price = 0) => Math.round(packages * price));
const byQuantity = form('cost', 'quantity bought × price', (quantity = 0, price = 0) => Math.round(quantity * price));
const byNet = form('cost', 'quantity laid × price', (quantity = 0, price = 0) => Math.round(quantity * price));
const lump = form('cost', 'lump sum', (price = 0) => Math.round(price));

/** Undefined where the price is by a unit that the goods are not measured in. */
export function materialCost(purchase: Purchase, price: Price): MaterialCost | undefined {
  const how = basisOf(purchase, price);
  if (how === undefined) return undefined;
  const { value } = how();
  let shares: readonly number[] | undefined;
  const byLine = (): readonly number[] =>
    (shares ??= shareCents(
      value,
      purchase.lines.map((line) => Math.max(0, line.needed?.value ?? 0)),
    ));
  return { purchase, price, cents: value, byLine, working: how };
}

function basisOf(purchase: Purchase, price: Price): (() => Quantity<'money'>) | undefined {
  const { money, basis } = price.takes!;
  if (basis === 'lump') return () => measure('money', lump, money);
  if (basis === 'laid') return rateTimes(purchase.net, money, byNet);
  if (money.dimension === 'money' || money.dimension === 'money/number') {
    // By the package, or by the piece where pieces are counted.
    const counted = purchase.holds !== undefined || purchase.bought.dimension === 'number';
    return counted ? () => measure('money', byPackage, purchase.bought, money) : undefined;
  }
  return (
    rateTimes(boughtQuantity(purchase), money, byQuantity) ??
    rateTimes(purchase.needed, money, byQuantity) ??
    rateTimes(purchase.net, money, byNet)
  );
}

const packagesHold = form('bought', 'packages × what one holds', (packages = 0, holds = 0) => packages * holds);

/** What is bought, in the unit the goods are measured in. */
export function boughtQuantity({ bought, holds }: Purchase): Quantity {
  return holds === undefined ? bought : measure(holds.dimension, packagesHold, bought, holds);
}

function rateTimes(quantity: Quantity, money: Quantity, how: Form): (() => Quantity<'money'>) | undefined {
  return overDimension('money', quantity.dimension) === money.dimension
    ? () => measure('money', how, quantity, money)
    : undefined;
}
