// Work that hides what a visit is to see, and is not held until the visit has passed: what would come out again.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Inspection, WorkKind } from '#model/model';
import type { Check, Results } from '../../check.ts';
import { keptFor, keptWhile } from '../../kept.ts';
import { meetAt } from '../../meetings.ts';
import { reaches } from '../../order.ts';
import { isWorse, type Outcome, outcomeOf } from '../../outcomes.ts';
import { type Scope, scopeOf, scopesOf } from '../../scopes.ts';
import { finishText, startText } from '../../show.ts';
import { doingIn, type Side, sidesOf } from '../../sides.ts';
import { tornOutText } from '../../torn-out.ts';
import { isGoverned, libraryVisit, nameOfSide, namesHeld, namesSeen, sidesNamed } from '../../visits.ts';

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

interface Covered {
  readonly cover: Side;
  /** What it hides there. */
  readonly hidden: string;
}

interface Told extends Covered {
  readonly outcome: Outcome;
}

interface VisitCovered {
  readonly visit: Inspection;
  readonly at: number;
  readonly coverings: readonly Covered[];
}

/** For each visit what covers what it sees, and of which no rule speaks: whatever links and days say. */
const coveringsOf = keptWhile(
  (results: Results) => {
    const { model, timeline } = results;
    const rows = [model.rows('work'), model.rows('rule')] as const;
    return [doingIn(results), model.list('inspection'), ...rows, timeline.steps.index, scopesOf(results)];
  },
  (results): readonly VisitCovered[] =>
    results.model.list('inspection').flatMap((visit) => {
      const at = results.timeline.steps.index.get(visit.slot);
      const coverings = at === undefined ? [] : coveringsAt(visit, at, results);
      return coverings.length === 0 ? [] : [{ visit, at: at!, coverings }];
    }),
);

function coveringsAt(visit: Inspection, at: number, results: Results): readonly Covered[] {
  const { model, timeline } = results;
  const doing = doingIn(results);
  const scopes = scopesOf(results);
  const sides = sidesNamed(namesSeen(visit), results);
  const seen = sides.map((side) => ({ step: side.step, name: nameOfSide(side, results), scope: scopeOf(side, scopes) }));
  const coverings: Covered[] = [];
  /** `hides` are the works that it hides; all that is seen, where the library holds it for the visit. */
  const add = (cover: Side, hides: ReadonlySet<string> | undefined): void => {
    if (cover.step === at || seen.some(({ step }) => step === cover.step)) return;
    const scope = scopeOf(cover, scopes);
    const under = seen.find((each) => (hides?.has(each.name) ?? true) && meet(each.scope, scope));
    if (under === undefined || isGoverned(visit.name, nameOfSide(cover, results), { model, doing })) return;
    coverings.push({ cover, hidden: under.name });
  };
  const row = libraryVisit(visit.name, model);
  if (row !== undefined) {
    // The plan may hold less than the library does for a visit of that name.
    for (const cover of sidesOf(namesHeld(row), doing))
      if (timeline.steps.list[cover.step]!.kind === 'task') add(cover, undefined);
    return coverings;
  }
  for (const { name, hides } of hiding(model.rows('work')))
    if (seen.some((each) => hides.has(each.name))) for (const cover of doing.doers.get(name) ?? []) add(cover, hides);
  return coverings;
}

/** The works that hide others, with what they hide. */
const hiding = keptFor((works: readonly WorkKind[]) =>
  works.flatMap(({ name, given }) =>
    given.hides === undefined ? [] : [{ name, hides: new Set(given.hides.value.map(({ value }) => value.name)) }],
  ),
);

/** In one room and on one thing, as far as each is known: what belongs to no room may still be in another house. */
function meet(one: Scope, other: Scope): boolean {
  return meetAt(one.elements, other.elements) && meetAt(one.rooms, other.rooms);
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
