// A plan with its calendars as something to search. Its schedules are told as starts and finishes of the steps, in minutes
// from the plan's start, in either direction.
import { edgeRows } from '#kit/graph';
import { crewPass } from '../crews.ts';
import { criticalPath } from '../critical-path.ts';
import { unplaced } from '../early-dates.ts';
import type { Network } from '../network.ts';
import { type PlanParts, placeBackward, placeForward } from './calendar-pass.ts';
import { type LinkRows, orderByRank } from './orders.ts';
import { planBound } from './plan-bound.ts';
import type { Searched } from './search.ts';

export function searchedPlan(parts: PlanParts): Searched {
  const { network, timing, crews } = parts;
  const { count } = network;
  const origin = timing.start;
  const path = criticalPath(network, timing);
  const placed = unplaced(count);
  const onward = linksOf(network, false);
  const back = linksOf(network, true);
  // Backward passes end where the first pass ended; how early they begin is how good they are.
  let anchor: number | undefined;
  const keep = (starts: Int32Array): void => {
    for (let step = 0; step < count; step++) {
      starts[step] = placed.start[step]! - origin;
      starts[count + step] = placed.finish[step]! - origin;
    }
  };
  return {
    width: 2 * count,
    forward: {
      links: onward,
      place: (order, starts) => {
        const end = placeForward(parts, order, placed);
        keep(starts);
        return end - origin;
      },
      meet: (starts, _, order, times) => {
        times.set(starts.subarray(0, count));
        orderByRank(onward, times, order);
      },
    },
    backward: {
      links: back,
      place: (order, starts) => {
        const first = placeBackward(parts, order, anchor ?? path.end, placed);
        keep(starts);
        return Math.max(0, (anchor ?? path.end) - first);
      },
      meet: (starts, _, order, times) => {
        const end = (anchor ?? path.end) - origin;
        for (let step = 0; step < count; step++) times[step] = end - starts[count + step]!;
        orderByRank(back, times, order);
      },
    },
    byRank: (rank, starts) => {
      const dates = crewPass(network, timing, crews, rank);
      placed.start.set(dates.start);
      placed.finish.set(dates.finish);
      keep(starts);
      anchor ??= dates.end;
      return dates.end - origin;
    },
    latest: path.lateFinish.map((moment) => moment - origin),
    bound: (within) => (within === undefined ? path.end : planBound(parts, within + origin)) - origin,
  };
}

export function forwardLinks(network: Network): LinkRows {
  return linksOf(network, false);
}

/** Links in time forward, or backward. */
function linksOf({ count, linkFrom, linkTo, incoming }: Network, backward: boolean): LinkRows {
  const kept = new Uint8Array(linkFrom.length).fill(1);
  for (const link of incoming) kept[link] = 0;
  const [from, to] = backward ? [linkTo, linkFrom] : [linkFrom, linkTo];
  const before = edgeRows(count, to, kept);
  const after = edgeRows(count, from, kept);
  return {
    count,
    beforeStart: before.starts,
    before: before.items.map((link) => from[link]!),
    afterStart: after.starts,
    after: after.items.map((link) => to[link]!),
  };
}
