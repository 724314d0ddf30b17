// A project as plain numbers, for the search: activities with whole lengths, links between starts, and limits that are the
// same at all times. Each project knows its mirror, in which time runs backward: what is early there is late here.
import { edgeRows, orderNodes } from '#kit/graph';

/** `to` begins at the earliest `wait` after `from` begins; a finish-to-start link waits for the length of `from`. */
export interface StartLink {
  readonly from: number;
  readonly to: number;
  readonly wait: number;
}

export interface Project {
  /** Activities are numbered 0 to count - 1. */
  readonly count: number;
  readonly durations: Int32Array;
  /** Rows by activity: those it waits for stand in `before` from `beforeStart[n]` up to `beforeStart[n + 1]`. */
  readonly beforeStart: Int32Array;
  readonly before: Int32Array;
  readonly beforeWait: Int32Array;
  /** The same links by the activity they come from. */
  readonly afterStart: Int32Array;
  readonly after: Int32Array;
  readonly afterWait: Int32Array;
  /** Every activity after all it waits for. */
  readonly order: Int32Array;
  /** Whether an activity may begin before one that it waits for: then an order by starts is not yet an order to place by. */
  readonly leads: boolean;
  readonly resources: number;
  readonly capacity: Int32Array;
  /** What activity n takes of each resource stands from `needs[n * resources]`. */
  readonly needs: Int32Array;
  /** Links alone: the earliest start; and from an activity's start to the project's end at least. */
  readonly head: Int32Array;
  readonly tail: Int32Array;
  /** No schedule made by placing one after the other is longer. */
  readonly horizon: number;
  readonly packed: Packed;
}

/**
 * Needs of several resources in one whole number, a guard bit above each: one subtraction tells whether all are free.
 * What is free stands with its guards set; a guard is lost where a need is more than that.
 */
export interface Packed {
  readonly words: number;
  readonly guards: Int32Array;
  /** All that there is, with guards. */
  readonly free: Int32Array;
  /** Activity n from `needs[n * words]`. */
  readonly needs: Int32Array;
}

/** Undefined where links run in a loop, or an activity takes more than there is. */
export function projectOf(
  durations: Int32Array,
  links: readonly StartLink[],
  capacity: Int32Array,
  needs: Int32Array,
): Project | undefined {
  const count = durations.length;
  const from = Int32Array.from(links, (link) => link.from);
  const to = Int32Array.from(links, (link) => link.to);
  const { order, loops, dropped } = orderNodes(count, from, to);
  const resources = capacity.length;
  if (loops.length > 0 || needs.some((need, at) => need > capacity[at % resources]!)) return undefined;
  const incoming = edgeRows(count, to, dropped);
  const outgoing = edgeRows(count, from, dropped);
  const waits = Int32Array.from(links, ({ wait }) => wait);
  const before = incoming.items.map((edge) => from[edge]!);
  const beforeWait = incoming.items.map((edge) => waits[edge]!);
  const after = outgoing.items.map((edge) => to[edge]!);
  const afterWait = outgoing.items.map((edge) => waits[edge]!);
  const head = new Int32Array(count);
  for (const each of order) {
    for (let slot = incoming.starts[each]!; slot < incoming.starts[each + 1]!; slot++) {
      head[each] = Math.max(head[each]!, head[before[slot]!]! + beforeWait[slot]!);
    }
  }
  const tail = new Int32Array(count);
  for (let at = count - 1; at >= 0; at--) {
    const each = order[at]!;
    tail[each] = durations[each]!;
    for (let slot = outgoing.starts[each]!; slot < outgoing.starts[each + 1]!; slot++) {
      tail[each] = Math.max(tail[each]!, tail[after[slot]!]! + afterWait[slot]!);
    }
  }
  return {
    count,
    durations,
    beforeStart: incoming.starts,
    before,
    beforeWait,
    afterStart: outgoing.starts,
    after,
    afterWait,
    order,
    leads: waits.some((wait) => wait < 0) || links.some((link) => link.wait + durations[link.to]! < durations[link.from]!),
    resources,
    capacity,
    needs,
    head,
    tail,
    horizon: horizonOf(count, durations, outgoing.starts, afterWait),
    packed: pack(count, capacity, needs),
  };
}

/** The same project with time running backward: an activity that ends at t of n begins there at n - t. */
export function mirrorOf(project: Project): Project {
  const { count, durations, afterStart, after, afterWait, beforeStart, before, beforeWait } = project;
  const turned = (starts: Int32Array, others: Int32Array, waits: Int32Array, sign: 1 | -1): Int32Array => {
    const mirrored = new Int32Array(waits.length);
    for (let each = 0; each < count; each++) {
      for (let slot = starts[each]!; slot < starts[each + 1]!; slot++) {
        mirrored[slot] = waits[slot]! + sign * (durations[others[slot]!]! - durations[each]!);
      }
    }
    return mirrored;
  };
  const head = new Int32Array(count);
  const tail = new Int32Array(count);
  const mirrorWait = turned(beforeStart, before, beforeWait, -1);
  const mirror = {
    ...project,
    horizon: horizonOf(count, durations, beforeStart, mirrorWait),
    beforeStart: afterStart,
    before: after,
    beforeWait: turned(afterStart, after, afterWait, 1),
    afterStart: beforeStart,
    after: before,
    afterWait: mirrorWait,
    order: project.order.slice().reverse(),
    head,
    tail,
  };
  for (const each of mirror.order) {
    for (let slot = afterStart[each]!; slot < afterStart[each + 1]!; slot++) {
      head[each] = Math.max(head[each]!, head[after[slot]!]! + mirror.beforeWait[slot]!);
    }
  }
  for (const each of project.order) {
    tail[each] = durations[each]!;
    for (let slot = beforeStart[each]!; slot < beforeStart[each + 1]!; slot++) {
      tail[each] = Math.max(tail[each]!, tail[before[slot]!]! + mirror.afterWait[slot]!);
    }
  }
  return mirror;
}

/** Each activity keeps those after it waiting, from its start, for its length or for the longest of its waits. */
function horizonOf(count: number, durations: Int32Array, afterStart: Int32Array, afterWait: Int32Array): number {
  let horizon = 0;
  for (let each = 0; each < count; each++) {
    let most = durations[each]!;
    for (let slot = afterStart[each]!; slot < afterStart[each + 1]!; slot++) most = Math.max(most, afterWait[slot]!);
    horizon += most;
  }
  return horizon;
}

function pack(count: number, capacity: Int32Array, needs: Int32Array): Packed {
  const resources = capacity.length;
  const word = new Int32Array(resources);
  const shift = new Int32Array(resources);
  let [words, used] = [resources === 0 ? 0 : 1, 0];
  for (let each = 0; each < resources; each++) {
    const bits = 33 - Math.clz32(Math.max(0, capacity[each]!));
    if (used + bits > 32) [words, used] = [words + 1, 0];
    word[each] = words - 1;
    shift[each] = used;
    used += bits;
  }
  const packed = { words, guards: new Int32Array(words), free: new Int32Array(words), needs: new Int32Array(count * words) };
  for (let each = 0; each < resources; each++) {
    const guard = 1 << (shift[each]! + 32 - Math.clz32(Math.max(0, capacity[each]!)));
    packed.guards[word[each]!]! |= guard;
    packed.free[word[each]!]! |= guard | (capacity[each]! << shift[each]!);
    for (let activity = 0; activity < count; activity++) {
      packed.needs[activity * words + word[each]!]! |= needs[activity * resources + each]! << shift[each]!;
    }
  }
  return packed;
}
