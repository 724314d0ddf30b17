// PERT by its published formulas: a step takes (a + 4m + b) ÷ 6 on average with a standard deviation of (b − a) ÷ 6, the longest
// chain of average lengths says when the plan is done, and the variances along it add up (Malcolm, Roseboom, Clark and Fazar,
// Operations Research 7, 1959). It looks at one chain alone, so where several are nearly as long it promises too much; and it
// knows neither weather nor visits that fail.
import type { Model } from '#model/resolve';
import { workBetween } from '../calendar.ts';
import { crewPass } from '../crews.ts';
import { waiting } from '../links.ts';
import type { Timeline } from '../timeline.ts';
import { WORKING } from '../waits.ts';
import { crewSteps, holders, roomForHolders } from './holders.ts';
import { type Range, type Uncertain, uncertainOf } from './ranges.ts';
import { runsOf } from './runs.ts';
import { normalBelow } from './shapes.ts';

export interface Pert {
  /** When the plan is done on average, by its longest chain: a moment. */
  readonly end: number;
  /** Of the longest chain, in working minutes; of several as long the one that scatters most. */
  readonly deviation: number;
  /** Steps of that chain, the first first. */
  readonly chain: readonly number[];
  readonly ranges: readonly Range[];
  /** The same for each step: when it is done on average, and how far that scatters, in working minutes. */
  readonly finish: Float64Array;
  readonly deviations: Float64Array;
}

export function expectedLength({ least, likely, most }: Range): number {
  return (least + 4 * likely + most) / 6;
}

export function deviationOf({ least, most }: Range): number {
  return (most - least) / 6;
}

const kept = new WeakMap<Timeline, Pert>();

/** Undefined where everything is certain. Worked out when somebody asks, once for each timeline. */
export function pertOf(model: Model, timeline: Timeline): Pert | undefined {
  let known = kept.get(timeline);
  if (known === undefined) {
    const uncertain = uncertainOf(model, timeline);
    if (uncertain.ranges.length === 0) return undefined;
    kept.set(timeline, (known = pert(model, timeline, uncertain)));
  }
  return known;
}

function pert(model: Model, timeline: Timeline, uncertain: Uncertain): Pert {
  const { taken, byLinks } = timeline;
  const runs = runsOf(model, timeline, uncertain, 0, 'beta-pert');
  runs.set(expectedLength);
  const { network, timing } = runs;
  const dates = crewPass(network, timing, taken, byLinks.lateFinish);
  const variance = new Float64Array(network.count);
  for (const range of uncertain.ranges) {
    const scaled = deviationOf(range) * partLeft(range, timeline) * clockShare(range, timeline);
    variance[range.step] = scaled * scaled;
  }
  // Each step after all that hold it: the greatest variance of the chains that lead to it, and through whom.
  const own = crewSteps(taken, network.count);
  const into = new Int32Array(roomForHolders(network, own));
  const order = Array.from(dates.sequence).sort(
    (a, b) => dates.start[a]! - dates.start[b]! || dates.finish[a]! - dates.finish[b]!,
  );
  const sums = new Float64Array(network.count);
  const through = new Int32Array(network.count).fill(-1);
  const placed = new Uint8Array(network.count);
  for (const step of order) {
    const count = holders(network, timing, own, dates, step, into);
    for (let at = 0; at < count; at++) {
      const from = into[at]!;
      if (placed[from] === 1 && (through[step]! < 0 || sums[from]! > sums[through[step]!]!)) through[step] = from;
    }
    sums[step] = variance[step]! + (through[step]! < 0 ? 0 : sums[through[step]!]!);
    placed[step] = 1;
  }
  let last = -1;
  for (const step of order) if (dates.finish[step] === dates.end && (last < 0 || sums[step]! >= sums[last]!)) last = step;
  const chain: number[] = [];
  for (let step = last; step >= 0; step = through[step]!) chain.unshift(step);
  const deviations = sums.map(Math.sqrt);
  const deviation = last < 0 ? 0 : deviations[last]!;
  return { end: dates.end, deviation, chain, ranges: uncertain.ranges, finish: dates.finish, deviations };
}

/** Of begun work only the rest scatters. */
function partLeft({ step, what, likely }: Range, { timing }: Timeline): number {
  return what !== 'length' || likely === 0 ? 1 : timing.durations[step]! / likely;
}

/** Working minutes to a minute that a lead or a day counts: of seven days so many are worked. */
function clockShare({ step, what }: Range, { steps, timing }: Timeline): number {
  const { given } = steps.list[step]!;
  const isWorked = what === 'lead' && 'lead' in given && given.lead !== undefined && waiting(given.lead.value).clock === WORKING;
  if (what === 'length' || isWorked) return 1;
  return workBetween(timing.calendars[timing.planCalendar]!, timing.start, timing.start + YEAR) / YEAR;
}

const YEAR = 364 * 1440;

/** The chance to be done by a moment, if the end is normally distributed. */
export function chanceBy({ end, deviation }: Pert, moment: number, { timing }: Timeline): number {
  const spare = workBetween(timing.calendars[timing.planCalendar]!, end, moment);
  if (deviation === 0) return moment >= end ? 1 : 0;
  return normalBelow(spare / deviation);
}
