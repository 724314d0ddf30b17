// What the passes over a network take besides its links: lengths, calendars, given dates, and what is already recorded.
import type { Calendar } from './calendar.ts';

export interface Timing {
  /**
   * Working minutes on the step's own calendar; 0 for a milestone. Of a step with a recorded start and no recorded
   * finish: what is left of it, going on from `notBefore` at the earliest.
   */
  readonly durations: Int32Array;
  /** Working minutes of each step that are done already, by the diary: `durations` is what is left beside them. */
  readonly done?: Int32Array;
  /** 1 for steps that take the whole of a day, from its opening to its closing, whatever their length. */
  readonly wholeDays?: Uint8Array;
  /** 1 for steps that stand from the start of one step to the end of another: their own length is 0. */
  readonly spans?: Uint8Array;
  /** How many visits fail before one passes, and how long after the midnight that begins such a day the next may come. */
  readonly failures?: Uint8Array;
  readonly comesAgain?: Float64Array;
  /** Which of `calendars` each step works by. */
  readonly calendarOf: Int32Array;
  readonly calendars: readonly Calendar[];
  /** Which of `calendars` waits in working time run on. */
  readonly planCalendar: number;
  /** Nothing starts before this moment, whatever the leads, but for what is recorded. */
  readonly start: number;
  /** Moments, or -Infinity. */
  readonly notBefore: Float64Array;
  /** Recorded starts and finishes: moments, or NaN. Links do not move them, and what has begun waits for nothing. */
  readonly fixedStart?: Float64Array;
  readonly fixedFinish?: Float64Array;
  /** What is left of a step that has begun waits for what it follows, so that is held to it by its late dates, too. */
  readonly begunWaits?: boolean;
  /** Moments by which a step must be finished, and by which it must begin; Infinity or NaN for none. */
  readonly deadline?: Float64Array;
  readonly startBy?: Float64Array;
}

export function hasStarted(timing: Timing, task: number): boolean {
  return isRecorded(timing.fixedStart, task) || isRecorded(timing.fixedFinish, task);
}

export function hasFinished(timing: Timing, task: number): boolean {
  return isRecorded(timing.fixedFinish, task);
}

/** Whether a step takes the whole of the day on which it falls: a visit that may come at any hour. */
export function takesDay({ wholeDays }: Timing, task: number): boolean {
  return wholeDays !== undefined && wholeDays[task] === 1;
}

/** Whether a step lasts as long as the steps that it stands for. */
export function isSpan({ spans }: Timing, task: number): boolean {
  return spans !== undefined && spans[task] === 1;
}

function isRecorded(moments: Float64Array | undefined, task: number): boolean {
  return moments !== undefined && !Number.isNaN(moments[task]);
}
