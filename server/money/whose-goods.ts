// Whose cost goods are, for one step or one take-off line at a time: who looks at a screenful must not have every purchase
// shared out. The answers are those of all lines together, to the cent.
import { addTo } from '#kit/gathered';
import { shareCents } from '#kit/money';
import type { Claim, WorkClaims } from '#schedule/claims';
import type { Timeline } from '#schedule/timeline';
import type { Line } from '#takeoff/lines';
import type { MaterialCost } from './material.ts';

/** Sees a part of what goods cost: of the `nth` of the costs, for the line at a place among its purchase's. */
type Visit = (cents: number, line: Line, nth: number, at: number) => void;

/** Both give whole cents, and show the parts they are the sum of. */
export interface WhoseGoods {
  /** What the goods of a line cost: mostly one part. */
  readonly ofLine: (line: Line, visit?: Visit) => number;
  /** What the goods that a step uses cost it. */
  readonly ofStep: (step: number, visit?: Visit) => number;
}

/** A step that takes a line, and how much of it. */
export interface Share {
  readonly step: number;
  readonly share: number;
}

export function whoseGoods(costs: readonly MaterialCost[], covered: ReadonlySet<Line>, timeline: Timeline): WhoseGoods {
  const { claims, steps } = timeline;
  let byItem: ReadonlyMap<string, readonly number[]> | undefined;
  // Lines stand in plan order and are mostly asked for in it: each search begins where the last one ended.
  const found = new Int32Array(costs.length);
  const owners = new Map<WorkClaims, ReadonlyMap<Line, readonly Share[]>>();

  const ofLine: WhoseGoods['ofLine'] = (line, visit) => {
    let sum = 0;
    if (covered.has(line)) return sum;
    byItem ??= placesByItem(costs);
    for (const nth of byItem.get(line.item) ?? NOWHERE) {
      const cost = costs[nth]!;
      const { lines } = cost.purchase;
      let at = lines.indexOf(line, found[nth]);
      if (at < 0) at = lines.indexOf(line);
      if (at < 0) continue;
      found[nth] = at;
      const cents = cost.byLine()[at]!;
      if (cents === 0) continue;
      sum += cents;
      visit?.(cents, line, nth, at);
    }
    return sum;
  };

  const sharesOf = (work: WorkClaims, line: Line): readonly Share[] => {
    let shares = owners.get(work);
    if (shares === undefined) {
      const byStep: (readonly [number, readonly Claim[]])[] = work.tasks.map(({ slot }) => {
        const step = steps.index.get(slot)!;
        return [step, claims.byStep[step]!];
      });
      owners.set(work, (shares = sharesByLine(byStep)));
    }
    return shares.get(line)!;
  };

  const ofSharedLine = (line: Line, step: number, shares: readonly Share[], visit: Visit | undefined): number => {
    let sum = 0;
    const weights = shares.map(({ share }) => share);
    ofLine(line, (whole, _, nth, at) => {
      const cents = shareCents(whole, weights);
      for (let owner = 0; owner < shares.length; owner++) {
        if (shares[owner]!.step !== step) continue;
        sum += cents[owner]!;
        visit?.(cents[owner]!, line, nth, at);
      }
    });
    return sum;
  };

  return {
    ofLine,
    ofStep: (step, visit) => {
      let sum = 0;
      let shared: Set<Line> | undefined;
      for (const { line, share } of claims.byStep[step]!) {
        const work = claims.byWork.get(line.work!.name)!;
        if (share === 1 && work.twice.length === 0) sum += ofLine(line, visit);
        else if (shared?.has(line) !== true) {
          (shared ??= new Set()).add(line);
          sum += ofSharedLine(line, step, sharesOf(work, line), visit);
        }
      }
      return sum;
    },
  };
}

const NOWHERE: readonly number[] = [];

/** The lines of a purchase are all of one item. */
function placesByItem(costs: readonly MaterialCost[]): ReadonlyMap<string, readonly number[]> {
  const places = new Map<string, number[]>();
  costs.forEach(({ purchase }, nth) => {
    const { item } = purchase.lines[0]!;
    addTo(places, item, nth);
  });
  return places;
}

/** The steps that take each line, in the order of their claims; a step that comes again is the same. */
export function sharesByLine(byStep: Iterable<readonly [number, readonly Claim[]]>): ReadonlyMap<Line, readonly Share[]> {
  const shares = new Map<Line, Share[]>();
  const seen = new Set<number>();
  for (const [step, claims] of byStep) {
    if (seen.has(step)) continue;
    seen.add(step);
    for (const { line, share } of claims) {
      addTo(shares, line, { step, share });
    }
  }
  return shares;
}
