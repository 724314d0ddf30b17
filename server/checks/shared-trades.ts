// A crew, a machine or a firm that two plans ask for on the same days: told in each of them while both are looked at. Each plan's own dates
// know only its own steps.
import { dayAndMonth } from '#kit/dates';
import { sameList } from '#kit/differing';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { House } from '#schedule/bookings';
import { type Clash, clashes } from '#schedule/contention';
import type { Timeline } from '#schedule/timeline';
import { keptWhile } from './kept.ts';
import { counted } from './show.ts';

interface Asked {
  readonly what: string;
  readonly isMachine: boolean;
  readonly step: string;
  readonly others: readonly string[];
  readonly crews: number;
  readonly days: number;
  readonly first: string;
  readonly last: string;
}

export const twoHouses = findingSort<[asked: Asked]>({
  code: 'work/two-houses',
  severity: 'warning',
  say: ({ what, isMachine, step, others, crews, days, first, last }) => {
    const [one, many] = isMachine
      ? ['the one there is', `more than the ${crews} there are`]
      : ['its one crew', `more than its ${crews} crews`];
    const more = isMachine
      ? `hire another and say how many there are ("${crews + 1} of them")`
      : `find another crew and say how many there are ("crews ${crews + 1}")`;
    return `${what} ${first === last ? `on ${first}` : `from ${first} to ${last}`}: "${step}" here and ${others.join(' and ')} ask for ${crews === 1 ? one : many} on ${days === 1 ? 'the same day' : `the same ${counted(days, 'day')}`}. One of the houses waits, and its dates do not say so. Move one ("not before"), or ${more}.`;
  },
});

/** `houses`: the other plans that are looked at, in the order of their roots. */
export function sharedTradeFindings(timeline: Timeline, houses: readonly House[]): readonly Finding[] {
  return houses.length === 0 ? NONE : found(timeline, houses);
}

const NONE: readonly Finding[] = [];

const found = keptWhile(
  (timeline: Timeline, houses: readonly House[]) =>
    [timeline.crews, houses, timeline.steps, timeline.limits, timeline.taken, timeline.timing, timeline.progress] as const,
  (timeline: Timeline, houses: readonly House[]): readonly Finding[] =>
    withoutRepeats(clashes(timeline, houses)).map(({ step, limit, crews, others, days }) => {
      const own = timeline.steps.list[step]!;
      const told = [...new Set(others.map(({ house }) => house))].map((house) => {
        const steps = others.filter((each) => each.house === house).map(({ booking }) => `"${booking.step}"`);
        return `${steps.join(', ')} of ${house.label}`;
      });
      const [first, last] = [days[0]!, days[days.length - 1]!].map(dayAndMonth) as [string, string];
      return finding(twoHouses, own.place, {
        what: limit.label,
        isMachine: limit.kind === 'machine',
        step: own.name,
        others: told,
        crews,
        days: days.length,
        first,
        last,
      });
    }),
);

/** A firm has the days of its trade: they are told once. */
function withoutRepeats(all: readonly Clash[]): readonly Clash[] {
  const isTold = (clash: Clash): boolean =>
    clash.limit.kind === 'firm' &&
    all.some(({ limit, step, days }) => limit.kind === 'trade' && step === clash.step && sameList(days, clash.days));
  return all.filter((clash) => !isTold(clash));
}
