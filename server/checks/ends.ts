// When the plan is over, by the dates that are shown, and which step ends last.
import type { Timeline } from '#schedule/timeline';
import { keptFor } from './kept.ts';

export interface End {
  readonly moment: number;
  /** Number of the step that ends last; of several, the last in the plan. */
  readonly step: number;
}

/** Undefined for a plan without steps. */
export const endOf = keptFor(({ steps, crews }: Timeline): End | undefined => {
  let end: End | undefined;
  for (let step = 0; step < steps.list.length; step++) {
    const moment = crews.finish[step]!;
    if (end === undefined || moment >= end.moment) end = { moment, step };
  }
  return end;
});
