// One price a piece for sticks or sheets of several lengths: a sixteen-foot stick costs more than a ten-foot one.
import type { Dimension } from '#kit/dimension';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Price } from '#model/model';
import type { Model } from '#model/resolve';
import type { Goods } from '#money/material-costs';
import { lengthOf } from '#money/prices';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { lengthText, quantityText } from '../../show.ts';

export const oneForAll = findingSort<[goods: string, lengths: readonly string[], each: string]>({
  code: 'money/one-price-for-lengths',
  severity: 'warning',
  say: (goods, lengths, each) =>
    `${goods} is bought in ${lengths.join(' and ')}, and one price counts for each, so the total is too low or too high: what is longer costs more. Price it by the measure (such as ${each}), or give each length its own price.`,
});

export const onePriceForLengths: Check = {
  code: 'money/one-price-for-lengths',
  about:
    'Lumber that is cut to pieces, and sheets that are laid out wall by wall, may be bought in several lengths. A price by the foot, the square foot or the metre holds for all of them, a price for a size with its length (joist 2x10x14, drywall 1/2" 12\') for that length; a price a piece is right for one length only.',
  wrong: `level main
  footprint 24' x 31'
  walls timber
assembly timber for wall
  layer stud 2x6 at 16" oc
foundation under main
  wall 8" x 32"
price sill-plate 2x6 $17.80 each
`,
  right: `level main
  footprint 24' x 31'
  walls timber
assembly timber for wall
  layer stud 2x6 at 16" oc
foundation under main
  wall 8" x 32"
price sill-plate 2x6 $1.12/lf
`,
  reads: ({ budget, model }) => [budget.goods, model.settings],
  run: ({ budget, model }) => found(budget.goods).map(([goods, price]) => telling(goods, price, model)),
};

type Found = readonly (readonly [Goods, Price])[];
const found = keptFor((goods: readonly Goods[]): Found => {
  const seen = new Set<Slot>();
  return goods.flatMap((each): Found => {
    const prices = each.cost?.prices ?? [];
    const price = prices.find((one, at) => isByPiece(one) && prices.indexOf(one) < at);
    if (price === undefined || seen.has(price.slot)) return [];
    seen.add(price.slot);
    return [[each, price]];
  });
});

function isByPiece({ takes }: Price): boolean {
  return (
    takes?.basis !== 'lump' &&
    takes?.basis !== 'laid' &&
    (takes?.money.dimension === 'money' || takes?.money.dimension === 'money/number')
  );
}

function telling({ purchase }: Goods, price: Price, model: Model): Finding {
  const { sticks = [] } = purchase;
  const { value, unit = '$' } = price.takes!.money;
  const first = sticks[0]!.holds;
  const [feet, metric] = first.dimension === 'area' ? ['sf', 'm2'] : ['lf', 'm'];
  const rate = `${unit.replace(/\/.*$/, '')}/${model.settings.units === 'feet' ? feet : metric}`;
  return finding(
    oneForAll,
    price.place,
    purchase.label,
    sticks.map(({ holds }) => lengthText(lengthOf(holds)!.value, model)),
    quantityText({ value: value / first.value, dimension: `money/${first.dimension}` as Dimension }, model, rate),
  );
}
