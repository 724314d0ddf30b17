// Which price counts for goods or a kind of work: of those that fit the size and hold on the day, a chosen one, else the
// lowest. A price for another size of the same goods does not fit, nor one for sticks of another length.
import { FOOT } from '#kit/dimension';
import { addTo } from '#kit/gathered';
import type { Quantity } from '#kit/quantity';
import type { Price } from '#model/model';
import type { Literal } from '#model/words';
import { packagesIn } from '#takeoff/bought';
import type { NamedGoods, Purchase } from '#takeoff/lines';

export interface Prices {
  readonly byName: ReadonlyMap<string, readonly Price[]>;
  /** Whether any holds only until a day, so that it matters when goods are bought. */
  readonly dated: boolean;
}

const kept = new WeakMap<readonly Price[], Prices>();

/** The same object for the same list. */
export function pricesOf(prices: readonly Price[]): Prices {
  let known = kept.get(prices);
  if (known === undefined) kept.set(prices, (known = read(prices)));
  return known;
}

function read(prices: readonly Price[]): Prices {
  const byName = new Map<string, Price[]>();
  for (const price of prices) {
    const name = price.takes?.of.name;
    if (name === undefined) continue;
    addTo(byName, name, price);
  }
  return { byName, dated: prices.some((price) => price.given.until !== undefined) };
}

/** `day` is the day it is bought; undefined where no dates are known. `long` is the length of the sticks. */
export function priceFor(goods: NamedGoods, day: number | undefined, prices: Prices, long?: Quantity): Price | undefined {
  const list = prices.byName.get(goods.name);
  if (list === undefined) return undefined;
  let best: Price | undefined;
  let bestSizes = -1;
  for (const price of list) {
    const { sizes } = price.takes!.of;
    if (!sizes.every((size) => goods.sizes.some((other) => sameSize(size, other)) || isLength(size, long))) continue;
    if (!sizes.every((size) => isOfLength(size, long))) continue;
    const until = price.given.until?.value;
    if (until !== undefined && day !== undefined && until < day) continue;
    // The price that names most of the sizes is the nearest; among equals a chosen one, else the lowest.
    const named = sizes.length + (sizes.some((size) => size.kind === 'nominal' && size.feet !== undefined) ? 1 : 0);
    const better =
      best === undefined ||
      named > bestSizes ||
      (named === bestSizes &&
        (price.given.chosen !== undefined || (best.given.chosen === undefined && amount(price) < amount(best))));
    if (better) {
      best = price;
      bestSizes = named;
    }
  }
  return best;
}

/** `joist 2x10 4.2 m`, `drywall 1/2" 12'`: a length among the sizes is that of the stick or sheet. */
function isLength(size: Literal, long: Quantity | undefined): boolean {
  return size.kind === 'quantity' && long?.dimension === 'length' && size.dimension === 'length' && size.value === long.value;
}

/** `joist 2x10x14`: holds for sticks of fourteen feet alone. */
function isOfLength(size: Literal, long: Quantity | undefined): boolean {
  return size.kind !== 'nominal' || size.feet === undefined || long === undefined || size.feet * FOOT === long.value;
}

/** Of each package of a purchase, or of its sticks by length. */
export function pricesFor(purchase: Purchase, day: number | undefined, prices: Prices): readonly (Price | undefined)[] {
  return packagesIn(purchase).map(({ holds }) => priceFor(purchase.goods, day, prices, lengthOf(holds)));
}

/** A stick by its length, a sheet by its longer side. */
export function lengthOf(holds: Quantity | undefined): Quantity | undefined {
  if (holds?.dimension !== 'area' || holds.inputs.length !== 2) return holds;
  const [one, other] = holds.inputs;
  return one!.value > other!.value ? one : other;
}

function amount(price: Price): number {
  return price.takes?.money.value ?? Number.POSITIVE_INFINITY;
}

export function sameSize(a: Literal, b: Literal): boolean {
  if (a.kind === 'quantity' && b.kind === 'quantity') return a.dimension === b.dimension && a.value === b.value;
  if (a.kind === 'nominal' && b.kind === 'nominal')
    return a.across.join('x') === b.across.join('x') && (a.feet === undefined || b.feet === undefined || a.feet === b.feet);
  if (a.kind === 'bar' && b.kind === 'bar') return a.number === b.number && a.metric === b.metric;
  return false;
}
