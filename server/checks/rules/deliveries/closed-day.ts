// A delivery on a day when nobody works on site: the truck stands before a locked gate.
import { weekday, weekdayName } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import { deliveryDates, isWorked, readsOfDeliveries } from '#schedule/delivery-dates';
import type { Check } from '../../check.ts';
import { dayText } from '../../show.ts';

export const closed = findingSort<[delivery: string, day: string, next: string]>({
  code: 'deliveries/closed-day',
  severity: 'note',
  say: (delivery, day, next) =>
    `"${delivery}" comes on ${day}, when nobody works on site: no one takes it in, looks it over or covers it, and a second trip is charged. Ask for ${next}, or write that day as "not before".`,
});

export const closedDay: Check = {
  code: 'deliveries/closed-day',
  about:
    'A delivery is taken in by somebody: counted, looked over, put under cover. On a Sunday or a holiday nobody is there. It is a warning where the work goes on the next working day and cannot wait for a second trip.',
  wrong: `plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier yard
trade framing crew of 2
delivery lumber brings stud from yard, lead 1 week, ordered 2027-03-06
task walls takes 4d by framing after lumber
`,
  right: `plan p
  start 2027-03-01
  workweek mon-fri 8h
supplier yard
trade framing crew of 2
delivery lumber brings stud from yard, lead 1 week, ordered 2027-03-05
task walls takes 4d by framing after lumber
`,
  reads: ({ timeline }) => readsOfDeliveries(timeline),
  run: ({ timeline }) => {
    if (!timeline.dated) return [];
    return deliveryDates(timeline).flatMap(({ delivery, comes, came, wanted }): readonly Finding[] => {
      if (came || isWorked(comes, timeline.timing)) return [];
      let next = comes + 1;
      while (!isWorked(next, timeline.timing) && next < comes + MOST_CLOSED) next += 1;
      const day = (of: number): string => `${weekdayName(weekday(of))}, ${dayText(of, timeline)}`;
      const found = finding(closed, delivery.place, delivery.name, day(comes), day(next));
      return [wanted !== undefined && wanted <= next ? { ...found, severity: 'warning' } : found];
    });
  },
};

/** No site is closed longer on end. */
const MOST_CLOSED = 60;
