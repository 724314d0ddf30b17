// What follows from what is recorded of others: a step that stands from one to another began with the first and was done with
// the last, and a milestone all before which is done is reached by the day the diary stands at.
import { type Calendar, previousWork, retreat } from './calendar.ts';
import type { Network } from './network.ts';
import { nextMorning, type Progress } from './progress.ts';
import { isStanding, standsFrom } from './step-windows.ts';
import type { Steps } from './steps.ts';

/** By step, as they are filled: see Timing. */
export interface RecordedTimes {
  readonly lengths: Int32Array;
  readonly fixedStart: Float64Array;
  readonly fixedFinish: Float64Array;
  readonly notBefore: Float64Array;
  readonly calendarOf: Int32Array;
  readonly calendars: readonly Calendar[];
}

/** Where the diary says nothing else of it, what stands for others has begun and is done when they have. */
export function followWhatTheyStandFor(steps: Steps, network: Network, { asOf }: Progress, times: RecordedTimes): void {
  if (asOf === undefined) return;
  const { fixedStart, fixedFinish } = times;
  for (const at of network.order) {
    const stands = isStanding(steps.list[at]!) ? standsFrom(steps.list[at]!, steps) : undefined;
    const first = stands?.from[0];
    if (stands === undefined || first === undefined) continue;
    if (Number.isNaN(fixedStart[at]!)) fixedStart[at] = beganAt(first, times);
    const ends = stands.to.map((to) => fixedFinish[to]!);
    if (!Number.isNaN(fixedFinish[at]!) || Number.isNaN(fixedStart[at]!) || ends.length === 0 || ends.some(Number.isNaN))
      continue;
    fixedFinish[at] = Math.max(fixedStart[at]!, ...ends);
  }
}

function beganAt(step: number, { lengths, fixedStart, fixedFinish, calendarOf, calendars }: RecordedTimes): number {
  const [began, ended] = [fixedStart[step]!, fixedFinish[step]!];
  return Number.isNaN(began) && !Number.isNaN(ended)
    ? retreat(calendars[calendarOf[step]!]!, ended, Math.max(0, lengths[step]!))
    : began;
}

/** A milestone without a record of its own, that nothing but the diary's day holds, falls on that day where all before it is done. */
export function reachMilestones(steps: Steps, network: Network, { asOf }: Progress, times: RecordedTimes): void {
  if (asOf === undefined) return;
  const { lengths, fixedStart, fixedFinish, notBefore, calendars, calendarOf } = times;
  const reached = new Uint8Array(network.count);
  for (const at of network.order) {
    const isBegun = !Number.isNaN(fixedStart[at]!);
    if (!Number.isNaN(fixedFinish[at]!) || (isBegun && lengths[at] === 0 && !isStanding(steps.list[at]!))) {
      reached[at] = 1;
      continue;
    }
    const [from, to] = [network.incomingStart[at]!, network.incomingStart[at + 1]!];
    if (isBegun || steps.list[at]!.kind !== 'milestone' || from === to || notBefore[at] !== nextMorning(asOf)) continue;
    let isReached = true;
    for (let slot = from; slot < to && isReached; slot++) isReached = reached[network.linkFrom[network.incoming[slot]!]!] === 1;
    if (!isReached) continue;
    notBefore[at] = previousWork(calendars[calendarOf[at]!]!, nextMorning(asOf));
    reached[at] = 1;
  }
}
