// Parallel schedule generation (Kelley 1963; Kolisch 1996): time goes from finish to finish, and at each moment whatever may
// begin and finds all that it takes begins, by priority. The best there is for a single pass; it may miss every optimum.
import type { Project } from './project.ts';
import { type Board, clearBoard } from './serial-pass.ts';

/** Fills `starts` and gives the project's end. The lower `rank` goes first, ties by number. */
export function parallelPass(project: Project, rank: ArrayLike<number>, board: Board, starts: Int32Array): number {
  const { count, durations, beforeStart, before, beforeWait } = project;
  clearBoard(project, board);
  starts.fill(-1);
  const byRank = Int32Array.from({ length: count }, (_, each) => each).sort((a, b) => rank[a]! - rank[b]! || a - b);
  let left = count;
  let end = 0;
  let now = 0;
  while (left > 0) {
    let next = Number.POSITIVE_INFINITY;
    let begun = true;
    while (begun) {
      begun = false;
      for (let at = 0; at < left; at++) {
        const each = byRank[at]!;
        let ready = 0;
        for (let slot = beforeStart[each]!; slot < beforeStart[each + 1]! && ready < Number.POSITIVE_INFINITY; slot++) {
          const start = starts[before[slot]!]!;
          ready = start < 0 ? Number.POSITIVE_INFINITY : Math.max(ready, start + beforeWait[slot]!);
        }
        if (ready > now) {
          next = Math.min(next, ready);
          continue;
        }
        if (!takes(project, board, each, now)) continue;
        starts[each] = now;
        end = Math.max(end, now + durations[each]!);
        next = Math.min(next, now + Math.max(1, durations[each]!));
        byRank.copyWithin(at, at + 1, left);
        left--;
        at--;
        // What has no length, or leads, may let another begin at once.
        begun = true;
      }
    }
    // Something begun earlier may end before any of those begun now.
    for (let each = 0; each < count; each++) {
      if (starts[each]! >= 0 && starts[each]! + durations[each]! > now) next = Math.min(next, starts[each]! + durations[each]!);
    }
    now = next === Number.POSITIVE_INFINITY ? now + 1 : next;
  }
  board.used = Math.max(board.used, end);
  return end;
}

/** Takes what an activity needs from `now` on, where all of it is free. */
function takes(project: Project, board: Board, each: number, now: number): boolean {
  const { words, guards, needs } = project.packed;
  const length = project.durations[each]!;
  for (let at = now * words; at < (now + length) * words; at++) {
    const word = at % words;
    if (((board.free[at]! - needs[each * words + word]!) & guards[word]!) !== guards[word]) return false;
  }
  for (let at = now * words; at < (now + length) * words; at++) board.free[at]! -= needs[each * words + (at % words)]!;
  board.used = Math.max(board.used, now + length);
  return true;
}
