// Goods that must have been ordered by now, and are not: seen from the status date.
import { DAY_MINUTES } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import { deliveryDates } from '#schedule/delivery-dates';
import type { Check } from '../../check.ts';
import { counted, dayText } from '../../show.ts';

export const passed = findingSort<
  [delivery: string, step: string, wanted: string, orderBy: string, now: string, comes: string, late: number]
>({
  code: 'deliveries/order-passed',
  severity: 'warning',
  say: (delivery, step, wanted, orderBy, now, comes, late) =>
    `"${delivery}" had to be ordered by ${orderBy} to be there on ${wanted}, when "${step}" needs it. On ${now} that day has passed and no order is written down${late > 0 ? `: ordered now it comes on ${comes}, ${counted(late, 'day')} too late` : ''}. Write down when it was "ordered", or order it today and ask what else there is.`,
});

export const orderPassed: Check = {
  code: 'deliveries/order-passed',
  about:
    'The last day to order a thing is the day it is wanted less its lead. Once the diary, or the day that the plan is looked at from, is past it and no order is written down, every day of silence is a day that the work stands.',
  wrong: `plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier yard
trade framing crew of 2
task walls takes 20d by framing
delivery truss-load brings truss from yard, lead 5 weeks
task trusses takes 2d by framing after walls, truss-load
progress 2027-03-12
  walls started 2027-03-01, left 10d
`,
  right: `plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier yard
trade framing crew of 2
task walls takes 20d by framing
delivery truss-load brings truss from yard, lead 5 weeks, ordered 2027-02-15
task trusses takes 2d by framing after walls, truss-load
progress 2027-03-12
  walls started 2027-03-01, left 10d
`,
  reads: ({ timeline }) => [timeline],
  run: ({ timeline }) => {
    const { asOf } = timeline.progress;
    if (asOf === undefined || !timeline.dated) return [];
    return deliveryDates(timeline).flatMap(({ delivery, first, wanted, orderBy }) => {
      if (orderBy === undefined || orderBy >= asOf) return [];
      const comes = asOf + Math.ceil(delivery.given.lead!.value.value / DAY_MINUTES);
      const show = (day: number): string => dayText(day, timeline);
      return [
        finding(
          passed,
          delivery.place,
          delivery.name,
          timeline.steps.list[first!]!.name,
          show(wanted!),
          show(orderBy),
          show(asOf),
          show(comes),
          comes - wanted!,
        ),
      ];
    });
  },
};
