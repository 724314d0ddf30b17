// Goods made to measure whose delivery does not wait for what is measured: they are cut to the drawing, and the house is not.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Timeline } from '#schedule/timeline';
import { broughtGoods } from '../../brought.ts';
import type { Check } from '../../check.ts';
import { meetAt } from '../../meetings.ts';
import { reaches } from '../../order.ts';
import { isDone } from '../../outcomes.ts';
import { scopeOf, scopesOf } from '../../scopes.ts';
import { namesText } from '../../show.ts';

export const early = findingSort<[delivery: string, goods: string, steps: readonly string[]]>({
  code: 'deliveries/measured-too-soon',
  severity: 'note',
  say: (delivery, goods, steps) =>
    `"${delivery}" brings ${goods}, which is made to what stands, but it does not wait for ${namesText(steps)}: whoever orders it measures the drawing, and what is cut an inch short is bought twice. Write "measured after ${steps.join(', ')}" with its lead.`,
});

export const measuredTooSoon: Check = {
  code: 'deliveries/measured-too-soon',
  about:
    'Rows of the library say of some goods that they are made to measure, and after which works that can be done: metal roofing to the decked roof, tops to the cabinets. A delivery of them waits for that work. It is a warning where the goods come before it is done.',
  wrong: `plan p
  start 2027-03-01
level main
  footprint 24' x 32'
roof main over main
  shape gable 6:12
  roofing standing-seam
supplier yard
trade crew crew of 2
task deck does sheathe-roof by crew
delivery metal brings standing-seam from yard, lead 5 weeks
task cover does lay-roofing by crew after deck, metal
`,
  right: `plan p
  start 2027-03-01
level main
  footprint 24' x 32'
roof main over main
  shape gable 6:12
  roofing standing-seam
supplier yard
trade crew crew of 2
task deck does sheathe-roof by crew
delivery metal brings standing-seam from yard, lead 5 weeks, measured after deck
task cover does lay-roofing by crew after deck, metal
`,
  reads: ({ timeline, model, order }) => [
    broughtGoods(model, timeline),
    timeline.claims.byWork,
    scopesOf({ timeline, model }),
    timeline.timing.fixedFinish,
    order,
  ],
  run: (results) => {
    const { model, timeline, order } = results;
    const scopes = scopesOf(results);
    return broughtGoods(model, timeline).flatMap(({ dates: { delivery, step: comes }, goods }): readonly Finding[] => {
      for (const { row, label, users } of goods) {
        const works = row?.kind === 'material' || row?.kind === 'fixture' ? row.given['measured after'] : undefined;
        if (works === undefined) continue;
        const missing = works.value.flatMap(({ value: work }) =>
          stepsOf(work.name, timeline).filter((step) => {
            if (reaches(order, step, comes) || isDone(step, timeline)) return false;
            // Of several houses, in one of those that the goods are for.
            const own = scopeOf({ step, work: work.name }, scopes).buildings;
            return (
              users.length === 0 ||
              users.some((user) => [...scopes.bySteps[user]!.values()].some((of) => meetAt(own, of.buildings)))
            );
          }),
        );
        if (missing.length === 0) continue;
        const late = missing.some((step) => timeline.crews.finish[step]! > timeline.crews.start[comes]!);
        const names = missing.map((step) => timeline.steps.list[step]!.name);
        const found = finding(early, delivery.place, delivery.name, label, names);
        return [late ? { ...found, severity: 'warning' } : found];
      }
      return [];
    });
  },
};

/** In plan order. */
function stepsOf(work: string, { claims, steps }: Timeline): readonly number[] {
  return (claims.byWork.get(work)?.tasks ?? []).map(({ slot }) => steps.index.get(slot)!);
}
