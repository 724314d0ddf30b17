// The dates of today against a schedule that was kept: how many working days each step slipped, how many of them it was
// handed by the step it waited for, and how many are its own. Along a chain the own ones add up to the slip of its last step.
import { DAY_MINUTES, dayOfFinish, dayOfStart } from '#kit/dates';
import type { AsPlanned } from './as-planned.ts';
import { workBetween } from './calendar.ts';
import { HELD_BY_DATE } from './early-dates.ts';
import { FINISH_START } from './network.ts';
import { nextMorning } from './progress.ts';
import type { Timeline } from './timeline.ts';
import { hasStarted } from './timing.ts';
import { afterFinish } from './waits.ts';

export interface Slip {
  readonly step: number;
  readonly begins: number;
  readonly done: number;
  /** As it was planned; undefined where it was added since. */
  readonly planned: { readonly begins: number; readonly done: number } | undefined;
  /** Working days of the plan by which it is done later than planned; below zero, earlier. */
  readonly days: number | undefined;
  /** Of `days`, those that the step before it on the chain did not hand on. */
  readonly own: number | undefined;
  /** Of `own`, by how much longer it takes, in working days of the plan from first day to last. */
  readonly longer: number | undefined;
  /** The step it waits for last, or waited for. */
  readonly after: number | undefined;
  /** The day the diary stands on, where that alone holds it: it could have begun before, and has not. */
  readonly stillOpen: number | undefined;
}

/** `last`: the step that ends last. */
export interface Slippage {
  readonly against: AsPlanned;
  readonly slips: readonly Slip[];
  /** Names of steps that are gone since. */
  readonly gone: readonly string[];
  readonly end: { readonly planned: number; readonly now: number; readonly days: number; readonly last: number };
}

/**
 * The end alone, with the step that ends last (of several the last in the plan): a glance at dates that are there. Undefined
 * where there are no dates to compare.
 */
export function endSlip(timeline: Timeline, against: AsPlanned): Slippage['end'] | undefined {
  const { steps } = timeline;
  if (!timeline.dated || against.end === undefined || steps.list.length === 0) return undefined;
  let [last, now] = [0, Number.NEGATIVE_INFINITY];
  for (let step = 0; step < steps.list.length; step++) {
    const { done } = daysOf(step, timeline);
    if (done >= now) [last, now] = [step, done];
  }
  return { planned: against.end, now, days: laterBy(timeline)(against.end, now), last };
}

/** Undefined where there are no dates to compare. */
export function slippage(timeline: Timeline, against: AsPlanned): Slippage | undefined {
  const { steps } = timeline;
  const end = endSlip(timeline, against);
  if (end === undefined) return undefined;
  const later = laterBy(timeline);
  const days = steps.list.map((_, step) => daysOf(step, timeline));
  const slipOf = (step: number): number | undefined => {
    const planned = against.steps.get(steps.list[step]!.name);
    return planned === undefined ? undefined : later(planned.done, days[step]!.done);
  };
  const slips = steps.list.map(({ name }, step): Slip => {
    const planned = against.steps.get(name);
    const after = heldAfter(step, timeline);
    const known = after === undefined ? undefined : knownBefore(after, against, timeline);
    const own = slipOf(step);
    const handed = known === undefined ? 0 : slipOf(known)!;
    return {
      step,
      ...days[step]!,
      planned,
      days: own,
      own: own === undefined ? undefined : own - handed,
      longer:
        planned === undefined ? undefined : later(days[step]!.begins, days[step]!.done) - later(planned.begins, planned.done),
      after,
      stillOpen: isHeldByDiary(step, timeline) ? timeline.progress.asOf : undefined,
    };
  });
  return { against, slips, gone: [...against.steps.keys()].filter((name) => !steps.byName.has(name)), end };
}

/** The chain that leads to a step, itself last. */
export function chainTo(step: number, slips: readonly Slip[]): readonly Slip[] {
  const chain: Slip[] = [];
  const seen = new Set<number>();
  for (let at: number | undefined = step; at !== undefined && !seen.has(at); at = slips[at]!.after) {
    seen.add(at);
    chain.push(slips[at]!);
  }
  return chain.reverse();
}

/** Of several that end last, the last in the plan. */
export function lastSlip({ slips, end }: Slippage): Slip {
  return slips[end.last]!;
}

/** The first and the last day of a step by the dates shown. */
function daysOf(step: number, { crews: { start, finish } }: Timeline): { readonly begins: number; readonly done: number } {
  const [from, to] = [start[step]!, finish[step]!];
  const begins = dayOfStart(from);
  return { begins, done: from === to ? begins : Math.max(begins, dayOfFinish(to)) };
}

/** Working days of the plan from one day to another: 0 within a weekend, below zero backwards. */
function laterBy({ timing }: Timeline): (from: number, to: number) => number {
  const calendar = timing.calendars[timing.planCalendar]!;
  const works = new Map<number, boolean>();
  const isWorked = (day: number): boolean => {
    let known = works.get(day);
    if (known === undefined) works.set(day, (known = workBetween(calendar, day * DAY_MINUTES, (day + 1) * DAY_MINUTES) > 0));
    return known;
  };
  const count = (from: number, to: number): number => {
    let days = 0;
    for (let day = from + 1; day <= to; day++) if (isWorked(day)) days++;
    return days;
  };
  return (from, to) => (to >= from ? count(from, to) : -count(to, from));
}

/** Whether nothing but the day on which the diary stands keeps a step from its earlier date. */
function isHeldByDiary(step: number, { crews, timing, progress }: Timeline): boolean {
  return (
    progress.asOf !== undefined &&
    crews.heldByTask[step]! < 0 &&
    crews.heldBy[step] === HELD_BY_DATE &&
    timing.notBefore[step] === nextMorning(progress.asOf)
  );
}

/**
 * What a step waits for last, by a link or for its crew; of recorded work, and of what the diary's day alone holds, what it
 * could begin after.
 */
function heldAfter(step: number, timeline: Timeline): number | undefined {
  const { crews, links, timing, network } = timeline;
  const giver = crews.heldByTask[step]!;
  if (giver >= 0) return giver;
  const link = links[crews.heldBy[step]!];
  if (link !== undefined) return link.from;
  if (!hasStarted(timing, step) && !isHeldByDiary(step, timeline)) return undefined;
  const plan = timing.calendars[timing.planCalendar]!;
  let [last, latest]: [number | undefined, number] = [undefined, Number.NEGATIVE_INFINITY];
  for (let slot = network.incomingStart[step]!; slot < network.incomingStart[step + 1]!; slot++) {
    const at = network.incoming[slot]!;
    if (network.linkKind[at] !== FINISH_START) continue;
    const from = network.linkFrom[at]!;
    const free = afterFinish(plan, crews.finish[from]!, network.linkLag[at]!, network.linkClock[at]!);
    if (free > latest) [last, latest] = [from, free];
  }
  return last;
}

/** The nearest step on the chain that was planned then: what was added since hands on what it was handed. */
function knownBefore(step: number, against: AsPlanned, timeline: Timeline): number | undefined {
  const seen = new Set<number>();
  for (let at: number | undefined = step; at !== undefined && !seen.has(at); at = heldAfter(at, timeline)) {
    if (against.steps.has(timeline.steps.list[at]!.name)) return at;
    seen.add(at);
  }
  return undefined;
}
