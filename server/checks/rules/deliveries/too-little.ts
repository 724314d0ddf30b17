// What is ordered against what the plan needs of it: short of the net it runs out for certain, short of the usual waste most
// likely. Concrete that runs out costs a second truck and a cold joint.
import { type Finding, finding, findingSort } from '#kit/finding';
import { addTo } from '#kit/gathered';
import { roundUp } from '#kit/quantity';
import type { Delivery } from '#model/model';
import type { Model } from '#model/resolve';
import { packagesOf } from '#takeoff/goods';
import type { Purchase } from '#takeoff/lines';
import type { Check } from '../../check.ts';
import { counted, namesText, quantityText } from '../../show.ts';

export const short = findingSort<
  [deliveries: readonly string[], ordered: string, goods: string, needed: string, net: string, margin: string, step: string]
>({
  code: 'deliveries/too-little',
  severity: 'warning',
  say: (deliveries, ordered, goods, needed, net, margin, step) =>
    `${bringing(deliveries)} ${ordered} of ${goods}; the plan holds ${net} and needs ${needed} with what is usually wasted. ${margin}, and the rest is fetched at the price of a second trip while the work stands. Order ${step}.`,
});

export const shortOfNet = findingSort<
  [
    deliveries: readonly string[],
    ordered: string,
    goods: string,
    net: string,
    lacks: string,
    byHand: string | undefined,
    step: string,
  ]
>({
  code: 'deliveries/too-little',
  severity: 'error',
  say: (deliveries, ordered, goods, net, lacks, byHand, step) =>
    `${bringing(deliveries)} ${ordered} of ${goods}, and the plan holds ${net} before any waste: ${lacks} are not there${byHand === undefined ? '' : `, which are ${byHand}`}. Concrete stops at a cold joint, other work stands. Order ${step}.`,
});

function bringing(deliveries: readonly string[]): string {
  return `${namesText(deliveries)} ${deliveries.length === 1 ? 'brings' : 'bring'}`;
}

export const tooLittle: Check = {
  code: 'deliveries/too-little',
  about:
    'What deliveries say that they bring (`amount`), all those of the same goods together, is held against what the plan needs. Less than the drawing holds is an error; less than that with the usual waste is a warning that says what margin the order has.',
  wrong: `level floor
  footprint 26' x 28'
foundation slab under floor
  slab 4"
supplier plant
trade concrete crew of 3
delivery truck brings slab-concrete from plant
  amount 9 cy
task pour does pour-slab by concrete after truck
`,
  right: `level floor
  footprint 26' x 28'
foundation slab under floor
  slab 4"
supplier plant
trade concrete crew of 3
delivery truck brings slab-concrete from plant
  amount 9.75 cy
task pour does pour-slab by concrete after truck
`,
  reads: ({ model, takeOff }) => [model.list('delivery'), takeOff.purchases(), model.settings, model.rows('material')],
  run: ({ model, takeOff }) => {
    const deliveries = model.list('delivery');
    const ordered = [...ordersIn(deliveries)];
    if (ordered.length === 0) return [];
    return ordered.flatMap(([name, orders]) => ofGoods(name, orders, deliveries, takeOff.purchases(), model));
  },
};

/** So much of some goods, in one delivery. */
interface Ordered {
  readonly delivery: Delivery;
  readonly amount: Delivery['given']['amount'][number];
}

/** By the name of the goods: of what is brought for one house or on one day there may be more on another truck. */
function ordersIn(deliveries: readonly Delivery[]): ReadonlyMap<string, readonly Ordered[]> {
  const orders = new Map<string, Ordered[]>();
  for (const delivery of deliveries)
    for (const amount of delivery.given.amount) {
      const name = amount.value.of?.name ?? delivery.given.brings?.value[0]?.value.name;
      if (name !== undefined) addTo(orders, name, { delivery, amount });
    }
  return orders;
}

function ofGoods(
  name: string,
  orders: readonly Ordered[],
  deliveries: readonly Delivery[],
  purchases: readonly Purchase[],
  model: Model,
): readonly Finding[] {
  const bring = (delivery: Delivery): boolean => delivery.given.brings?.value.some(({ value }) => value.name === name) === true;
  const amounts = orders.map(({ amount }) => amount);
  // What brings the rest without saying how much may bring enough.
  if (deliveries.some((delivery) => bring(delivery) && !orders.some((order) => order.delivery === delivery))) return [];
  const bought = purchases.filter(({ goods, item }) => goods.name === name || item === name);
  const [first] = bought;
  if (first === undefined) return [];
  const sum = (of: (one: Purchase) => number): number => bought.reduce((all, one) => all + of(one), 0);
  const byPackage = amounts[0]!.value.amount.dimension === 'number';
  const dimension = byPackage ? 'number' : first.needed.dimension;
  if (!amounts.every(({ value }) => value.amount.dimension === dimension)) return [];
  const holds = byPackage ? (first.holds?.value ?? 1) : 1;
  const has = amounts.reduce((all, { value }) => all + value.amount.value, 0);
  const net = sum((one) => one.net.value) / holds;
  const needed = sum((one) => one.needed.value) / holds;
  if (has >= needed * (1 - EXACT)) return [];
  const { unit } = amounts[0]!.value.amount;
  const text = (value: number): string =>
    byPackage ? `${Math.round(value * 10) / 10}` : quantityText({ value, dimension }, model, unit);
  const order = text(sum((one) => one.bought.value));
  const { place } = amounts[0]!;
  const names = [...new Set(orders.map(({ delivery }) => delivery.name))];
  if (has < net * (1 - EXACT))
    return [
      finding(
        shortOfNet,
        place,
        names,
        text(has),
        first.label,
        text(net),
        text(net - has),
        byHand(net - has, first, model),
        order,
      ),
    ];
  const margin = Math.round((has / net - 1) * 1000) / 10;
  const words = `The order has ${margin}% over, where ${Math.round((needed / net - 1) * 1000) / 10}% are usual`;
  return [finding(short, place, names, text(has), first.label, text(needed), text(net), words, order)];
}

/** '90 bags (Concrete mixed from bags of 80 lb)': what is poured, out of the goods that are meant for little of it. */
function byHand(lacks: number, { goods }: Purchase, model: Model): string | undefined {
  if (goods.of?.kind !== 'material' || goods.of.given.laid?.value !== 'poured' || goods.of.given.most !== undefined)
    return undefined;
  const row = model.rows('material').find(({ given }) => given.laid?.value === 'poured' && given.most !== undefined);
  const [one] = row === undefined ? [] : packagesOf(row, []);
  if (row === undefined || one === undefined || one.holds.dimension !== 'volume' || !(one.holds.value > 0)) return undefined;
  return `${counted(roundUp(lacks / one.holds.value), one.word)} (${row.label})`;
}

const EXACT = 1e-9;
