// The plan run many times over, each time with other lengths, leads, visits and weather: the same calendars, links and crews,
// by the same pass that gives the dates shown. The seed says all that is thrown, so the same plan gives the same figures on
// every machine. Lengths are drawn each for itself: what would slow everything at once is not in it.
import { dayOfFinish } from '#kit/dates';
import type { Model } from '#model/resolve';
import { crewPass } from '../crews.ts';
import type { Timeline } from '../timeline.ts';
import { hasFinished } from '../timing.ts';
import { crewSteps, holders, roomForHolders } from './holders.ts';
import { type Uncertain, uncertainOf } from './ranges.ts';
import { type Runs, runsOf } from './runs.ts';
import type { Shape } from './shapes.ts';

export interface Asked {
  readonly runs: number;
  readonly seed: number;
  readonly shape: Shape;
}

export interface Simulation extends Asked, Uncertain {
  /** Whether days of outside work were lost by chance. */
  readonly weather: boolean;
  /** Moments at which the plan was done, the earliest first. */
  readonly ends: Float64Array;
  /** The same for milestones and deadlines that are still ahead. */
  readonly watched: readonly { readonly step: number; readonly ends: Float64Array }[];
  /** By step: the share of runs in which it stood on a chain that set the end, 0 to 1. */
  readonly onChain: Float64Array;
}

export function simulate(model: Model, timeline: Timeline, asked: Asked): Simulation {
  const uncertain = uncertainOf(model, timeline);
  const first = Math.max(timeline.start, (timeline.progress.asOf ?? timeline.start - 1) + 1);
  const last = lastDayOf(model, timeline, uncertain);
  const runs = runsOf(model, timeline, uncertain, asked.seed, asked.shape, { first, last });
  const watched = timeline.steps.list.flatMap((step, number) =>
    !hasFinished(timeline.timing, number) && (step.kind === 'milestone' || step.given.deadline !== undefined)
      ? [{ step: number, ends: new Float64Array(asked.runs) }]
      : [],
  );
  const ends = new Float64Array(asked.runs);
  const counts = new Uint32Array(timeline.steps.list.length);
  const follow = follower(runs, timeline, counts);
  for (let run = 0; run < asked.runs; run++) {
    runs.turn(run);
    const dates = crewPass(runs.network, runs.timing, timeline.taken, timeline.byLinks.lateFinish);
    ends[run] = dates.end;
    for (const { step, ends: own } of watched) own[run] = dates.finish[step]!;
    follow(dates, run);
  }
  ends.sort();
  for (const { ends: own } of watched) own.sort();
  return {
    ...asked,
    ...uncertain,
    weather: runs.timing.calendars !== timeline.timing.calendars,
    ends,
    watched,
    onChain: Float64Array.from(counts, (count) => count / Math.max(1, asked.runs)),
  };
}

/** Weather is laid out as far as the plan reaches when everything takes longest, and a quarter more. */
function lastDayOf(model: Model, timeline: Timeline, uncertain: Uncertain): number {
  const longest = runsOf(model, timeline, uncertain, 0, 'triangular');
  longest.set(({ most }) => most);
  const { end } = crewPass(longest.network, longest.timing, timeline.taken, timeline.byLinks.lateFinish);
  const days = dayOfFinish(end) - timeline.start;
  return timeline.start + Math.min(days + Math.ceil(days / 4) + 30, MOST_DAYS);
}

const MOST_DAYS = 3650;

/** Marks, for each run, the steps on the chains that set the end. */
function follower(
  { network, timing }: Runs,
  { taken }: Timeline,
  counts: Uint32Array,
): (dates: ReturnType<typeof crewPass>, run: number) => void {
  const own = crewSteps(taken, network.count);
  const into = new Int32Array(roomForHolders(network, own));
  const seen = new Int32Array(network.count).fill(-1);
  const stack = new Int32Array(network.count);
  return (dates, run) => {
    let height = 0;
    for (let step = 0; step < network.count; step++) {
      if (dates.finish[step] !== dates.end) continue;
      seen[step] = run;
      stack[height++] = step;
    }
    while (height > 0) {
      const step = stack[--height]!;
      counts[step]!++;
      const count = holders(network, timing, own, dates, step, into);
      for (let at = 0; at < count; at++) {
        const from = into[at]!;
        if (seen[from] === run) continue;
        seen[from] = run;
        stack[height++] = from;
      }
    }
  };
}

/** The moment by which a share of the runs was done: the least that many ends do not pass. */
export function doneIn(ends: Float64Array, share: number): number {
  return ends[Math.max(0, Math.min(ends.length - 1, Math.ceil(share * ends.length - 1e-9) - 1))]!;
}

/** The share of the runs that was done by a moment. */
export function chanceOf(ends: Float64Array, moment: number): number {
  let [low, high] = [0, ends.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ends[middle]! <= moment) low = middle + 1;
    else high = middle;
  }
  return ends.length === 0 ? 0 : low / ends.length;
}
