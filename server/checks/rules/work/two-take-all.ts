// Two tasks that each take all of one kind of work that no other task has claimed.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';

export const rivals = findingSort<[rival: string, first: string, work: string]>({
  code: 'work/two-take-all',
  severity: 'error',
  say: (rival, first, work) =>
    `"${first}" and "${rival}" both take all of "${work}" that is left, so nobody knows who does it, and "${rival}" gets nothing to do. Say which part each does: "in" a room, "of" a thing, a coat, or shares like 60%.`,
});

export const twoTakeAll: Check = {
  code: 'work/two-take-all',
  about: 'Of the tasks that do one kind of work only one may leave open which part it does: it takes the rest.',
  wrong: `level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
trade framing crew of 3 at $52/h
task wrap does wrap-walls by framing
task wrap-too does wrap-walls by framing after wrap
`,
  right: `level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
trade framing crew of 3 at $52/h
task wrap does wrap-walls 60% by framing
task wrap-too does wrap-walls by framing after wrap
`,
  run: ({ timeline }) => {
    const findings: Finding[] = [];
    for (const { work, tasks, rivals: others } of timeline.claims.byWork.values()) {
      const [rival] = others;
      if (rival === undefined) continue;
      const taken = tasks.some((task) =>
        timeline.claims.byStep[timeline.steps.index.get(task.slot)!]!.some(
          ({ line }) => line.work?.name === work && line.onlyIfDone === undefined,
        ),
      );
      if (!taken) continue;
      const first = tasks.find((task) => !others.includes(task) && isWhole(task)) ?? tasks[0]!;
      findings.push({
        ...finding(rivals, rival.place, rival.name, first.name, work),
        related: [first, ...others.slice(1)].map((task) => ({ place: task.place, note: `"${task.name}" takes all of it` })),
      });
    }
    return findings;
  },
};

function isWhole({
  given,
}: {
  readonly given: { readonly in?: unknown; readonly of?: unknown; readonly on?: unknown };
}): boolean {
  return given.in === undefined && given.of === undefined && given.on === undefined;
}
