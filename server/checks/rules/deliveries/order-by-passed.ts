// Goods that nobody says are ordered, and that ordered today would come after the step that needs them begins.
import { DAY_MINUTES, dayOfFinish, dayOfStart, isoDate } from '#kit/dates';
import { type Finding, type Fix, finding, findingSort } from '#kit/finding';
import { nextWork } from '#schedule/calendar';
import { type DeliveryDates, deliveryDates, orderDay, readsOfDeliveries } from '#schedule/delivery-dates';
import { type PlanLink, waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { afterStart, beforeFinish, WORKING } from '#schedule/waits';
import type { Check } from '../../check.ts';
import { isDone } from '../../outcomes.ts';
import { crewFree, readyWithout, waitsBesideDeliveries } from '../../ready-without.ts';
import { dayText, startText } from '../../show.ts';

export const passed = findingSort<
  [delivery: string, orderBy: string, today: string, soonest: string, step: string, begins: string]
>({
  code: 'deliveries/order-by-passed',
  severity: 'warning',
  say: (delivery, orderBy, today, soonest, step, begins) =>
    `"${delivery}" had to be ordered by ${orderBy} to be there when "${step}" could begin (${begins}), and nothing says that it was. The dates shown count on an order on ${today}: it comes on ${soonest} then, and each day without one moves them. Order it now and write the day ("ordered"), or write when it was ordered.`,
});

export const orderByPassed: Check = {
  code: 'deliveries/order-by-passed',
  about:
    'Goods with a lead are ordered so long before they are needed. Where that day has passed by the diary and no order is written down, they come late, and every date behind them with them.',
  wrong: `plan p
  start 2027-03-01
trade framing crew of 3
task walls takes 20d by framing
delivery trusses-here lead 6 weeks
task trusses takes 1d by framing after walls, trusses-here
progress 2027-03-15
  walls started 2027-03-01
`,
  right: `plan p
  start 2027-03-01
trade framing crew of 3
task walls takes 20d by framing
delivery trusses-here lead 6 weeks, ordered 2027-03-02
task trusses takes 1d by framing after walls, trusses-here
progress 2027-03-15
  walls started 2027-03-01
`,
  reads: ({ timeline }) => [...readsOfDeliveries(timeline), timeline.progress, timeline.trades],
  run: ({ timeline }) => {
    const { asOf } = timeline.progress;
    if (asOf === undefined || !timeline.dated) return [];
    const open = deliveryDates(timeline).filter((dates) => isOpen(dates, timeline));
    const links = waitsBesideDeliveries(timeline.links, timeline.steps);
    return open.flatMap((dates) => lateOrder(dates, links.get(dates.first!) ?? [], asOf, timeline));
  },
};

/** Neither ordered nor here nor on its way; what is measured first is ordered when it is measured. */
function isOpen({ delivery: { given }, step, orderBy }: DeliveryDates, timeline: Timeline): boolean {
  if (orderBy === undefined || given['measured after'] !== undefined) return false;
  return timeline.progress.records.get(step)?.notBefore === undefined && !isDone(step, timeline);
}

function lateOrder(
  { delivery, first, step: number }: DeliveryDates,
  links: readonly PlanLink[],
  asOf: number,
  timeline: Timeline,
): readonly Finding[] {
  const { timing, steps } = timeline;
  const plan = timing.calendars[timing.planCalendar]!;
  const { given, place, name } = delivery;
  const { lag, clock } = waiting(given.lead!.value);
  const soonest = afterStart(plan, asOf * DAY_MINUTES, lag, clock);
  // The dates shown wait for an order of today: what counts is when the step could begin without.
  const ready = crewFree(first!, readyWithout(number, first!, links, timeline), timeline);
  const wait = links.find(({ from }) => from === number)!;
  const latest = beforeFinish(plan, ready, wait.lag, wait.clock);
  if (soonest <= latest) return [];
  const wanted = wait.lag > 0 && wait.clock !== WORKING ? dayOfFinish(latest) : dayOfStart(latest);
  const step = steps.list[first!]!;
  const today = dayText(asOf, timeline);
  const begins = startText(nextWork(plan, ready), timeline);
  const comes = startText(soonest, timeline);
  const made = finding(
    passed,
    place,
    name,
    dayText(orderDay(wanted, given.lead!.value, timeline), timeline),
    today,
    comes,
    step.name,
    begins,
  );
  const fix: Fix = { kind: 'append', title: `It is ordered on ${today}`, place, text: `, ordered ${isoDate(asOf)}` };
  return [{ ...made, related: [{ place: step.place, note: `"${step.name}", which needs it` }], fixes: [fix] }];
}
