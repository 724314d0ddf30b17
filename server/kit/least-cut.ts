// The cheapest set of arcs whose removal parts a source from a sink, where each arc that crosses forward costs its most
// and each that crosses back earns its least (maximum flow with lower bounds: Ford & Fulkerson; Dinitz 1970).

export interface Arc {
  readonly from: number;
  readonly to: number;
  /** Whole numbers; `UNLIMITED` for an arc that cannot be cut. */
  readonly most: number;
  readonly least: number;
}

export const UNLIMITED = 1e12;

/**
 * 1 for each node on the source's side of a least cut; undefined where every cut has an arc that cannot be cut, or no
 * flow keeps to the lower bounds.
 */
export function leastCut(nodes: number, source: number, sink: number, arcs: readonly Arc[]): Uint8Array | undefined {
  const net = emptyNet(nodes + 2);
  const [over, under] = [nodes, nodes + 1];
  const owed = new Float64Array(nodes);
  let demand = 0;
  for (const { from, to, most, least } of arcs) {
    addEdge(net, from, to, most - least);
    owed[to]! += least;
    owed[from]! -= least;
  }
  const back = addEdge(net, sink, source, UNLIMITED * 4);
  for (let node = 0; node < nodes; node++) {
    if (owed[node]! > 0) {
      addEdge(net, over, node, owed[node]!);
      demand += owed[node]!;
    } else if (owed[node]! < 0) addEdge(net, node, under, -owed[node]!);
  }
  if (demand > 0 && fill(net, over, under) < demand) return undefined;
  // The feasible flow stands; the way back from sink to source is closed, and more is sent.
  const sent = net.room[back + 1]!;
  net.room[back] = 0;
  net.room[back + 1] = 0;
  if (sent + fill(net, source, sink) >= UNLIMITED) return undefined;
  const level = levels(net, source);
  return Uint8Array.from({ length: nodes }, (_, node) => (level[node]! >= 0 ? 1 : 0));
}

interface Net {
  readonly size: number;
  /** By node its edges; edge n and n ^ 1 are each other's way back. */
  readonly edges: number[][];
  readonly to: number[];
  readonly room: number[];
}

function emptyNet(size: number): Net {
  return { size, edges: Array.from({ length: size }, () => []), to: [], room: [] };
}

function addEdge({ edges, to, room }: Net, from: number, target: number, most: number): number {
  const edge = to.length;
  to.push(target, from);
  room.push(most, 0);
  edges[from]!.push(edge);
  edges[target]!.push(edge + 1);
  return edge;
}

/** Sends all that goes from one node to another; gives back how much, no more than `UNLIMITED`. */
function fill(net: Net, source: number, sink: number): number {
  let sent = 0;
  while (sent < UNLIMITED) {
    const level = levels(net, source);
    if (level[sink]! < 0) break;
    const next = new Int32Array(net.size);
    for (
      let more = push(net, source, sink, UNLIMITED, level, next);
      more > 0;
      more = push(net, source, sink, UNLIMITED, level, next)
    )
      sent += more;
  }
  return sent;
}

function levels({ size, edges, to, room }: Net, source: number): Int32Array {
  const level = new Int32Array(size).fill(-1);
  level[source] = 0;
  const waiting = [source];
  for (const node of waiting) {
    for (const edge of edges[node]!) {
      const other = to[edge]!;
      if (room[edge]! <= 0 || level[other]! >= 0) continue;
      level[other] = level[node]! + 1;
      waiting.push(other);
    }
  }
  return level;
}

function push(net: Net, node: number, sink: number, most: number, level: Int32Array, next: Int32Array): number {
  if (node === sink) return most;
  const own = net.edges[node]!;
  for (; next[node]! < own.length; next[node]!++) {
    const edge = own[next[node]!]!;
    const other = net.to[edge]!;
    if (net.room[edge]! <= 0 || level[other] !== level[node]! + 1) continue;
    const sent = push(net, other, sink, Math.min(most, net.room[edge]!), level, next);
    if (sent <= 0) continue;
    net.room[edge]! -= sent;
    net.room[edge ^ 1]! += sent;
    return sent;
  }
  return 0;
}
