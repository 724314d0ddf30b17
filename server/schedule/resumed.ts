// Work begun before what it follows was done. Two practices are common: what is left of it waits for that, or continues.
// Waiting is the rule unless the plan says otherwise: it never promises a date that hangs on work which is still to do.
import type { Work } from '#kit/work';
import type { Crews } from './crews.ts';
import { linkBound } from './link-bounds.ts';
import { FINISH_START, type Network, START_START } from './network.ts';
import { type StepDates, stepDates } from './step-dates.ts';
import { hasFinished, hasStarted, type Timing } from './timing.ts';

export interface Resumed {
  /** The dates if all that has begun continues. */
  readonly continued: StepDates;
  readonly dates: StepDates;
  /** With what waits not going on before its time. */
  readonly timing: Timing;
}

/** Waiting may put off what others wait for; in a network without loops that comes to rest in a few rounds. */
const MOST_ROUNDS = 32;

export function resumedDates(
  network: Network,
  timing: Timing,
  taken: Crews,
  waits: boolean,
  before: Resumed | undefined,
  work: Work,
): Resumed {
  const continued = stepDates(network, timing, taken, before?.continued, work);
  if (!waits || timing.fixedStart === undefined) return { continued, dates: continued, timing };
  if (before?.continued === continued && before.timing !== timing) return before;
  let [dates, held] = [continued, timing];
  if (!holdsBegun(network, timing)) return { continued, dates, timing };
  held = { ...timing, begunWaits: true };
  dates = stepDates(network, held, taken, undefined, work);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const notBefore = putOff(network, held, dates);
    if (notBefore === undefined) break;
    held = { ...held, notBefore };
    dates = stepDates(network, held, taken, undefined, work);
  }
  return { continued, dates, timing: held };
}

/** Whether anything that has begun follows something that is still to do. */
function holdsBegun(network: Network, timing: Timing): boolean {
  for (let task = 0; task < network.count; task++) {
    if (!isUnderWay(timing, task)) continue;
    for (let slot = network.incomingStart[task]!; slot < network.incomingStart[task + 1]!; slot++)
      if (!hasFinished(timing, network.linkFrom[network.incoming[slot]!]!)) return true;
  }
  return false;
}

/** The moments from which begun work may go on, where one of them moves. */
function putOff(network: Network, timing: Timing, { crews }: StepDates): Float64Array | undefined {
  let notBefore: Float64Array | undefined;
  for (let task = 0; task < network.count; task++) {
    if (!isUnderWay(timing, task)) continue;
    const bound = goesOnFrom(network, timing, task, crews);
    if (bound > (notBefore ?? timing.notBefore)[task]!) {
      notBefore ??= timing.notBefore.slice();
      notBefore[task] = bound;
    }
  }
  return notBefore;
}

/** Begun, not done, and something of it left. */
export function isUnderWay(timing: Timing, task: number): boolean {
  return hasStarted(timing, task) && !hasFinished(timing, task) && timing.durations[task]! > 0;
}

/** The moment by which all is done, or has begun, that a step's start waits for and that is still to do; else -Infinity. */
export function goesOnFrom(
  network: Network,
  timing: Timing,
  task: number,
  dates: { readonly start: Float64Array; readonly finish: Float64Array },
): number {
  const { incomingStart, incoming, linkFrom, linkKind, linkShare } = network;
  let bound = Number.NEGATIVE_INFINITY;
  for (let slot = incomingStart[task]!; slot < incomingStart[task + 1]!; slot++) {
    const link = incoming[slot]!;
    const from = linkFrom[link]!;
    const kind = linkKind[link]!;
    if (kind !== FINISH_START && kind !== START_START) continue;
    const isOver = kind === FINISH_START || linkShare[link]! > 0 ? hasFinished(timing, from) : hasStarted(timing, from);
    if (!isOver) bound = Math.max(bound, linkBound(network, timing, link, dates));
  }
  return bound;
}
