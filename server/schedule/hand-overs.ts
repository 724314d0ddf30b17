// From which step each crew comes to each step: read off finished dates, so that float can be counted on a network in
// which a crew's next step waits for its last one.
import { edgeRows } from '#kit/graph';
import { unitsAt } from './crew-load.ts';
import type { CrewDates, Crews } from './crews.ts';
import { type CriticalPath, criticalPath } from './critical-path.ts';
import { recordedEnd } from './early-dates.ts';
import type { Network } from './network.ts';
import { hasStarted, type Timing } from './timing.ts';

export interface HandOvers {
  /** Pairs of steps, one after the other with the same crew: from `handOverFrom[n]` to `handOverTo[n]`. */
  readonly handOverFrom: Int32Array;
  readonly handOverTo: Int32Array;
  /** For a step that began later than links would have let it: the step it got its crew from, last of all; else -1. */
  readonly heldByTask: Int32Array;
  /** The number of the crew, machine or room that it got from there; else -1. */
  readonly heldByCrew: Int32Array;
}

/**
 * Follows each crew through its steps. A step is given first what a step it hangs on anyway hands over, then whoever has
 * been idle longest: so a hand-over binds as little as may be. A crew that is never short hands over nothing.
 */
export function handOvers(
  network: Network,
  timing: Timing,
  crews: Crews,
  dates: Pick<CrewDates, 'start' | 'finish' | 'ready' | 'sequence'>,
): HandOvers {
  const { count } = network;
  const until = dates.finish.slice();
  for (let task = 0; task < count; task++) if (hasStarted(timing, task)) until[task] = recordedEnd(timing, task);
  const trail: Trail = {
    from: [],
    to: [],
    heldByTask: new Int32Array(count).fill(-1),
    heldByCrew: new Int32Array(count).fill(-1),
    crew: -1,
    lastGiven: new Int32Array(count).fill(-1),
    units: new Int32Array(count),
    left: new Int32Array(count),
  };
  usesByCrew(crews, dates, until).forEach((use, crew) => {
    const capacity = crews.capacity[crew]!;
    trail.crew = crew;
    if (use.asked > capacity) followCrew(network, timing, dates, use, capacity, until, trail);
  });
  const { heldByTask, heldByCrew } = trail;
  return { handOverFrom: Int32Array.from(trail.from), handOverTo: Int32Array.from(trail.to), heldByTask, heldByCrew };
}

/** Pairs told so far, and what is known by step of the crew being followed. */
interface Trail {
  readonly from: number[];
  readonly to: number[];
  readonly heldByTask: Int32Array;
  readonly heldByCrew: Int32Array;
  /** The crew being followed. */
  crew: number;
  /** The step each step last gave a crew to, so that no pair is told twice. */
  readonly lastGiven: Int32Array;
  /** Units of this crew each step takes, and how many of them it has given back and not yet handed on. */
  readonly units: Int32Array;
  readonly left: Int32Array;
}

/** What one crew does: its steps by start, and what each takes. */
interface Use {
  readonly tasks: number[];
  readonly units: number[];
  asked: number;
}

function followCrew(
  network: Network,
  timing: Timing,
  dates: Pick<CrewDates, 'start' | 'ready'>,
  use: Use,
  capacity: number,
  until: Float64Array,
  trail: Trail,
): void {
  const { start, ready } = dates;
  const { units, left } = trail;
  use.tasks.forEach((task, at) => {
    units[task] = use.units[at]!;
  });
  const tasks = use.tasks.sort((a, b) => start[a]! - start[b]!);
  const byEnd = tasks.slice().sort((a, b) => until[a]! - until[b]! || a - b);
  let fresh = capacity;
  let released = 0;
  let oldest = 0;
  for (const task of tasks) {
    for (; released < byEnd.length && until[byEnd[released]!]! <= start[task]!; released++) {
      left[byEnd[released]!] = units[byEnd[released]!]!;
    }
    const waits = start[task]! > ready[task]!;
    const isBound = !hasStarted(timing, task);
    let needed = units[task]!;
    for (let slot = network.incomingStart[task]!; slot < network.incomingStart[task + 1]! && needed > 0; slot++) {
      const giver = network.linkFrom[network.incoming[slot]!]!;
      if (left[giver]! > 0) needed -= handOver(giver, task, Math.min(needed, left[giver]!), isBound, waits, until, trail);
    }
    const unused = Math.min(needed, fresh);
    fresh -= unused;
    needed -= unused;
    while (needed > 0 && oldest < released) {
      const giver = byEnd[oldest]!;
      if (left[giver]! > 0) needed -= handOver(giver, task, Math.min(needed, left[giver]!), isBound, waits, until, trail);
      if (left[giver]! <= 0) oldest++;
    }
  }
  for (const task of tasks) left[task] = units[task] = 0;
}

/** Hands units on, which binds a step that has not begun yet, and holds one that waits for them; gives back how many. */
function handOver(
  giver: number,
  task: number,
  units: number,
  isBound: boolean,
  waits: boolean,
  until: Float64Array,
  { left, heldByTask, heldByCrew, crew, lastGiven, from, to }: Trail,
): number {
  left[giver]! -= units;
  if (!isBound) return units;
  const held = heldByTask[task]!;
  if (waits && (held < 0 || until[giver]! > until[held]!)) {
    heldByTask[task] = giver;
    heldByCrew[task] = crew;
  }
  if (lastGiven[giver] === task) return units;
  lastGiven[giver] = task;
  from.push(giver);
  to.push(task);
  return units;
}

/** For each crew its steps in the order in which they were placed. */
function usesByCrew(crews: Crews, dates: Pick<CrewDates, 'start' | 'sequence'>, until: Float64Array): readonly Use[] {
  const uses = Array.from({ length: crews.count }, (): Use => ({ tasks: [], units: [], asked: 0 }));
  for (const task of dates.sequence) {
    if (!(until[task]! > dates.start[task]!)) continue;
    for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
      const units = unitsAt(crews, slot);
      if (units === 0) continue;
      const use = uses[crews.crew[slot]!]!;
      use.tasks.push(task);
      use.units.push(units);
      use.asked += units;
    }
  }
  return uses;
}

/** The network with a finish-to-start link for each hand-over, numbered after its own links. */
export function withHandOvers(network: Network, dates: CrewDates): Network {
  const own = network.linkFrom.length;
  const count = own + dates.handOverFrom.length;
  const dropped = new Uint8Array(count).fill(1, 0, own);
  for (const link of network.incoming) dropped[link] = 0;
  const position = new Int32Array(network.count);
  for (let at = 0; at < network.count; at++) position[dates.sequence[at]!] = at;
  const linkFrom = joinedInts(network.linkFrom, dates.handOverFrom);
  const linkTo = joinedInts(network.linkTo, dates.handOverTo);
  for (let link = own; link < count; link++) {
    const [from, to] = [linkFrom[link]!, linkTo[link]!];
    // A step placed in time already passed may hand over to one it hangs on by a lead: no order holds both.
    if (position[from]! > position[to]! || dates.finish[from]! > dates.start[to]!) dropped[link] = 1;
  }
  const incoming = edgeRows(network.count, linkTo, dropped);
  const outgoing = edgeRows(network.count, linkFrom, dropped);
  return {
    count: network.count,
    order: dates.sequence,
    incomingStart: incoming.starts,
    incoming: incoming.items,
    outgoingStart: outgoing.starts,
    outgoing: outgoing.items,
    linkFrom,
    linkTo,
    linkKind: padded(network.linkKind, count),
    linkLag: joinedInts(network.linkLag, new Int32Array(dates.handOverFrom.length)),
    linkClock: padded(network.linkClock, count),
    linkShare: paddedShares(network.linkShare, count),
    loops: network.loops,
  };
}

/** Float with crews as limits: the dates of the crew pass stand, and each crew's next step waits for its last one. */
export function crewFloats(network: Network, timing: Timing, dates: CrewDates): CriticalPath {
  const notBefore = dates.start.slice();
  for (let task = 0; task < network.count; task++) if (hasStarted(timing, task)) notBefore[task] = timing.notBefore[task]!;
  return criticalPath(withHandOvers(network, dates), { ...timing, notBefore });
}

function joinedInts(own: Int32Array, more: Int32Array): Int32Array {
  const all = new Int32Array(own.length + more.length);
  all.set(own);
  all.set(more, own.length);
  return all;
}

function paddedShares(own: Float64Array, length: number): Float64Array {
  const all = new Float64Array(length);
  all.set(own);
  return all;
}

function padded(own: Uint8Array, length: number): Uint8Array {
  const all = new Uint8Array(length);
  all.set(own);
  return all;
}
