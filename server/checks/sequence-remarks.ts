// Rules of which the first side is nowhere in the plan: a reminder of what must hold while work goes on, and of what is owed
// before the end. At note level: whoever leads the work may see to it without a step of its own.
import { type Finding, type FindingSort, findingSort } from '#kit/finding';
import type { Rule } from '#model/model';
import type { Results } from './check.ts';
import { editionOf } from './editions.ts';
import { isDone } from './outcomes.ts';
import { ruleFinding, spoken } from './sequence-messages.ts';
import type { Side } from './sides.ts';

export const reminder: FindingSort<[rule: Rule, later: string]> = findingSort<[rule: Rule, later: string]>({
  code: 'sequence/reminder',
  severity: 'note',
  say: (rule, later) => spoken(rule, `No step of the plan sees to it for "${later}".`, ''),
});

export const owed: FindingSort<[rule: Rule, later: string]> = findingSort<[rule: Rule, later: string]>({
  code: 'sequence/owed',
  severity: 'note',
  say: (rule, later) => spoken(rule, `No step of the plan sees to it before "${later}".`, ''),
});

/** One reminder a rule, at the first step it is about that is still to be done. */
export function reminds(rule: Rule, then: readonly Side[], results: Results): readonly Finding[] {
  return remark(reminder, rule, then, results);
}

export function owes(rule: Rule, then: readonly Side[], results: Results): readonly Finding[] {
  return remark(owed, rule, then, results);
}

function remark(
  sort: FindingSort<[rule: Rule, later: string]>,
  rule: Rule,
  then: readonly Side[],
  { timeline, model }: Results,
): readonly Finding[] {
  const next = then.find(({ step }) => !isDone(step, timeline));
  if (next === undefined) return [];
  const step = timeline.steps.list[next.step]!;
  return [ruleFinding(rule, editionOf(model), sort, 'note', step, [rule, step.name], {})];
}
