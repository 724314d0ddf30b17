// Dates with crews and machines as limits: one pass over time. At each moment the steps that links and calendars let
// begin take their crews in order of priority (parallel schedule generation, Kelley 1963; Kolisch 1996), and keep them
// until they are finished.
import { type EventHeap, eventHeap, type NumberHeap, numberHeap, popEvent, popNumber, pushEvent, pushNumber } from '#kit/heaps';
import { advance, canBegin, nextWork } from './calendar.ts';
import { addSpans, type CrewLoad, clearedBy, countUnits, crewLoad, firstCrew, missingNow } from './crew-load.ts';
import { type Placed, placeEarly, recordedEnd, recordedStart, unplaced } from './early-dates.ts';
import { type HandOvers, handOvers } from './hand-overs.ts';
import type { Network } from './network.ts';
import { hasFinished, hasStarted, type Timing } from './timing.ts';

export interface Crews {
  /** Crews and machines are numbered 0 to count - 1. */
  readonly count: number;
  /** How many of each there are. One of which there is none limits nothing. */
  readonly capacity: Int32Array;
  /** Rows by step: what step n takes stands in `crew` and `units` from `taskStart[n]` up to `taskStart[n + 1]`. */
  readonly taskStart: Int32Array;
  readonly crew: Int32Array;
  readonly units: Int32Array;
}

export interface CrewDates extends Placed, HandOvers {
  readonly end: number;
  /** When links, calendars and dates alone would have let each step begin, all before it placed as shown. */
  readonly ready: Float64Array;
  /** The steps in the order in which they were placed: each after all it hangs on. */
  readonly sequence: Int32Array;
}

/**
 * Places every step. `priority` is the latest finish of the links-only backward pass, in minutes: the lower goes first,
 * ties by plan order. Recorded work has its crews at its recorded dates, even beyond what there is.
 */
export function crewPass(network: Network, timing: Timing, crews: Crews, priority: Float64Array): CrewDates {
  const pass = beginPass(network, timing, crews, priority);
  placeRecorded(pass);
  for (let task = 0; task < network.count; task++) if (pass.missing[task] === 0) pass.free.push(task);
  placeFree(pass, Number.NEGATIVE_INFINITY);
  const { events } = pass;
  while (events.moments.length > 0) {
    const now = events.moments[0]!;
    while (events.moments.length > 0 && events.moments[0]! <= now) happen(pass, popEvent(events), now);
    startWhatCan(pass, now);
  }
  const { placed, ready, sequence } = pass;
  let end = timing.start;
  for (const finish of placed.finish) end = Math.max(end, finish);
  const dates = { ...placed, ready, end, sequence };
  // Who had each crew before is told when somebody first asks: no date hangs on it.
  let given: HandOvers | undefined;
  const handed = (): HandOvers => (given ??= handOvers(network, timing, crews, dates));
  return {
    ...dates,
    get handOverFrom() {
      return handed().handOverFrom;
    },
    get handOverTo() {
      return handed().handOverTo;
    },
    get heldByTask() {
      return handed().heldByTask;
    },
    get heldByCrew() {
      return handed().heldByCrew;
    },
  };
}

/** Steps that wait for one crew on one calendar, by rank. */
interface Queue {
  readonly crew: number;
  readonly calendar: number;
  readonly waiting: NumberHeap;
  /** The moment at which it wakes, where that is yet to come. */
  wakes: number;
  active: boolean;
}

interface Pass {
  readonly network: Network;
  readonly timing: Timing;
  readonly crews: Crews;
  readonly placed: Placed;
  readonly ready: Float64Array;
  readonly sequence: Int32Array;
  /** How many steps are placed. */
  settled: number;
  /** How many of the steps each step hangs on are yet to be placed (by link). */
  readonly missing: Int32Array;
  /** Steps all of whose predecessors are placed, to be looked at. */
  readonly free: number[];
  /** Place in the order of priority of each step, and back. */
  readonly rank: Int32Array;
  readonly byRank: Int32Array;
  readonly load: CrewLoad;
  readonly events: EventHeap;
  readonly queues: Queue[];
  readonly queueByKey: Map<number, number>;
  /** Queues of each crew. */
  readonly crewQueues: number[][];
  /** Queues to look at in the present moment. */
  readonly active: number[];
}

function beginPass(network: Network, timing: Timing, crews: Crews, priority: Float64Array): Pass {
  const { count, incomingStart } = network;
  const missing = new Int32Array(count);
  for (let task = 0; task < count; task++) missing[task] = incomingStart[task + 1]! - incomingStart[task]!;
  const byRank = ranked(count, priority);
  const rank = new Int32Array(count);
  for (let at = 0; at < count; at++) rank[byRank[at]!] = at;
  return {
    network,
    timing,
    crews,
    placed: unplaced(count),
    ready: new Float64Array(count),
    sequence: new Int32Array(count),
    settled: 0,
    missing,
    free: [],
    rank,
    byRank,
    load: crewLoad(crews),
    events: eventHeap(),
    queues: [],
    queueByKey: new Map(),
    crewQueues: Array.from({ length: crews.count }, () => []),
    active: [],
  };
}

/** Steps by priority, ties by plan order. Whole numbers are sorted together with their step in one number: much faster. */
function ranked(count: number, priority: Float64Array): Int32Array {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let isWhole = true;
  for (let task = 0; task < count; task++) {
    least = Math.min(least, priority[task]!);
    most = Math.max(most, priority[task]!);
    isWhole = isWhole && priority[task] === Math.trunc(priority[task]!);
  }
  const byRank = new Int32Array(count);
  for (let task = 0; task < count; task++) byRank[task] = task;
  if (!isWhole || !((most - least + 1) * count < Number.MAX_SAFE_INTEGER)) {
    return byRank.sort((a, b) => priority[a]! - priority[b]! || a - b);
  }
  const keys = new Float64Array(count);
  for (let task = 0; task < count; task++) keys[task] = (priority[task]! - least) * count + task;
  keys.sort();
  for (let at = 0; at < count; at++) byRank[at] = keys[at]! - Math.floor(keys[at]! / count) * count;
  return byRank;
}

/** Recorded work is there before anything is placed. */
function placeRecorded(pass: Pass): void {
  const { network, timing, load, events } = pass;
  for (let task = 0; task < network.count; task++) {
    if (!hasStarted(timing, task) || firstCrew(pass.crews, task) < 0) continue;
    const began = recordedStart(timing, task);
    // What waits to go on has its crew again when it does; whatever is placed lies after the diary's day.
    const start = hasFinished(timing, task) ? began : Math.max(began, timing.notBefore[task]!);
    const end = recordedEnd(timing, task);
    if (!(end > start)) continue;
    addSpans(load, task, start, end);
    pushEvent(events, start, eventOf('take', task));
    pushEvent(events, end, eventOf('release', task));
  }
}

/** Events as whole numbers: which kind, of which step or queue. */
type EventKind = 'take' | 'release' | 'ready' | 'wake';
const EVENT_KINDS: readonly EventKind[] = ['take', 'release', 'ready', 'wake'];

function eventOf(kind: EventKind, number: number): number {
  return number * 4 + EVENT_KINDS.indexOf(kind);
}

function happen(pass: Pass, event: number, now: number): void {
  const number = event >>> 2;
  switch (EVENT_KINDS[event & 3]!) {
    case 'take':
      countUnits(pass.load, number, 1);
      return;
    case 'release': {
      const { crews } = pass;
      countUnits(pass.load, number, -1);
      for (let slot = crews.taskStart[number]!; slot < crews.taskStart[number + 1]!; slot++) {
        for (const queue of pass.crewQueues[crews.crew[slot]!]!) activate(pass, queue, now);
      }
      return;
    }
    case 'ready':
      enqueue(pass, number, firstCrew(pass.crews, number), now);
      return;
    case 'wake':
      activate(pass, number, now);
      return;
  }
}

/** Looks at every step whose predecessors are all placed: puts it where it goes, or where it waits. */
function placeFree(pass: Pass, now: number): void {
  const { network, timing, placed, ready, free } = pass;
  for (let task = free.pop(); task !== undefined; task = free.pop()) {
    placeEarly(network, timing, task, placed);
    const begin = placed.start[task]!;
    ready[task] = begin;
    const crew = timing.durations[task]! > 0 && !hasStarted(timing, task) ? firstCrew(pass.crews, task) : -1;
    if (crew < 0) settle(pass, task);
    else if (begin > now) pushEvent(pass.events, begin, eventOf('ready', task));
    else if (begin === now || !placeInPast(pass, task, now)) enqueue(pass, task, crew, now);
  }
}

/**
 * A lead or a link between finishes may let a step begin before the step that let it: then it takes a stretch of time
 * already passed through, where its crews had nothing to do.
 */
function placeInPast(pass: Pass, task: number, now: number): boolean {
  const { timing, placed, load } = pass;
  const own = timing.calendars[timing.calendarOf[task]!]!;
  let begin = placed.start[task]!;
  for (let tries = 0; tries < 16 && begin < now; tries++) {
    const end = begin === placed.start[task] ? placed.finish[task]! : advance(own, begin, timing.durations[task]!);
    const cleared = clearedBy(load, task, begin, end);
    if (cleared === begin) {
      placed.start[task] = begin;
      placed.finish[task] = end;
      occupy(pass, task, now);
      return true;
    }
    begin = nextWork(own, cleared);
  }
  return false;
}

/** Lets steps begin at the present moment, the highest rank first, until nobody can. */
function startWhatCan(pass: Pass, now: number): void {
  const { timing, placed, load, active, queues, byRank } = pass;
  // Steps and the crews they miss, by turns.
  const blocked: number[] = [];
  for (let queue = bestQueue(pass); queue !== undefined; queue = bestQueue(pass)) {
    const task = byRank[popNumber(queue.waiting)]!;
    const isLate = now > pass.ready[task]!;
    const own = timing.calendars[timing.calendarOf[task]!]!;
    const end = isLate ? advance(own, now, timing.durations[task]!) : placed.finish[task]!;
    const crew = missingNow(load, task, now, end);
    if (crew >= 0) {
      blocked.push(task, crew);
      continue;
    }
    placed.start[task] = now;
    placed.finish[task] = end;
    occupy(pass, task, now);
    placeFree(pass, now);
  }
  for (const queue of active) queues[queue]!.active = false;
  active.length = 0;
  // They wait for the next release of the crew that was missing; looking again now would find the same.
  for (let at = 0; at < blocked.length; at += 2) {
    const task = blocked[at]!;
    pushNumber(queueOf(pass, blocked[at + 1]!, timing.calendarOf[task]!).waiting, pass.rank[task]!);
  }
}

/** The active queue with the highest-ranked step whose crew has anybody free. */
function bestQueue(pass: Pass): Queue | undefined {
  const { active, queues, load, crews } = pass;
  let best: Queue | undefined;
  for (const number of active) {
    const queue = queues[number]!;
    if (queue.waiting.items.length === 0 || load.inUse[queue.crew]! >= crews.capacity[queue.crew]!) continue;
    if (best === undefined || queue.waiting.items[0]! < best.waiting.items[0]!) best = queue;
  }
  return best;
}

/** Gives a step its crews from its start to its finish. */
function occupy(pass: Pass, task: number, now: number): void {
  const { placed, load, events } = pass;
  const end = placed.finish[task]!;
  addSpans(load, task, placed.start[task]!, end);
  if (end > now) {
    countUnits(load, task, 1);
    pushEvent(events, end, eventOf('release', task));
  }
  settle(pass, task);
}

/** A step has its dates: those that hang on it may go on. */
function settle(pass: Pass, task: number): void {
  const { network, missing, free, sequence } = pass;
  sequence[pass.settled++] = task;
  for (let slot = network.outgoingStart[task]!; slot < network.outgoingStart[task + 1]!; slot++) {
    const next = network.linkTo[network.outgoing[slot]!]!;
    if (--missing[next]! === 0) free.push(next);
  }
}

function enqueue(pass: Pass, task: number, crew: number, now: number): void {
  const calendar = pass.timing.calendarOf[task]!;
  pushNumber(queueOf(pass, crew, calendar).waiting, pass.rank[task]!);
  activate(pass, pass.queueByKey.get(keyOf(pass, crew, calendar))!, now);
}

/** Looks at a queue in the present moment, or when its calendar next works. */
function activate(pass: Pass, number: number, now: number): void {
  const queue = pass.queues[number]!;
  if (queue.active || queue.waiting.items.length === 0) return;
  const works = pass.timing.calendars[queue.calendar]!;
  if (canBegin(works, now)) {
    queue.active = true;
    pass.active.push(number);
  } else if (!(queue.wakes > now)) {
    queue.wakes = nextWork(works, now);
    pushEvent(pass.events, queue.wakes, eventOf('wake', number));
  }
}

function queueOf(pass: Pass, crew: number, calendar: number): Queue {
  const key = keyOf(pass, crew, calendar);
  let number = pass.queueByKey.get(key);
  if (number === undefined) {
    number = pass.queues.length;
    pass.queues.push({ crew, calendar, waiting: numberHeap(), wakes: Number.NEGATIVE_INFINITY, active: false });
    pass.queueByKey.set(key, number);
    pass.crewQueues[crew]!.push(number);
  }
  return pass.queues[number]!;
}

function keyOf(pass: Pass, crew: number, calendar: number): number {
  return crew * pass.timing.calendars.length + calendar;
}
