// Milestones named like a state of the house that come without some work of that state.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Milestone } from '#model/model';
import type { Check, Results } from '../../check.ts';
import { reaches } from '../../order.ts';
import { isDone } from '../../outcomes.ts';
import { namesText } from '../../show.ts';
import { doingIn, type Side, sidesOf } from '../../sides.ts';

export const lacks = findingSort<[milestone: string, state: string, tasks: readonly string[]]>({
  code: 'work/state-milestone',
  severity: 'warning',
  say: (milestone, state, tasks) =>
    `"${milestone}" means: ${state}. But it does not wait for ${namesText(tasks)}, so whoever trusts the word starts too early. Let it wait for ${tasks.length === 1 ? 'it' : 'them'}, or write "except".`,
});

export const stateMilestone: Check = {
  code: 'work/state-milestone',
  about: 'A milestone that bears the name of a state must wait for every task that does a work of that state.',
  wrong: `trade framing crew of 3 at $52/h
task windows does set-windows takes 2d by framing
task doors does set-outside-doors takes 1d by framing
milestone dry after windows
`,
  right: `trade framing crew of 3 at $52/h
task windows does set-windows takes 2d by framing
task doors does set-outside-doors takes 1d by framing
milestone dry after windows, doors
`,
  reads: ({ model, timeline, order }) => [
    model.list('milestone'),
    model.rows('state'),
    timeline.steps,
    timeline.claims,
    timeline.progress.asOf === undefined ? undefined : timeline.timing.fixedFinish,
    order,
  ],
  run: (results) => {
    const { model, timeline } = results;
    const milestones = model.list('milestone');
    if (milestones.length === 0) return [];
    const states = new Map(model.rows('state').map((state) => [state.name, state]));
    const findings: Finding[] = [];
    for (const milestone of milestones) {
      const state = states.get(milestone.name);
      const at = timeline.steps.index.get(milestone.slot);
      if (state === undefined || at === undefined || isDone(at, timeline)) continue;
      const works = (state.given['made by']?.value ?? []).map(({ value }) => value.name);
      const missing = sidesOf(works, doingIn(results)).filter((side) => isMissing(side, at, milestone, results));
      const steps = [...new Set(missing.map(({ step }) => timeline.steps.list[step]!))];
      if (steps.length === 0) continue;
      findings.push({
        ...finding(
          lacks,
          milestone.place,
          milestone.name,
          state.label,
          steps.map(({ name }) => name),
        ),
        related: steps.map((step) => ({ place: step.place, note: `"${step.name}" may come later` })),
        ...(milestone.given.after === undefined
          ? {}
          : {
              fixes: [
                {
                  kind: 'insert-after' as const,
                  title: `Let "${milestone.name}" wait for ${namesText(steps.map(({ name }) => name))}`,
                  place: milestone.given.after.place,
                  text: steps.map(({ name }) => `, ${name}`).join(''),
                },
              ],
            }),
      });
    }
    return findings;
  },
};

function isMissing({ step, work }: Side, at: number, milestone: Milestone, { timeline, order }: Results): boolean {
  if (step === at || reaches(order, step, at) || isDone(step, timeline)) return false;
  const task = timeline.steps.list[step]!;
  if (milestone.given.without?.value.some(({ value }) => value === task.slot) === true) return false;
  const names = milestone.given.except?.value.map(({ value }) => value.name) ?? [];
  if (names.includes(task.name) || (work !== undefined && names.includes(work))) return false;
  // "except w-24" leaves out the step that sets it.
  return !timeline.claims.byStep[step]!.some(({ line }) => line.goods !== undefined && names.includes(line.goods.name));
}
