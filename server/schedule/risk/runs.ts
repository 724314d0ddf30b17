// One timing that is filled anew in each run: lengths, leads, failed visits and weather as they are drawn. Nothing is made
// while it runs; what is certain stays as it stands in the plan.
import { DAY_MINUTES } from '#kit/dates';
import type { Model } from '#model/resolve';
import type { Network } from '../network.ts';
import { arrival, comesAgain, orderableFrom } from '../step-times.ts';
import type { Timeline } from '../timeline.ts';
import type { Timing } from '../timing.ts';
import { drawOf, thingOf } from './draws.ts';
import type { Range, Uncertain } from './ranges.ts';
import { quantile, quantilesOf, type Shape } from './shapes.ts';
import { type Weather, weatherOf } from './weather.ts';

export interface Runs {
  readonly network: Network;
  readonly timing: Timing;
  /** Fills both for a run. */
  readonly turn: (run: number) => void;
  /** Fills both with one length for each range, without weather or failed visits. */
  readonly set: (length: (range: Range) => number) => void;
}

export interface Days {
  /** The days that have weather of their own; none where this is left out. */
  readonly first: number;
  readonly last: number;
}

export function runsOf(
  model: Model,
  timeline: Timeline,
  { ranges, visits }: Uncertain,
  seed: number,
  shape: Shape,
  days?: Days,
): Runs {
  const { steps, timing: given, links } = timeline;
  const durations = given.durations.slice();
  const notBefore = given.notBefore.slice();
  const failures = new Uint8Array(steps.list.length);
  const comes = new Float64Array(steps.list.length);
  const linkLag = timeline.network.linkLag.slice();
  for (const { step } of visits) comes[step] = comesAgain(steps.list[step]!);
  const weather: Weather | undefined = days === undefined ? undefined : weatherOf(model, timeline, seed, days.first, days.last);
  const timing: Timing = {
    ...given,
    durations,
    notBefore,
    failures,
    comesAgain: comes,
    ...(weather === undefined ? {} : { calendars: weather.calendars, calendarOf: weather.calendarOf }),
  };
  const things = ranges.map(({ step, what }) => thingOf(`${what} of ${steps.list[step]!.name}`));
  // Made when the first run is: PERT's formulas want none.
  let made: readonly Float64Array[] | undefined;
  const tables = (): readonly Float64Array[] =>
    (made ??= ranges.map(({ least, likely, most }) => quantilesOf(shape, (likely - least) / (most - least))));
  const calls = visits.map(({ step }) => thingOf(`visit ${steps.list[step]!.name}`));
  const measured = ranges.map(({ step, what }) =>
    what === 'length' ? [] : links.flatMap(({ to, words }, link) => (to === step && words === 'measured after' ? [link] : [])),
  );
  const plan = given.calendars[given.planCalendar]!;
  const ordered = (step: number): number => orderableFrom(step, timeline.start, timeline.progress);
  const soonest = ranges.map(({ step }) => {
    const delivery = steps.list[step]!;
    const arrives = delivery.kind === 'delivery' ? arrival(delivery, ordered(step), plan) : Number.NEGATIVE_INFINITY;
    return Math.max(floorOf(step, timeline), arrives);
  });
  const isLead = ranges.some(({ what }) => what === 'lead');

  const put = (at: number, value: number): void => {
    const { step, what, likely } = ranges[at]!;
    if (what === 'length') {
      // Of begun work the rest scatters as the whole does.
      durations[step] = Math.max(1, Math.round(likely > 0 ? given.durations[step]! * (value / likely) : value));
      return;
    }
    if (what === 'day') {
      const expected = Math.round(value / DAY_MINUTES) * DAY_MINUTES;
      const shown = given.notBefore[step]!;
      // Where something else holds it beyond the day that is likely, that goes on to.
      notBefore[step] = Math.max(expected, shown > likely ? shown : soonest[at]!);
      return;
    }
    const delivery = steps.list[step]!;
    if (delivery.kind !== 'delivery') return;
    const minutes = Math.round(value);
    for (const link of measured[at]!) linkLag[link] = minutes;
    notBefore[step] = Math.max(floorOf(step, timeline), arrival(delivery, ordered(step), plan, minutes));
  };
  return {
    network: isLead ? { ...timeline.network, linkLag } : timeline.network,
    timing,
    turn: (run) => {
      const shapes = tables();
      for (let at = 0; at < ranges.length; at++) {
        const { least, most } = ranges[at]!;
        put(at, least + (most - least) * quantile(shapes[at]!, drawOf(seed, run, things[at]!)));
      }
      for (let at = 0; at < visits.length; at++) {
        const { step, fails } = visits[at]!;
        let failed = 0;
        while (failed < MOST_VISITS && drawOf(seed, run, calls[at]! + failed) < fails) failed++;
        failures[step] = failed;
      }
      weather?.turn(run);
    },
    set: (length) => {
      for (let at = 0; at < ranges.length; at++) put(at, length(ranges[at]!));
      failures.fill(0);
    },
  };
}

const MOST_VISITS = 20;

/** Before this a delivery does not come, whatever its lead. */
function floorOf(step: number, { steps, progress }: Timeline): number {
  const given = steps.list[step]!.given['not before']?.value;
  const dated = given === undefined ? Number.NEGATIVE_INFINITY : given * DAY_MINUTES;
  return progress.asOf === undefined ? dated : Math.max(dated, (progress.asOf + 1) * DAY_MINUTES);
}
