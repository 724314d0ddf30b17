// Steps that stand from one to another: the wrong way round they stand for no time, and a length of their own counts for nothing.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Task } from '#model/model';
import { workBetween } from '#schedule/calendar';
import { standsFrom } from '#schedule/step-windows';
import type { Steps } from '#schedule/steps';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { doneText, startText } from '../../show.ts';

export const backwards = findingSort<[step: string, from: string, begins: string, to: string, done: string]>({
  code: 'schedule/stands',
  severity: 'warning',
  say: (step, from, begins, to, done) =>
    `"${step}" stands from "${from}" to "${to}", but "${to}" is done on ${done}, before "${from}" begins on ${begins}: so it stands for no time at all, and nothing is hired or paid for. Turn the two around, or name the steps that it really stands for.`,
});

export const given = findingSort<[step: string, days: number]>({
  code: 'schedule/stands',
  severity: 'warning',
  say: (step, days) =>
    `"${step}" stands as long as the steps that it stands for, ${days}d, so the length given here counts for nothing. Take it out, or take out "stands" and say what the step begins after.`,
});

export const standsCheck: Check = {
  code: 'schedule/stands',
  about:
    'What stands from the start of one step to the end of another, as a scaffold does, takes its dates from those two. The wrong way round it stands for no time; a length of its own is not heeded.',
  wrong: `task lap takes 3d
task paint takes 2d after lap
task scaffold stands from paint to lap
`,
  right: `task lap takes 3d
task paint takes 2d after lap
task scaffold stands from lap to paint
`,
  reads: ({ timeline }) => {
    const { steps, crews, timing } = timeline;
    return [steps, ...(standing(steps).length > 0 ? [crews, timing] : [])];
  },
  run: ({ timeline }) => {
    const { steps, crews, timing, minutesPerDay } = timeline;
    const findings: Finding[] = [];
    for (const at of standing(steps)) {
      const step = steps.list[at] as Task;
      const { from, to } = standsFrom(step, steps)!;
      const first = from[0];
      const last = to.reduce<number | undefined>(
        (latest, each) => (latest === undefined || crews.finish[each]! > crews.finish[latest]! ? each : latest),
        undefined,
      );
      if (first === undefined || last === undefined) continue;
      const { takes, stands } = step.given;
      if (takes !== undefined) {
        const worked = workBetween(timing.calendars[timing.calendarOf[at]!]!, crews.start[at]!, crews.finish[at]!);
        findings.push(finding(given, takes.place, step.name, Math.round((worked / minutesPerDay) * 10) / 10));
      }
      if (first === last || crews.finish[last]! > crews.start[first]!) continue;
      const [begins, done] = [startText(crews.start[first]!, timeline), doneText(last, timeline)];
      findings.push(finding(backwards, stands!.place, step.name, steps.list[first]!.name, begins, steps.list[last]!.name, done));
    }
    return findings;
  },
};

const standing = keptFor(({ list }: Steps): readonly number[] =>
  list.flatMap((step, at) => (step.kind === 'task' && step.given.stands !== undefined ? [at] : [])),
);
