// Where two lists differ, so that only that is done again. Lists are compared by the objects in them, which costs next to
// nothing: none is looked into.

/** One stretch of a list that another stretch took the place of. Whatever stands before and behind it is the same. */
export interface Differing {
  readonly from: number;
  /** Where it ended, and where it ends now: the first that is the same again. */
  readonly before: number;
  readonly now: number;
}

export function differing<T>(before: readonly T[], now: readonly T[]): Differing {
  if (before === now) return { from: now.length, before: now.length, now: now.length };
  const most = Math.min(before.length, now.length);
  let from = 0;
  while (from < most && before[from] === now[from]) from += 1;
  let behind = 0;
  while (behind < most - from && before[before.length - 1 - behind] === now[now.length - 1 - behind]) behind += 1;
  return { from, before: before.length - behind, now: now.length - behind };
}

/** A copy of a list in which others stand in place of those from `from` to `to`. */
export function spliced<T>(list: readonly T[], from: number, to: number, others: readonly T[]): T[] {
  if (others.length !== to - from) return list.slice(0, from).concat(others, list.slice(to));
  const copy = list.slice();
  for (let at = 0; at < others.length; at += 1) copy[from + at] = others[at]!;
  return copy;
}

/** Whether two lists hold the very same objects: what was made from the one then stands for the other. */
export function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at += 1) if (a[at] !== b[at]) return false;
  return true;
}

/** Whether the members of two lists, each with its own, are the same objects or alike. */
export function alike<T>(a: readonly T[], b: readonly T[], isAlike: (one: T, other: T) => boolean): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at += 1) if (a[at] !== b[at] && !isAlike(a[at]!, b[at]!)) return false;
  return true;
}

/** The known list where the other holds the same, so that whoever keeps by it finds it again. */
export function keptWhereSame<T>(known: readonly T[] | undefined, now: readonly T[]): readonly T[] {
  return known !== undefined && sameList(known, now) ? known : now;
}

/** One empty list for all that have nothing: thousands of things do. */
export const NONE: readonly never[] = Object.freeze([]);
