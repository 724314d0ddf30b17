// The near miss: which known words a mistyped word was probably meant to be.

/**
 * The candidates nearest to a word, nearest first, candidates at the same distance in the order given; at most `limit`.
 * Compares without case. Distance is the number of letters added, dropped, changed or swapped with a neighbour
 * (Damerau–Levenshtein, optimal string alignment); parts in another order ('batt-r21' for 'r21-batt') count as one.
 * Short words allow one mistake, words of five letters two, of nine letters three; a word itself is never offered.
 */
export function nearest(word: string, candidates: Iterable<string>, limit = 3): readonly string[] {
  const wanted = word.toLowerCase();
  const allowed = allowance(wanted.length);
  const wantedParts = partsKey(wanted);
  const found: { candidate: string; distance: number }[] = [];
  for (const candidate of candidates) {
    const known = candidate.toLowerCase();
    if (candidate === word) continue;
    const parts = wantedParts !== undefined && known.length === wanted.length ? partsKey(known) : undefined;
    const distance = parts !== undefined && parts === wantedParts ? 1 : editDistance(wanted, known, allowed);
    // A word with no letter in common is no near miss, however short it is.
    const isNear = distance <= allowed && distance < Math.max(wanted.length, known.length);
    if (isNear && !found.some((each) => each.candidate === candidate)) found.push({ candidate, distance });
  }
  // Array sort is stable, so equals stay in the order of the candidates.
  found.sort((a, b) => a.distance - b.distance);
  return found.slice(0, limit).map((each) => each.candidate);
}

/** Letters to add, drop, change or swap to make one word of the other; `limit + 1` as soon as it is known to be more. */
export function editDistance(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  if (a === b) return 0;
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  if (scratch[0].length <= b.length) scratch = rowsOf(b.length * 2);
  let [beforeLast, last, next] = scratch;
  for (let column = 0; column <= b.length; column++) last[column] = column;
  for (let row = 1; row <= a.length; row++) {
    next[0] = row;
    let least = row;
    for (let column = 1; column <= b.length; column++) {
      const same = a.charCodeAt(row - 1) === b.charCodeAt(column - 1);
      let cost = Math.min(last[column]! + 1, next[column - 1]! + 1, last[column - 1]! + (same ? 0 : 1));
      const swapped =
        row > 1 &&
        column > 1 &&
        a.charCodeAt(row - 1) === b.charCodeAt(column - 2) &&
        a.charCodeAt(row - 2) === b.charCodeAt(column - 1);
      if (swapped) cost = Math.min(cost, beforeLast[column - 2]! + 1);
      next[column] = cost;
      least = Math.min(least, cost);
    }
    if (least > limit) return limit + 1;
    [beforeLast, last, next] = [last, next, beforeLast];
  }
  return Math.min(last[b.length]!, limit + 1);
}

/** Three rows of the table that the distance is counted in; a word is compared with thousands, so they are made once. */
let scratch = rowsOf(64);
function rowsOf(length: number): [Int32Array, Int32Array, Int32Array] {
  return [new Int32Array(length + 1), new Int32Array(length + 1), new Int32Array(length + 1)];
}

function allowance(length: number): number {
  if (length < 5) return 1;
  return length < 9 ? 2 : 3;
}

/** The hyphened parts in alphabetical order, or undefined for a word of one part. */
function partsKey(word: string): string | undefined {
  return word.includes('-') ? word.split('-').sort().join('-') : undefined;
}
