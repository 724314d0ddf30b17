// The same link said twice is one; the first words stay.
import type { Own, PlanLink } from './links.ts';

/** Of all links in order, 1 for each that says what none before it said. */
export function distinct(owns: readonly Own[], steps: number): Uint8Array {
  let count = 0;
  for (const own of owns) count += own.links.length;
  const isFirst = new Uint8Array(count);
  // Rows of links by both ends, each a chain from the last that was met: a hash table in two arrays, without objects.
  let size = 1;
  while (size < 2 * count) size *= 2;
  const heads = new Int32Array(size).fill(-1);
  const next = new Int32Array(count);
  const met = new Array<PlanLink>(count);
  let said = 0;
  for (const own of owns) {
    for (const link of own.links) {
      const at = said++;
      met[at] = link;
      if (link.from === link.to && link.words !== 'after') continue;
      const row = (link.from * steps + link.to) % size;
      let other = heads[row]!;
      while (other >= 0 && !sameLink(met[other]!, link)) other = next[other]!;
      if (other >= 0) continue;
      isFirst[at] = 1;
      next[at] = heads[row]!;
      heads[row] = at;
    }
  }
  return isFirst;
}

function sameLink(a: PlanLink, b: PlanLink): boolean {
  return a.from === b.from && a.to === b.to && a.kind === b.kind && a.lag === b.lag && a.clock === b.clock && a.share === b.share;
}
