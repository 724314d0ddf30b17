// When each delivery comes, by when it must be there so that no step waits for it, and by when it must be ordered for that.
import { DAY_MINUTES, dayOfFinish, dayOfStart } from '#kit/dates';
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
  /** The last working day to order it on, by its lead; undefined where it is ordered, has come, has no lead or nothing waits. */
  readonly orderBy: number | undefined;
}

/** In plan order. */
export function deliveryDates(timeline: Timeline): readonly DeliveryDates[] {
  return timeline.steps.list.flatMap((delivery, step) =>
    delivery.kind === 'delivery' ? [datesOf(delivery, step, timeline)] : [],
  );
}

function datesOf(delivery: Delivery, step: number, timeline: Timeline): DeliveryDates {
  const { crews, timing, links } = timeline;
  const calendar = timing.calendars[timing.planCalendar]!;
  const came = timing.fixedFinish !== undefined && !Number.isNaN(timing.fixedFinish[step]!);
  let first: number | undefined;
  let bound = Number.POSITIVE_INFINITY;
  let wanted: number | undefined;
  for (const link of links) {
    if (link.from !== step || link.kind !== FINISH_START) continue;
    const start = crews.start[link.to]!;
    const latest = beforeFinish(calendar, start, link.lag, link.clock);
    if (latest >= bound) continue;
    bound = latest;
    first = link.to;
    wanted = link.lag > 0 && link.clock !== WORKING ? dayOfFinish(latest) : dayOfStart(latest);
  }
  const { lead, ordered } = delivery.given;
  const open = lead !== undefined && ordered === undefined && !came && wanted !== undefined;
  return {
    step,
    delivery,
    comes: dayOfStart(crews.start[step]!),
    came,
    first,
    wanted,
    orderBy: open ? orderDay(wanted!, lead.value, timeline) : undefined,
  };
}

/** What is ordered on a day when nobody works is ordered on the working day before. */
function orderDay(wanted: number, lead: { readonly value: number; readonly unit?: string }, { timing }: Timeline): number {
  const calendar = timing.calendars[timing.planCalendar]!;
  const { lag, clock } = waiting(lead);
  const moment = wanted * DAY_MINUTES;
  const day = clock === WORKING ? dayOfStart(retreat(calendar, moment, lag)) : dayOfStart(moment - lag);
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
