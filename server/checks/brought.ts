// What deliveries bring, with the rows of it in the library and the step that first uses it: for checks of when it comes.
import type { GoodsRow } from '#model/model';
import type { Model } from '#model/resolve';
import { type DeliveryDates, deliveryDates } from '#schedule/delivery-dates';
import type { Timeline } from '#schedule/timeline';
import { keptWhile } from './kept.ts';

export interface Brought {
  readonly dates: DeliveryDates;
  readonly goods: readonly BroughtGoods[];
}

export interface BroughtGoods {
  readonly label: string;
  readonly row: GoodsRow | undefined;
  /** The step that first uses it, and the day that begins. */
  readonly first: number | undefined;
  readonly day: number | undefined;
}

/** Of deliveries that have not come; in plan order. */
export const broughtGoods = keptWhile(
  (model: Model, timeline: Timeline): readonly [object, ...unknown[]] => [
    timeline,
    model.rows('material'),
    model.rows('fixture'),
  ],
  (model: Model, timeline: Timeline): readonly Brought[] => {
    const rows = rowsByName(model);
    return deliveryDates(timeline)
      .filter(({ came }) => !came)
      .map((dates) => ({
        dates,
        goods: (dates.delivery.given.brings?.value ?? []).map(({ value }) => {
          const row = rows.get(value.name);
          const first = firstUse(dates.step, row?.name ?? value.name, timeline);
          return {
            label: row?.label ?? value.name,
            row,
            first,
            day: first === undefined ? undefined : Math.floor(timeline.crews.start[first]! / (24 * 60)),
          };
        }),
      }));
  },
);

function rowsByName(model: Model): ReadonlyMap<string, GoodsRow> {
  const rows = new Map<string, GoodsRow>();
  for (const row of [...model.rows('material'), ...model.rows('fixture')]) {
    rows.set(row.name, row);
    for (const line of row.given.also) for (const { value } of line.value) if (!rows.has(value.name)) rows.set(value.name, row);
  }
  return rows;
}

/** Of the steps that wait for a delivery, the first that takes goods of the name. */
function firstUse(delivery: number, goods: string, { links, claims, crews }: Timeline): number | undefined {
  let first: number | undefined;
  for (const { from, to } of links) {
    if (from !== delivery || (first !== undefined && crews.start[to]! >= crews.start[first]!)) continue;
    if (claims.byStep[to]!.some(({ line }) => line.goods?.name === goods)) first = to;
  }
  return first;
}
