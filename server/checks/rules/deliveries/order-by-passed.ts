// Goods that nobody says are ordered, and that ordered today would come after the step that needs them begins.
import { DAY_MINUTES, isoDate } from '#kit/dates';
import { type Finding, type Fix, finding, findingSort } from '#kit/finding';
import { type DeliveryDates, deliveryDates, readsOfDeliveries } from '#schedule/delivery-dates';
import { waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { afterStart } from '#schedule/waits';
import type { Check } from '../../check.ts';
import { isDone } from '../../outcomes.ts';
import { dayText, startText } from '../../show.ts';

export const passed = findingSort<
  [delivery: string, orderBy: string, today: string, soonest: string, step: string, begins: string]
>({
  code: 'deliveries/order-by-passed',
  severity: 'warning',
  say: (delivery, orderBy, today, soonest, step, begins) =>
    `"${delivery}" had to be ordered by ${orderBy} to be there when "${step}" begins (${begins}), and nothing says that it was. Ordered on ${today} it comes on ${soonest}, and the dates shown do not hold. Order it now and write the day ("ordered"), or write when it was ordered.`,
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
  reads: ({ timeline }) => [...readsOfDeliveries(timeline), timeline.progress],
  run: ({ timeline }) => {
    const { asOf } = timeline.progress;
    if (asOf === undefined || !timeline.dated) return [];
    return deliveryDates(timeline).flatMap((dates) => (isOpen(dates, timeline) ? lateOrder(dates, asOf, timeline) : []));
  },
};

/** Neither ordered nor here nor on its way; what is measured first is ordered when it is measured. */
function isOpen({ delivery: { given }, step, orderBy }: DeliveryDates, timeline: Timeline): boolean {
  if (orderBy === undefined || given['measured after'] !== undefined) return false;
  return timeline.progress.records.get(step)?.notBefore === undefined && !isDone(step, timeline);
}

function lateOrder({ delivery, first, latest, orderBy }: DeliveryDates, asOf: number, timeline: Timeline): readonly Finding[] {
  const { timing, crews, steps } = timeline;
  const { given, place, name } = delivery;
  const { lag, clock } = waiting(given.lead!.value);
  const soonest = afterStart(timing.calendars[timing.planCalendar]!, asOf * DAY_MINUTES, lag, clock);
  if (soonest <= latest!) return [];
  const step = steps.list[first!]!;
  const today = dayText(asOf, timeline);
  const begins = startText(crews.start[first!]!, timeline);
  const comes = startText(soonest, timeline);
  const made = finding(passed, place, name, dayText(orderBy!, timeline), today, comes, step.name, begins);
  const fix: Fix = { kind: 'append', title: `It is ordered on ${today}`, place, text: `, ordered ${isoDate(asOf)}` };
  return [{ ...made, related: [{ place: step.place, note: `"${step.name}", which needs it` }], fixes: [fix] }];
}
