// What keeps a step from beginning sooner, of dates that are worked out: all the links that let it begin at that moment and
// none before, and whoever had its crew until then. Followed back from what ends last, they are the longest chain.
import { type Calendar, firstOpening, nextWork, retreat } from '../calendar.ts';
import { unitsAt } from '../crew-load.ts';
import type { CrewDates, Crews } from '../crews.ts';
import { linkBound, worksUntil } from '../link-bounds.ts';
import { FINISH_START, type Network, START_START } from '../network.ts';
import { hasFinished, hasStarted, type Timing, takesDay } from '../timing.ts';

export type Dates = Pick<CrewDates, 'start' | 'finish' | 'ready'>;

/** Steps by the crew that they take: those of crew n stand in `steps` from `first[n]` up to `first[n + 1]`. */
export interface CrewSteps {
  readonly crews: Crews;
  readonly first: Int32Array;
  readonly steps: Int32Array;
}

export function crewSteps(crews: Crews, count: number): CrewSteps {
  const first = new Int32Array(crews.count + 1);
  const steps = new Int32Array(crews.crew.length);
  let filled = 0;
  for (let crew = 0; crew < crews.count; crew++) {
    first[crew] = filled;
    for (let step = 0; step < count; step++)
      for (let slot = crews.taskStart[step]!; slot < crews.taskStart[step + 1]!; slot++)
        if (crews.crew[slot] === crew && unitsAt(crews, slot) > 0) steps[filled++] = step;
  }
  first[crews.count] = filled;
  return { crews, first, steps };
}

/**
 * Fills `into` from its beginning with the steps that hold a step where it is; gives how many. Recorded work, and work that
 * a date holds, is held by none; what is done holds nothing any more.
 */
export function holders(
  network: Network,
  timing: Timing,
  taken: CrewSteps,
  dates: Dates,
  step: number,
  into: Int32Array,
): number {
  if (hasStarted(timing, step)) return 0;
  const { start, finish, ready } = dates;
  const { incomingStart, incoming, linkFrom, linkKind } = network;
  const own = timing.calendars[timing.calendarOf[step]!]!;
  const length = timing.durations[step]!;
  const begins = start[step]!;
  const isLate = begins > ready[step]!;
  const opens = takesDay(timing, step) ? firstOpening : nextWork;
  let count = 0;
  for (let slot = incomingStart[step]!; !isLate && slot < incomingStart[step + 1]!; slot++) {
    const link = incoming[slot]!;
    const from = linkFrom[link]!;
    if (hasFinished(timing, from)) continue;
    const kind = linkKind[link]!;
    let bound = linkBound(network, timing, link, dates);
    if (kind !== FINISH_START && kind !== START_START) bound = retreat(own, worksUntil(network, timing, link, bound), length);
    if (length === 0 ? bound === begins : leadsTo(own, bound, begins, opens)) into[count++] = from;
  }
  if (length === 0) return count;
  const { crews, first, steps } = taken;
  for (let slot = crews.taskStart[step]!; slot < crews.taskStart[step + 1]!; slot++) {
    const crew = crews.crew[slot]!;
    // Of several crews one was free, unless the step had to wait.
    if (unitsAt(crews, slot) === 0 || (!isLate && crews.capacity[crew]! > 1)) continue;
    for (let at = first[crew]!; at < first[crew + 1]! && count < into.length; at++) {
      const other = steps[at]!;
      if (
        other !== step &&
        !hasFinished(timing, other) &&
        finish[other]! > start[other]! &&
        leadsTo(own, finish[other]!, begins, nextWork)
      )
        into[count++] = other;
    }
  }
  return count;
}

/** Whether nothing could have been done between the two moments. */
function leadsTo(own: Calendar, bound: number, begins: number, opens: (calendar: Calendar, moment: number) => number): boolean {
  return bound <= begins && (bound === begins || opens(own, bound) >= begins);
}

/** The most steps that can hold one: what `holders` wants room for. */
export function roomForHolders(network: Network, { crews, steps }: CrewSteps): number {
  let most = 0;
  for (let step = 0; step < network.count; step++)
    most = Math.max(most, network.incomingStart[step + 1]! - network.incomingStart[step]!);
  let taking = 0;
  for (let step = 0; step < network.count; step++) taking = Math.max(taking, crews.taskStart[step + 1]! - crews.taskStart[step]!);
  return most + taking * steps.length;
}
