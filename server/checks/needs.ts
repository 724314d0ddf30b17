// Work that a plan calls for and no task does: the library's needs against what the plan holds and who does what. Only where
// the part of the job that calls is planned at all; and not where a measured quantity without an owner says so already.
import { sameList } from '#kit/differing';
import { type Finding, type FindingSort, findingSort } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import type { Element, ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import type { KindWord } from '#model/words';
import { keptByRow, type RowMemory, thingsAsked } from './by-row.ts';
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
  /** Names of the works that are told of; the same set while they are the same. */
  readonly works: ReadonlySet<string>;
}

export interface NeedsMemory {
  readonly rows: RowMemory<Need, readonly Finding[]>;
  missing: Missing;
}
export function needsMemory(): NeedsMemory {
  return { rows: new WeakMap(), missing: NONE };
}

const NONE: Missing = { findings: [], works: new Set() };

export function missingWork(results: Results, memory: NeedsMemory): Missing {
  const { model, timeline } = results;
  if (timeline.steps.list.length === 0) return NONE;
  const done = timeline.progress.asOf === undefined ? undefined : timeline.timing.fixedFinish;
  const doing = doingIn(results);
  const findings: Finding[] = [];
  const works = new Set<string>();
  for (const need of model.rows('need')) {
    const { calls, answers } = namesOf(need);
    const measured = answers.map((name) => timeline.claims.byWork.get(name));
    const reads = [model.plan, done, ...measured, ...thingsAsked(need, model)];
    const sides = [...calls, answers].map((names) => sidesOf(names, doing));
    const own = keptByRow(memory.rows, need, reads, sides, ['rooms', 'elements'], results, () => findingsOf(need, results));
    for (const each of own) findings.push(each);
    if (own.length > 0) for (const name of answers) works.add(name);
  }
  const same = sameList(findings, memory.missing.findings) && sameList([...works], [...memory.missing.works]);
  if (!same) memory.missing = { findings, works };
  return memory.missing;
}

function findingsOf(need: Need, results: Results): readonly Finding[] {
  const calls = callersOf(need, doingIn(results)).filter(({ step }) => !isDone(step, results.timeline));
  const [first] = calls;
  if (first === undefined) return [];
  return need.given.for === undefined ? ofPlan(need, first, results) : ofThings(need, calls, results);
}

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
  const answering = sidesOf(answers, doingIn(results));
  const findings: Finding[] = [];
  for (const thing of model.list(need.given.for!.value as KindWord) as readonly Element[]) {
    if (!asksOf(need, thing, model)) continue;
    const caller = calls.find((side) => isAt(side, thing.slot, scopes));
    if (caller === undefined) continue;
    if (answering.some((side) => isAt(side, thing.slot, scopes))) continue;
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
