// DOOR: model and take-off → the timeline: durations, links, dates by links alone and with crews as limits, floats.
import { DAY_MINUTES, dayAndMonth } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Work } from '#kit/work';
import type { Step, Trade } from '#model/model';
import type { Model } from '#model/resolve';
import type { TakeOff } from '#takeoff/take-off';
import { nextWork, previousWork, workBetween } from './calendar.ts';
import { type Claim, type ClaimsMemory, claimLines, claimsMemory } from './claims.ts';
import { type Crews, crewPass } from './crews.ts';
import { criticalPath } from './critical-path.ts';
import { type Duration, durationOf } from './durations.ts';
import { crewFloats } from './hand-overs.ts';
import { type LinkSources, linkSources } from './link-sources.ts';
import { waiting } from './links.ts';
import type { Network } from './network.ts';
import { type CalendarMemory, calendarMemory, type PlanCalendars, planCalendars } from './plan-calendars.ts';
import { type PlanNetwork, planNetwork } from './plan-network.ts';
import { nextMorning, type Progress, progressOf } from './progress.ts';
import { type Steps, type StepsMemory, stepsOf } from './steps.ts';
import type { Timeline } from './timeline.ts';
import type { Timing } from './timing.ts';
import { AROUND, CALENDAR_DAYS } from './waits.ts';

/** A Monday to count from where a plan gives no start. */
const NO_START = 4;

export interface ScheduleMemory {
  readonly calendars: CalendarMemory;
  readonly claims: ClaimsMemory;
  steps: StepsMemory | undefined;
  sources: LinkSources | undefined;
  network: PlanNetwork | undefined;
}
export function scheduleMemory(): ScheduleMemory {
  return { calendars: calendarMemory(), claims: claimsMemory(), steps: undefined, sources: undefined, network: undefined };
}

export const loop = findingSort<[names: readonly string[]]>({
  code: 'schedule/loop',
  severity: 'error',
  say: (names) =>
    `These steps wait for each other in a ring, so none can begin: ${[...names, names[0]].join(' → ')}. Remove one of the links.`,
});

export const noDuration = findingSort<[name: string]>({
  code: 'schedule/no-duration',
  severity: 'note',
  say: (name) =>
    `"${name}" has no length: it says neither how long it takes nor any work with a rate, so its dates are those of a moment. Add "takes 2d".`,
});

export const finishedAhead = findingSort<[name: string, other: string, day: string]>({
  code: 'schedule/out-of-order',
  severity: 'note',
  say: (name, other, day) => `"${name}" is recorded as begun on ${day}, before "${other}" was done. The dates follow the record.`,
});

/** `asOf` is a day, for the diary; the clock is never read. */
export function schedule(
  model: Model,
  takeOff: TakeOff,
  asOf: number | undefined,
  memory: ScheduleMemory,
  work: Work,
): { readonly value: Timeline; readonly findings: readonly Finding[] } {
  memory.steps = stepsOf(model, memory.steps);
  const { steps } = memory.steps;
  const findings: Finding[] = [];
  const claims = claimLines(steps.list, takeOff.byWork, memory.claims);
  const start = model.plan?.given.start?.value ?? NO_START;
  const calendars = planCalendars(model, start, memory.calendars);
  const trades = steps.list.map((step) => tradeOf(step, model));
  const durations = steps.list.map((step, at) => {
    const duration = keptDuration(step, claims.byStep[at]!, trades[at], model);
    if (duration.basis === 'none') findings.push(finding(noDuration, step.place, step.name));
    return duration;
  });
  const progress = progressOf(model, steps, asOf);
  memory.sources = linkSources(claims, memory.claims.doers!, memory.sources);
  memory.network = planNetwork(steps, memory.sources, durations, memory.network, work);
  const { links, network } = memory.network;
  const timing = timingOf(steps, trades, durations, progress, calendars, start, network);
  work.tasksTimed += steps.list.length;
  for (const ring of network.loops) findings.push(loopFinding(ring, steps));
  const byLinks = criticalPath(network, timing);
  const crews = crewPass(network, timing, crewsOf(steps, trades), byLinks.lateFinish);
  const floats = crewFloats(network, timing, crews);
  const value: Timeline = {
    steps,
    trades,
    durations,
    claims,
    links,
    network,
    timing,
    byLinks,
    crews,
    floats,
    progress,
    start,
    dated: model.plan?.given.start !== undefined,
    minutesPerDay: model.settings.minutesPerDay,
  };
  findings.push(...outOfOrder(value));
  return { value, findings };
}

function tradeOf(step: Step, model: Model): Trade | undefined {
  const slot = step.kind === 'task' || step.kind === 'inspection' ? step.given.by?.value : undefined;
  const trade = slot === undefined ? undefined : model.element(slot);
  return trade?.kind === 'trade' ? trade : undefined;
}

interface KeptDuration {
  readonly claims: readonly Claim[];
  readonly trade: Trade | undefined;
  readonly minutesPerDay: number;
  readonly duration: Duration;
}
const durationsKept = new WeakMap<Step, KeptDuration>();

/** A step's length is worked out again only when its claims, its trade or the working day changed. */
function keptDuration(step: Step, claims: readonly Claim[], trade: Trade | undefined, { settings }: Model): Duration {
  const kept = durationsKept.get(step);
  const { minutesPerDay } = settings;
  if (kept !== undefined && kept.claims === claims && kept.trade === trade && kept.minutesPerDay === minutesPerDay)
    return kept.duration;
  const duration = durationOf(step, claims, trade, minutesPerDay);
  durationsKept.set(step, { claims, trade, minutesPerDay, duration });
  return duration;
}

function timingOf(
  steps: Steps,
  trades: readonly (Trade | undefined)[],
  durations: readonly Duration[],
  progress: Progress,
  calendars: PlanCalendars,
  startDay: number,
  network: Network,
): Timing {
  const count = steps.list.length;
  const calendarOf = new Int32Array(count);
  const notBefore = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  const fixedStart = new Float64Array(count).fill(Number.NaN);
  const fixedFinish = new Float64Array(count).fill(Number.NaN);
  const deadline = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const lengths = new Int32Array(count);
  const morning = progress.asOf === undefined ? Number.NEGATIVE_INFINITY : nextMorning(progress.asOf);
  steps.list.forEach((step, at) => {
    calendarOf[at] = calendars.of(trades[at], isOutside(step));
    const calendar = calendars.calendars[calendarOf[at]!]!;
    lengths[at] = durations[at]!.minutes;
    const record = progress.records.get(at);
    const { given } = step;
    const day = given['not before']?.value;
    if (day !== undefined) notBefore[at] = day * DAY_MINUTES;
    if (given.deadline !== undefined) deadline[at] = nextMorning(given.deadline.value);
    if (step.kind === 'delivery') notBefore[at] = Math.max(notBefore[at]!, arrival(step, startDay));
    if (step.kind === 'milestone' && step.given.on !== undefined)
      notBefore[at] = Math.max(notBefore[at]!, step.given.on.value * DAY_MINUTES);
    if (record === undefined) {
      if (morning > notBefore[at]!) notBefore[at] = morning;
      return;
    }
    if (record.notBefore !== undefined) notBefore[at] = Math.max(notBefore[at]!, record.notBefore * DAY_MINUTES);
    const lastFailed = record.failed[record.failed.length - 1];
    if (record.finished !== undefined) {
      fixedFinish[at] =
        lengths[at] === 0
          ? record.finished * DAY_MINUTES + DAY_MINUTES / 2
          : previousWork(calendar, nextMorning(record.finished));
      const began = record.started === undefined ? Number.NaN : nextWork(calendar, record.started * DAY_MINUTES);
      fixedStart[at] = Number.isNaN(began) ? Number.NaN : Math.min(began, fixedFinish[at]!);
    } else if (record.started !== undefined) {
      fixedStart[at] = nextWork(calendar, record.started * DAY_MINUTES);
      const done = Math.max(0, workBetween(calendar, fixedStart[at]!, morning));
      const left = record.left ?? (record.done === undefined ? lengths[at]! - done : lengths[at]! * (1 - record.done));
      lengths[at] = Math.max(0, Math.round(left));
      notBefore[at] = Math.max(notBefore[at]!, morning);
    } else if (lastFailed !== undefined) {
      // A failed visit opens a second, with its notice again.
      const wait =
        step.kind === 'inspection' && step.given.call !== undefined
          ? waiting(step.given.call.value)
          : { lag: DAY_MINUTES, clock: CALENDAR_DAYS };
      notBefore[at] = Math.max(
        notBefore[at]!,
        wait.clock === AROUND
          ? lastFailed * DAY_MINUTES + DAY_MINUTES / 2 + wait.lag
          : lastFailed * DAY_MINUTES + Math.max(DAY_MINUTES, wait.lag),
        morning,
      );
    } else notBefore[at] = Math.max(notBefore[at]!, morning);
  });
  assumeDone(network, fixedStart, fixedFinish, progress);
  return {
    durations: lengths,
    calendarOf,
    calendars: calendars.calendars,
    planCalendar: 0,
    start: startDay * DAY_MINUTES,
    notBefore,
    fixedStart,
    fixedFinish,
    deadline,
  };
}

/** A step without a record all of whose followers have begun was done, or they could not have. */
function assumeDone(network: Network, fixedStart: Float64Array, fixedFinish: Float64Array, progress: Progress): void {
  if (progress.asOf === undefined) return;
  for (let nth = network.order.length - 1; nth >= 0; nth--) {
    const at = network.order[nth]!;
    if (progress.records.has(at) || !Number.isNaN(fixedFinish[at]!)) continue;
    const from = network.outgoingStart[at]!;
    const to = network.outgoingStart[at + 1]!;
    let earliest = Number.POSITIVE_INFINITY;
    for (let slot = from; slot < to; slot++) {
      const next = network.linkTo[network.outgoing[slot]!]!;
      const began = Number.isNaN(fixedStart[next]!) ? fixedFinish[next]! : fixedStart[next]!;
      earliest = Number.isNaN(began) ? Number.NaN : Math.min(earliest, began);
      if (Number.isNaN(earliest)) break;
    }
    if (from < to && Number.isFinite(earliest)) fixedFinish[at] = earliest;
  }
}

/** Ordered and so long on the way; or, not yet ordered, no sooner than its lead after the plan's first day. */
function arrival(step: Extract<Step, { kind: 'delivery' }>, startDay: number): number {
  const { lead, ordered } = step.given;
  if (lead === undefined || step.given['measured after'] !== undefined) return Number.NEGATIVE_INFINITY;
  return (ordered?.value ?? startDay) * DAY_MINUTES + lead.value.value;
}

const outside = new WeakMap<Step, boolean>();
function isOutside(step: Step): boolean {
  let known = outside.get(step);
  if (known === undefined) {
    known = step.kind === 'task' && (step.given.does?.value ?? []).some(({ value }) => value.work.given.exposed !== undefined);
    outside.set(step, known);
  }
  return known;
}

/** Each trade has one crew unless it says more; visits, moments and deliveries take none. */
function crewsOf(steps: Steps, trades: readonly (Trade | undefined)[]): Crews {
  const numbers = new Map<Trade, number>();
  const capacity: number[] = [];
  const taskStart = new Int32Array(steps.list.length + 1);
  const crew: number[] = [];
  steps.list.forEach((step, at) => {
    const trade = trades[at];
    if (step.kind === 'task' && trade !== undefined) {
      let number = numbers.get(trade);
      if (number === undefined) {
        numbers.set(trade, (number = capacity.length));
        capacity.push(Math.max(1, trade.given.crews?.value ?? 1));
      }
      crew.push(number);
    }
    taskStart[at + 1] = crew.length;
  });
  return {
    count: capacity.length,
    capacity: Int32Array.from(capacity),
    taskStart,
    crew: Int32Array.from(crew),
    units: new Int32Array(crew.length).fill(1),
  };
}

function loopFinding(ring: readonly number[], steps: Steps): Finding {
  const members = ring.map((number) => steps.list[number]!);
  const made = finding(
    loop,
    members[0]!.place,
    members.map((step) => step.name),
  );
  return { ...made, related: members.slice(1).map((step) => ({ place: step.place, note: `"${step.name}" is in the ring` })) };
}

/** Recorded work that began before something it hangs on was done. */
function outOfOrder({ steps, links, timing, crews, progress }: Timeline): readonly Finding[] {
  if (progress.asOf === undefined) return [];
  const told = new Set<number>();
  return links.flatMap((link) => {
    const record = progress.records.get(link.to);
    const began = record?.started ?? record?.finished;
    if (link.kind !== 0 || link.lag < 0 || began === undefined || told.has(link.to)) return [];
    const earlier = Number.isNaN(timing.fixedFinish![link.from]!) ? crews.finish[link.from]! : timing.fixedFinish![link.from]!;
    if (earlier <= nextMorning(began)) return [];
    told.add(link.to);
    const [step, other] = [steps.list[link.to]!, steps.list[link.from]!];
    return [finding(finishedAhead, step.place, step.name, other.name, dayAndMonth(began))];
  });
}
