// DOOR: model and take-off → the timeline: durations, links, dates by links alone and with crews as limits, floats.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Work } from '#kit/work';
import type { Model } from '#model/resolve';
import type { TakeOff } from '#takeoff/take-off';
import { type ClaimsMemory, claimLines, claimsMemory } from './claims.ts';
import { type Lengths, lengthsOf } from './lengths.ts';
import { type Limits, limitsOf } from './limits.ts';
import { type LinkSources, linkSources } from './link-sources.ts';
import { outOfOrder } from './out-of-order.ts';
import { type PlanNetwork, planNetwork } from './plan-network.ts';
import { keptProgress, type ProgressMemory } from './progress.ts';
import { type Resumed, resumedDates } from './resumed.ts';
import { rangeFindings } from './risk/ranges.ts';
import { stepTimes, type TimingMemory, timingMemory } from './step-times.ts';
import { type Steps, type StepsMemory, stepsOf } from './steps.ts';
import type { Timeline } from './timeline.ts';

/** A Monday to count from where a plan gives no start. */
const NO_START = 4;

export interface ScheduleMemory {
  readonly claims: ClaimsMemory;
  readonly times: TimingMemory;
  steps: StepsMemory | undefined;
  lengths: Lengths | undefined;
  progress: ProgressMemory | undefined;
  sources: LinkSources | undefined;
  network: PlanNetwork | undefined;
  crews: Limits | undefined;
  dates: Resumed | undefined;
}
export function scheduleMemory(): ScheduleMemory {
  return {
    claims: claimsMemory(),
    times: timingMemory(),
    steps: undefined,
    lengths: undefined,
    progress: undefined,
    sources: undefined,
    network: undefined,
    crews: undefined,
    dates: undefined,
  };
}

export const loop = findingSort<[names: readonly string[]]>({
  code: 'schedule/loop',
  severity: 'error',
  say: (names) =>
    `These steps wait for each other in a ring, so none can begin: ${[...names, names[0]].join(' → ')}. Remove one of the links.`,
});

/** `asOf` is a day, for the diary; the clock is never read. */
export function schedule(
  model: Model,
  takeOff: TakeOff,
  asOf: number | undefined,
  memory: ScheduleMemory,
  work: Work,
): { readonly value: Timeline; readonly findings: readonly Finding[] } {
  memory.steps = stepsOf(model, memory.steps);
  const { steps } = memory.steps;
  const claims = claimLines(steps.list, takeOff.byWork, memory.claims);
  const start = model.plan?.given.start?.value ?? NO_START;
  memory.lengths = lengthsOf(steps.list, claims.byStep, model, memory.lengths);
  const { trades, durations } = memory.lengths;
  memory.progress = keptProgress(model, steps, asOf, memory.progress);
  const { progress } = memory.progress;
  memory.sources = linkSources(claims, memory.claims.doers!, memory.sources);
  memory.network = planNetwork(steps, memory.sources, memory.network, work);
  const { links, network } = memory.network;
  const recorded = stepTimes(model, steps, memory.lengths, progress, start, network, memory.times);
  memory.crews = limitsOf(steps, trades, model, memory.crews);
  const waits = model.plan?.given['begun-early']?.value !== 'continues';
  memory.dates = resumedDates(network, recorded, memory.crews.crews, waits, memory.dates, work);
  const { timing, dates } = memory.dates;
  const { byLinks, crews, floats } = dates;
  const findings = memory.lengths.findings.slice();
  for (const ring of network.loops) findings.push(loopFinding(ring, steps));
  const value: Timeline = {
    steps,
    trades,
    durations,
    claims,
    links,
    network,
    timing,
    limits: memory.crews.list,
    byLinks,
    crews,
    taken: memory.crews.crews,
    get floats() {
      return floats();
    },
    progress,
    start,
    dated: model.plan?.given.start !== undefined,
    minutesPerDay: model.settings.minutesPerDay,
  };
  findings.push(...outOfOrder(value, waits), ...rangeFindings(model));
  return { value, findings };
}

function loopFinding(ring: readonly number[], steps: Steps): Finding {
  const members = ring.map((number) => steps.list[number]!);
  const made = finding(
    loop,
    members[0]!.place,
    members.map((step) => step.name),
  );
  return { ...made, related: members.slice(1).map((step) => ({ place: step.place, note: `"${step.name}" is in the ring` })) };
}
