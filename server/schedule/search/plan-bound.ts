// The earliest end that can be thought of: no calendar, link or crew allows less. An end is ruled out where the steps that
// one crew must do between two moments are more work than it has hours there (destructive lower bound: Klein & Scholl 1999).
import { workBetween } from '../calendar.ts';
import { unitsAt } from '../crew-load.ts';
import { lateDates } from '../critical-path.ts';
import { type EarlyDates, earlyDates } from '../early-dates.ts';
import { hasStarted, type Timing } from '../timing.ts';
import type { PlanParts } from './calendar-pass.ts';

/** No schedule is done before this moment; never later than `within`, an end that is known to be possible. */
export function planBound(parts: PlanParts, within: number): number {
  const { network, timing } = parts;
  const early = earlyDates(network, timing);
  const groups = groupsOf(parts);
  // All ends before `ruledOut` are, and that moment itself unless it is the end by links alone.
  let [low, high] = [early.end, within];
  if (low >= high || !isTooMuch(parts, early, groups, low)) return Math.min(low, within);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isTooMuch(parts, early, groups, middle)) low = middle;
    else high = middle;
  }
  return high;
}

/** The open steps of a crew that work by one calendar. */
interface Group {
  readonly crew: number;
  readonly calendar: number;
  readonly tasks: number[];
  readonly work: number[];
}

function groupsOf({ network, timing, crews }: PlanParts): readonly Group[] {
  const groups = new Map<number, Group>();
  for (let task = 0; task < network.count; task++) {
    if (hasStarted(timing, task) || timing.durations[task]! <= 0) continue;
    const calendar = timing.calendarOf[task]!;
    for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
      const units = unitsAt(crews, slot);
      if (units === 0) continue;
      const crew = crews.crew[slot]!;
      const key = crew * timing.calendars.length + calendar;
      let group = groups.get(key);
      if (group === undefined) groups.set(key, (group = { crew, calendar, tasks: [], work: [] }));
      group.tasks.push(task);
      group.work.push(units * timing.durations[task]!);
    }
  }
  return [...groups.values()];
}

function isTooMuch({ network, timing, crews }: PlanParts, early: EarlyDates, groups: readonly Group[], end: number): boolean {
  const free: Timing = { ...timing, deadline: new Float64Array(network.count).fill(Number.POSITIVE_INFINITY) };
  const { lateFinish } = lateDates(network, free, { ...early, end });
  return groups.some(({ crew, calendar, tasks, work }) => {
    const capacity = crews.capacity[crew]!;
    const own = timing.calendars[calendar]!;
    const byLate = tasks.map((_, at) => at).sort((a, b) => lateFinish[tasks[a]!]! - lateFinish[tasks[b]!]!);
    return tasks.some((first) => {
      const from = early.start[first]!;
      let sum = 0;
      return byLate.some((at) => {
        if (early.start[tasks[at]!]! < from) return false;
        sum += work[at]!;
        return sum > capacity * workBetween(own, from, lateFinish[tasks[at]!]!);
      });
    });
  });
}
