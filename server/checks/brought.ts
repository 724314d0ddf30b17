// What deliveries bring, with the rows of it in the library and the step that first uses it: for checks of when it comes.
import { dayOfStart } from '#kit/dates';
import { addTo } from '#kit/gathered';
import type { GoodsRow, Opening } from '#model/model';
import type { Model } from '#model/resolve';
import { type DeliveryDates, deliveryDates, readsOfDeliveries } from '#schedule/delivery-dates';
import type { Timeline } from '#schedule/timeline';
import { keptFor, keptWhile } from './kept.ts';

export interface Brought {
  readonly dates: DeliveryDates;
  readonly goods: readonly BroughtGoods[];
}

export interface BroughtGoods {
  readonly label: string;
  readonly row: GoodsRow | undefined;
  /** The steps that wait for the delivery and use it. */
  readonly users: readonly number[];
  /** The step that first uses it, and the day that begins. */
  readonly first: number | undefined;
  readonly day: number | undefined;
}

/** Of deliveries that have not come; in plan order. */
export const broughtGoods = keptWhile(
  (model: Model, timeline: Timeline): readonly [object, ...unknown[]] => [
    timeline.crews,
    ...readsOfDeliveries(timeline),
    timeline.claims.byStep,
    model.rows('material'),
    model.rows('fixture'),
    model.list('door'),
    model.list('window'),
  ],
  (model: Model, timeline: Timeline): readonly Brought[] => {
    const rows = rowsByName(model.rows('material'), model.rows('fixture'), model.list('door'), model.list('window'));
    const waiting = waitingSteps(timeline.links, timeline.steps);
    return deliveryDates(timeline)
      .filter(({ came }) => !came)
      .map((dates) => ({
        dates,
        goods: (dates.delivery.given.brings?.value ?? []).map(({ value }) => {
          const row = rows.get(value.name);
          const users = usersOf(waiting.get(dates.step) ?? [], row?.name ?? value.name, timeline);
          const first = firstOf(users, timeline);
          return {
            label: row?.label ?? value.name,
            row,
            users,
            first,
            day: first === undefined ? undefined : dayOfStart(timeline.crews.start[first]!),
          };
        }),
      }));
  },
);

type Rows = readonly Extract<GoodsRow, { kind: 'material' | 'fixture' }>[];
/** Types that a plan draws up for itself say how they are stored themselves. */
type Types = readonly Opening[];

const rowsByName = keptWhile(
  (materials: Rows, fixtures: Rows, doors: Types, windows: Types): readonly [object, ...unknown[]] => [
    materials,
    fixtures,
    doors,
    windows,
  ],
  (materials: Rows, fixtures: Rows, doors: Types, windows: Types): ReadonlyMap<string, GoodsRow> => {
    const rows = new Map<string, GoodsRow>();
    for (const type of [...doors, ...windows]) rows.set(type.name, type);
    for (const row of [...materials, ...fixtures]) {
      rows.set(row.name, row);
      for (const line of row.given.also) for (const { value } of line.value) if (!rows.has(value.name)) rows.set(value.name, row);
    }
    return rows;
  },
);

/** The steps that wait for each delivery. */
const waitingSteps = keptWhile(
  (links: Timeline['links'], steps: Timeline['steps']): readonly [object, ...unknown[]] => [links, steps],
  (links: Timeline['links'], steps: Timeline['steps']): ReadonlyMap<number, readonly number[]> => {
    const waiting = new Map<number, number[]>();
    for (const { from, to } of links) if (steps.list[from]!.kind === 'delivery') addTo(waiting, from, to);
    return waiting;
  },
);

/** Of the steps that wait for a delivery, those that take goods of the name. */
function usersOf(waiting: readonly number[], goods: string, { claims }: Timeline): readonly number[] {
  return waiting.filter((step) => namesTaken(claims.byStep[step]!).has(goods));
}

/** Names of the goods that a step takes, kept with its list: most steps take what they took before. */
const namesTaken = keptFor(
  (claims: Timeline['claims']['byStep'][number]): ReadonlySet<string | undefined> =>
    new Set(claims.map(({ line }) => line.goods?.name)),
);

function firstOf(users: readonly number[], { crews }: Timeline): number | undefined {
  let first: number | undefined;
  for (const step of users) if (first === undefined || crews.start[step]! < crews.start[first]!) first = step;
  return first;
}
