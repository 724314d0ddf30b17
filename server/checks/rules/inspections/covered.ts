// Work that hides what a visit is to see, and is not held until the visit has passed: what would come out again.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Inspection } from '#model/model';
import type { Check, Results } from '../../check.ts';
import { type Covered, coveringsOf } from '../../coverings.ts';
import { reaches } from '../../order.ts';
import { isWorse, type Outcome, outcomeOf } from '../../outcomes.ts';
import { finishText, startText } from '../../show.ts';
import { tornOutText } from '../../torn-out.ts';

export const coveredOver = findingSort<
  [cover: string, coverDay: string, visit: string, visitDay: string, hidden: string, again: string]
>({
  code: 'inspections/covered',
  severity: 'error',
  say: (cover, coverDay, visit, visitDay, hidden, again) =>
    `"${cover}" begins on ${coverDay} and hides "${hidden}", before "${visit}" has passed on ${visitDay}: ${again === '' ? 'it' : again} would come out again for the inspector. Hold it until the visit has passed: name it under "before".`,
});

export const coveredByLuck = findingSort<[cover: string, coverDay: string, visit: string, visitDay: string, hidden: string]>({
  code: 'inspections/covered',
  severity: 'warning',
  say: (cover, coverDay, visit, visitDay, hidden) =>
    `"${cover}" (${coverDay}) hides "${hidden}" and comes after "${visit}" (${visitDay}) only by luck: a late visit finds it covered. Name it under "before".`,
});

export const covered: Check = {
  code: 'inspections/covered',
  gathers: true,
  about:
    'What an inspection is to see must stay open until it has passed. A work of the library says what it hides, and the library’s visits what must wait for them; a plan’s own visit, or one that it holds less by, is looked at by both.',
  wrong: `trade masons crew of 2 at $50/h
trade city
work lath "Wire lath"
work stucco "Stucco"
  hides lath
task lath does lath takes 3d by masons
inspection lath-visit of lath by city, to the end
task scratch does stucco takes 2d by masons after lath
`,
  right: `trade masons crew of 2 at $50/h
trade city
work lath "Wire lath"
work stucco "Stucco"
  hides lath
task lath does lath takes 3d by masons
inspection lath-visit of lath before scratch by city
task scratch does stucco takes 2d by masons after lath
`,
  reads: (results) => {
    const { crews, timing, claims, steps } = results.timeline;
    return [coveringsOf(results), steps, crews, timing, claims, results.order, results.model.settings];
  },
  run: (results) => {
    const findings: Finding[] = [];
    for (const { visit, at, coverings } of coveringsOf(results)) {
      const worst = new Map<number, Told>();
      for (const covering of coverings) {
        const { step } = covering.cover;
        if (reaches(results.order, at, step)) continue;
        const outcome = outcomeOf(at, step, false, undefined, results.timeline);
        const before = worst.get(step);
        if (outcome !== undefined && (before === undefined || isWorse(outcome, before.outcome)))
          worst.set(step, { ...covering, outcome });
      }
      for (const each of worst.values()) findings.push(told(visit, at, each, results));
    }
    return findings;
  },
};

interface Told extends Covered {
  readonly outcome: Outcome;
}

function told(visit: Inspection, at: number, { outcome, cover, hidden }: Told, { timeline, model }: Results): Finding {
  const step = timeline.steps.list[cover.step]!;
  const coverDay = startText(timeline.crews.start[cover.step]!, timeline);
  const visitDay = finishText(timeline.crews.finish[at]!, timeline);
  const works = new Set(cover.work === undefined ? [] : [cover.work]);
  const again = tornOutText(cover.step, works, timeline, model);
  const made =
    outcome.kind === 'broken'
      ? finding(coveredOver, step.place, step.name, coverDay, visit.name, visitDay, hidden, again)
      : finding(coveredByLuck, step.place, step.name, coverDay, visit.name, visitDay, hidden);
  return { ...made, related: [{ place: visit.place, note: `"${visit.name}", which is to see it open` }] };
}
