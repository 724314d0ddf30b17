// What a better schedule means for a plan: its dates, and the links that make the instant schedule just as good once they
// are written down. The plan itself is not changed.
import { type CrewDates, crewPass } from '../crews.ts';
import { criticalPath } from '../critical-path.ts';
import { handOvers } from '../hand-overs.ts';
import { buildNetwork, FINISH_START, type Link } from '../network.ts';
import type { Timeline } from '../timeline.ts';
import { WORKING } from '../waits.ts';
import type { PlanParts } from './calendar-pass.ts';
import { planBound } from './plan-bound.ts';
import { type Progress, search } from './search.ts';
import { searchedPlan } from './searched-plan.ts';

/** `to` waits for `from`, from which it takes over its crew. */
export interface ProposedLink {
  readonly from: number;
  readonly to: number;
}

export interface Proposal {
  readonly seed: number;
  /** Passes made. */
  readonly schedules: number;
  /** Moments: the end as the plan stands, the best end found, and the one that nothing can be before. */
  readonly before: number;
  readonly end: number;
  readonly lowerBound: number;
  readonly start: Float64Array;
  readonly finish: Float64Array;
  /** Written down, they give this end; undefined where links alone do not hold the order. */
  readonly links: readonly ProposedLink[] | undefined;
}

export interface ImproveLimits {
  readonly schedules: number;
  readonly seed: number;
  /** Ends as moments. */
  readonly report?: (progress: Progress) => void;
}

export function improve(timeline: Timeline, { schedules, seed, report }: ImproveLimits): Proposal {
  const { network, timing, taken, crews } = timeline;
  const origin = timing.start;
  const found = search(searchedPlan(partsOf(timeline)), {
    schedules,
    seed,
    report: (progress) => {
      report?.({ ...progress, end: progress.end + origin, lowerBound: progress.lowerBound + origin });
      return true;
    },
  });
  const end = found.end + origin;
  const moments = (from: number): Float64Array =>
    Float64Array.from(found.starts.subarray(from, from + network.count), (minutes) => minutes + origin);
  const better = end < crews.end;
  const [start, finish] = better ? [moments(0), moments(network.count)] : [crews.start, crews.finish];
  const reached = Math.min(end, crews.end);
  const lower = planBound({ network, timing, crews: taken }, reached);
  return proposalOf(timeline, { seed, schedules: found.schedules, end: reached, lowerBound: lower, start, finish });
}

/** A schedule for a plan, and the links that bring it about. */
export function proposalOf(timeline: Timeline, found: Omit<Proposal, 'before' | 'links'>): Proposal {
  const { end, start, finish } = found;
  const before = timeline.crews.end;
  return { ...found, before, links: end < before ? linksFor(timeline, start, finish, end) : [] };
}

export function partsOf({ network, timing, taken }: Timeline): PlanParts {
  return { network, timing, crews: taken };
}

/** The fewest hand-overs, one by one, without which the instant schedule would not reach `end`. */
function linksFor(
  timeline: Timeline,
  start: Float64Array,
  finish: Float64Array,
  end: number,
): readonly ProposedLink[] | undefined {
  const { network, timing, taken, crews } = timeline;
  const sequence = network.order.slice().sort((a, b) => start[a]! - start[b]! || finish[a]! - finish[b]!);
  const given = handOvers(network, timing, taken, { start, finish, ready: start, sequence });
  const all = Array.from(given.handOverFrom, (from, at) => ({ from, to: given.handOverTo[at]! }));
  // Where the steps change their order stands first: often that is all.
  const turned = all.filter(({ from, to }) => crews.start[from]! >= crews.start[to]!);
  let needed = [turned, all].find((links) => endWith(timeline, links) <= end);
  for (const link of needed ?? []) {
    const without: readonly ProposedLink[] = needed!.filter((other) => other !== link);
    if (endWith(timeline, without) <= end) needed = [...without];
  }
  return needed;
}

/** The end of the instant schedule with more links. */
export function endWith({ network, links, timing, taken }: Timeline, more: readonly ProposedLink[]): number {
  const added = more.map((link): Link => ({ ...link, kind: FINISH_START, lag: 0, clock: WORKING }));
  const longer = buildNetwork(network.count, [...links, ...added]);
  if (longer.loops.length > network.loops.length) return Number.POSITIVE_INFINITY;
  const dates: CrewDates = crewPass(longer, timing, taken, criticalPath(longer, timing).lateFinish);
  return dates.end;
}
