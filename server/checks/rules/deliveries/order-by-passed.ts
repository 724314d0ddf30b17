// Goods that nobody says are ordered, and that ordered today would come after the step that needs them begins.
import { isoDate } from '#kit/dates';
import { type Finding, type Fix, finding, findingSort } from '#kit/finding';
import { type DeliveryDates, deliveryDates, readsOfDeliveries } from '#schedule/delivery-dates';
import type { Timeline } from '#schedule/timeline';
import type { Check } from '../../check.ts';
import { type LateOrder, lateOrder, orderDayOf } from '../../late-orders.ts';
import { waitsBesideDeliveries } from '../../ready-without.ts';
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
    const links = waitsBesideDeliveries(timeline.links, timeline.steps);
    return deliveryDates(timeline).flatMap((dates) => {
      const late = lateOrder(dates, links.get(dates.first ?? -1) ?? [], timeline);
      return late === undefined ? [] : [tell(dates, late, timeline)];
    });
  },
};

function tell(dates: DeliveryDates, late: LateOrder, timeline: Timeline): Finding {
  const { place, name } = dates.delivery;
  const { soonest, ready } = late;
  const step = timeline.steps.list[dates.first!]!;
  const asOf = timeline.progress.asOf!;
  const today = dayText(asOf, timeline);
  const begins = startText(ready, timeline);
  const comes = startText(soonest, timeline);
  const by = dayText(orderDayOf(dates, late, timeline), timeline);
  const made = finding(passed, place, name, by, today, comes, step.name, begins);
  const fix: Fix = { kind: 'append', title: `It is ordered on ${today}`, place, text: `, ordered ${isoDate(asOf)}` };
  return { ...made, related: [{ place: step.place, note: `"${step.name}", which needs it` }], fixes: [fix] };
}
