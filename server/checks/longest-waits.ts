// The longest that may pass between two steps, by the dates shown: too long, or not too long only because something else
// that the later step waits for is in time. No link holds a step back from being late; what holds is that nothing else keeps it.
import type { Inspection, Rule, Step } from '#model/model';
import { workBetween } from '#schedule/calendar';
import { waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { afterFinish } from '#schedule/waits';
import type { Results } from './check.ts';
import { keptFor } from './kept.ts';
import { type Meetings, meetAt } from './meetings.ts';
import { type Order, reaches } from './order.ts';
import { begunAt, isDone } from './outcomes.ts';
import { sortOf } from './pairs.ts';
import { concerns } from './rule-things.ts';
import { type Scopes, scopeOf } from './scopes.ts';
import { namesSeen } from './visits.ts';

/** A later step that begins too late, or that others may still make late. */
export interface Overlong {
  readonly kind: 'late' | 'luck';
  readonly earlier: number;
  /** The visit that sees the earlier step before the later may cover it: its pass is what the time is counted from. */
  readonly passed: number | undefined;
  /** Until when the later step may begin, and when it does: moments. */
  readonly latest: number;
  readonly start: number;
  /** Steps that keep it back and do not come before the earlier one; of those that wait for each other the last. */
  readonly keepers: readonly number[];
}

/** In time by so many working days more is no luck: few things slip by a week unseen. */
const PLENTY = 5;

/** For each later step the worst; those that follow in time have none. */
export function overlongs(
  rule: Rule,
  meetings: Meetings,
  scopes: Scopes,
  { model, timeline, order }: Results,
): ReadonlyMap<number, Overlong> {
  const found = new Map<number, Overlong>();
  for (const { step, meets } of meetings.later) {
    // What is begun is no longer to be mended.
    if (begunAt(step, timeline) !== undefined || !concerns(rule, step, scopes, model)) continue;
    for (const earlier of meets) {
      const one = overlongOf(rule, earlier, step, timeline, order);
      if (one === undefined || isFollowed(rule, one, step, meetings, scopes, timeline)) continue;
      const known = found.get(step);
      if (known === undefined || isWorse(one, known)) found.set(step, one);
    }
  }
  return found;
}

/** Undefined where it follows in time, and nothing else keeps it. */
export function overlongOf(rule: Rule, earlier: number, later: number, timeline: Timeline, order: Order): Overlong | undefined {
  const { timing, crews, minutesPerDay } = timeline;
  const passed = passedBy(earlier, later, timeline, order);
  const latest = latestStart(rule, passed ?? earlier, timeline);
  const start = crews.start[later]!;
  const kind = start > latest ? 'late' : 'luck';
  if (kind === 'luck') {
    if (!reaches(order, earlier, later)) return undefined;
    const spare = workBetween(timing.calendars[timing.planCalendar]!, start, latest);
    if (spare >= PLENTY * minutesPerDay) return undefined;
  }
  const done = crews.finish[passed ?? earlier]!;
  const keepers = lastKeepers(earlier, later, timeline, order).filter((each) => crews.finish[each]! > done);
  return kind === 'luck' && keepers.length === 0 ? undefined : { kind, earlier, passed, latest, start, keepers };
}

/** Of the visits that look at the earlier step and hold the later, the last to pass: nobody may cover what it has yet to see. */
function passedBy(earlier: number, later: number, { network, steps, crews }: Timeline, order: Order): number | undefined {
  let last: number | undefined;
  for (let slot = network.outgoingStart[earlier]!; slot < network.outgoingStart[earlier + 1]!; slot++) {
    const to = network.linkTo[network.outgoing[slot]!]!;
    const visit = steps.list[to]!;
    if (visit.kind !== 'inspection' || !looksAt(visit, steps.list[earlier]!) || !reaches(order, to, later)) continue;
    if (last === undefined || crews.finish[to]! > crews.finish[last]!) last = to;
  }
  return last;
}

function looksAt(visit: Inspection, step: Step): boolean {
  const seen = namesSeen(visit);
  if (seen.includes(step.name)) return true;
  return step.kind === 'task' && (step.given.does?.value ?? []).some(({ value }) => seen.includes(value.work.name));
}

/** The last moment at which what must follow may begin. */
function latestStart({ given }: Rule, since: number, { timing, crews }: Timeline): number {
  const { lag, clock } = waiting(given.within!.value);
  return afterFinish(timing.calendars[timing.planCalendar]!, crews.finish[since]!, lag, clock);
}

/** Steps that the later one waits for and that the earlier does not, of those that wait for each other the last. */
export function lastKeepers(earlier: number, later: number, timeline: Timeline, order: Order): readonly number[] {
  const known = keepersIn(order);
  const pair = earlier * order.network.count + later;
  let keepers = known.get(pair);
  if (keepers === undefined) known.set(pair, (keepers = keepersOf(earlier, later, order)));
  return keepers.filter((step) => !isDone(step, timeline));
}

/** By pair of steps: it hangs on links alone. */
const keepersIn = keptFor((_: Order) => new Map<number, readonly number[]>());

function keepersOf(earlier: number, later: number, order: Order): readonly number[] {
  const keepers: number[] = [];
  for (let step = 0; step < order.network.count; step++) {
    if (step === earlier || !reaches(order, step, later)) continue;
    if (!reaches(order, step, earlier) && !reaches(order, earlier, step)) keepers.push(step);
  }
  return keepers.filter((step) => !keepers.some((other) => other !== step && reaches(order, step, other)));
}

/** Whether another step of the same side is there sooner: it is the one that must be in time, and a second coat comes when it likes. */
function isFollowed(
  rule: Rule,
  { earlier }: Overlong,
  later: number,
  { then, later: all }: Meetings,
  scopes: Scopes,
  { crews }: Timeline,
): boolean {
  const sort = sortOf(rule);
  const places = (step: number) => then.filter((side) => side.step === step).map((side) => scopeOf(side, scopes)[sort]);
  return all.some(({ step, meets }) => {
    const start = crews.start[step]!;
    const isSooner = start < crews.start[later]! || (start === crews.start[later]! && step < later);
    if (!isSooner || !meets.includes(earlier)) return false;
    return places(step).some((one) => places(later).some((other) => meetAt(one, other)));
  });
}

function isWorse(a: Overlong, b: Overlong): boolean {
  if (a.kind !== b.kind) return a.kind === 'late';
  return a.latest - a.start < b.latest - b.start;
}
