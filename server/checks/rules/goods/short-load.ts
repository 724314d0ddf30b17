// A pour whose last truck carries less than the plant's least load: it is charged for, or does not come.
import { type Finding, finding, findingSort } from '#kit/finding';
import { formatMoney } from '#kit/money';
import type { Quantity } from '#kit/quantity';
import type { Model } from '#model/resolve';
import { shortLoadCost } from '#money/material';
import type { Goods } from '#money/material-costs';
import { type Truckload, truckloadsOf } from '#takeoff/truckloads';
import type { Check } from '../../check.ts';
import { placeOfLine } from '../../mention.ts';
import { counted, quantityText } from '../../show.ts';

export const shortLoad = findingSort<
  [goods: string, pour: string, ordered: string, trucks: number, last: string, least: string, charge: string | undefined]
>({
  code: 'goods/short-load',
  severity: 'note',
  say: (goods, pour, ordered, trucks, last, least, charge) =>
    `${goods} (${pour}): ${ordered} come in ${counted(trucks, 'truck')}${trucks === 1 ? '' : `, the last with ${last}`}. The plant’s least load is ${least}, and ${charge === undefined ? 'less is charged for' : `the price adds ${charge} for it`}. Pour it together with something else${trucks === 1 ? '' : ', ask the plant for even loads'}, or mix a small amount from bags.`,
});

export const shortLoadCheck: Check = {
  code: 'goods/short-load',
  about:
    'Ready-mixed concrete comes by the truck, and a plant charges for a truck that carries less than its least load, or sends none. Each pour is ordered for itself. Trucks and least load stand in the row of the concrete (`load`, `least-load`) and may be given in the plan; what a short load costs stands at its price (`short-load $75/cy`) and is in the sum. Told where the plan speaks of money.',
  wrong: `level floor
  footprint 12' x 12'
foundation slab under floor
  slab 4"
price slab-concrete $172/cy, short-load $75/cy
`,
  right: `level floor
  footprint 24' x 28'
foundation slab under floor
  slab 4"
price slab-concrete $172/cy, short-load $75/cy
`,
  // A matter of money: what is bought by whoever buys; what an accepted bid brings is the firm's.
  reads: ({ model, budget }) => [budget.goods, model.settings, model.plan?.given.currency?.value],
  run: ({ model, budget }) =>
    budget.goods.flatMap((goods) => truckloadsOf(goods.purchase).flatMap((load) => telling(load, goods, model))),
};

function telling(load: Truckload, { purchase, cost }: Goods, model: Model): readonly Finding[] {
  const { label, ordered, trucks, last, short } = load;
  const least = purchase.truck?.least;
  const place = placeOfLine(purchase.lines[0]!, model);
  if (short === undefined || least === undefined || place === undefined) return [];
  const price = cost?.prices[0];
  const charge = price === undefined ? undefined : shortLoadCost(load, price);
  const volume = ({ value }: Quantity): string => quantityText({ value, dimension: 'volume' }, model);
  const money = charge === undefined ? undefined : formatMoney(charge.value, model.plan?.given.currency?.value ?? 'USD');
  const made = finding(
    shortLoad,
    place,
    purchase.label,
    label,
    volume(ordered),
    trucks.value,
    volume(last),
    volume(least),
    money,
  );
  return [charge === undefined ? made : { ...made, severity: 'warning' }];
}
