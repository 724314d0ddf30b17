// Runs the search over a set of published instances and measures it as the literature does.
import process from 'node:process';
import { INSTANT, search } from '#schedule/search/search';
import { searchedProject } from '#schedule/search/searched-project';
import { numericProject, readSet, type SetName, violations } from './psplib.ts';

export interface MeasuredSearch {
  readonly set: SetName;
  readonly instances: number;
  /** Passes at most for each instance. */
  readonly schedules: number;
  /**
   * Mean deviation in percent: from the optimum (J30, Patterson), from the critical path (J60, J120), from the best known
   * (RCPSP/max).
   */
  readonly averageDeviation: number;
  readonly bestKnownHit: number;
  /** Instances where the schedule meets our own lower bound. */
  readonly optimalProven: number;
  /** Processor time. */
  readonly secondsPerInstance: number;
  /** Links broken, moments with more taken than there is, and ends below a proven lower bound. */
  readonly violations: number;
}

export interface Sample {
  readonly seed: number;
  /** 1 for the whole set, 10 for each tenth instance. */
  readonly every: number;
}

export function measureSearch(folder: string, set: SetName, schedules: number, { seed, every }: Sample): MeasuredSearch {
  let [instances, deviation, bestKnownHit, optimalProven, faults] = [0, 0, 0, 0, 0];
  let microseconds = 0;
  readSet(folder, set).forEach(({ instance, bounds }, at) => {
    const project = at % every === every - 1 ? numericProject(instance) : undefined;
    if (project === undefined || bounds.best === undefined) return;
    const before = process.cpuUsage();
    const found = search(searchedProject(project), { schedules, seed });
    const { user, system } = process.cpuUsage(before);
    microseconds += user + system;
    instances++;
    const from = set === 'j60' || set === 'j120' ? bounds.byLinks : bounds.best;
    deviation += (found.end - from) / from;
    if (found.end <= bounds.best) bestKnownHit++;
    if (found.optimal) optimalProven++;
    faults += violations(instance, found.starts);
    if (found.end < bounds.lower || found.lowerBound > bounds.best) faults++;
  });
  return {
    set,
    instances,
    schedules: Math.max(INSTANT, schedules),
    averageDeviation: rounded((100 * deviation) / instances, 1000),
    bestKnownHit,
    optimalProven,
    secondsPerInstance: rounded(microseconds / 1e6 / instances, 10_000),
    violations: faults,
  };
}

function rounded(value: number, parts: number): number {
  return Math.round(value * parts) / parts;
}
