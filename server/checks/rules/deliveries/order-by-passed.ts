// Goods that nobody says are ordered, and that ordered today would come after the step that needs them begins.
import { DAY_MINUTES, isoDate } from '#kit/dates';
import { type Finding, type Fix, finding, findingSort } from '#kit/finding';
import type { ElementOf } from '#model/model';
import { waiting } from '#schedule/links';
import { FINISH_START } from '#schedule/network';
import type { Timeline } from '#schedule/timeline';
import { afterStart, beforeStart } from '#schedule/waits';
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

type Delivery = ElementOf<'delivery'>;

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
  reads: ({ model, timeline }) => [
    model.list('delivery'),
    timeline.steps,
    timeline.links,
    timeline.crews,
    timeline.progress,
    timeline.timing.calendars[timeline.timing.planCalendar],
  ],
  run: ({ model, timeline }) => {
    const { asOf } = timeline.progress;
    if (asOf === undefined || !timeline.dated) return [];
    return model.list('delivery').flatMap((delivery) => {
      const at = timeline.steps.index.get(delivery.slot);
      return at === undefined || !isOpen(delivery, at, timeline) ? [] : lateOrder(delivery, at, asOf, timeline);
    });
  },
};

/** Neither ordered nor here nor on its way; what is measured first is ordered when it is measured. */
function isOpen({ given }: Delivery, at: number, timeline: Timeline): boolean {
  if (given.lead === undefined || given.ordered !== undefined || given['measured after'] !== undefined) return false;
  return timeline.progress.records.get(at)?.notBefore === undefined && !isDone(at, timeline);
}

function lateOrder({ given, place, name }: Delivery, at: number, asOf: number, timeline: Timeline): readonly Finding[] {
  const { timing, links, crews, steps } = timeline;
  const calendar = timing.calendars[timing.planCalendar]!;
  const { lag, clock } = waiting(given.lead!.value);
  const soonest = afterStart(calendar, asOf * DAY_MINUTES, lag, clock);
  let first: { readonly step: number; readonly needed: number } | undefined;
  for (const { from, to, kind, lag: wait, clock: by } of links) {
    if (from !== at || kind !== FINISH_START) continue;
    const needed = beforeStart(calendar, crews.start[to]!, wait, by);
    if (first === undefined || needed < first.needed) first = { step: to, needed };
  }
  if (first === undefined || soonest <= first.needed) return [];
  const orderBy = Math.floor(beforeStart(calendar, first.needed, lag, clock) / DAY_MINUTES);
  const step = steps.list[first.step]!;
  const today = dayText(asOf, timeline);
  const begins = startText(crews.start[first.step]!, timeline);
  const comes = startText(soonest, timeline);
  const made = finding(passed, place, name, dayText(orderBy, timeline), today, comes, step.name, begins);
  const fix: Fix = { kind: 'append', title: `It is ordered on ${today}`, place, text: `, ordered ${isoDate(asOf)}` };
  return [{ ...made, related: [{ place: step.place, note: `"${step.name}", which needs it` }], fixes: [fix] }];
}
