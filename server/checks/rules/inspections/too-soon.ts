// Visits that come before the work is done that such a visit looks at, where the plan names less of it than the library.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Check, Results } from '../../check.ts';
import { keptWhile } from '../../kept.ts';
import { meetAt } from '../../meetings.ts';
import { reaches } from '../../order.ts';
import { isWorse, type Outcome, outcomeOf } from '../../outcomes.ts';
import { type Scopes, scopeOf, scopesOf } from '../../scopes.ts';
import { finishText, startText } from '../../show.ts';
import { doingIn, type Side, sidesOf } from '../../sides.ts';
import { isGoverned, libraryVisit, nameOfSide, namesSeen, sidesNamed } from '../../visits.ts';

export const early = findingSort<[visit: string, visitDay: string, work: string, workDay: string]>({
  code: 'inspections/too-soon',
  severity: 'error',
  say: (visit, visitDay, work, workDay) =>
    `"${visit}" comes on ${visitDay}, but "${work}", which such a visit looks at, is done on ${workDay}: it fails, and often costs a fee. Name the step under "of", or call later.`,
});

export const earlyByLuck = findingSort<[visit: string, visitDay: string, work: string, workDay: string]>({
  code: 'inspections/too-soon',
  severity: 'warning',
  say: (visit, visitDay, work, workDay) =>
    `"${visit}" (${visitDay}) comes after "${work}" (${workDay}), which such a visit looks at, only by luck. Name the step under "of".`,
});

export const tooSoon: Check = {
  code: 'inspections/too-soon',
  gathers: true,
  about:
    'An inspection must come when all is there that it looks at. Where a plan names only a part under "of", the library’s row of that name says what else is usual; what another visit of the plan looks at is left to that one.',
  wrong: `trade concrete crew of 2 at $50/h
trade city
task wall-forms does form-stem-walls takes 2d by concrete
task wall-steel does tie-stem-wall-steel takes 3d by concrete, not before 2027-05-20, to the end
inspection wall-check of wall-forms by city, to the end
`,
  right: `trade concrete crew of 2 at $50/h
trade city
task wall-forms does form-stem-walls takes 2d by concrete
task wall-steel does tie-stem-wall-steel takes 3d by concrete, not before 2027-05-20
inspection wall-check of wall-forms, wall-steel by city, to the end
`,
  reads: (results) => {
    const { crews, timing, claims, steps } = results.timeline;
    return [unseenWorkOf(results), steps, crews, timing, claims, results.order];
  },
  run: (results) =>
    unseenWorkOf(results).flatMap(({ at, sides }) => {
      let worst: { readonly outcome: Outcome; readonly side: Side } | undefined;
      for (const side of sides) {
        if (reaches(results.order, side.step, at)) continue;
        const outcome = outcomeOf(side.step, at, false, undefined, results.timeline);
        if (outcome !== undefined && (worst === undefined || isWorse(outcome, worst.outcome))) worst = { outcome, side };
      }
      return worst === undefined ? [] : [told(at, worst.outcome, worst.side, results)];
    }),
};

interface Unseen {
  readonly at: number;
  readonly sides: readonly Side[];
}

/** For each visit the work that such a one looks at and that the plan leaves to none: whatever links and days say. */
const unseenWorkOf = keptWhile(
  (results: Results) => {
    const { model, timeline } = results;
    const { buildings } = scopesOf(results).since;
    return [doingIn(results), model.list('inspection'), model.rows('rule'), timeline.steps.index, buildings];
  },
  (results): readonly Unseen[] => {
    const { model, timeline } = results;
    const doing = doingIn(results);
    const scopes = scopesOf(results);
    const visits = model.list('inspection');
    const seenBy = visits.map((visit) => sidesNamed(namesSeen(visit), results));
    const stepsSeen = seenBy.map((sides) => new Set(sides.map(({ step }) => step)));
    return visits.flatMap((visit, nth) => {
      const at = timeline.steps.index.get(visit.slot);
      const row = libraryVisit(visit.name, model);
      if (at === undefined || row === undefined || visit.given.of?.place.slot !== visit.slot) return [];
      // Of a work that it looks at somewhere the plan has said which part; what another visit looks at is left to that one.
      const works = new Set(seenBy[nth]!.map(({ work }) => work));
      const sides = sidesOf(namesSeen(row), doing).filter(
        (side) =>
          side.step !== at &&
          !works.has(side.work) &&
          !stepsSeen.some((steps) => steps.has(side.step)) &&
          !isGoverned(nameOfSide(side, results), visit.name, { model, doing }) &&
          meet(side, at, scopes),
      );
      return sides.length === 0 ? [] : [{ at, sides }];
    });
  },
);

/** On a part of the house that the visit is at. */
function meet(side: Side, visit: number, scopes: Scopes): boolean {
  return meetAt(scopeOf(side, scopes).buildings, scopeOf({ step: visit, work: undefined }, scopes).buildings);
}

function told(at: number, outcome: Outcome, side: Side, { timeline }: Results): Finding {
  const [visit, step] = [timeline.steps.list[at]!, timeline.steps.list[side.step]!];
  const visitDay = startText(timeline.crews.start[at]!, timeline);
  const workDay = finishText(timeline.crews.finish[side.step]!, timeline);
  const sort = outcome.kind === 'broken' ? early : earlyByLuck;
  return {
    ...finding(sort, visit.place, visit.name, visitDay, step.name, workDay),
    related: [{ place: step.place, note: `"${step.name}" is not done then` }],
  };
}
