// What the goods of an item cost: bought packages, or the quantity, by the price that counts; shared out among the lines
// that need them so that every grouping closes to the cent.
import { overDimension } from '#kit/dimension';
import { shareCents } from '#kit/money';
import { type Form, form, measure, type Quantity, total } from '#kit/quantity';
import type { Price } from '#model/model';
import { boughtQuantity, packagesIn } from '#takeoff/bought';
import type { Purchase } from '#takeoff/lines';
import { type Truckload, truckloadsOf } from '#takeoff/truckloads';

export interface MaterialCost {
  readonly purchase: Purchase;
  /** One for each length of sticks; else the only one. */
  readonly prices: readonly Price[];
  readonly cents: number;
  /** Cents of each line of the purchase, in its order: they add up to the whole. */
  readonly byLine: () => readonly number[];
  readonly working: () => Quantity<'money'>;
}

const byPackage = form('cost', 'packages × price of one', (packages = 0, price = 0) => Math.round(packages * price));
const byQuantity = form('cost', 'quantity bought × price', (quantity = 0, price = 0) => Math.round(quantity * price));
const byNet = form('cost', 'quantity laid × price', (quantity = 0, price = 0) => Math.round(quantity * price));
const eachTruck = form('short load', 'charge for the truck', (charge = 0) => Math.round(charge));
const eachYard = form('short load', 'short of the least load × charge', (short = 0, charge = 0) => Math.round(short * charge));
const lump = form('cost', 'lump sum', (price = 0) => Math.round(price));

/** Undefined where a price is wanting, or is by a unit that the goods are not measured in. */
export function materialCost(purchase: Purchase, prices: readonly (Price | undefined)[]): MaterialCost | undefined {
  const known = prices.filter((price) => price !== undefined);
  if (known.length < prices.length) return undefined;
  const how = withShortLoads(purchase, known[0], basisOf(purchase, known));
  if (how === undefined) return undefined;
  const { value } = how();
  let shares: readonly number[] | undefined;
  const byLine = (): readonly number[] =>
    (shares ??= shareCents(
      value,
      purchase.lines.map((line) => Math.max(0, line.needed?.value ?? 0)),
    ));
  return { purchase, prices: known, cents: value, byLine, working: how };
}

/** What the plant asks for trucks below its least load, where the price says so. */
function withShortLoads(
  purchase: Purchase,
  price: Price | undefined,
  goods: (() => Quantity<'money'>) | undefined,
): (() => Quantity<'money'>) | undefined {
  if (price?.given['short-load'] === undefined) return goods;
  const charges = truckloadsOf(purchase).flatMap((load) => shortLoadCost(load, price) ?? []);
  return goods === undefined || charges.length === 0 ? goods : () => total('cost', 'money', [goods(), ...charges]);
}

/** Undefined where the truck is full enough, or the price asks nothing for it. */
export function shortLoadCost({ short }: Truckload, { given, takes }: Price): Quantity<'money'> | undefined {
  const charge = given['short-load']?.value;
  if (charge === undefined || short === undefined || takes?.basis === 'lump') return undefined;
  return charge.dimension === 'money' ? measure('money', eachTruck, charge) : measure('money', eachYard, short, charge);
}

function basisOf(purchase: Purchase, prices: readonly Price[]): (() => Quantity<'money'>) | undefined {
  const [price] = prices;
  const parts = packagesIn(purchase);
  // A price for the whole of it, or for what is laid, does not ask which sticks are bought.
  if (
    parts.length === 1 ||
    prices.every((each) => each === price && each.takes?.basis !== undefined && each.takes.basis !== 'each')
  )
    return basisOfOne(purchase, price!);
  const bases = parts.map((part, nth) => {
    const { sticks: _, ...one } = purchase;
    return basisOfOne({ ...one, ...part, net: purchase.net }, prices[nth]!);
  });
  if (bases.some((basis) => basis === undefined)) return undefined;
  return () =>
    total(
      'cost',
      'money',
      bases.map((basis) => basis!()),
    );
}

function basisOfOne(purchase: Purchase, price: Price): (() => Quantity<'money'>) | undefined {
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

function rateTimes(quantity: Quantity, money: Quantity, how: Form): (() => Quantity<'money'>) | undefined {
  return overDimension('money', quantity.dimension) === money.dimension
    ? () => measure('money', how, quantity, money)
    : undefined;
}
