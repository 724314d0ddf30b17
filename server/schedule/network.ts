// The topology of a plan's steps: which hangs on which, by what sort of link, in what order they can be worked through.
// It knows nothing of times, so an edit of a duration leaves it as it is.
import { edgeRows, orderNodes } from '#kit/graph';
import type { WaitClock } from './waits.ts';

export const FINISH_START = 0;
export const START_START = 1;
export const FINISH_FINISH = 2;
export const START_FINISH = 3;
export type LinkKind = typeof FINISH_START | typeof START_START | typeof FINISH_FINISH | typeof START_FINISH;

export interface Link {
  readonly from: number;
  readonly to: number;
  readonly kind: LinkKind;
  /** Minutes by `clock`; below zero a lead. */
  readonly lag: number;
  readonly clock: WaitClock;
  /** Begins when this share of the earlier step is done, 0 to 1, and not with its start. */
  readonly share?: number;
}

export interface Network {
  /** Steps are numbered 0 to count - 1 in plan order. */
  readonly count: number;
  /** Every step after all it hangs on; plan order settles ties. */
  readonly order: Int32Array;
  /** Links by the step they lead to and by the step they come from, without those that close a loop. */
  readonly incomingStart: Int32Array;
  readonly incoming: Int32Array;
  readonly outgoingStart: Int32Array;
  readonly outgoing: Int32Array;
  /** All links, as given and in the order given. */
  readonly linkFrom: Int32Array;
  readonly linkTo: Int32Array;
  readonly linkKind: Uint8Array;
  readonly linkLag: Int32Array;
  readonly linkClock: Uint8Array;
  /** 0 where a link begins with a start or a finish. */
  readonly linkShare: Float64Array;
  /** Each loop whole and in order, from its first step in plan order. The link back to that step is left out of all rows. */
  readonly loops: readonly (readonly number[])[];
}

/** A wait of some four thousand years: what the typed array holds. */
const LONGEST = 0x7fffffff;

/** The network of `count` steps. Links to steps that do not exist are left out. */
export function buildNetwork(count: number, links: readonly Link[]): Network {
  const linkFrom = new Int32Array(links.length);
  const linkTo = new Int32Array(links.length);
  const linkKind = new Uint8Array(links.length);
  const linkLag = new Int32Array(links.length);
  const linkClock = new Uint8Array(links.length);
  const linkShare = new Float64Array(links.length);
  for (let number = 0; number < links.length; number++) {
    const link = links[number]!;
    linkFrom[number] = link.from;
    linkTo[number] = link.to;
    linkKind[number] = link.kind;
    linkLag[number] = Math.max(-LONGEST, Math.min(LONGEST, Math.round(link.lag)));
    linkClock[number] = link.clock;
    if (link.share !== undefined) linkShare[number] = link.share;
  }
  const { order, loops, dropped } = orderNodes(count, linkFrom, linkTo);
  const incoming = edgeRows(count, linkTo, dropped);
  const outgoing = edgeRows(count, linkFrom, dropped);
  return {
    count,
    order,
    incomingStart: incoming.starts,
    incoming: incoming.items,
    outgoingStart: outgoing.starts,
    outgoing: outgoing.items,
    linkFrom,
    linkTo,
    linkKind,
    linkLag,
    linkClock,
    linkShare,
    loops,
  };
}
