// Who must come before whom, by links alone: whether a chain of links leads from one step's finish to another's start.
// Dates do not matter here; a link with a lead holds nothing. One bit a pair, filled in one sweep along the network.
import { FINISH_FINISH, FINISH_START, type Network, START_START } from '#schedule/network';
import { WORKING } from '#schedule/waits';

export interface Order {
  readonly network: Network;
  /** Which group of connected steps each step is in, and its number there. */
  readonly group: Int32Array;
  readonly member: Int32Array;
  /** Where the rows of each step begin in `bits`: first the finishes that reach its start, then those that reach its finish. */
  readonly row: Int32Array;
  /** Words in one row of the step's group. */
  readonly words: Int32Array;
  /** Empty rows where a group is too large to keep: those are searched link by link. */
  readonly bits: Uint32Array;
  /** Steps without length, whose start and finish are one. */
  readonly instant: Uint8Array | undefined;
}

/** Wider groups would take more memory than an editor should: 12,000 steps are 36 MB. */
const WIDEST_GROUP = 12_000;

/** Prepares the answers for a network. `instant` marks milestones (1), where what holds the finish holds the start. */
export function orderOf(network: Network, instant?: Uint8Array): Order {
  const { count, order, incomingStart, incoming, linkFrom, linkKind, linkLag } = network;
  const { group, member, sizes } = groups(network);
  const row = new Int32Array(count);
  const words = new Int32Array(count);
  let length = 0;
  for (let task = 0; task < count; task++) {
    const size = sizes[group[task]!]!;
    words[task] = size > WIDEST_GROUP || size < 2 ? 0 : (size + 31) >>> 5;
    row[task] = length;
    length += 2 * words[task]!;
  }
  const bits = new Uint32Array(length);
  for (const task of order) {
    const width = words[task]!;
    if (width === 0) continue;
    const toStart = row[task]!;
    const toFinish = toStart + width;
    for (let slot = incomingStart[task]!; slot < incomingStart[task + 1]!; slot++) {
      const link = incoming[slot]!;
      if (linkLag[link]! < 0) continue;
      const kind = linkKind[link]!;
      const source = row[linkFrom[link]!]! + (kind === FINISH_START || kind === FINISH_FINISH ? width : 0);
      join(bits, kind === FINISH_START || kind === START_START ? toStart : toFinish, source, width);
    }
    join(bits, toFinish, toStart, width);
    // Its own finish counts among those that reach its finish, so that rows can be joined as they are.
    bits[toFinish + (member[task]! >>> 5)]! |= 1 << (member[task]! & 31);
    if (instant?.[task] === 1) join(bits, toStart, toFinish, width);
  }
  return { network, group, member, row, words, bits, instant };
}

/** Whether links hold `b`'s start after `a`'s finish. */
export function reaches(order: Order, a: number, b: number): boolean {
  if (a === b || order.group[a] !== order.group[b]) return false;
  if (order.words[b] === 0) return chain(order.network, order, a, b) !== undefined;
  const place = order.member[a]!;
  return ((order.bits[order.row[b]! + (place >>> 5)]! >>> (place & 31)) & 1) === 1;
}

/** Whether links hold `b`'s finish after `a`'s; its own counts. True as well where the group is too large to have rows. */
export function mayReachFinish(order: Order, a: number, b: number): boolean {
  if (a === b) return true;
  if (order.group[a] !== order.group[b]) return false;
  const width = order.words[b]!;
  if (width === 0) return true;
  const place = order.member[a]!;
  return ((order.bits[order.row[b]! + width + (place >>> 5)]! >>> (place & 31)) & 1) === 1;
}

export interface WaitOnChain {
  /** Minutes of working time. */
  readonly working: number;
  /** Minutes by the calendar or the clock. */
  readonly calendar: number;
}

/**
 * The longest sums of waits along any chain of links from `a`'s finish to `b`'s start, of each sort of time for itself:
 * the two may stand on different chains. Zero where no chain leads there.
 */
export function waitOnChain(network: Network, order: Order, a: number, b: number): WaitOnChain {
  return { working: longestWait(network, order, a, b, true), calendar: longestWait(network, order, a, b, false) };
}

/** The links of a shortest chain from `a`'s finish to `b`'s start, in order; undefined where there is none. */
export function chain(network: Network, order: Order, a: number, b: number): readonly number[] | undefined {
  const { outgoingStart, outgoing, linkTo, linkKind, linkLag } = network;
  if (a === b || order.group[a] !== order.group[b]) return undefined;
  // Events: 2 × step for its start, one more for its finish. Breadth first, in link order.
  const cameBy = new Map<number, { readonly link: number; readonly from: number }>();
  const queue = [2 * a + 1];
  const meet = (event: number, link: number, from: number): void => {
    if (event === 2 * a + 1 || cameBy.has(event)) return;
    cameBy.set(event, { link, from });
    queue.push(event);
  };
  for (let at = 0; at < queue.length; at++) {
    const event = queue[at]!;
    if (event === 2 * b) return linksTo(event, cameBy);
    const task = event >> 1;
    const isFinish = (event & 1) === 1;
    if (!isFinish) meet(event + 1, -1, event);
    else if (order.instant?.[task] === 1) meet(event - 1, -1, event);
    for (let slot = outgoingStart[task]!; slot < outgoingStart[task + 1]!; slot++) {
      const link = outgoing[slot]!;
      const kind = linkKind[link]!;
      if (linkLag[link]! < 0 || isFinish !== (kind === FINISH_START || kind === FINISH_FINISH)) continue;
      meet(2 * linkTo[link]! + (kind === FINISH_START || kind === START_START ? 0 : 1), link, event);
    }
  }
  return undefined;
}

function linksTo(
  event: number,
  cameBy: ReadonlyMap<number, { readonly link: number; readonly from: number }>,
): readonly number[] {
  const links: number[] = [];
  for (let step = cameBy.get(event); step !== undefined; step = cameBy.get(step.from)) if (step.link >= 0) links.push(step.link);
  return links.reverse();
}

/** One sweep along the network's order, from `a` as far as `b`. */
function longestWait(network: Network, order: Order, a: number, b: number, working: boolean): number {
  const { incomingStart, incoming, linkFrom, linkKind, linkLag, linkClock } = network;
  if (a === b || order.group[a] !== order.group[b]) return 0;
  const toStart = new Float64Array(network.count).fill(-1);
  const toFinish = new Float64Array(network.count).fill(-1);
  toFinish[a] = 0;
  if (order.instant?.[a] === 1) toStart[a] = 0;
  for (let at = network.order.indexOf(a) + 1; at < network.count; at++) {
    const task = network.order[at]!;
    let [start, finish] = [-1, -1];
    for (let slot = incomingStart[task]!; slot < incomingStart[task + 1]!; slot++) {
      const link = incoming[slot]!;
      const kind = linkKind[link]!;
      const lag = linkLag[link]!;
      if (lag < 0) continue;
      const sofar = (kind === FINISH_START || kind === FINISH_FINISH ? toFinish : toStart)[linkFrom[link]!]!;
      if (sofar < 0) continue;
      const wait = sofar + ((linkClock[link] === WORKING) === working ? lag : 0);
      if (kind === FINISH_START || kind === START_START) start = Math.max(start, wait);
      else finish = Math.max(finish, wait);
    }
    if (order.instant?.[task] === 1) start = Math.max(start, finish);
    toStart[task] = start;
    toFinish[task] = Math.max(start, finish);
    if (task === b) break;
  }
  return Math.max(0, toStart[b]!);
}

/** Adds the row at `from` to the row at `to`. */
function join(bits: Uint32Array, to: number, from: number, width: number): void {
  for (let word = 0; word < width; word++) bits[to + word]! |= bits[from + word]!;
}

/** Steps connected by links that hold, numbered within their group in plan order. */
function groups(network: Network): { group: Int32Array; member: Int32Array; sizes: Int32Array } {
  const { count, incomingStart, incoming, linkFrom, linkLag } = network;
  const parent = Int32Array.from({ length: count }, (_, task) => task);
  const root = (task: number): number => {
    let at = task;
    while (parent[at] !== at) at = parent[at] = parent[parent[at]!]!;
    return at;
  };
  for (let task = 0; task < count; task++) {
    for (let slot = incomingStart[task]!; slot < incomingStart[task + 1]!; slot++) {
      const link = incoming[slot]!;
      if (linkLag[link]! < 0) continue;
      const [one, other] = [root(task), root(linkFrom[link]!)];
      parent[Math.max(one, other)] = Math.min(one, other);
    }
  }
  const group = new Int32Array(count);
  const member = new Int32Array(count);
  const sizes = new Int32Array(count);
  for (let task = 0; task < count; task++) {
    group[task] = root(task);
    member[task] = sizes[group[task]!]!++;
  }
  return { group, member, sizes };
}
