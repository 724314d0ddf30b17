// How the order of a step is held: for each rule that governs it, the chain of links that leads there. Computed only when
// somebody asks; while typing, what is held is silent.
import type { Rule } from '#model/model';
import { waiting } from '#schedule/links';
import { workHolds } from './chain-waits.ts';
import type { Results } from './check.ts';
import { firesIn } from './conditions.ts';
import { lastKeepers, overlongOf } from './longest-waits.ts';
import { meetingsOf } from './meetings.ts';
import { chain } from './order.ts';
import { begunAt, type Outcome, outcomeOf, type Wait } from './outcomes.ts';
import { type Pair, sortOf, unheld } from './pairs.ts';
import { concerns } from './rule-things.ts';
import { scopesOf } from './scopes.ts';
import { isHazard } from './sequence-messages.ts';
import { doingIn, sidesOf } from './sides.ts';
import { asksOrder } from './visits.ts';

/** What one rule says of a step: held by chains of links, or not. */
export interface Governed {
  readonly rule: Rule;
  /** The last to be done of the steps that come first: its chain is the tight one. */
  readonly earlier: number;
  /** How many other steps come first, and are held too. */
  readonly others: number;
  /** Numbers of links, from the earlier step to this one; undefined where no chain holds the order. */
  readonly chain: readonly number[] | undefined;
  readonly outcome: 'held' | 'luck' | 'broken' | 'done';
  /** Where the rule says the longest that may pass: what else keeps this step, and may make it late. */
  readonly keepers?: readonly number[];
}

/** The rules that govern a step, those first that matter most. */
export function governing(step: number, results: Results): readonly Governed[] {
  const found: Governed[] = [];
  for (const rule of results.model.rows('rule')) {
    const governed = governedBy(rule, step, results);
    if (governed !== undefined) found.push(governed);
  }
  // Within a rank they stay in the library's order, which is that of building.
  return found
    .map((each, at) => ({ each, at }))
    .sort((a, b) => rank(a.each) - rank(b.each) || a.at - b.at)
    .map(({ each }) => each);
}

/** Steps that a rule wants before a step, and that no chain of links holds there. */
export function unheldFor(
  rule: Rule,
  step: number,
  results: Results,
): readonly { readonly pair: Pair; readonly outcome: Outcome }[] {
  const { timeline, order } = results;
  if (!asksOrder(rule)) return [];
  const wait = waitOf(rule);
  return (pairsFor(rule, step, results)?.unheldPairs ?? []).flatMap((pair) => {
    const outcome = outcomeOf(pair.earlier, pair.later, pair.linked, wait, timeline);
    if (outcome === undefined || (pair.linked && workHolds(pair.earlier, pair.later, wait!, timeline, order))) return [];
    return [{ pair, outcome }];
  });
}

/** What is wrong comes first, then hazards, then by severity; orders that are facts already come last. */
function rank({ rule, outcome }: Governed): number {
  const severity = { error: 0, warning: 1, note: 2 }[rule.given.severity?.value ?? 'note'];
  const told = { broken: 0, luck: 1, held: 2, done: 3 }[outcome];
  return told * 10 + (isHazard(rule) ? 0 : 3) + severity;
}

function governedBy(rule: Rule, step: number, results: Results): Governed | undefined {
  const { timeline, order } = results;
  const pairs = pairsFor(rule, step, results);
  if (pairs === undefined || pairs.meets.length === 0) return undefined;
  if (rule.given.within !== undefined) return followed(rule, step, pairs.meets, results);
  const worst = unheldFor(rule, step, results)[0];
  if (worst !== undefined) return { rule, earlier: worst.pair.earlier, others: 0, chain: undefined, outcome: worst.outcome.kind };
  const { finish } = timeline.crews;
  const chained = pairs.meets.flatMap((earlier) => {
    const links = chain(timeline.network, order, earlier, step);
    return links === undefined ? [] : [{ earlier, links }];
  });
  const tight = chained.reduce<(typeof chained)[number] | undefined>(
    (last, each) => (last === undefined || finish[each.earlier]! > finish[last.earlier]! ? each : last),
    undefined,
  );
  const others = pairs.meets.length - 1;
  // Without a chain, what came first is done already: the diary says so.
  if (tight === undefined) return { rule, earlier: pairs.meets[0]!, others, chain: undefined, outcome: 'done' };
  return { rule, earlier: tight.earlier, others, chain: tight.links, outcome: 'held' };
}

/** Of the steps that this one must follow soon, the one that is worst off. */
function followed(rule: Rule, step: number, meets: readonly number[], { timeline, order }: Results): Governed | undefined {
  if (begunAt(step, timeline) !== undefined) return undefined;
  const each = meets.map((earlier): Governed => {
    const late = overlongOf(rule, earlier, step, timeline, order)?.kind === 'late';
    const links = chain(timeline.network, order, earlier, step);
    const keepers = links === undefined ? [] : lastKeepers(earlier, step, timeline, order);
    const outcome = late ? 'broken' : links === undefined || keepers.length > 0 ? 'luck' : 'held';
    return { rule, earlier, others: meets.length - 1, chain: links, outcome, keepers };
  });
  return each.find(({ outcome }) => outcome === 'broken') ?? each.find(({ outcome }) => outcome === 'luck') ?? each[0];
}

function waitOf(rule: Rule): Wait | undefined {
  return rule.given.wait === undefined ? undefined : waiting(rule.given.wait.value);
}

/** Who must come before a step by a rule; undefined where the rule is not about it. */
function pairsFor(
  rule: Rule,
  step: number,
  results: Results,
): { readonly meets: readonly number[]; readonly unheldPairs: readonly Pair[] } | undefined {
  if (rule.given['renewed by'] !== undefined) return undefined;
  const { model } = results;
  const doing = doingIn(results);
  const names = (list: Rule['given']['first']): readonly string[] => list?.value.map(({ value }) => value.name) ?? [];
  const then = sidesOf(names(rule.given.then), doing).filter((side) => side.step === step);
  if (then.length === 0 || !firesIn(rule, model)) return undefined;
  const first = sidesOf(names(rule.given.first), doing);
  const scopes = scopesOf(results);
  if (first.length === 0 || !concerns(rule, step, scopes, model)) return undefined;
  const meetings = meetingsOf(sortOf(rule), first, then, scopes, undefined);
  const meets = meetings.later.flatMap((meeting) => meeting.meets);
  return { meets, unheldPairs: unheld(rule, first, then, waitOf(rule), scopes, results.order, undefined).pairs };
}
