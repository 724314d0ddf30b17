// Visits that nothing holds back: what they are to look at is no work of the plan.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Step } from '#model/model';
import type { Model } from '#model/resolve';
import type { Network } from '#schedule/network';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';

export const unseen = findingSort<[inspection: string, work: string]>({
  code: 'inspections/nothing-to-see',
  severity: 'warning',
  say: (inspection, work) =>
    `"${inspection}" is to look at "${work}", but no task does that, so the visit does not wait for it. Add the work to a task, or take it out of "of".`,
});

export const untied = findingSort<[inspection: string, work: string]>({
  code: 'inspections/nothing-to-see',
  severity: 'warning',
  say: (inspection, work) =>
    `"${inspection}" is to come before "${work}", but no task does that, so it holds nothing back. Name the step that must wait for it.`,
});

export const adrift = findingSort<[inspection: string]>({
  code: 'inspections/nothing-to-see',
  severity: 'note',
  say: (inspection) =>
    `"${inspection}" waits for nothing, so it is dated to the first day, when there is nothing to see. Say what it looks at with "of", or when it comes with "after".`,
});

export const dropped = findingSort<[step: string, inspection: string]>({
  code: 'inspections/nothing-to-see',
  severity: 'warning',
  say: (step, inspection) =>
    `"${step}" waits for "${inspection}", which is not held here, so it waits for nothing. Let it wait for the work itself.`,
});

export const nothingToSee: Check = {
  code: 'inspections/nothing-to-see',
  about:
    'What an inspection looks at, and what it must come before, should be steps or works of the plan; and no step should wait for a visit that is not held.',
  wrong: `trade framing crew of 3 at $52/h
task walls does frame-walls takes 2d by framing
inspection frame-check of walls, set-trusses
`,
  right: `trade framing crew of 3 at $52/h
task walls does frame-walls takes 2d by framing
inspection frame-check of walls
`,
  reads: ({ model, timeline }) => [model.list('inspection'), timeline.steps, timeline.network, model.names.first, model.library],
  run: ({ model, timeline }) => {
    const { steps, claims, network } = timeline;
    const isThere = (name: string): boolean =>
      steps.byName.has(name) || (claims.byWork.get(name)?.tasks.length ?? 0) > 0 || !isWork(name);
    const isWork = (name: string): boolean => model.library.first.has(`work/${name}`) || model.names.first.has(`work/${name}`);
    const findings: Finding[] = waitingForDropped(model, steps.list);
    for (const inspection of model.list('inspection')) {
      const { given, name, slot, place } = inspection;
      if (given['not held'] !== undefined) continue;
      // What only the library's row says is no promise of the plan.
      for (const each of given.of?.place.slot === slot ? given.of.value : [])
        if (!isThere(each.value.name)) findings.push(finding(unseen, each.place, name, each.value.name));
      for (const each of given.before?.place.slot === slot ? given.before.value : [])
        if (!isThere(each.value.name)) findings.push(finding(untied, each.place, name, each.value.name));
      const at = steps.index.get(slot);
      if (at === undefined || network.count < 2 || given['not before'] !== undefined) continue;
      if (waitingIn(network)[at] === 0) findings.push(finding(adrift, place, name));
    }
    return findings;
  },
};

/** Steps whose "after" names a visit that the town does not make. */
function waitingForDropped(model: Model, steps: readonly Step[]): Finding[] {
  const names = new Map(
    model.list('inspection').flatMap(({ slot, name, given }) => (given['not held'] === undefined ? [] : [[slot, name] as const])),
  );
  if (names.size === 0) return [];
  return steps.flatMap(({ name, given }) =>
    [given.after, given['also after']].flatMap((line) =>
      (line?.value ?? []).flatMap(({ place, value }) => {
        const visit = names.get(value.step);
        return visit === undefined ? [] : [finding(dropped, place, name, visit)];
      }),
    ),
  );
}

/** 1 for steps that wait for another; links that close a ring count too. */
const waitingIn = keptFor(({ count, linkTo }: Network): Uint8Array => {
  const waits = new Uint8Array(count);
  for (const to of linkTo) waits[to] = 1;
  return waits;
});
