// Where two plans ask for the same crew, machine or firm on the same days.
import { type Booking, bookingsOf, type House, type Shared, sharedKey, takenBy, workedDays } from './bookings.ts';
import { capacityOf } from './limits.ts';
import type { Timeline } from './timeline.ts';

export interface Clash {
  /** The step here. */
  readonly step: number;
  /** The trade, machine or firm, and how many of it there are. */
  readonly limit: Shared;
  readonly crews: number;
  /** Steps of other plans that have the crew on some of the same days, in the order of their plans. */
  readonly others: readonly { readonly house: House; readonly booking: Booking }[];
  /** Days on which more crews are asked for than there are, in order. */
  readonly days: readonly number[];
}

/** One for each step, and each thing it takes, that shares its days with another plan and of which there are too few; in plan order. */
export function clashes(timeline: Timeline, houses: readonly House[]): readonly Clash[] {
  const known = new Set(houses.flatMap(({ bookings }) => [...bookings.keys()]));
  if (known.size === 0) return [];
  const own = bookingsOf(timeline, (limit) => known.has(sharedKey(limit)));
  const found: Clash[] = [];
  for (const [key, list] of own) {
    const others = houses.flatMap((house) => (house.bookings.get(key) ?? []).map((booking) => ({ house, booking })));
    for (const booking of list) {
      const step = timeline.steps.byName.get(booking.step)!;
      const limit = takenBy(step, timeline).find((each) => sharedKey(each) === key)!;
      const crews = capacityOf(limit);
      const beside = others.filter((other) => overlaps(other.booking, booking));
      if (beside.length === 0) continue;
      const all = [...list.filter((each) => overlaps(each, booking)), ...beside.map((other) => other.booking)];
      const stretches = tooMany(
        all,
        beside.map((other) => other.booking),
        booking,
        crews,
      );
      const calendar = timeline.timing.calendars[timeline.timing.calendarOf[step]!]!;
      const days = [...new Set(stretches.flatMap(({ start, finish }) => workedDays(start, finish, calendar)))];
      if (days.length === 0) continue;
      const there = beside.filter((other) => stretches.some((each) => overlaps(each, other.booking)));
      found.push({ step, limit, crews, others: there, days });
    }
  }
  return found.sort((a, b) => a.step - b.step);
}

type Span = Pick<Booking, 'start' | 'finish'>;

function overlaps(a: Span, b: Span): boolean {
  return a.start < b.finish && b.start < a.finish;
}

/** Within a span, where more are asked for than there are and somebody else is among them. */
function tooMany(all: readonly Span[], beside: readonly Span[], within: Span, crews: number): readonly Span[] {
  const cuts = [...new Set([within.start, within.finish, ...all.flatMap(({ start, finish }) => [start, finish])])]
    .filter((moment) => moment >= within.start && moment <= within.finish)
    .sort((a, b) => a - b);
  return cuts.slice(1).flatMap((finish, nth) => {
    const stretch = { start: cuts[nth]!, finish };
    const asked = all.filter((each) => overlaps(each, stretch)).length;
    return asked > crews && beside.some((each) => overlaps(each, stretch)) ? [stretch] : [];
  });
}
