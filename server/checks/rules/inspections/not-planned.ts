// Visits that the work of a plan usually calls for, and that the plan lacks. One finding for all: towns differ.
import { finding, findingSort } from '#kit/finding';
import type { Place } from '#kit/place';
import type { Check, Results } from '../../check.ts';
import { firesIn } from '../../conditions.ts';
import { keptWhile } from '../../kept.ts';
import { isDone } from '../../outcomes.ts';
import { namesText } from '../../show.ts';
import { doingIn, sidesOf } from '../../sides.ts';
import { namesHeld, namesSeen, sidesNamed } from '../../visits.ts';

export const notHeldYet = findingSort<[visits: readonly string[], local: readonly string[], isFirst: boolean]>({
  code: 'inspections/not-planned',
  severity: 'warning',
  say: (visits, local, isFirst) =>
    [
      isFirst
        ? `No visit is planned yet. The work here usually asks for ${namesText(visits, MOST)}, and what is covered before it is passed comes open again.`
        : `The plan lacks ${namesText(visits, MOST)}, which its work usually asks for: what is covered before it is passed comes open again.`,
      local.length === 0 ? '' : `Some towns also hold ${namesText(local, MOST)}.`,
      `The town's own list decides: add each visit that it makes, and answer one that it does not with "not held" and why.`,
    ]
      .filter((part) => part !== '')
      .join(' '),
});

const MOST = 12;

export const notPlanned: Check = {
  code: 'inspections/not-planned',
  about:
    'Some work is looked at by the town before it is covered or used. Where a plan does both the work and what covers it, the library’s visit for it should be planned, or be left out with a reason: inspection NAME not held "why". A note while a plan has no visits at all.',
  wrong: `trade concrete crew of 2 at $50/h
trade city
task footing-forms does form-footings takes 1d by concrete
task footings does pour-footings takes 1d by concrete after footing-forms
inspection plumbing-final by city, after footings
`,
  right: `trade concrete crew of 2 at $50/h
trade city
task footing-forms does form-footings takes 1d by concrete
task footings does pour-footings takes 1d by concrete
inspection footing-check of footing-forms before footings by city
`,
  reads: (results) => {
    const { model, timeline } = results;
    const { steps, progress, timing } = timeline;
    return [
      model.list('inspection'),
      model.rows('inspection'),
      model.rows('need'),
      doingIn(results),
      steps,
      progress.asOf === undefined ? undefined : timing.fixedFinish,
      ...CONDITIONED.map((kind) => model.list(kind)),
      model.plan,
    ];
  },
  run: (results) => {
    const { model, timeline } = results;
    const planned = model.list('inspection');
    const names = new Set(planned.map(({ name }) => name));
    const seen = seenByVisits(results);
    const byNeeds = new Set(
      model.rows('need').flatMap(({ given }) => given['answered by']?.value.map(({ value }) => value.name) ?? []),
    );
    const lacks = model.rows('inspection').flatMap((row) => {
      if (names.has(row.name) || byNeeds.has(row.name) || !firesIn(row, model)) return [];
      const looksAt = sidesOf(namesSeen(row), doingIn(results));
      const [holds] = sidesNamed(namesHeld(row), results).filter(({ step }) => !isDone(step, timeline));
      if (looksAt.length === 0 || holds === undefined || looksAt.some(({ step }) => seen.has(step))) return [];
      return [{ row, step: holds.step }];
    });
    const usual = lacks.filter(({ row }) => row.given.local === undefined);
    const [first] = usual;
    if (first === undefined) return [];
    const local = lacks.filter(({ row }) => row.given.local !== undefined);
    const isFirst = timeline.steps.list.every(({ kind }) => kind !== 'inspection');
    const namesOf = (list: typeof lacks): readonly string[] => list.map(({ row }) => row.name);
    const placeOf = (step: number): Place => timeline.steps.list[step]!.place;
    return [
      {
        ...finding(notHeldYet, placeOf(first.step), namesOf(usual), namesOf(local), isFirst),
        severity: isFirst ? 'note' : 'warning',
        related: usual.map(({ row, step }) => ({
          place: placeOf(step),
          note: `"${row.name}" comes before "${timeline.steps.list[step]!.name}"`,
        })),
      },
    ];
  },
};

/** Kinds of things that conditions of the library's visits ask for. */
const CONDITIONED = ['site', 'room', 'foundation', 'level'] as const;

/** Steps that the plan itself says a visit looks at: one visit may stand for several. */
const seenByVisits = keptWhile(
  (results: Results) => [doingIn(results), results.model.list('inspection'), results.timeline.steps.index],
  (results): ReadonlySet<number> => {
    const seen = new Set<number>();
    for (const visit of results.model.list('inspection'))
      if (visit.given.of?.place.slot === visit.slot) for (const { step } of sidesNamed(namesSeen(visit), results)) seen.add(step);
    return seen;
  },
);
