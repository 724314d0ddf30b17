// Serial schedule generation (Kelley 1963): activities one after the other in a given order, each at the earliest moment at
// which what it waits for allows it and all that it takes is free over its whole length.
import type { Project } from './project.ts';

/** What is free at each moment, kept between passes so that nothing is made anew. */
export interface Board {
  readonly free: Int32Array;
  /** Moments from 0 up to this one may be taken; all later ones are free. */
  used: number;
}

export function boardOf(project: Project): Board {
  const { words, free } = project.packed;
  const board = new Int32Array((project.horizon + 1) * words);
  for (let at = 0; at < board.length; at++) board[at] = free[at % words]!;
  return { free: board, used: 0 };
}

/** Makes everything free again. */
export function clearBoard(project: Project, board: Board): void {
  const { words, free } = project.packed;
  if (words === 1) board.free.fill(free[0]!, 0, board.used);
  else for (let at = 0; at < board.used * words; at++) board.free[at] = free[at % words]!;
  board.used = 0;
}

/**
 * Fills `starts` and gives the project's end. `order` holds every activity after all it waits for.
 */
export function serialPass(project: Project, order: Int32Array, board: Board, starts: Int32Array): number {
  const { count, durations, beforeStart, before, beforeWait } = project;
  clearBoard(project, board);
  let end = 0;
  for (let at = 0; at < count; at++) {
    const each = order[at]!;
    let begin = 0;
    for (let slot = beforeStart[each]!, last = beforeStart[each + 1]!; slot < last; slot++) {
      const bound = starts[before[slot]!]! + beforeWait[slot]!;
      if (bound > begin) begin = bound;
    }
    const length = durations[each]!;
    begin = placeAt(project, board, each, begin, length);
    starts[each] = begin;
    if (begin + length > end) end = begin + length;
  }
  board.used = end;
  return end;
}

/** The first moment at or after `begin` at which an activity fits; it is taken there. */
export function placeAt(project: Project, board: Board, each: number, begin: number, length: number): number {
  const { words, guards, needs } = project.packed;
  if (length === 0) return begin;
  if (words !== 1) return placeInWords(project, board, each, begin, length);
  const need = needs[each]!;
  if (need === 0) return begin;
  const { free } = board;
  const guard = guards[0]!;
  let [first, known, last] = [begin, begin, begin + length];
  for (;;) {
    let moment = last - 1;
    while (moment >= known && ((free[moment]! - need) & guard) === guard) moment--;
    if (moment < known) break;
    // What lies after the moment that is taken has been looked at.
    first = moment + 1;
    known = last;
    last = first + length;
  }
  for (let moment = first; moment < last; moment++) free[moment]! -= need;
  if (last > board.used) board.used = last;
  return first;
}

function placeInWords(project: Project, board: Board, each: number, begin: number, length: number): number {
  const { words, guards, needs } = project.packed;
  const { free } = board;
  let [first, known, last] = [begin, begin, begin + length];
  const fits = (moment: number): boolean => {
    for (let word = 0; word < words; word++) {
      if (((free[moment * words + word]! - needs[each * words + word]!) & guards[word]!) !== guards[word]) return false;
    }
    return true;
  };
  for (;;) {
    let moment = last - 1;
    while (moment >= known && fits(moment)) moment--;
    if (moment < known) break;
    first = moment + 1;
    known = last;
    last = first + length;
  }
  for (let moment = first; moment < last; moment++) {
    for (let word = 0; word < words; word++) free[moment * words + word]! -= needs[each * words + word]!;
  }
  if (last > board.used) board.used = last;
  return first;
}
