// What no schedule can be shorter than: the longest chain of links, the work of each resource, and the shortest end at
// which no stretch of time is overfull (energetic reasoning: Baptiste, Le Pape & Nuijten 1999). Where a schedule meets
// the bound, it is the best there is.
import type { Project } from './project.ts';

/** `within`: an end that is known to be possible; the bound is never above it. */
export function lowerBound(project: Project, within = Number.POSITIVE_INFINITY): number {
  let bound = Math.max(longestChain(project), mostWork(project));
  const windows = windowsOf(project);
  while (bound < within && isOverfull(project, bound, windows)) bound++;
  return bound;
}

/** The end by links alone. */
export function longestChain({ count, head, tail }: Project): number {
  let longest = 0;
  for (let each = 0; each < count; each++) longest = Math.max(longest, head[each]! + tail[each]!);
  return longest;
}

/** For each resource the work that asks for it, between the least wait before any of it and the least after it. */
export function mostWork({ count, durations, resources, capacity, needs, head, tail }: Project): number {
  let most = 0;
  for (let resource = 0; resource < resources; resource++) {
    let work = 0;
    let before = Number.POSITIVE_INFINITY;
    let after = Number.POSITIVE_INFINITY;
    for (let each = 0; each < count; each++) {
      const need = needs[each * resources + resource]!;
      if (need === 0 || durations[each] === 0) continue;
      work += need * durations[each]!;
      before = Math.min(before, head[each]!);
      after = Math.min(after, tail[each]! - durations[each]!);
    }
    if (work > 0) most = Math.max(most, before + Math.ceil(work / capacity[resource]!) + after);
  }
  return most;
}

interface Windows {
  readonly sums: Float64Array;
  /** Only activities of some length that take anything can fill a stretch. */
  readonly busy: Int32Array;
}

function windowsOf({ count, durations, resources, needs }: Project): Windows {
  const takes = (each: number): boolean =>
    durations[each]! > 0 && needs.subarray(each * resources, (each + 1) * resources).some((need) => need > 0);
  const busy = Int32Array.from({ length: count }, (_, each) => each).filter(takes);
  return { sums: new Float64Array(resources), busy };
}

/**
 * Whether a project that ends at `end` would ask more of a resource in some stretch than there is: each activity is there
 * for at least as long as when it begins as early, or as late, as links let it.
 */
function isOverfull(project: Project, end: number, { sums, busy }: Windows): boolean {
  const { durations, resources, capacity, needs, head, tail } = project;
  // An activity's part in a stretch changes its slope where one of these begins or ends: others need not be looked at.
  const openings = new Set<number>();
  const closings = new Set<number>();
  for (const each of busy) {
    openings.add(head[each]!).add(end - tail[each]!);
    closings.add(head[each]! + durations[each]!).add(end - tail[each]! + durations[each]!);
  }
  for (const from of openings) {
    for (const to of closings) {
      if (to <= from) continue;
      sums.fill(0);
      for (const each of busy) {
        const length = durations[each]!;
        const early = head[each]! + length - from;
        const late = to - (end - tail[each]!);
        const part = Math.min(to - from, length, early, late);
        if (part <= 0) continue;
        for (let resource = 0; resource < resources; resource++) sums[resource]! += part * needs[each * resources + resource]!;
      }
      for (let resource = 0; resource < resources; resource++) {
        if (sums[resource]! > capacity[resource]! * (to - from)) return true;
      }
    }
  }
  return false;
}
