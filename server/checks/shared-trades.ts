// A crew that two plans ask for on the same days: told in each of them while both are looked at. Each plan's own dates
// know only its own steps.
import { dayAndMonth } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { House } from '#schedule/bookings';
import { clashes } from '#schedule/contention';
import type { Timeline } from '#schedule/timeline';
import { keptWhile } from './kept.ts';
import { counted } from './show.ts';

export const twoHouses = findingSort<
  [trade: string, step: string, others: readonly string[], crews: number, days: number, first: string, last: string]
>({
  code: 'work/two-houses',
  severity: 'warning',
  say: (trade, step, others, crews, days, first, last) =>
    `${trade} ${first === last ? `on ${first}` : `from ${first} to ${last}`}: "${step}" here and ${others.join(' and ')} ask for ${crews === 1 ? 'its one crew' : `more than its ${crews} crews`} on ${days === 1 ? 'the same day' : `the same ${counted(days, 'day')}`}. One of the houses waits, and its dates do not say so. Move one ("not before"), or find another crew and say how many there are ("crews ${crews + 1}").`,
});

/** `houses`: the other plans that are looked at, in the order of their roots. */
export function sharedTradeFindings(timeline: Timeline, houses: readonly House[]): readonly Finding[] {
  return houses.length === 0 ? NONE : found(timeline, houses);
}

const NONE: readonly Finding[] = [];

const found = keptWhile(
  (timeline: Timeline, houses: readonly House[]) =>
    [timeline.crews, houses, timeline.steps, timeline.trades, timeline.timing, timeline.progress] as const,
  (timeline: Timeline, houses: readonly House[]): readonly Finding[] =>
    clashes(timeline, houses).map(({ step, crews, others, days }) => {
      const own = timeline.steps.list[step]!;
      const told = [...new Set(others.map(({ house }) => house))].map((house) => {
        const steps = others.filter((each) => each.house === house).map(({ booking }) => `"${booking.step}"`);
        return `${steps.join(', ')} of ${house.label}`;
      });
      const [first, last] = [days[0]!, days[days.length - 1]!].map(dayAndMonth) as [string, string];
      return finding(twoHouses, own.place, timeline.trades[step]!.label, own.name, told, crews, days.length, first, last);
    }),
);
