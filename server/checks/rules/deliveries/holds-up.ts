// A lead longer than the work has to spare: a step could begin, and waits for its goods alone.
import { finding, findingSort } from '#kit/finding';
import type { Delivery } from '#model/model';
import type { Model } from '#model/resolve';
import { workBetween } from '#schedule/calendar';
import { deliveryDates, readsOfDeliveries } from '#schedule/delivery-dates';
import { FINISH_START } from '#schedule/network';
import type { Timeline } from '#schedule/timeline';
import { afterFinish } from '#schedule/waits';
import { broughtGoods } from '../../brought.ts';
import type { Check } from '../../check.ts';
import { lateOrder } from '../../late-orders.ts';
import { crewFree, readyWithout, waitsBesideDeliveries } from '../../ready-without.ts';
import { counted, dayText, finishText, startText } from '../../show.ts';

export const held = findingSort<
  [
    delivery: string,
    step: string,
    user: string | undefined,
    days: number,
    ready: string,
    comes: string,
    then: { readonly kind: 'order' | 'ordered' } | { readonly kind: 'after'; readonly step: string },
  ]
>({
  code: 'deliveries/holds-up',
  severity: 'note',
  say: (delivery, step, user, days, ready, comes, then) => {
    const waits =
      user === undefined
        ? `"${step}" waits ${counted(days, 'working day')} for "${delivery}" alone: all else that it waits for is done and its crew is free`
        : `"${step}" and behind it "${user}", which uses the goods, wait ${counted(days, 'working day')} for "${delivery}" alone: all else is done and the crew is free`;
    switch (then.kind) {
      case 'order':
        return `${waits} on ${ready}, and the goods come on ${comes}. Measure and order sooner, take what has a shorter lead, or plan other work between.`;
      case 'ordered':
        return `${waits} on ${ready}, and the goods come on ${comes}. Ask whether a part can come sooner, and what can be built meanwhile.`;
      case 'after':
        return `${waits} on ${ready}, and the goods come on ${comes}, once "${then.step}" is done. Begin "${then.step}" sooner or see whether a part can come first, or plan other work between.`;
    }
  },
});

export const holdsUp: Check = {
  code: 'deliveries/holds-up',
  about:
    'A lead that is longer than the float of what it is for stops the house: the crew is free, the place is ready, and the goods are on the road. The finding says for how many working days.',
  wrong: `plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier millwork
trade framing crew of 2
task walls takes 5d by framing
delivery windows-here brings truss from millwork, lead 9 weeks
task windows-in takes 2d by framing after walls, windows-here
`,
  right: `plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier millwork
trade framing crew of 2
task walls takes 5d by framing
delivery windows-here brings truss from millwork, lead 9 weeks, ordered 2027-01-04
task windows-in takes 2d by framing after walls, windows-here
`,
  reads: ({ timeline, model }) => [
    ...readsOfDeliveries(timeline),
    timeline.progress,
    timeline.trades,
    broughtGoods(model, timeline),
  ],
  run: ({ timeline, model }) => {
    const deliveries = deliveryDates(timeline);
    const users = usersOf(model, timeline);
    const waits = waitsBesideDeliveries(timeline.links, timeline.steps);
    return deliveries.flatMap((dates) => {
      const { delivery, step, came, comes, first } = dates;
      if (came || first === undefined) return [];
      const { timing, crews, minutesPerDay } = timeline;
      const arrives = Math.min(crews.finish[step]!, crews.start[first]!);
      const waited = (since: number): number =>
        Math.floor(workBetween(timing.calendars[timing.planCalendar]!, since, arrives) / minutesPerDay + 1e-9);
      const others = readyWithout(step, first, waits.get(first) ?? [], timeline);
      if (waited(others) < 1) return [];
      const ready = crewFree(first, others, timeline);
      const days = waited(ready);
      // That it should have been ordered by now is told by itself.
      if (days < 1 || lateOrder(dates, waits.get(first) ?? [], timeline) !== undefined) return [];
      return [
        finding(
          held,
          delivery.place,
          delivery.name,
          timeline.steps.list[first]!.name,
          userBehind(users.get(step), first, timeline),
          days,
          // Nothing before it: it could begin on the first day.
          ready <= timeline.timing.start ? startText(ready, timeline) : finishText(ready, timeline),
          dayText(comes, timeline),
          whatThen(delivery, step, timeline),
        ),
      ];
    });
  },
};

/** Of each delivery the step that first uses any of what it brings. */
function usersOf(model: Model, timeline: Timeline): ReadonlyMap<number, number> {
  const users = new Map<number, number>();
  for (const { dates, goods } of broughtGoods(model, timeline))
    for (const { first } of goods) {
      const known = users.get(dates.step);
      if (first !== undefined && (known === undefined || timeline.crews.start[first]! < timeline.crews.start[known]!))
        users.set(dates.step, first);
    }
  return users;
}

/** A step that begins for the goods after another that has been told to wait for them; undefined where it is the same. */
function userBehind(user: number | undefined, first: number, { steps, crews }: Timeline): string | undefined {
  return user === undefined || user === first || crews.start[user]! <= crews.start[first]! ? undefined : steps.list[user]!.name;
}

/** What has no lead comes when the step is done that it waits for. */
function whatThen(delivery: Delivery, step: number, { links, steps, crews, timing }: Timeline) {
  const { lead, ordered } = delivery.given;
  if (ordered !== undefined) return { kind: 'ordered' } as const;
  if (lead !== undefined) return { kind: 'order' } as const;
  const calendar = timing.calendars[timing.planCalendar]!;
  const last = links.find(
    ({ from, to, kind, lag, clock }) =>
      to === step && kind === FINISH_START && afterFinish(calendar, crews.finish[from]!, lag, clock) >= crews.start[step]!,
  );
  return last === undefined ? ({ kind: 'order' } as const) : ({ kind: 'after', step: steps.list[last.from]!.name } as const);
}
