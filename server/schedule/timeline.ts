// The words of the schedule: steps with dates, floats and what holds them.
import type { Trade } from '#model/model';
import type { Claims } from './claims.ts';
import type { CrewDates, Crews } from './crews.ts';
import type { CriticalPath, LinkDates } from './critical-path.ts';
import type { Duration } from './durations.ts';
import type { PlanLink } from './links.ts';
import type { Network } from './network.ts';
import type { Progress } from './progress.ts';
import type { Steps } from './steps.ts';
import type { Timing } from './timing.ts';

export interface Timeline {
  readonly steps: Steps;
  readonly trades: readonly (Trade | undefined)[];
  readonly durations: readonly Duration[];
  readonly claims: Claims;
  readonly links: readonly PlanLink[];
  readonly network: Network;
  readonly timing: Timing;
  /** What each step takes, and how much of it there is. */
  readonly taken: Crews;
  /** By links alone. */
  readonly byLinks: LinkDates;
  /** With crews as limits: the dates that are shown, and floats with the hand-overs in them, made when first asked for. */
  readonly crews: CrewDates;
  readonly floats: CriticalPath;
  readonly progress: Progress;
  /** The plan's first day. */
  readonly start: number;
  /** Whether it has real dates; else days are numbers from the first. */
  readonly dated: boolean;
  readonly minutesPerDay: number;
}
