// What a check is: a code, what it is for with a wrong and a right plan (both run as tests and printed in the reference),
// and a pure function of the results.
import type { Finding } from '#kit/finding';
import type { Model } from '#model/resolve';
import type { Budget } from '#money/cost-lines';
import type { Timeline } from '#schedule/timeline';
import type { TakeOff } from '#takeoff/take-off';
import type { Order } from './order.ts';

/** Everything that was computed of a plan. */
export interface Results {
  readonly model: Model;
  readonly takeOff: TakeOff;
  readonly timeline: Timeline;
  readonly budget: Budget;
  /** Who must come before whom, through links alone. */
  readonly order: Order;
}

export interface Check {
  /** `area/short-name`; the file's own path below rules/. */
  readonly code: string;
  /** What it looks for and why it matters, in a sentence or two. */
  readonly about: string;
  /** A plan that it speaks up about, and one that it does not. */
  readonly wrong: string;
  readonly right: string;
  /** Many findings of it are told as one. */
  readonly gathers?: true;
  /**
   * All that `run` looks at, as objects that are the same while they say the same: then its findings are those of the last
   * look. A check without is run at every look.
   */
  readonly reads?: (results: Results) => readonly unknown[];
  readonly run: (results: Results) => readonly Finding[];
}
