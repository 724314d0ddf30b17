// What is ordered against what the plan needs of it: short of the net it runs out for certain, short of the usual waste most
// likely. Concrete that runs out costs a second truck and a cold joint.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Delivery } from '#model/model';
import type { Model } from '#model/resolve';
import type { Purchase } from '#takeoff/lines';
import type { Check } from '../../check.ts';
import { quantityText } from '../../show.ts';

export const short = findingSort<
  [delivery: string, ordered: string, goods: string, needed: string, net: string, margin: string, step: string]
>({
  code: 'deliveries/too-little',
  severity: 'warning',
  say: (delivery, ordered, goods, needed, net, margin, step) =>
    `"${delivery}" brings ${ordered} of ${goods}; the plan holds ${net} and needs ${needed} with what is usually wasted. ${margin}, and the rest is fetched at the price of a second trip while the work stands. Order ${step}.`,
});

export const shortOfNet = findingSort<
  [delivery: string, ordered: string, goods: string, net: string, lacks: string, step: string]
>({
  code: 'deliveries/too-little',
  severity: 'error',
  say: (delivery, ordered, goods, net, lacks, step) =>
    `"${delivery}" brings ${ordered} of ${goods}, and the plan holds ${net} before any waste: ${lacks} are not there. Concrete stops at a cold joint, other work stands. Order ${step}.`,
});

export const tooLittle: Check = {
  code: 'deliveries/too-little',
  about:
    'What a delivery says it brings (`amount`) is held against what the plan needs. Less than the drawing holds is an error; less than that with the usual waste is a warning that says what margin the order has.',
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
  reads: ({ model, takeOff }) => [model.list('delivery'), takeOff.purchases(), model.settings],
  run: ({ model, takeOff }) => {
    const ordered = model.list('delivery').filter(({ given }) => given.amount.length > 0);
    if (ordered.length === 0) return [];
    return ordered.flatMap((delivery) => ofDelivery(delivery, takeOff.purchases(), model));
  },
};

function ofDelivery(delivery: Delivery, purchases: readonly Purchase[], model: Model): readonly Finding[] {
  const brings = delivery.given.brings?.value.map(({ value }) => value.name) ?? [];
  const names = new Set(delivery.given.amount.map(({ value }) => value.of?.name ?? brings[0]));
  return [...names].flatMap((name) => {
    if (name === undefined) return [];
    const amounts = delivery.given.amount.filter(({ value }) => (value.of?.name ?? brings[0]) === name);
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
    if (has < net * (1 - EXACT))
      return [finding(shortOfNet, place, delivery.name, text(has), first.label, text(net), text(net - has), order)];
    const margin = Math.round((has / net - 1) * 1000) / 10;
    const words = `The order has ${margin}% over, where ${Math.round((needed / net - 1) * 1000) / 10}% are usual`;
    return [finding(short, place, delivery.name, text(has), first.label, text(needed), text(net), words, order)];
  });
}

const EXACT = 1e-9;
