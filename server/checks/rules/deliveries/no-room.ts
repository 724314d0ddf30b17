// Deliveries that lie on the site at once on more ground than there is: what stands in the way is moved twice, or spoilt.
import { dayOfStart } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import { roundUp } from '#kit/quantity';
import type { GoodsRow } from '#model/model';
import type { Timeline } from '#schedule/timeline';
import type { Purchase } from '#takeoff/lines';
import { broughtGoods } from '../../brought.ts';
import type { Check, Results } from '../../check.ts';
import { areaText, dayText } from '../../show.ts';

export const crowded = findingSort<[day: string, needs: string, has: string, lying: readonly string[]]>({
  code: 'deliveries/no-room',
  severity: 'note',
  say: (day, needs, has, lying) =>
    `On ${day} what has been delivered takes about ${needs}, and there is ground for ${has}: ${lying.join(', ')}. What lies where people dig or drive is moved twice, or run over. Let some come later, or find more ground.`,
});

export const noRoom: Check = {
  code: 'deliveries/no-room',
  about:
    'Rows of the library say how much of some goods lies in one bundle or heap, and on what ground. Where the site says how much ground there is (`storage`), what lies there at once must find room: from the day it comes to the day its last step begins. What is stored indoors does not count.',
  wrong: `plan p
  start 2027-03-01
  workweek mon-fri 8h
site lot
  drive 60' x 10'
  storage 200 sf
supplier pit
trade digger crew of 2
delivery stone brings road-base from pit, lead 1 day
task strip takes 10d by digger
task drive does gravel-drive takes 2d by digger after stone, strip
`,
  right: `plan p
  start 2027-03-01
  workweek mon-fri 8h
site lot
  drive 60' x 10'
  storage 520 sf
supplier pit
trade digger crew of 2
delivery stone brings road-base from pit, lead 1 day
task strip takes 10d by digger
task drive does gravel-drive takes 2d by digger after stone, strip
`,
  reads: ({ model, timeline, takeOff }) => {
    const storage = model.list('site')[0]?.given.storage;
    return storage === undefined ? [undefined] : [storage, broughtGoods(model, timeline), takeOff.purchases(), model.settings];
  },
  run: (results) => {
    const { model, timeline } = results;
    const storage = model.list('site')[0]?.given.storage;
    if (storage === undefined) return [];
    const lying = lyingIn(results);
    let worst: { readonly day: number; readonly area: number } | undefined;
    for (const { from: day } of lying) {
      const area = lying.reduce((sum, each) => sum + (isThere(each, day) ? each.area : 0), 0);
      if (worst === undefined || area > worst.area) worst = { day, area };
    }
    if (worst === undefined || worst.area <= storage.value.value) return [];
    const there = new Map<string, number>();
    for (const each of lying) if (isThere(each, worst.day)) there.set(each.delivery, (there.get(each.delivery) ?? 0) + each.area);
    return [
      finding(
        crowded,
        storage.place,
        dayText(worst.day, timeline),
        areaText(worst.area, model),
        areaText(storage.value.value, model),
        [...there].sort(([, a], [, b]) => b - a).map(([delivery, area]) => `"${delivery}" ${areaText(area, model)}`),
      ),
    ];
  },
};

/** A delivery on the ground: from the day it comes to before the day on which its last step begins. */
interface Lying {
  readonly delivery: string;
  readonly area: number;
  readonly from: number;
  readonly until: number;
}

function isThere({ from, until }: Lying, day: number): boolean {
  return from <= day && day < until;
}

/** Goods that several deliveries bring are taken to come in equal parts. */
function lyingIn({ model, timeline, takeOff }: Results): readonly Lying[] {
  const brought = broughtGoods(model, timeline);
  const times = new Map<GoodsRow, number>();
  for (const { goods } of brought) for (const { row } of goods) if (row !== undefined) times.set(row, (times.get(row) ?? 0) + 1);
  return brought.flatMap(({ dates: { delivery, comes }, goods }) =>
    goods.flatMap(({ row, users }): readonly Lying[] => {
      if (row?.kind !== 'material' || users.length === 0 || isIndoors(row)) return [];
      const share = takeOff
        .purchases()
        .reduce(
          (sum, purchase) => sum + (purchase.goods.name === row.name ? groundOf(purchase, row, times.get(row) ?? 1) : 0),
          0,
        );
      if (share === 0) return [];
      return [{ delivery: delivery.name, area: share, from: comes, until: Math.max(comes + 1, lastDay(users, timeline)) }];
    }),
  );
}

function isIndoors({ given: { stored } }: Extract<GoodsRow, { kind: 'material' }>): boolean {
  return stored?.value.some(({ value }) => value === 'indoors') === true;
}

/** Whole bundles or heaps, by their ground; nothing where the row does not say how it is piled as it is bought. */
function groundOf({ bought }: Purchase, { given: { lies } }: Extract<GoodsRow, { kind: 'material' }>, times: number): number {
  if (lies === undefined) return 0;
  const { amount, plan } = lies.value;
  const one = typeof amount === 'number' ? amount : amount.value;
  const dimension = typeof amount === 'number' ? 'number' : amount.dimension;
  if (dimension !== bought.dimension || !(one > 0)) return 0;
  return roundUp(bought.value / times / one) * plan.left.value * plan.right.value;
}

function lastDay(users: readonly number[], { crews }: Timeline): number {
  return Math.max(...users.map((step) => dayOfStart(crews.start[step]!)));
}
