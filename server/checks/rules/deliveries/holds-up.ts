// A lead longer than the work has to spare: a step could begin, and waits for its goods alone.
import { finding, findingSort } from '#kit/finding';
import { workBetween } from '#schedule/calendar';
import { type DeliveryDates, deliveryDates, readsOfDeliveries } from '#schedule/delivery-dates';
import type { PlanLink } from '#schedule/links';
import { FINISH_START } from '#schedule/network';
import type { Timeline } from '#schedule/timeline';
import { afterFinish } from '#schedule/waits';
import type { Check } from '../../check.ts';
import { counted, dayText, finishText } from '../../show.ts';

export const held = findingSort<[delivery: string, step: string, days: number, ready: string, comes: string, ordered: boolean]>({
  code: 'deliveries/holds-up',
  severity: 'note',
  say: (delivery, step, days, ready, comes, ordered) =>
    `"${step}" waits ${counted(days, 'working day')} for "${delivery}" alone: all else that it waits for is done and its crew is free on ${ready}, and the goods come on ${comes}. ${ordered ? 'Ask whether a part can come sooner, and what can be built meanwhile' : 'Measure and order sooner, take what has a shorter lead, or plan other work between'}.`,
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
  reads: ({ timeline }) => [...readsOfDeliveries(timeline), timeline.trades],
  run: ({ timeline }) => {
    const deliveries = deliveryDates(timeline);
    const waits = linksTo(deliveries, timeline);
    return deliveries.flatMap(({ delivery, step, came, comes, first }) => {
      if (came || first === undefined) return [];
      const { timing, crews, minutesPerDay } = timeline;
      const arrives = Math.min(crews.finish[step]!, crews.start[first]!);
      const waited = (since: number): number =>
        Math.floor(workBetween(timing.calendars[timing.planCalendar]!, since, arrives) / minutesPerDay + 1e-9);
      const others = readyWithout(step, first, waits.get(first) ?? [], timeline);
      if (waited(others) < 1) return [];
      const ready = crewFree(first, others, timeline);
      const days = waited(ready);
      if (days < 1) return [];
      return [
        finding(
          held,
          delivery.place,
          delivery.name,
          timeline.steps.list[first]!.name,
          days,
          finishText(ready, timeline),
          dayText(comes, timeline),
          delivery.given.ordered !== undefined,
        ),
      ];
    });
  },
};

/** What the steps wait for that first need a delivery. */
function linksTo(deliveries: readonly DeliveryDates[], { links }: Timeline): ReadonlyMap<number, readonly PlanLink[]> {
  const waits = new Map<number, PlanLink[]>();
  for (const { first } of deliveries) if (first !== undefined) waits.set(first, []);
  for (const link of links) if (link.kind === FINISH_START) waits.get(link.to)?.push(link);
  return waits;
}

/** When everything that a step waits for is done, but for one. */
function readyWithout(without: number, step: number, links: readonly PlanLink[], { timing, crews, start }: Timeline): number {
  const calendar = timing.calendars[timing.planCalendar]!;
  let ready = Math.max(timing.start, timing.notBefore[step]!, start);
  for (const link of links)
    if (link.from !== without) ready = Math.max(ready, afterFinish(calendar, crews.finish[link.from]!, link.lag, link.clock));
  return ready;
}

/** When whoever does a step has done what they begin before it: until then nobody waits for goods. */
function crewFree(step: number, ready: number, { trades, crews }: Timeline): number {
  const trade = trades[step];
  if (trade === undefined) return ready;
  let free = ready;
  for (let other = 0; other < trades.length; other++)
    if (other !== step && trades[other] === trade && crews.start[other]! < crews.start[step]!)
      free = Math.max(free, Math.min(crews.finish[other]!, crews.start[step]!));
  return free;
}
