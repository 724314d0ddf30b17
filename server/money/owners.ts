// Which steps take each line of the take-off: found in the places that the shares of each work name, so that no line is
// looked up by itself.
import type { SharedOut } from '#schedule/share-out';
import type { Steps } from '#schedule/steps';
import type { Timeline } from '#schedule/timeline';
import type { Line } from '#takeoff/lines';

export interface Owner {
  readonly step: number;
  readonly share: number;
}

/** The step that takes a line, several of them with their shares, or nobody. */
export type Owners = (line: Line) => number | readonly Owner[] | undefined;

/** Quick for lines asked for in plan order: each work's list is then gone through once. */
export function ownersOf({ claims, steps }: Timeline): Owners {
  const cursors = new Map<string, { readonly taken: Taken; at: number }>();
  return (line) => {
    const work = line.work?.name;
    const shared = work === undefined ? undefined : claims.shares.get(work);
    if (work === undefined || shared === undefined) return undefined;
    let cursor = cursors.get(work);
    if (cursor === undefined) cursors.set(work, (cursor = { taken: takenOf(shared, steps), at: 0 }));
    const { lines, owners, several } = cursor.taken;
    let { at } = cursor;
    while (at < lines.length && lines[at] !== line) at += 1;
    // Not from the last one on: it stands before that, or nowhere.
    if (at === lines.length) at = lines.indexOf(line);
    if (at < 0) return undefined;
    cursor.at = at;
    const owner = owners[at]!;
    if (owner === NOBODY) return undefined;
    return owner === SEVERAL ? several.get(at) : owner;
  };
}

/** The lines of a work, each with the number of the step that takes it. */
interface Taken {
  readonly index: Steps['index'];
  readonly lines: readonly Line[];
  readonly owners: Int32Array;
  readonly several: ReadonlyMap<number, readonly Owner[]>;
}
const NOBODY = -1;
const SEVERAL = -2;

const kept = new WeakMap<SharedOut, Taken>();

function takenOf(shared: SharedOut, { index }: Steps): Taken {
  const known = kept.get(shared);
  if (known?.index === index) return known;
  const { lines, parts } = shared;
  const owners = new Int32Array(lines.length).fill(NOBODY);
  const firstShares = new Float64Array(lines.length);
  const several = new Map<number, Owner[]>();
  // Those who do a work come in plan order.
  for (const { doer, at, shares } of parts) {
    const step = index.get(doer.task.slot)!;
    for (let nth = 0; nth < at.length; nth++) {
      const place = at[nth]!;
      const share = shares[nth]!;
      const before = owners[place]!;
      if (before === NOBODY) {
        owners[place] = step;
        firstShares[place] = share;
        continue;
      }
      if (before !== SEVERAL) several.set(place, [{ step: before, share: firstShares[place]! }]);
      owners[place] = SEVERAL;
      several.get(place)!.push({ step, share });
    }
  }
  const taken = { index, lines, owners, several };
  kept.set(shared, taken);
  return taken;
}
