// Directed graphs over whole numbers: rows of edges, an order in which everything follows what it depends on, and the
// loops that forbid one. The numbers 0, 1, 2 … stand in the order in which things were written, which settles every tie.

/** Edge numbers grouped by one of their ends: those of node n are `items[starts[n]]` up to `items[starts[n + 1]]`, in order. */
export interface EdgeRows {
  readonly starts: Int32Array;
  readonly items: Int32Array;
}

export interface Ordering {
  /** Every node once, after all it depends on; of those that could come next, the one written first. */
  readonly order: Int32Array;
  /** Loops whole and in order: each begins with the node among them written first. At most `LOOP_LIMIT`. */
  readonly loops: readonly (readonly number[])[];
  /** 1 for each edge left out of the order: those that close a loop, and those whose ends do not exist. */
  readonly dropped: Uint8Array;
}

/** Enough to mend one after the other; listing every loop of a tangle would take for ever. */
export const LOOP_LIMIT = 20;

/** Groups edges by `ends`, without those that `dropped` marks. */
export function edgeRows(count: number, ends: Int32Array, dropped: Uint8Array): EdgeRows {
  const starts = new Int32Array(count + 1);
  let kept = 0;
  for (let edge = 0; edge < ends.length; edge++) {
    if (dropped[edge] === 1) continue;
    starts[ends[edge]! + 1]!++;
    kept++;
  }
  for (let node = 0; node < count; node++) starts[node + 1]! += starts[node]!;
  const items = new Int32Array(kept);
  const next = starts.slice(0, count);
  for (let edge = 0; edge < ends.length; edge++) {
    if (dropped[edge] !== 1) items[next[ends[edge]!]!++] = edge;
  }
  return { starts, items };
}

/** Orders nodes along edges; where edges run in a loop, the one that leads back to its first node is left out and the loop told. */
export function orderNodes(count: number, from: Int32Array, to: Int32Array): Ordering {
  const dropped = new Uint8Array(from.length);
  const loops: number[][] = [];
  for (let edge = 0; edge < from.length; edge++) {
    if (!(isNode(from[edge]!, count) && isNode(to[edge]!, count))) dropped[edge] = 1;
    else if (from[edge] === to[edge]) {
      dropped[edge] = 1;
      if (loops.length < LOOP_LIMIT && !loops.some((loop) => loop[0] === from[edge])) loops.push([from[edge]!]);
    }
  }
  let order = sorted(count, from, to, dropped);
  while (order.length < count) {
    breakLoops(count, from, to, dropped, order, loops);
    order = sorted(count, from, to, dropped);
  }
  loops.sort(byFirstNodes);
  return { order, loops, dropped };
}

/** The order as far as loops allow. A heap gives the first written of those that are free. */
function sorted(count: number, from: Int32Array, to: Int32Array, dropped: Uint8Array): Int32Array {
  const outgoing = edgeRows(count, from, dropped);
  const missing = new Int32Array(count);
  for (const edge of outgoing.items) missing[to[edge]!]!++;
  const heap = new Int32Array(count);
  let size = 0;
  const push = (node: number): void => {
    let at = size++;
    for (let parent = (at - 1) >> 1; at > 0 && heap[parent]! > node; at = parent, parent = (at - 1) >> 1)
      heap[at] = heap[parent]!;
    heap[at] = node;
  };
  const pop = (): number => {
    const top = heap[0]!;
    const last = heap[--size]!;
    let at = 0;
    for (let child = 1; child < size; child = 2 * at + 1) {
      if (child + 1 < size && heap[child + 1]! < heap[child]!) child++;
      if (heap[child]! >= last) break;
      heap[at] = heap[child]!;
      at = child;
    }
    heap[at] = last;
    return top;
  };
  for (let node = 0; node < count; node++) if (missing[node] === 0) push(node);
  const order = new Int32Array(count);
  let placed = 0;
  while (size > 0) {
    const node = pop();
    order[placed++] = node;
    for (let at = outgoing.starts[node]!; at < outgoing.starts[node + 1]!; at++) {
      const next = to[outgoing.items[at]!]!;
      if (--missing[next]! === 0) push(next);
    }
  }
  return order.subarray(0, placed);
}

/** Leaves out the edges that lead back to the first node of one loop in each knot of nodes that depend on one another. */
function breakLoops(
  count: number,
  from: Int32Array,
  to: Int32Array,
  dropped: Uint8Array,
  order: Int32Array,
  loops: number[][],
): void {
  const outgoing = edgeRows(count, from, dropped);
  const incoming = edgeRows(count, to, dropped);
  const knot = knots(count, from, to, outgoing, incoming, order);
  const seen = new Uint8Array(count);
  const reachedBy = new Int32Array(count).fill(-1);
  for (let first = 0; first < count; first++) {
    if (knot[first]! < 0 || seen[knot[first]!] === 1) continue;
    // Nodes are met in plan order, so `first` is the first of its knot.
    seen[knot[first]!] = 1;
    if (loops.length >= LOOP_LIMIT) {
      dropBackward(from, to, outgoing, knot, first, dropped);
      continue;
    }
    // Breadth first: the shortest way from `first` to every node of its knot.
    const queue = [first];
    for (let at = 0; at < queue.length; at++) {
      const node = queue[at]!;
      for (let slot = outgoing.starts[node]!; slot < outgoing.starts[node + 1]!; slot++) {
        const next = to[outgoing.items[slot]!]!;
        if (next === first || knot[next] !== knot[first] || reachedBy[next] !== -1) continue;
        reachedBy[next] = node;
        queue.push(next);
      }
    }
    const told = new Set<number>();
    for (let slot = incoming.starts[first]!; slot < incoming.starts[first + 1]!; slot++) {
      const edge = incoming.items[slot]!;
      const last = from[edge]!;
      if (knot[last] !== knot[first]) continue;
      dropped[edge] = 1;
      if (told.has(last) || loops.length >= LOOP_LIMIT) continue;
      told.add(last);
      const loop: number[] = [];
      for (let node = last; node !== first; node = reachedBy[node]!) loop.push(node);
      loops.push([first, ...loop.reverse()]);
    }
  }
}

/** Past the limit: leaves out, at once, every edge of a knot that leads back in a walk from its first node. */
function dropBackward(
  from: Int32Array,
  to: Int32Array,
  outgoing: EdgeRows,
  knot: Int32Array,
  first: number,
  dropped: Uint8Array,
): void {
  const state = new Map<number, 'open' | 'done'>([[first, 'open']]);
  const path = [first];
  const slots = [outgoing.starts[first]!];
  while (path.length > 0) {
    const node = path.at(-1)!;
    const slot = slots[slots.length - 1]!++;
    if (slot >= outgoing.starts[node + 1]!) {
      state.set(node, 'done');
      path.pop();
      slots.pop();
      continue;
    }
    const edge = outgoing.items[slot]!;
    const next = to[edge]!;
    if (knot[next] !== knot[from[edge]!]) continue;
    const met = state.get(next);
    if (met === 'open') dropped[edge] = 1;
    if (met !== undefined) continue;
    state.set(next, 'open');
    path.push(next);
    slots.push(outgoing.starts[next]!);
  }
}

/**
 * For each node the number of its knot (its strongly connected component of more than one node), -1 for nodes in none:
 * one walk along the edges numbers the nodes as it leaves them, one walk against the edges gathers the knots.
 */
function knots(
  count: number,
  from: Int32Array,
  to: Int32Array,
  outgoing: EdgeRows,
  incoming: EdgeRows,
  free: Int32Array,
): Int32Array {
  const done = new Uint8Array(count);
  for (const node of free) done[node] = 1;
  const left: number[] = [];
  for (let root = 0; root < count; root++) walk(root, outgoing, to, done, (node) => left.push(node));
  const knot = new Int32Array(count).fill(-1);
  const gathered = new Uint8Array(count);
  for (const node of free) gathered[node] = 1;
  for (let at = left.length - 1; at >= 0; at--) {
    const members: number[] = [];
    walk(left[at]!, incoming, from, gathered, (node) => members.push(node));
    if (members.length > 1) for (const node of members) knot[node] = left[at]!;
  }
  return knot;
}

/** Depth first from `root` over nodes not yet done; tells each node as it is left. */
function walk(root: number, rows: EdgeRows, ends: Int32Array, done: Uint8Array, leave: (node: number) => void): void {
  if (done[root] === 1) return;
  done[root] = 1;
  const path = [root];
  const slots = [rows.starts[root]!];
  while (path.length > 0) {
    const node = path.at(-1)!;
    const slot = slots[slots.length - 1]!++;
    if (slot >= rows.starts[node + 1]!) {
      leave(node);
      path.pop();
      slots.pop();
      continue;
    }
    const next = ends[rows.items[slot]!]!;
    if (done[next] === 1) continue;
    done[next] = 1;
    path.push(next);
    slots.push(rows.starts[next]!);
  }
}

function byFirstNodes(a: readonly number[], b: readonly number[]): number {
  const differs = a.findIndex((node, at) => node !== b[at]);
  return differs < 0 ? a.length - b.length : a[differs]! - (b[differs] ?? -1);
}

function isNode(number: number, count: number): boolean {
  return number >= 0 && number < count;
}
