// Concrete by the truck. The charge is the worked example of allconcretecalculator.com, What is a short-load fee: 6.5 cubic
// yards, least load 8, $75 a yard short: $112.50. The rest is arithmetic by hand.
import { expect, test } from 'vitest';
import { constant } from '#kit/quantity';
import { fromBase, toBase } from '#kit/units';
import type { Purchase } from '#takeoff/lines';
import { truckloadsOf } from '#takeoff/truckloads';
import { checked } from '#tests/support/checked';

const cy = (value: number) => constant('v', toBase(value, 'cy')!, 'volume');
const order = (bought: number, days: readonly number[] = []): Purchase =>
  ({
    label: 'Concrete',
    bought: cy(bought),
    needed: cy(bought),
    truck: { load: cy(10), least: cy(4), step: cy(0.25) },
    pour: { label: 'slab', days: days.map((share, at) => ({ label: `day ${at + 1}`, share })) },
  }) as unknown as Purchase;
const loads = (purchase: Purchase) =>
  truckloadsOf(purchase).map(({ trucks, last, short }) => [
    trucks.value,
    round(last.value),
    short === undefined ? undefined : round(short.value),
  ]);
const round = (value: number) => Math.round((fromBase(value, 'cy') ?? 0) * 1000) / 1000;

test.each([
  [10, [[1, 10, undefined]]],
  [10.25, [[2, 0.25, 3.75]]],
  [14, [[2, 4, undefined]]],
  [30, [[3, 10, undefined]]],
  [2.5, [[1, 2.5, 1.5]]],
])('%d cy', (bought, expected) => expect(loads(order(bought))).toEqual(expected));

test('what two steps share comes on two days, each with its own trucks', () =>
  expect(loads(order(12, [0.5, 0.5]))).toEqual([
    [1, 6, undefined],
    [1, 6, undefined],
  ]));

/** A slab of 20 ft by 24 ft, 4 in deep: 160 cf, 5.926 cy; with 8 % 6.4 cy, so 6.5 are ordered. */
const slab = (more: string) => `plan p
level floor
  footprint 20' x 24'
foundation slab under floor
  slab 4"
${more}`;

test('the published charge is counted, and told', () => {
  const plan = checked(slab('material slab-concrete\n  least-load 8 cy\nprice slab-concrete $150/cy, short-load $75/cy\n'));
  expect(plan.plan.budget.net).toBe(6.5 * 15000 + 11250);
  expect(plan.messages('goods/short-load')).toEqual([
    'Concrete for slabs (Pour and finish the slab): 6.5 cy come in 1 truck. The plant’s least load is 8 cy, and the price adds $112.50 for it. Pour it together with something else, or mix a small amount from bags.',
  ]);
});

test('a charge by the truck is asked once a truck; where the price asks nothing it is a note without a sum', () => {
  const by = (price: string) => checked(slab(`material slab-concrete\n  load 6 cy\n${price}`));
  // 6 and half a yard.
  expect(by('price slab-concrete $100/cy, short-load $120\n').plan.budget.net).toBe(65000 + 12000);
  expect(by('price slab-concrete $100/cy\n').messages('goods/short-load')).toEqual([
    'Concrete for slabs (Pour and finish the slab): 6.5 cy come in 2 trucks, the last with 0.5 cy. The plant’s least load is 4 cy, and less is charged for. Pour it together with something else, ask the plant for even loads, or mix a small amount from bags.',
  ]);
});
