// Concrete called off before the inspection that its pour waits for: a mixer cannot be sent back with what it holds.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Material } from '#model/model';
import type { Timeline } from '#schedule/timeline';
import type { Check, Results } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { reaches } from '../../order.ts';

export const early = findingSort<[delivery: string, goods: string, inspection: string, pour: string]>({
  code: 'deliveries/before-inspection',
  severity: 'warning',
  say: (delivery, goods, inspection, pour) =>
    `"${delivery}" brings ${goods} for "${pour}", which waits for "${inspection}", but the delivery does not: when the inspector comes a day late or fails the work, a full mixer stands there and is paid for. Let "${delivery}" wait for "${inspection}".`,
});

export const beforeInspection: Check = {
  code: 'deliveries/before-inspection',
  about:
    'What is poured must be placed the hour it comes, so it is called off when the inspection before the pour has passed, and not when the forms are ready.',
  wrong: `trade concrete crew of 3
trade city
supplier plant
task forms does form-footings takes 2d by concrete
inspection footing-check of forms by city
delivery mixer brings concrete from plant, lead 1 day, after forms
task pour does pour-footings takes 1d by concrete after mixer
`,
  right: `trade concrete crew of 3
trade city
supplier plant
task forms does form-footings takes 2d by concrete
inspection footing-check of forms by city
delivery mixer brings concrete from plant, lead 1 day, after footing-check
task pour does pour-footings takes 1d by concrete after mixer
`,
  reads: ({ model, timeline, order }) => [
    model.list('delivery'),
    model.rows('material'),
    timeline.steps,
    timeline.links,
    timeline.timing.fixedFinish,
    order,
  ],
  run: (results) => {
    const { model, timeline } = results;
    const poured = pouredIn(model.rows('material'));
    return model.list('delivery').flatMap((delivery): readonly Finding[] => {
      const goods = delivery.given.brings?.value.find(({ value }) => poured.has(value.name));
      const at = timeline.steps.index.get(delivery.slot);
      // What keeps to a step's date by its own words is called off for that day.
      if (goods === undefined || at === undefined || delivery.given.arrives !== undefined || isDone(at, timeline)) return [];
      const visits = timeline.links.filter(({ from }) => from === at).map(({ to }) => visitsOf(to, results));
      // One load serves the first pour that it can: the visits of one are enough.
      if (visits.some((seen) => seen.every((visit) => reaches(results.order, visit.step, at)))) return [];
      const first = visits.flat().find((visit) => !reaches(results.order, visit.step, at));
      if (first === undefined) return [];
      const name = (step: number): string => timeline.steps.list[step]!.name;
      return [finding(early, delivery.place, delivery.name, goods.value.name, name(first.step), name(first.holds))];
    });
  },
};

interface Visit {
  readonly step: number;
  readonly holds: number;
}

/** The inspections still to be passed that a step waits for. */
function visitsOf(step: number, { timeline }: Results): readonly Visit[] {
  return timeline.links
    .filter(({ from, to }) => to === step && timeline.steps.list[from]!.kind === 'inspection' && !isDone(from, timeline))
    .map(({ from }) => ({ step: from, holds: step }));
}

function isDone(step: number, { timing }: Timeline): boolean {
  return !Number.isNaN(timing.fixedFinish?.[step] ?? Number.NaN);
}

const pouredIn = keptFor((materials: readonly Material[]): ReadonlySet<string> => {
  const names = new Set<string>();
  for (const { name, given } of materials)
    if (given.laid?.value === 'poured')
      for (const each of [name, ...(given.also ?? []).flatMap(({ value }) => value.map((also) => also.value.name))])
        names.add(each);
  return names;
});
