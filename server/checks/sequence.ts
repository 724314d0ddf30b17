// The library's rules of order against a plan: for each pair of steps whose scopes meet, the order is held by a chain of
// links, or right by luck, or broken. Only held is silent. One finding for one rule and one later step.
import { sameList } from '#kit/differing';
import type { Finding } from '#kit/finding';
import type { Rule } from '#model/model';
import { waiting } from '#schedule/links';
import { workHolds } from './chain-waits.ts';
import type { Results } from './check.ts';
import { firesIn } from './conditions.ts';
import { editionOf } from './editions.ts';
import { seenToBy } from './hazards.ts';
import { keptFor } from './kept.ts';
import { type LongestMemory, longestFindings } from './longest-messages.ts';
import { isWorse, type Outcome, outcomeOf, type Wait } from './outcomes.ts';
import { type Unheld, unheld } from './pairs.ts';
import { concerns } from './rule-things.ts';
import { type Scopes, scopesOf } from './scopes.ts';
import { isCovering, outcomeFinding } from './sequence-messages.ts';
import { owes, reminds } from './sequence-remarks.ts';
import { doingIn, type Side, sidesOf } from './sides.ts';
import { validityFindings } from './validity.ts';

export interface SequenceMemory {
  readonly unheld: WeakMap<Rule, Unheld>;
  /** What was told of each rule at the last look. */
  readonly told: WeakMap<Rule, readonly Told[]>;
  readonly longest: LongestMemory;
}
export function sequenceMemory(): SequenceMemory {
  return { unheld: new WeakMap(), told: new WeakMap(), longest: new WeakMap() };
}

/** A finding with all that its words hang on but the rule. */
interface Told {
  readonly from: readonly unknown[];
  readonly finding: Finding;
}

/** `missing` are the works that the plan calls for and nobody does, which are told already. */
export function sequenceFindings(
  results: Results,
  memory: SequenceMemory,
  missing: ReadonlySet<string> = NOBODYS,
): readonly Finding[] {
  const { model, timeline } = results;
  if (timeline.steps.list.length === 0) return [];
  const findings: Finding[] = [];
  const doing = doingIn(results);
  const scopes = scopesOf(results);
  const isMissing = (names: readonly string[]): boolean => names.length > 0 && names.every((name) => missing.has(name));
  const seenTo = seenToBy(model.rows('hazard'));
  for (const rule of model.rows('rule')) {
    const names = namesOf(rule);
    const then = sidesOf(names.then, doing);
    if (then.length === 0 || !firesIn(rule, model)) continue;
    const first = sidesOf(names.first, doing);
    if (rule.given.within !== undefined) {
      findings.push(...longestFindings(rule, first, then, scopes, results, memory.longest));
      continue;
    }
    if (rule.given['renewed by'] !== undefined) {
      findings.push(...validityFindings(rule, first, then, results));
      continue;
    }
    const relation = rule.given.relation?.value ?? 'before';
    if (first.length === 0) {
      // A hazard of that name is told with its figures, once.
      if (relation === 'while' && !names.first.every((name) => seenTo.has(name))) findings.push(...reminds(rule, then, results));
      if (relation === 'once' && !isMissing(names.first)) findings.push(...owes(rule, then, results));
      continue;
    }
    const outcomes = outcomesOf(rule, first, then, scopes, results, memory);
    if (outcomes === undefined) continue;
    const before = memory.told.get(rule) ?? NOTHING;
    const now: Told[] = [];
    for (const [later, outcome] of outcomes) {
      // What is owed at the end is owed by its date; no link need hold it.
      if (relation === 'once' && outcome.kind === 'luck') continue;
      const from = wordsFrom(rule, later, outcome, results);
      const old = before[now.length];
      const same = old !== undefined && sameList(old.from, from);
      now.push(same ? old : { from, finding: outcomeFinding(rule, later, outcome, results) });
      findings.push(now[now.length - 1]!.finding);
    }
    memory.told.set(rule, now);
  }
  return findings;
}

const NOTHING: readonly Told[] = [];
const NOBODYS: ReadonlySet<string> = new Set();

function wordsFrom(rule: Rule, later: number, outcome: Outcome, { timeline, model }: Results): readonly unknown[] {
  const { steps, crews, timing, trades, dated, start, minutesPerDay, links } = timeline;
  return [
    steps.list[later],
    steps.list[outcome.earlier],
    crews.start[later],
    crews.start[outcome.earlier],
    crews.finish[outcome.earlier],
    outcome.kind,
    outcome.free,
    outcome.start,
    timing.calendars[timing.calendarOf[outcome.earlier]!],
    // One crew for both, or not.
    trades[later],
    trades[outcome.earlier],
    dated ? undefined : start,
    minutesPerDay,
    // Only a wait that is missing on a link has its remedy there.
    outcome.linked ? links : undefined,
    // What would come out again is told by its amount.
    ...(isCovering(rule, outcome, timeline) ? [timeline.claims.byStep[later], model.settings] : []),
    editionOf(model),
  ];
}

/** What a rule names on either side. */
const namesOf = keptFor(({ given }: Rule) => ({
  first: given.first?.value.map(({ value }) => value.name) ?? [],
  then: given.then?.value.map(({ value }) => value.name) ?? [],
}));

/** For each later step, its worst outcome; steps whose order is held have none. Undefined where all are held. */
function outcomesOf(
  rule: Rule,
  first: readonly Side[],
  then: readonly Side[],
  scopes: Scopes,
  { model, timeline, order }: Results,
  memory: SequenceMemory,
): ReadonlyMap<number, Outcome> | undefined {
  const wait: Wait | undefined = rule.given.wait === undefined ? undefined : waiting(rule.given.wait.value);
  const before = memory.unheld.get(rule);
  const now = unheld(rule, first, then, wait, scopes, order, before);
  if (now !== before) memory.unheld.set(rule, now);
  if (now.pairs.length === 0) return undefined;
  const worst = new Map<number, Outcome>();
  for (const { earlier, later, linked } of now.pairs) {
    if (!concerns(rule, later, scopes, model)) continue;
    const outcome = outcomeOf(earlier, later, linked, wait, timeline);
    if (outcome === undefined) continue;
    const known = worst.get(later);
    if (known !== undefined && !isWorse(outcome, known)) continue;
    if (linked && workHolds(earlier, later, wait!, timeline, order)) continue;
    worst.set(later, outcome);
  }
  return worst;
}
