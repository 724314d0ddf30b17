// A project of plain numbers as something to search: forward, and backward in its mirror.
import { longestChain, lowerBound, mostWork } from './lower-bounds.ts';
import { orderByFinish, sortingFor } from './orders.ts';
import { parallelPass } from './parallel-pass.ts';
import { mirrorOf, type Project } from './project.ts';
import type { Direction, Searched } from './search.ts';
import { boardOf, serialPass } from './serial-pass.ts';

export function searchedProject(project: Project): Searched {
  const forward = boardOf(project);
  const mirror = mirrorOf(project);
  const sorting = sortingFor(project.horizon > mirror.horizon ? project : mirror);
  const direction = (each: Project, board: typeof forward): Direction => ({
    links: each,
    place: (order, starts) => serialPass(each, order, board, starts),
    meet: (starts, end, order, times) => {
      orderByFinish(each, starts, end, sorting, order);
      for (let one = 0; one < each.count; one++) times[one] = end - starts[one]! - each.durations[one]!;
    },
  });
  const end = longestChain(project);
  return {
    width: project.count,
    forward: direction(project, forward),
    backward: direction(mirror, boardOf(mirror)),
    byRank: (rank, starts) => parallelPass(project, rank, forward, starts),
    latest: Float64Array.from(project.tail, (tail, each) => end - tail + project.durations[each]!),
    bound: (within) => (within === undefined ? Math.max(end, mostWork(project)) : lowerBound(project, within)),
  };
}
