// Orders to place activities by: from the times of a schedule, or from any rank, always so that nothing comes before
// something that it waits for.
import type { Project } from './project.ts';

/** Who waits for whom, by number; a project is one. */
export interface LinkRows {
  readonly count: number;
  readonly beforeStart: Int32Array;
  readonly before: Int32Array;
  readonly afterStart: Int32Array;
  readonly after: Int32Array;
}

export interface Sorting {
  readonly counts: Int32Array;
  readonly missing: Int32Array;
}

export function sortingFor(project: Project): Sorting {
  return { counts: new Int32Array(project.horizon + 2), missing: new Int32Array(project.count) };
}

/**
 * Activities of `mirror` in the order in which its time meets them: the last to finish in the project comes first.
 * `starts` and `end` are the project's. Ties go by the mirror's own order.
 */
export function orderByFinish(mirror: Project, starts: Int32Array, end: number, sorting: Sorting, order: Int32Array): void {
  const { count, durations } = mirror;
  const { counts } = sorting;
  counts.fill(0, 0, end + 2);
  for (let each = 0; each < count; each++) counts[end - starts[each]! - durations[each]! + 1]!++;
  for (let at = 1; at <= end; at++) counts[at]! += counts[at - 1]!;
  for (let at = 0; at < count; at++) {
    const each = mirror.order[at]!;
    order[counts[end - starts[each]! - durations[each]!]!++] = each;
  }
  if (mirror.leads) mend(mirror, sorting, order);
}

/** Activities by rank, the lowest first, as far as links let them; ties by number. */
export function orderByRank(links: LinkRows, rank: ArrayLike<number>, order: Int32Array): void {
  const { count, beforeStart, afterStart, after } = links;
  const missing = new Int32Array(count);
  const free: number[] = [];
  for (let each = 0; each < count; each++) {
    missing[each] = beforeStart[each + 1]! - beforeStart[each]!;
    if (missing[each] === 0) free.push(each);
  }
  for (let at = 0; at < count; at++) {
    let best = 0;
    for (let other = 1; other < free.length; other++) {
      const [a, b] = [free[other]!, free[best]!];
      if (rank[a]! < rank[b]! || (rank[a] === rank[b] && a < b)) best = other;
    }
    const each = free[best]!;
    free[best] = free[free.length - 1]!;
    free.pop();
    order[at] = each;
    for (let slot = afterStart[each]!; slot < afterStart[each + 1]!; slot++) {
      if (--missing[after[slot]!]! === 0) free.push(after[slot]!);
    }
  }
}

/** Puts what stands before something that it waits for right behind it. */
function mend(project: Project, sorting: Sorting, order: Int32Array): void {
  const rank = sorting.missing;
  for (let at = 0; at < project.count; at++) rank[order[at]!] = at;
  orderByRank(project, rank.slice(), order);
}
