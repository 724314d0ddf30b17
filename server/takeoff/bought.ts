// What a purchase amounts to: in the measure of its goods, and in weight as far as the rows of the library tell it.
import { overDimension } from '#kit/dimension';
import { form, measure, type Quantity, total } from '#kit/quantity';
import { actualSize, materialOf, thicknessOf, weighsOf } from './goods.ts';
import type { Purchase } from './lines.ts';

const packagesHold = form('bought', 'packages × what one holds', (packages = 0, holds = 0) => packages * holds);
const weighed = form('weight', 'what is bought × weight of one', (bought = 0, weighs = 0) => bought * weighs);
const byDensity = form(
  'weight',
  'length bought × thickness × depth × weight of the volume',
  (length = 0, across = 0, depth = 0, density = 0) => length * across * depth * density,
);

const laidThick = form(
  'weight',
  'area bought × thickness × weight of the volume',
  (area = 0, thick = 0, density = 0) => area * thick * density,
);

const byPieces = form('weight', 'length of the pieces × weight of a length', (length = 0, weighs = 0) => length * weighs);
const lengthOfPieces = form('length of the pieces', 'count × length, added', (...values) =>
  values.reduce((sum, value, at) => (at % 2 === 0 ? sum : sum + (values[at - 1] ?? 0) * value), 0),
);

/** Of goods counted each and of no one length, as piers are: undefined where a line does not tell how long they are. */
function weightOfPieces({ lines }: Purchase, weighs: Quantity): Quantity | undefined {
  if (lines.some(({ pieces }) => pieces === undefined)) return undefined;
  const values = lines.flatMap(({ pieces }) => pieces!.flatMap(({ count, length }): readonly Quantity[] => [count, length]));
  return measure('weight', byPieces, measure('length', lengthOfPieces, ...values), weighs);
}

/** The packages, or the sticks of one length or several. */
export function packagesIn({
  bought,
  holds,
  sticks,
}: Purchase): readonly { readonly bought: Quantity; readonly holds?: Quantity }[] {
  return sticks ?? [holds === undefined ? { bought } : { bought, holds }];
}

/** What is bought, in the unit the goods are measured in. */
export function boughtQuantity(purchase: Purchase): Quantity {
  const parts = packagesIn(purchase).map(({ bought, holds }) =>
    holds === undefined ? bought : measure(holds.dimension, packagesHold, bought, holds),
  );
  const [first] = parts;
  return parts.length === 1 ? first! : total('bought', first!.dimension, parts);
}

/** Undefined where no row says what the goods weigh, or what one package of them holds. */
export function weightOf(purchase: Purchase): Quantity | undefined {
  const { goods } = purchase;
  const bought = boughtQuantity(purchase);
  if (bought.dimension === 'weight') return bought;
  const weighs = weighsOf(goods);
  if (weighs?.dimension === 'weight/length' && bought.dimension === 'number') return weightOfPieces(purchase, weighs);
  if (weighs !== undefined)
    return weighs.dimension === (bought.dimension === 'number' ? 'weight' : overDimension('weight', bought.dimension))
      ? measure('weight', weighed, bought, weighs)
      : undefined;
  const density = materialOf(goods)?.given.density?.value;
  if (density === undefined) return undefined;
  if (bought.dimension === 'volume') return measure('weight', weighed, bought, density);
  const thick = thicknessOf(goods);
  if (bought.dimension === 'area') return thick === undefined ? undefined : measure('weight', laidThick, bought, thick, density);
  const actual = actualSize(goods);
  return bought.dimension === 'length' && actual !== undefined
    ? measure('weight', byDensity, bought, actual.left, actual.right, density)
    : undefined;
}
