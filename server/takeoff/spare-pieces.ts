// Waste of goods that are counted: a twisted stud is put aside whole, so it is whole pieces more, of each length its share;
// those that offcuts of the cut list give need no stick.
import { roundUp } from '#kit/quantity';
import type { Pattern, Pool } from './cutting.ts';
import { fits } from './fits.ts';

/**
 * All pieces × `waste`, rounded up once, less the pieces: given to the lengths by their counts, whole ones first and the rest
 * where most of one is owed, of equals to the longest.
 */
export function sparePieces(pool: Pool, waste: number): Pool {
  const all = [...pool.values()].reduce((sum, count) => sum + count, 0);
  const spare = roundUp(all * waste) - all;
  if (!(spare > 0)) return new Map();
  const shares = [...pool].map(([length, count]) => ({ length, share: (spare * count) / all }));
  const given = new Map(shares.map(({ length, share }) => [length, Math.floor(share)]));
  const rest = spare - [...given.values()].reduce((sum, count) => sum + count, 0);
  const owed = shares.sort((a, b) => b.share - Math.floor(b.share) - (a.share - Math.floor(a.share)) || b.length - a.length);
  for (const { length } of owed.slice(0, rest)) given.set(length, given.get(length)! + 1);
  return new Map([...given].filter(([, count]) => count > 0));
}

/** What is left of the pieces once each is taken from what the sticks leave over, where it fits; the longest choose first. */
export function notInOffcuts(pieces: Pool, patterns: readonly Pattern[]): Pool {
  const offcuts = patterns.map(({ stock, pieces: own, count }) => ({
    count,
    room: own.reduce((rest, piece) => rest - piece, stock.holds.value),
  }));
  const left = new Map<number, number>();
  for (const [length, wanted] of pieces) {
    let rest = wanted;
    for (const offcut of [...offcuts]) {
      const each = fits(length, offcut.room);
      if (each === 0 || rest === 0) continue;
      const opened = Math.min(offcut.count, Math.ceil(rest / each));
      const taken = Math.min(rest, opened * each);
      rest -= taken;
      offcut.count -= opened;
      offcuts.push({ count: opened - 1, room: offcut.room - each * length });
      offcuts.push({ count: 1, room: offcut.room - (taken - (opened - 1) * each) * length });
    }
    if (rest > 0) left.set(length, rest);
  }
  return left;
}
