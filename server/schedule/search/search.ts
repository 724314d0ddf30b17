// DOOR: the search for a shorter schedule. Two populations face each other, one of schedules pushed to the left and one of
// schedules pushed to the right (bi-population genetic algorithm: Debels & Vanhoucke 2005): a child of two of the one side
// is placed from the other side, so every pass is a justification too. The best found only ever gets better; the same seed
// gives the same schedules. Each pass counts as one schedule, as in the literature (Kolisch & Hartmann 2006).
import { type CrossingRoom, cross, crossingRoom, moveOne } from './crossing.ts';
import { type Dice, diceOf, pick, roll } from './dice.ts';
import { type LinkRows, orderByRank } from './orders.ts';

export interface SearchLimits {
  /** How many passes at most; at least three are made: one by priority, and its double justification. */
  readonly schedules: number;
  readonly seed: number;
  /** Told when something better is found; false stops the search. */
  readonly report?: (progress: Progress) => boolean | undefined;
}

export interface Progress {
  /** Passes so far. */
  readonly schedules: number;
  readonly end: number;
  readonly lowerBound: number;
}

export interface Found extends Progress {
  /** The best schedule, as the forward direction tells it. */
  readonly starts: Int32Array;
  /** Whether no schedule can be shorter: the end is the lower bound. */
  readonly optimal: boolean;
}

/** Passes of the instant schedule: by priority, pushed to the right, pushed to the left. */
export const INSTANT = 3;

/** One direction of time in which orders are placed: forward in one, backward in the other. */
export interface Direction {
  readonly links: LinkRows;
  /** Places each in turn, fills `starts` with times of this direction from 0, and gives the end. */
  readonly place: (order: Int32Array, starts: Int32Array) => number;
  /** The order, and the times, in which this direction meets a schedule of the other. */
  readonly meet: (starts: Int32Array, end: number, order: Int32Array, times: Int32Array) => void;
}

/** What can be searched: a project of plain numbers, or a plan with its calendars. */
export interface Searched {
  /** How many numbers a schedule is kept as, on either side: the starts, and whatever else the two directions tell each other. */
  readonly width: number;
  readonly forward: Direction;
  readonly backward: Direction;
  /** Fills `starts` by one pass that goes by these ranks, the lowest first, as good as one pass can be. */
  readonly byRank: (rank: Float64Array, starts: Int32Array) => number;
  /** The latest finish of each by links alone, in forward time. */
  readonly latest: Float64Array;
  /** No end is before this one; asked again with what was found, it may tell more. */
  readonly bound: (within?: number) => number;
}

interface Side {
  readonly direction: Direction;
  readonly starts: readonly Int32Array[];
  readonly ends: Int32Array;
}

interface Search {
  readonly limits: SearchLimits;
  readonly dice: Dice;
  /** Time forward, time backward. */
  readonly sides: readonly [Side, Side];
  readonly size: number;
  readonly searched: Searched;
  readonly room: CrossingRoom;
  readonly father: Int32Array;
  readonly mother: Int32Array;
  readonly times: Int32Array;
  readonly order: Int32Array;
  readonly child: Int32Array;
  readonly turned: Int32Array;
  readonly best: Int32Array;
  bound: number;
  end: number;
  schedules: number;
  stopped: boolean;
}

export function search(searched: Searched, limits: SearchLimits): Found {
  const now = begin(searched, limits);
  instant(now);
  now.bound = searched.bound(now.end);
  firstSide(now);
  for (let turn = 0; !isOver(now); turn++) generation(now, turn % 2 === 0 ? 0 : 1);
  const { best, end, schedules, bound } = now;
  return { starts: best, end, schedules, lowerBound: bound, optimal: end <= bound };
}

function begin(searched: Searched, limits: SearchLimits): Search {
  const { count } = searched.forward.links;
  const size = Math.max(8, Math.round(Math.sqrt(limits.schedules) * SIZE), Math.round(limits.schedules / TURNS));
  const list = (): Int32Array => new Int32Array(count);
  const schedule = (): Int32Array => new Int32Array(searched.width);
  const side = (direction: Direction): Side => ({
    direction,
    starts: Array.from({ length: size }, schedule),
    ends: new Int32Array(size).fill(UNBORN),
  });
  return {
    limits,
    dice: diceOf(limits.seed),
    searched,
    sides: [side(searched.forward), side(searched.backward)],
    size,
    room: crossingRoom(count),
    father: list(),
    mother: list(),
    times: list(),
    order: list(),
    child: schedule(),
    turned: schedule(),
    best: schedule(),
    bound: searched.bound(),
    end: UNBORN,
    schedules: 0,
    stopped: false,
  };
}

/** For each root of the number of passes so many schedules on each side; of many passes one for so many. */
const SIZE = 0.45;
const TURNS = 280;
const UNBORN = 0x7fffffff;

function isOver({ schedules, limits, end, bound, stopped }: Search): boolean {
  return stopped || schedules >= limits.schedules || end <= bound;
}

/** One pass by latest finish, then everything as late as it can be, then as early as it can be. */
function instant(now: Search): void {
  const [forward, backward] = now.sides;
  const starts = forward.starts[0]!;
  forward.ends[0] = now.searched.byRank(now.searched.latest, starts);
  note(now, forward.ends[0], starts);
  for (let pass = 1; pass < INSTANT; pass++) {
    const [from, to] = pass === 1 ? [forward, backward] : [backward, forward];
    to.direction.meet(from.starts[0]!, from.ends[0]!, now.order, now.times);
    to.ends[0] = to.direction.place(now.order, to.starts[0]!);
    if (to === forward) note(now, to.ends[0], to.starts[0]!);
    else now.schedules++;
  }
}

/** The rest of the first side: passes by latest finish with chance in it, by turns of either kind. */
function firstSide(now: Search): void {
  const { dice, size, order, searched } = now;
  const { direction, starts, ends } = now.sides[0];
  const chance = searched.latest.reduce((most, moment) => Math.max(most, moment), 0) * BLUR;
  for (let each = 1; each < size && !isOver(now); each++) {
    const rank = searched.latest.map((moment) => moment + roll(dice) * chance);
    if (each % 2 === 1) ends[each] = searched.byRank(rank, starts[each]!);
    else {
      orderByRank(direction.links, rank, order);
      ends[each] = direction.place(order, starts[each]!);
    }
    note(now, ends[each]!, starts[each]!);
  }
}

/** How far chance moves a latest finish, as a share of the longest chain. */
const BLUR = 0.3;

/**
 * Each of a side is father once; the child takes its place on the other side unless what is there is shorter, or the
 * side has that schedule already: a side that fills with copies of one schedule finds nothing new.
 */
function generation(now: Search, from: 0 | 1): void {
  const { dice, sides, size, room, father, mother, times, child, order } = now;
  const parents = sides[from];
  const { direction, ends, starts } = sides[1 - from]!;
  for (let each = 0; each < size && !isOver(now); each++) {
    if (parents.ends[each] === UNBORN) continue;
    const end = parents.ends[each]!;
    const other = chosen(parents, dice, size);
    const alike = isSame(parents, each, other);
    if (!alike) direction.meet(parents.starts[other]!, parents.ends[other]!, mother, times);
    direction.meet(parents.starts[each]!, end, father, times);
    if (alike) order.set(father);
    else cross(father, mother, times, end, dice, room, order);
    const moves = alike ? MOVES_OF_ONE : roll(dice) < MOVE ? 1 : 0;
    for (let move = 0; move < moves; move++) moveOne(direction.links, dice, room, order);
    const reached = direction.place(order, child);
    if (from === 1) note(now, reached, child);
    else now.schedules++;
    // A shorter one is turned round at once: only what is placed forward counts as found.
    if (from === 0 && reached < now.end && !isOver(now)) turnRound(now, child, reached);
    if (reached > ends[each]! || (ends[each] !== UNBORN && holds(sides[1 - from]!, child, reached))) continue;
    ends[each] = reached;
    starts[each]!.set(child);
  }
}

function turnRound(now: Search, starts: Int32Array, end: number): void {
  const { direction } = now.sides[0];
  direction.meet(starts, end, now.mother, now.times);
  note(now, direction.place(now.mother, now.turned), now.turned);
}

/** How often one activity is moved by chance; and how many where both parents are the same. */
const MOVE = 0.7;
const MOVES_OF_ONE = 3;

/** The best of a few drawn by chance. */
function chosen({ ends }: Side, dice: Dice, size: number): number {
  let best = pick(dice, size);
  for (let draw = 1; draw < DRAWS; draw++) {
    const other = pick(dice, size);
    if (ends[other]! < ends[best]!) best = other;
  }
  return best;
}
const DRAWS = 3;

function isSame({ starts, ends }: Side, one: number, other: number): boolean {
  return one === other || (ends[one] === ends[other] && isAlike(starts[one]!, starts[other]!));
}

/** Whether a side has a schedule that ends at `end` and is the same in everything. */
function holds({ starts, ends }: Side, schedule: Int32Array, end: number): boolean {
  for (let each = 0; each < ends.length; each++) if (ends[each] === end && isAlike(starts[each]!, schedule)) return true;
  return false;
}

function isAlike(one: Int32Array, other: Int32Array): boolean {
  for (let each = 0; each < one.length; each++) if (one[each] !== other[each]) return false;
  return true;
}

/** Counts a pass in forward time, and keeps what it made where it is better than all before. */
function note(now: Search, end: number, starts: Int32Array): void {
  now.schedules++;
  if (end >= now.end) return;
  now.end = end;
  now.best.set(starts);
  const { schedules, bound } = now;
  if (now.limits.report?.({ schedules, end, lowerBound: bound }) === false) now.stopped = true;
}
