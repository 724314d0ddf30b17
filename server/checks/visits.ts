// What a plan's inspections look at and hold, by steps; and which orders the library's rules speak of already.
import type { Inspection, Rule, State } from '#model/model';
import type { Model } from '#model/resolve';
import type { Results } from './check.ts';
import { keptFor, keptWhile } from './kept.ts';
import { type Doing, doingIn, type Side, sidesOf } from './sides.ts';

/** Names under a property: the same list while the inspection is. */
export const namesSeen = keptFor(
  ({ given }: Inspection): readonly string[] => given.of?.value.map(({ value }) => value.name) ?? [],
);
export const namesHeld = keptFor(
  ({ given }: Inspection): readonly string[] => given.before?.value.map(({ value }) => value.name) ?? [],
);

/** The library's own row of that name, whatever the plan says of it. */
export function libraryVisit(name: string, model: Model): Inspection | undefined {
  const slot = model.library.first.get(`inspection/${name}`);
  const row = slot === undefined ? undefined : model.element(slot);
  return row?.kind === 'inspection' ? row : undefined;
}

/** Steps, and works of them, that some names stand for: a step's name means all its works. */
export function sidesNamed(names: readonly string[], results: Results): readonly Side[] {
  const { steps } = results.timeline;
  const sides = [...sidesOf(names, doingIn(results))];
  for (const name of names) {
    const step = steps.byName.get(name);
    if (step !== undefined && !sides.some((side) => side.step === step)) sides.push(...sidesOfStep(step, results));
  }
  return sides;
}

function sidesOfStep(step: number, { timeline }: Results): readonly Side[] {
  const each = timeline.steps.list[step]!;
  const works = each.kind === 'task' ? (each.given.does?.value ?? []) : [];
  return works.length === 0 ? [{ step, work: undefined }] : works.map(({ value }) => ({ step, work: value.work.name }));
}

/** What a side goes by in a rule: its work, else its step's name. */
export function nameOfSide({ step, work }: Side, { timeline }: Results): string {
  return work ?? timeline.steps.list[step]!.name;
}

/** Whether a rule of the library or the plan speaks of the order of two names. */
export function isGoverned(
  first: string,
  then: string,
  { model, doing }: { readonly model: Model; readonly doing: Doing },
): boolean {
  return pairsIn(model.rows('rule'), doing.states).has(`${first}>${then}`);
}

/** Whether a rule asks for the order of what it names, and not only for how long may pass. */
export function asksOrder({ given }: Rule): boolean {
  return given.within === undefined && given['renewed by'] === undefined;
}

/** Every 'first>then' of the rules, states by the works that make them. */
const pairsIn = keptWhile(
  (rules: readonly Rule[], states: readonly State[]) => [rules, states],
  (rules, states): ReadonlySet<string> => {
    const made = new Map(states.map(({ name, given }) => [name, given['made by']?.value.map(({ value }) => value.name) ?? []]));
    const all = (list: Rule['given']['first']): readonly string[] =>
      (list?.value ?? []).flatMap(({ value }) => [value.name, ...(made.get(value.name) ?? [])]);
    const pairs = new Set<string>();
    for (const { given } of rules.filter(asksOrder))
      for (const first of all(given.first)) for (const then of all(given.then)) pairs.add(`${first}>${then}`);
    return pairs;
  },
);
