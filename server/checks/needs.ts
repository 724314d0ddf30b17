// Work that a plan calls for and no task does: the library's needs against what the plan holds and who does what. Only where
// the part of the job that calls is planned at all; and not where a measured quantity without an owner says so already.
import { sameList } from '#kit/differing';
import { type Finding, type FindingSort, findingSort } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import type { Element, ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import type { KindWord } from '#model/words';
import type { Results } from './check.ts';
import { firesIn, holds } from './conditions.ts';
import { editionOf, sourceIn } from './editions.ts';
import { keptFor } from './kept.ts';
import { isDone } from './outcomes.ts';
import { type Scopes, scopeOf, scopesOf } from './scopes.ts';
import { spoken } from './sequence-messages.ts';
import { type Doing, doingIn, type Side, sidesOf } from './sides.ts';

export type Need = ElementOf<'need'>;

export const lacking: FindingSort<[need: Need, caller: string, answers: readonly string[]]> = findingSort<
  [need: Need, caller: string, answers: readonly string[]]
>({
  code: 'missing/work',
  severity: 'note',
  say: (need, caller, answers) => spoken(need, `${need.label}: "${caller}" calls for ${answerText(answers)}.`, ''),
});

function answerText(answers: readonly string[]): string {
  const [first, second] = answers;
  if (first === undefined) return 'it';
  return second === undefined ? `"${first}", and no task does it` : `"${first}" or "${second}", and the plan has neither`;
}

export interface Missing {
  readonly findings: readonly Finding[];
  /** Names of the works that are told of. */
  readonly works: ReadonlySet<string>;
}

export interface NeedsMemory {
  last: { readonly reads: readonly unknown[]; readonly missing: Missing } | undefined;
}
export function needsMemory(): NeedsMemory {
  return { last: undefined };
}

const NONE: Missing = { findings: [], works: new Set() };

export function missingWork(results: Results, memory: NeedsMemory): Missing {
  const { model, timeline } = results;
  if (timeline.steps.list.length === 0) return NONE;
  const reads = readsOf(results);
  if (memory.last !== undefined && sameList(memory.last.reads, reads)) return memory.last.missing;
  const findings: Finding[] = [];
  const works = new Set<string>();
  const doing = doingIn(results);
  for (const need of model.rows('need')) {
    const calls = callersOf(need, doing).filter(({ step }) => !isDone(step, timeline));
    const [first] = calls;
    if (first === undefined) continue;
    const found = need.given.for === undefined ? ofPlan(need, first, results) : ofThings(need, calls, results);
    for (const each of found) findings.push(each);
    if (found.length > 0) for (const name of namesOf(need).answers) works.add(name);
  }
  const missing = { findings, works };
  memory.last = { reads, missing };
  return missing;
}

/** All that needs look at: rows, who does what where, the things that conditions ask for, and what is done. */
function readsOf(results: Results): readonly unknown[] {
  const { model, timeline } = results;
  const rows = model.rows('need');
  return [
    rows,
    model.plan,
    timeline.steps,
    timeline.claims,
    doingIn(results),
    scopesOf(results),
    timeline.progress.asOf === undefined ? undefined : timeline.timing.fixedFinish,
    ...kindsAsked(rows).map((kind) => model.list(kind)),
  ];
}

/** Kinds of things that rows speak of. */
const kindsAsked = keptFor((rows: readonly Need[]): readonly KindWord[] => {
  const kinds = new Set<string>();
  for (const { given } of rows) {
    if (given.for !== undefined) kinds.add(given.for.value);
    for (const { value } of [...given.when, ...given.unless]) if (value.subject !== 'plan') kinds.add(value.subject);
  }
  return [...kinds] as KindWord[];
});

/** What a need names: the lists stay the same objects, as sides are kept by them. */
const namesOf = keptFor(({ given }: Need) => ({
  calls: given['called by'].map(({ value }) => value.map((each) => each.value.name)),
  answers: given['answered by']?.value.map(({ value }) => value.name) ?? [],
}));

/** The steps of the first line, where every line has some. */
function callersOf(need: Need, doing: Doing): readonly Side[] {
  const [first, ...others] = namesOf(need).calls.map((names) => sidesOf(names, doing));
  return first === undefined || others.some((sides) => sides.length === 0) ? [] : first;
}

function ofPlan(need: Need, caller: Side, results: Results): readonly Finding[] {
  const { model, timeline } = results;
  if (!firesIn(need, model)) return [];
  const { answers } = namesOf(need);
  if (sidesOf(answers, doingIn(results)).length > 0 || answers.some((name) => isMeasured(name, results))) return [];
  const step = timeline.steps.list[caller.step]!;
  return [findingOf(need, step.place, step.name, answers, model)];
}

/** Taken off, so that who does it is looked at already. */
function isMeasured(work: string, { timeline: { claims } }: Results): boolean {
  return (claims.byWork.get(work)?.open ?? []).some(({ line }) => line.onlyIfDone === undefined && line.net.value > 0);
}

function ofThings(need: Need, calls: readonly Side[], results: Results): readonly Finding[] {
  const { model, timeline } = results;
  const { answers } = namesOf(need);
  const scopes = scopesOf(results);
  const findings: Finding[] = [];
  for (const thing of model.list(need.given.for!.value as KindWord) as readonly Element[]) {
    if (!asksOf(need, thing, model)) continue;
    const caller = calls.find((side) => isAt(side, thing.slot, scopes));
    if (caller === undefined) continue;
    if (sidesOf(answers, doingIn(results)).some((side) => isAt(side, thing.slot, scopes))) continue;
    if (answers.some((name) => isMeasuredAt(name, thing.slot, results))) continue;
    findings.push(findingOf(need, thing.place, timeline.steps.list[caller.step]!.name, answers, model));
  }
  return findings;
}

/** Of a thing, what is not known neither asks nor excuses. */
function asksOf({ given }: Need, thing: Element, model: Model): boolean {
  return (
    given.when.every(({ value }) => holds(value, model, thing)) && !given.unless.some(({ value }) => holds(value, model, thing))
  );
}

function isAt(side: Side, slot: Slot, scopes: Scopes): boolean {
  const { rooms, elements } = scopeOf(side, scopes);
  const places = slot.kind === 'room' ? rooms : elements;
  return places === undefined || places.has(slot);
}

function isMeasuredAt(work: string, slot: Slot, { timeline: { claims } }: Results): boolean {
  return (claims.byWork.get(work)?.open ?? []).some(
    ({ line }) =>
      line.onlyIfDone === undefined && line.net.value > 0 && (line.where.room === slot || line.where.element === slot),
  );
}

function findingOf(need: Need, place: Place, caller: string, answers: readonly string[], model: Model): Finding {
  const source = sourceIn(need, editionOf(model));
  return {
    sort: lacking as unknown as FindingSort<never>,
    code: `missing/${need.name}`,
    severity: need.given.severity?.value ?? 'note',
    place,
    details: [need, caller, answers],
    ...(source === undefined ? {} : { source }),
  };
}
