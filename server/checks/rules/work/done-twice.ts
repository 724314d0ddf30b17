// Quantities that several tasks take, more than there is of them.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Task } from '#model/model';
import type { Check } from '../../check.ts';
import { namesText, quantityText } from '../../show.ts';

export const twice = findingSort<[tasks: readonly string[], work: string, much: string, label: string]>({
  code: 'work/done-twice',
  severity: 'error',
  say: (tasks, work, much, label) =>
    `${namesText(tasks)} together do more of "${work}" than there is: ${much} of ${label} ${tasks.length === 1 ? 'is' : 'are'} counted twice, and paid twice. Say which part each does: "in" a room, "of" a thing, "except", a coat, or shares that make 100%.`,
});

export const doneTwice: Check = {
  code: 'work/done-twice',
  about: 'The shares that tasks take of a quantity must not add up to more than the whole.',
  wrong: `level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
trade framing crew of 3 at $52/h
task wrap-low does wrap-walls 60% by framing
task wrap-high does wrap-walls 60% by framing after wrap-low
`,
  right: `level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
trade framing crew of 3 at $52/h
task wrap-low does wrap-walls 60% by framing
task wrap-high does wrap-walls 40% by framing after wrap-low
`,
  run: ({ model, timeline }) => {
    const findings: Finding[] = [];
    for (const { work, tasks, twice: over } of timeline.claims.byWork.values()) {
      const [first] = over;
      if (first === undefined) continue;
      const doers = tasks.filter((task) =>
        timeline.claims.byStep[timeline.steps.index.get(task.slot)!]!.some(({ line }) => line === first.line),
      );
      const last: Task | undefined = doers[doers.length - 1] ?? tasks[tasks.length - 1];
      if (last === undefined) continue;
      const value = over.reduce(
        (sum, { line, share }) => (line.item === first.line.item ? sum + line.net.value * share : sum),
        0,
      );
      const { dimension } = first.line.net;
      const much = dimension === 'number' ? String(Math.round(value * 100) / 100) : quantityText({ value, dimension }, model);
      const names = (doers.length === 0 ? tasks : doers).map(({ name }) => name);
      findings.push({
        ...finding(twice, last.place, names, work, much, first.line.label),
        related: doers.slice(0, -1).map((task) => ({ place: task.place, note: `"${task.name}" takes it too` })),
      });
    }
    return findings;
  },
};
