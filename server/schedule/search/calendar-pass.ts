// Serial schedule generation with calendars: steps one after the other in a given order, each as early as links, dates,
// calendars and crews allow; and the same backward, each as late as what hangs on it allows. What a step may do is asked of
// the passes by links, so a schedule made here breaks nothing that they hold.
import { advance, closingOf, nextWork, retreat } from '../calendar.ts';
import { addSpans, type CrewLoad, clearedBefore, clearedBy, crewLoad, firstCrew } from '../crew-load.ts';
import type { Crews } from '../crews.ts';
import { bindBy, lastBegin, lastWholeDay } from '../critical-path.ts';
import { type Placed, placeEarly, recordedEnd, recordedStart } from '../early-dates.ts';
import type { Bounds } from '../link-bounds.ts';
import type { Network } from '../network.ts';
import { hasStarted, type Timing, takesDay } from '../timing.ts';

export interface PlanParts {
  readonly network: Network;
  readonly timing: Timing;
  readonly crews: Crews;
}

/** Fills `placed` and gives the latest finish. `order` holds every step after all it hangs on. */
export function placeForward({ network, timing, crews }: PlanParts, order: Int32Array, placed: Placed): number {
  const load = withRecorded(network, timing, crews);
  const { start, finish } = placed;
  let end = timing.start;
  for (const task of order) {
    placeEarly(network, timing, task, placed);
    const length = timing.durations[task]!;
    if (length > 0 && !hasStarted(timing, task) && firstCrew(crews, task) >= 0) {
      const own = timing.calendars[timing.calendarOf[task]!]!;
      let [begin, done] = [start[task]!, finish[task]!];
      for (let tries = 0; ; tries++) {
        const cleared = clearedBy(load, task, begin, done);
        if (cleared === begin) break;
        const free = tries < TRIES && Number.isFinite(cleared) ? cleared : lastEnd(load, task);
        begin = nextWork(own, free);
        done = advance(own, begin, length);
        if (free !== cleared) break;
      }
      start[task] = begin;
      finish[task] = Math.max(done, finish[task]!);
      addSpans(load, task, begin, done);
    }
    end = Math.max(end, finish[task]!);
  }
  return end;
}

/** After so many looks for a gap a step goes behind everything. */
const TRIES = 10_000;

/**
 * Each as late as may be by `end`, for its order's sake: nothing is held to its given dates. Gives the earliest start.
 * `order` holds every step before all it hangs on.
 */
export function placeBackward({ network, timing, crews }: PlanParts, order: Int32Array, end: number, placed: Placed): number {
  const load = withRecorded(network, timing, crews);
  const { start, finish } = placed;
  const bounds: Bounds = { start: 0, finish: 0 };
  let first = end;
  for (const task of order) {
    if (hasStarted(timing, task)) {
      start[task] = recordedStart(timing, task);
      finish[task] = recordedEnd(timing, task);
      continue;
    }
    const own = timing.calendars[timing.calendarOf[task]!]!;
    const length = timing.durations[task]!;
    bindBy(network, timing, task, start, finish, end, bounds);
    if (length <= 0) start[task] = finish[task] = Math.min(bounds.finish, bounds.start);
    else if (takesDay(timing, task)) {
      start[task] = lastWholeDay(own, bounds);
      finish[task] = closingOf(own, start[task]!);
    } else {
      let begin = retreat(own, bounds.finish, length);
      if (bounds.start < begin) begin = lastBegin(own, bounds.start);
      let done = advance(own, begin, length);
      for (let tries = 0; tries < TRIES && firstCrew(crews, task) >= 0; tries++) {
        const cleared = clearedBefore(load, task, begin, done);
        if (cleared === done || !Number.isFinite(cleared)) break;
        begin = retreat(own, cleared, length);
        done = advance(own, begin, length);
      }
      start[task] = begin;
      finish[task] = done;
      addSpans(load, task, begin, done);
    }
    first = Math.min(first, start[task]!);
  }
  return first;
}

/** Work that has begun has its crews at its recorded dates. */
function withRecorded({ count }: Network, timing: Timing, crews: Crews): CrewLoad {
  const load = crewLoad(crews);
  if (timing.fixedStart === undefined && timing.fixedFinish === undefined) return load;
  for (let task = 0; task < count; task++) {
    if (!hasStarted(timing, task) || firstCrew(crews, task) < 0) continue;
    const [start, end] = [recordedStart(timing, task), recordedEnd(timing, task)];
    if (end > start) addSpans(load, task, start, end);
  }
  return load;
}

function lastEnd(load: CrewLoad, task: number): number {
  const { crews } = load;
  let last = Number.NEGATIVE_INFINITY;
  for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
    for (let span = load.head[crews.crew[slot]!]!; span >= 0; span = load.next[span]!) last = Math.max(last, load.end[span]!);
  }
  return last;
}
