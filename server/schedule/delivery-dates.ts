// When each delivery comes, by when it must be there so that no step waits for it, and by when it must be ordered for that.
import { DAY_MINUTES, dayOfFinish, dayOfStart } from '#kit/dates';
import { sameList } from '#kit/differing';
import type { Delivery } from '#model/model';
import { previousWork, retreat, workBetween } from './calendar.ts';
import { waiting } from './links.ts';
import { FINISH_START } from './network.ts';
import type { Timeline } from './timeline.ts';
import { beforeFinish, WORKING } from './waits.ts';

/** Days are whole; see kit/dates. */
export interface DeliveryDates {
  /** Number of the step. */
  readonly step: number;
  readonly delivery: Delivery;
  readonly comes: number;
  /** It has come, by the diary. */
  readonly came: boolean;
  /** The step that first waits for it, and the day by whose morning it must be there. Undefined where nothing waits. */
  readonly first: number | undefined;
  readonly wanted: number | undefined;
  /** The moment itself. */
  readonly latest: number | undefined;
  /** The last working day to order it on, by its lead; undefined where it is ordered, has come, has no lead or nothing waits. */
  readonly orderBy: number | undefined;
}

const kept = new WeakMap<object, { readonly from: readonly unknown[]; readonly dates: readonly DeliveryDates[] }>();

/** In plan order; the same list while dates, links and what is given of deliveries are the same. */
export function deliveryDates(timeline: Timeline): readonly DeliveryDates[] {
  const from = readsOfDeliveries(timeline);
  let known = kept.get(timeline.crews);
  if (known === undefined || !sameList(known.from, from)) kept.set(timeline.crews, (known = { from, dates: datesIn(timeline) }));
  return known.dates;
}

/** All that the dates of deliveries hang on. */
export function readsOfDeliveries({ crews, links, steps, timing }: Timeline): readonly unknown[] {
  return [crews, links, steps, timing];
}

function datesIn(timeline: Timeline): readonly DeliveryDates[] {
  const { steps, crews, timing, links } = timeline;
  const calendar = timing.calendars[timing.planCalendar]!;
  const waits = new Map<number, Waits>();
  for (const { from, to, kind, lag, clock } of links) {
    if (kind !== FINISH_START || steps.list[from]!.kind !== 'delivery') continue;
    const latest = beforeFinish(calendar, crews.start[to]!, lag, clock);
    const day = lag > 0 && clock !== WORKING ? dayOfFinish(latest) : dayOfStart(latest);
    const before = waits.get(from);
    if (before === undefined || latest < before.latest) waits.set(from, { latest, first: to, day });
  }
  const dates: DeliveryDates[] = [];
  for (let step = 0; step < steps.list.length; step++) {
    const delivery = steps.list[step]!;
    if (delivery.kind === 'delivery') dates.push(datesOf(delivery, step, waits.get(step), timeline));
  }
  return dates;
}

interface Waits {
  /** The moment it must be there. */
  readonly latest: number;
  readonly first: number;
  readonly day: number;
}

function datesOf(delivery: Delivery, step: number, waits: Waits | undefined, timeline: Timeline): DeliveryDates {
  const { crews, timing } = timeline;
  const came = timing.fixedFinish !== undefined && !Number.isNaN(timing.fixedFinish[step]!);
  const { lead, ordered } = delivery.given;
  const wanted = waits?.day;
  const orderBy =
    lead === undefined || ordered !== undefined || came || wanted === undefined
      ? undefined
      : orderDay(wanted, lead.value, timeline);
  return {
    step,
    delivery,
    comes: dayOfStart(crews.start[step]!),
    came,
    first: waits?.first,
    wanted,
    latest: waits?.latest,
    orderBy,
  };
}

/** The last day to order, or to call, so long before a day; on a day when nobody works, the working day before. */
export function orderDay(wanted: number, lead: { readonly value: number; readonly unit?: string }, { timing }: Timeline): number {
  const calendar = timing.calendars[timing.planCalendar]!;
  const { lag, clock } = waiting(lead);
  const moment = wanted * DAY_MINUTES;
  const day = dayOfStart(clock === WORKING ? retreat(calendar, moment, lag) : moment - lag);
  return isWorked(day, timing) ? day : dayOfFinish(previousWork(calendar, day * DAY_MINUTES));
}

/** Whether anybody works on a day, by the plan's own calendar. */
export function isWorked(day: number, { calendars, planCalendar }: Timeline['timing']): boolean {
  return workBetween(calendars[planCalendar]!, day * DAY_MINUTES, (day + 1) * DAY_MINUTES) > 0;
}

/** Names of goods that a delivery brings; goods go by their own name or a second one. */
export function brings(delivery: Delivery, goods: { readonly name: string; readonly also: readonly string[] }): boolean {
  return delivery.given.brings?.value.some(({ value }) => value.name === goods.name || goods.also.includes(value.name)) === true;
}
