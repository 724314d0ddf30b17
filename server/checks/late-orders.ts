// Deliveries that nobody says are ordered, and that ordered on the diary's day would come after their step could begin.
import { DAY_MINUTES, dayOfFinish, dayOfStart } from '#kit/dates';
import { nextWork } from '#schedule/calendar';
import { type DeliveryDates, orderDay } from '#schedule/delivery-dates';
import { type PlanLink, waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { afterStart, beforeFinish, WORKING } from '#schedule/waits';
import { isDone } from './outcomes.ts';
import { crewFree, readyWithout, waitsBesideDeliveries } from './ready-without.ts';

/** Moments. */
export interface LateOrder {
  /** When it comes, ordered on the diary's day. */
  readonly soonest: number;
  /** By when it must be there. */
  readonly latest: number;
  /** When the step could begin if it were. */
  readonly ready: number;
  /** How the step waits for it. */
  readonly wait: PlanLink;
}

/** `links` are what its step waits for. Undefined where it is ordered, here, or in time. */
export function lateOrder(dates: DeliveryDates, links: readonly PlanLink[], timeline: Timeline): LateOrder | undefined {
  const { delivery, first, step: number } = dates;
  const { timing, progress, dated } = timeline;
  if (progress.asOf === undefined || !dated || !isOpen(dates, timeline)) return undefined;
  const plan = timing.calendars[timing.planCalendar]!;
  const { lag, clock } = waiting(delivery.given.lead!.value);
  const soonest = afterStart(plan, progress.asOf * DAY_MINUTES, lag, clock);
  // The dates shown wait for an order of today: what counts is when the step could begin without.
  const ready = nextWork(plan, crewFree(first!, readyWithout(number, first!, links, timeline), timeline));
  const wait = links.find(({ from }) => from === number)!;
  const latest = beforeFinish(plan, ready, wait.lag, wait.clock);
  return soonest <= latest ? undefined : { soonest, latest, ready, wait };
}

/** The last working day on which an order that is late now would have been in time; undefined where it still is. */
export function missedOrderDay(dates: DeliveryDates, timeline: Timeline): number | undefined {
  const links = waitsBesideDeliveries(timeline.links, timeline.steps).get(dates.first ?? -1) ?? [];
  const late = lateOrder(dates, links, timeline);
  return late === undefined ? undefined : orderDayOf(dates, late, timeline);
}

export function orderDayOf({ delivery }: DeliveryDates, { latest, wait }: LateOrder, timeline: Timeline): number {
  const wanted = wait.lag > 0 && wait.clock !== WORKING ? dayOfFinish(latest) : dayOfStart(latest);
  return orderDay(wanted, delivery.given.lead!.value, timeline);
}

/** Neither ordered nor here nor on its way; what is measured first is ordered when it is measured. */
function isOpen({ delivery: { given }, step, orderBy }: DeliveryDates, timeline: Timeline): boolean {
  if (orderBy === undefined || given['measured after'] !== undefined) return false;
  return timeline.progress.records.get(step)?.notBefore === undefined && !isDone(step, timeline);
}
