// The library's rules of order against a plan: for each pair of steps whose scopes meet, the order is held by a chain of
// links, or right by luck, or broken. Only held is silent. One finding for one rule and one later step.
import type { Finding } from '#kit/finding';
import type { Rule } from '#model/model';
import { waiting } from '#schedule/links';
import { workHolds } from './chain-waits.ts';
import type { Results } from './check.ts';
import { firesIn } from './conditions.ts';
import { keptFor } from './kept.ts';
import { isWorse, type Outcome, outcomeOf, type Wait } from './outcomes.ts';
import { unheld } from './pairs.ts';
import { outcomeFinding } from './sequence-messages.ts';
import { owes, reminds } from './sequence-remarks.ts';
import { type Side, sidesOf } from './sides.ts';

export function sequenceFindings(results: Results): readonly Finding[] {
  const { model, timeline } = results;
  if (timeline.steps.list.length === 0) return [];
  const findings: Finding[] = [];
  for (const rule of model.rows('rule')) {
    const names = namesOf(rule);
    const then = sidesOf(names.then, results);
    if (then.length === 0 || !firesIn(rule, model)) continue;
    const first = sidesOf(names.first, results);
    const relation = rule.given.relation?.value ?? 'before';
    if (first.length === 0) {
      if (relation === 'while') findings.push(...reminds(rule, then, timeline));
      if (relation === 'once') findings.push(...owes(rule, then, timeline));
      continue;
    }
    for (const [later, outcome] of outcomes(rule, first, then, results)) {
      // What is owed at the end is owed by its date; no link need hold it.
      if (relation === 'once' && outcome.kind === 'luck') continue;
      findings.push(outcomeFinding(rule, later, outcome, timeline));
    }
  }
  return findings;
}

/** What a rule names on either side. */
const namesOf = keptFor(({ given }: Rule) => ({
  first: given.first?.value.map(({ value }) => value.name) ?? [],
  then: given.then?.value.map(({ value }) => value.name) ?? [],
}));

/** For each later step, its worst outcome; steps whose order is held have none. */
function outcomes(rule: Rule, first: readonly Side[], then: readonly Side[], results: Results): ReadonlyMap<number, Outcome> {
  const { timeline, order } = results;
  const wait: Wait | undefined = rule.given.wait === undefined ? undefined : waiting(rule.given.wait.value);
  const worst = new Map<number, Outcome>();
  for (const { earlier, later, linked } of unheld(rule, first, then, wait, results)) {
    const outcome = outcomeOf(earlier, later, linked, wait, timeline);
    if (outcome === undefined) continue;
    const before = worst.get(later);
    if (before !== undefined && !isWorse(outcome, before)) continue;
    if (linked && workHolds(earlier, later, wait!, timeline, order)) continue;
    worst.set(later, outcome);
  }
  return worst;
}
