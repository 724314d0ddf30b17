// The dates of all steps, by links alone and with crews as limits: kept while network, times and crews are as before.
// Floats with crews as limits are worked out when somebody first asks: no date hangs on them.
import type { Work } from '#kit/work';
import { type CrewDates, type Crews, crewPass } from './crews.ts';
import { type CriticalPath, type LinkDates, lateDates } from './critical-path.ts';
import { earlyDates } from './early-dates.ts';
import { crewFloats } from './hand-overs.ts';
import type { Network } from './network.ts';
import type { Timing } from './timing.ts';

export interface StepDates {
  readonly network: Network;
  readonly timing: Timing;
  readonly taken: Crews;
  readonly byLinks: LinkDates;
  readonly crews: CrewDates;
  readonly floats: () => CriticalPath;
}

export function stepDates(network: Network, timing: Timing, taken: Crews, before: StepDates | undefined, work: Work): StepDates {
  if (before !== undefined && before.network === network && before.timing === timing && before.taken === taken) return before;
  work.tasksTimed += network.count;
  const early = earlyDates(network, timing);
  const byLinks: LinkDates = { ...early, ...lateDates(network, timing, early) };
  const crews = crewPass(network, timing, taken, byLinks.lateFinish);
  let floats: CriticalPath | undefined;
  return { network, timing, taken, byLinks, crews, floats: () => (floats ??= crewFloats(network, timing, crews)) };
}
