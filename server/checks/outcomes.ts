// What becomes of an order that no chain of links holds: right by luck, or broken, by the dates shown and by what is done.
import { dayOfFinish } from '#kit/dates';
import { nextMorning } from '#schedule/progress';
import type { Timeline } from '#schedule/timeline';
import { afterFinish } from '#schedule/waits';

export interface Wait {
  /** Minutes by `clock`. */
  readonly lag: number;
  readonly clock: number;
}

/** How far two dates are apart, and how the sentence about them goes. */
export interface Outcome {
  readonly kind: 'broken' | 'luck';
  readonly earlier: number;
  /** Minutes by the clock: of slip that would break it, or by which it is broken. */
  readonly apart: number;
  /** When the later step may begin, and when it does: moments. */
  readonly free: number;
  readonly start: number;
  /** The order itself is held, but not the wait. */
  readonly linked: boolean;
}

/** Undefined where the order is a fact: what comes first was done in time. */
export function outcomeOf(
  earlier: number,
  later: number,
  linked: boolean,
  wait: Wait | undefined,
  timeline: Timeline,
): Outcome | undefined {
  const { timing, crews, progress } = timeline;
  const done = timing.fixedFinish?.[earlier] ?? Number.NaN;
  if (wait === undefined && gotBefore(earlier, timeline) !== undefined) return undefined;
  const finish = Number.isNaN(done) ? crews.finish[earlier]! : done;
  const free = wait === undefined ? finish : afterFinish(timing.calendars[timing.planCalendar]!, finish, wait.lag, wait.clock);
  const begun = begunAt(later, timeline);
  // A diary tells days, not hours.
  if (begun !== undefined)
    return dayOfFinish(free) <= dayOfFinish(begun)
      ? undefined
      : { kind: 'broken', earlier, apart: free - begun, free, start: begun, linked };
  if (!Number.isNaN(done) && (wait === undefined || (progress.asOf !== undefined && free <= nextMorning(progress.asOf))))
    return undefined;
  const start = crews.start[later]!;
  return { kind: free <= start ? 'luck' : 'broken', earlier, apart: Math.abs(start - free), free, start, linked };
}

/** When recorded work began, or at the latest; undefined for what lies ahead. */
export function begunAt(step: number, { timing }: Timeline): number | undefined {
  const start = timing.fixedStart?.[step] ?? Number.NaN;
  if (!Number.isNaN(start)) return start;
  const finish = timing.fixedFinish?.[step] ?? Number.NaN;
  return Number.isNaN(finish) ? undefined : finish;
}

export function isWorse(a: Outcome, b: Outcome): boolean {
  if (a.kind !== b.kind) return a.kind === 'broken';
  return a.kind === 'broken' ? a.apart > b.apart : a.apart < b.apart;
}

/** Whether a step is recorded as done, or must have been. */
export function isDone(step: number, { timing }: Timeline): boolean {
  return !Number.isNaN(timing.fixedFinish?.[step] ?? Number.NaN);
}

/** The day on which a milestone was reached before the plan began, as its own line has it; the diary's word goes before it. */
export function gotBefore(step: number, timeline: Timeline): number | undefined {
  const { kind, given } = timeline.steps.list[step]!;
  const on = kind === 'milestone' ? given.on?.value : undefined;
  return on === undefined || on >= timeline.start || isDone(step, timeline) ? undefined : on;
}
