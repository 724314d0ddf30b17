// The steps of an order's example: what comes first, and what must wait for it. In the wrong plan no link leads from the one
// to the other, or, where a missing step is what the rule is about, the first is left out.
import type { ElementOf, Rule } from '#model/model';
import type { Model } from '#model/resolve';
import { spelled, waitText } from './sequence-messages.ts';

export interface Steps {
  readonly wrong: readonly string[];
  readonly right: readonly string[];
}

/** One side of the order: a name of the library. */
type Side =
  | { readonly kind: 'work'; readonly name: string; readonly work: ElementOf<'work'> }
  | { readonly kind: 'state'; readonly name: string; readonly work: ElementOf<'work'> }
  | { readonly kind: 'visit'; readonly name: string; readonly visit: ElementOf<'inspection'> };

/** A step that only keeps a visit busy with something else. */
const OTHER = 'other-work';

/** Undefined where a side names nothing that steps can be made of. */
export function orderSteps(rule: Rule, model: Model): Steps | undefined {
  const { given } = rule;
  const first = sideOf(spokenOfFirst(names(given.first), rule), model);
  const then = sideOf(spokenOfFirst(names(given.then), rule), model);
  if (first === undefined || then === undefined) return undefined;
  if (given.within !== undefined) return lateSteps(first, then, given.within.value, model);
  const passing = waitText(rule);
  const wait = passing === undefined ? '' : ` + ${passing}`;
  const right = withTrades([...firstSteps(first, then, wait, model), laterStep(then, first, wait)]);
  const relation = given.relation?.value ?? 'before';
  // What is owed is missed where no step sees to it.
  if (relation === 'once') return { wrong: withTrades([laterStep(then, undefined, '')]), right };
  return { wrong: withTrades(looseSteps(first, then, model)), right };
}

/** The later step follows at once, or when twice as long has passed as may. */
function lateSteps(first: Side, then: Side, most: { readonly value: number; readonly unit?: string }, model: Model): Steps {
  const steps = (wait: string): readonly string[] => [...firstSteps(first, then, wait, model), laterStep(then, first, wait)];
  return { wrong: withTrades(steps(` + ${spelled({ ...most, value: 2 * most.value })}`)), right: withTrades(steps('')) };
}

/** The steps that call for work, and those with a step that answers before them. */
export function needSteps({ given, name, label }: ElementOf<'need'>, model: Model): Steps | undefined {
  return answeredSteps(
    given['called by'].map((list) => names(list)),
    spokenOfFirst(names(given['answered by']), { name, label }),
    model,
  );
}

/** A step that carries a hazard, and one that sees to it before that. */
export function hazardSteps({ name, given }: ElementOf<'hazard'>, model: Model): Steps | undefined {
  const steps = answeredSteps(given.during === undefined ? [] : [names(given.during)], names(given['met by']), model);
  if (steps === undefined || given['met by'] !== undefined) return steps;
  // What no step sees to is answered by whoever sees to it.
  return { ...steps, right: [...steps.right, `accept safety/${name} "Seen to on site every day"`] };
}

function answeredSteps(calls: readonly (readonly string[])[], answers: readonly string[], model: Model): Steps | undefined {
  const callers = calls.flatMap((list) => sideOf(list, model) ?? []);
  const answering = sideOf(answers, model);
  if (callers.length === 0 && answering === undefined) return undefined;
  const calling = callers.map((side) => laterStep(side, undefined, ''));
  if (answering === undefined) return { wrong: withTrades(calling), right: withTrades(calling) };
  const before = firstSteps(answering, undefined, '', model);
  // What a visit looks at may be the work that calls.
  const others = callers.filter(({ name: caller }) => !before.some((step) => step.startsWith(`task ${caller} `)));
  const right = [...before, ...others.map((side) => laterStep(side, answering, ''))];
  return { wrong: withTrades(calling), right: withTrades(right) };
}

/** Both steps without the link between them. */
function looseSteps(first: Side, then: Side, model: Model): readonly string[] {
  const held = first.kind === 'visit' && names(first.visit.given.before).includes(then.name);
  const seen = then.kind === 'visit' && names(then.visit.given.of).includes(first.name);
  const steps = [...firstSteps(first, undefined, '', model, held ? ` before ${OTHER}` : ''), laterStep(then, undefined, '')];
  if (seen) steps[steps.length - 1] = `inspection ${then.name} of ${OTHER}`;
  return held || seen ? [`task ${OTHER} takes 1d`, ...steps] : steps;
}

/** What comes first; a visit says itself what it holds, a state is a milestone after its work. */
function firstSteps(first: Side, then: Side | undefined, wait: string, model: Model, holds = ''): readonly string[] {
  switch (first.kind) {
    case 'work':
      return [taskOf(first.work)];
    case 'state':
      return [taskOf(first.work), `milestone ${first.name} after ${first.work.name}`];
    case 'visit': {
      const seen = names(first.visit.given.of).flatMap((name) => workNamed(name, model) ?? [])[0];
      const of = seen === undefined ? '' : ` of ${seen.name}`;
      const before = then === undefined ? holds : saysBefore(first, then, wait) ? ` before ${then.name}` : '';
      const visit = `inspection ${first.name}${of}${before}`;
      return seen === undefined || seen.name === then?.name ? [visit] : [taskOf(seen), visit];
    }
  }
}

/** A visit says in its own line what it holds, unless time must pass or another visit waits for it. */
function saysBefore(first: Side, then: Side, wait: string): boolean {
  return first.kind === 'visit' && then.kind === 'work' && wait === '';
}

/** What must wait, with its link where there is something to wait for. */
function laterStep(then: Side, first: Side | undefined, wait: string): string {
  const after = first === undefined || saysBefore(first, then, wait) ? '' : ` after ${first.name}${wait}`;
  switch (then.kind) {
    case 'work':
    case 'state':
      return `${taskOf(then.work)}${after}`;
    case 'visit': {
      const seen = first !== undefined && names(then.visit.given.of).includes(first.name);
      return `inspection ${then.name}${seen ? ` of ${first.name}` : after}`;
    }
  }
}

function taskOf({ name, given }: ElementOf<'work'>): string {
  return `task ${name} does ${name} takes 1d by ${given.trade?.value ?? 'us'}`;
}

/** The trades that the steps name, before them. */
function withTrades(steps: readonly string[]): readonly string[] {
  const trades = new Set(steps.flatMap((step) => / by ([\w-]+)/.exec(step)?.[1] ?? []));
  return [...[...trades].map((name) => `trade ${name} crew of 2`), ...steps];
}

/** Of several names, first those whose things the rule's own name and label speak of: "tile-before-membrane", lay-membrane. */
function spokenOfFirst(list: readonly string[], { name, label }: Pick<Rule, 'name' | 'label'>): readonly string[] {
  const said = new Set(`${name} ${label}`.toLowerCase().split(/[^a-z]+/));
  // A work is named by what is done, and then to what.
  const spoken = (each: string): number => each.split('-').filter((word, at) => at > 0 && said.has(word)).length;
  return [...list].sort((a, b) => spoken(b) - spoken(a));
}

function sideOf(of: readonly string[], model: Model): Side | undefined {
  for (const name of of) {
    const work = workNamed(name, model);
    if (work !== undefined) return { kind: 'work', name, work };
    const visit = model.rows('inspection').find((each) => each.name === name);
    if (visit !== undefined) return { kind: 'visit', name, visit };
    const state = model.rows('state').find((each) => each.name === name);
    const made = names(state?.given['made by']).flatMap((each) => workNamed(each, model) ?? [])[0];
    if (made !== undefined) return { kind: 'state', name, work: made };
  }
  return undefined;
}

function workNamed(name: string, model: Model): ElementOf<'work'> | undefined {
  return model.rows('work').find((each) => each.name === name);
}

function names(
  list: { readonly value: readonly { readonly value: { readonly name: string } }[] } | undefined,
): readonly string[] {
  return list?.value.map(({ value }) => value.name) ?? [];
}
