// The dates of all steps, by links alone and with crews as limits: kept while network, times and crews are as before.
import type { Work } from '#kit/work';
import { type CrewDates, type Crews, crewPass } from './crews.ts';
import { type CriticalPath, criticalPath } from './critical-path.ts';
import { crewFloats } from './hand-overs.ts';
import type { Network } from './network.ts';
import type { Timing } from './timing.ts';

export interface StepDates {
  readonly network: Network;
  readonly timing: Timing;
  readonly taken: Crews;
  readonly byLinks: CriticalPath;
  readonly crews: CrewDates;
  readonly floats: CriticalPath;
}

export function stepDates(network: Network, timing: Timing, taken: Crews, before: StepDates | undefined, work: Work): StepDates {
  if (before !== undefined && before.network === network && before.timing === timing && before.taken === taken) return before;
  work.tasksTimed += network.count;
  const byLinks = criticalPath(network, timing);
  const crews = crewPass(network, timing, taken, byLinks.lateFinish);
  return { network, timing, taken, byLinks, crews, floats: crewFloats(network, timing, crews) };
}
