// Which given date leaves a step less than no time: found by following, from step to step, what hangs on it, to one that has a
// deadline or a day on which it must start. Asked for when somebody looks, never in a pass.
import type { Timeline } from './timeline.ts';

export interface LateBound {
  readonly step: number;
  readonly kind: 'start' | 'finish';
}

/** The tightest of them, the nearest first; undefined for a step that has time to spare. */
export function boundOf(step: number, timeline: Timeline): LateBound | undefined {
  const { floats, network, crews } = timeline;
  if (!(floats.totalFloat[step]! < 0)) return undefined;
  const next = new Map<number, number[]>();
  for (let at = 0; at < crews.handOverFrom.length; at++) {
    const from = crews.handOverFrom[at]!;
    next.set(from, [...(next.get(from) ?? []), crews.handOverTo[at]!]);
  }
  const met = new Set([step]);
  let best: LateBound | undefined;
  for (const at of met) {
    const bound = ownBound(at, timeline);
    if (bound !== undefined && (best === undefined || floats.totalFloat[at]! < floats.totalFloat[best.step]!)) best = bound;
    // A set is walked through to what is added on the way.
    for (let slot = network.outgoingStart[at]!; slot < network.outgoingStart[at + 1]!; slot++) {
      const to = network.linkTo[network.outgoing[slot]!]!;
      if (floats.totalFloat[to]! < 0) met.add(to);
    }
    for (const to of next.get(at) ?? []) if (floats.totalFloat[to]! < 0) met.add(to);
  }
  return best;
}

function ownBound(step: number, { timing, floats, crews }: Timeline): LateBound | undefined {
  if (!(floats.totalFloat[step]! < 0)) return undefined;
  if (crews.start[step]! > (timing.startBy?.[step] ?? Number.POSITIVE_INFINITY)) return { step, kind: 'start' };
  if (crews.finish[step]! > (timing.deadline?.[step] ?? Number.POSITIVE_INFINITY)) return { step, kind: 'finish' };
  return undefined;
}
