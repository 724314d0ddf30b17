// The library's rules of order against a plan: for each pair of tasks whose scopes meet, the order is held by a chain of
// links, or right by luck, or broken. Only held is silent. One finding for one rule and one later step.
import { DAY_MINUTES, dayAndMonth, dayOfFinish } from '#kit/dates';
import { type Finding, type FindingSort, type Fix, findingSort, type Severity } from '#kit/finding';
import type { Rule, Step } from '#model/model';
import { workBetween } from '#schedule/calendar';
import { waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { WORKING } from '#schedule/waits';
import type { Results } from './check.ts';
import { holds } from './conditions.ts';
import { reaches, waitOnChain } from './order.ts';
import { meets, type Scopes, scopesOf } from './scopes.ts';

/** How far two dates are apart, and how the sentence about them goes. */
interface Outcome {
  readonly kind: 'broken' | 'luck';
  readonly earlier: number;
  /** Working minutes on the later step's calendar: of slip that would break it, or by which it is broken. */
  readonly distance: number;
}

type Details = readonly [
  rule: Rule,
  later: string,
  earlier: string,
  laterDay: string,
  earlierDay: string,
  days: string,
  wait: string,
];

const broken: FindingSort<Details> = findingSort<Details>({
  code: 'sequence/broken',
  severity: 'error',
  say: (rule, later, earlier, laterDay, earlierDay, _days, wait) =>
    `"${later}" begins on ${laterDay}, but "${earlier}" is done on ${earlierDay}${wait}. ${because(rule)} ${remedy(rule)}`,
});

const byLuck: FindingSort<Details> = findingSort<Details>({
  code: 'sequence/by-luck',
  severity: 'warning',
  say: (rule, later, earlier, laterDay, earlierDay, days, wait) =>
    `"${later}" (${laterDay}) comes after "${earlier}" (${earlierDay}${wait}) only by luck: no chain of links holds it there, and ${days} of slip would break it. ${because(rule)} Let "${later}" wait for "${earlier}", or accept with a reason.`,
});

const reminder = findingSort<[rule: Rule, later: string]>({
  code: 'sequence/reminder',
  severity: 'note',
  say: (rule, later) => `While "${later}" goes on: ${because(rule)} ${remedy(rule)}`,
});

const owed = findingSort<[rule: Rule, later: string]>({
  code: 'sequence/owed',
  severity: 'note',
  say: (rule, later) => `Before "${later}" is over, this is still owed: ${rule.label}. ${because(rule)} ${remedy(rule)}`,
});

function because(rule: Rule): string {
  return rule.given.because?.value ?? '';
}
function remedy(rule: Rule): string {
  return rule.given.remedy?.value ?? 'Change the order, or accept with a reason.';
}

export function sequenceFindings(results: Results): readonly Finding[] {
  const { model, timeline } = results;
  if (timeline.steps.list.length === 0) return [];
  const scopes = scopesOf(timeline);
  const sides = sidesOf(results);
  const findings: Finding[] = [];
  for (const rule of model.rows('rule')) {
    const { given } = rule;
    if (!given.when.every((line) => holds(line.value, model)) || given.unless.some((line) => holds(line.value, model))) continue;
    const first = sides(given.first?.value.map(({ value }) => value.name) ?? []);
    const then = sides(given.then?.value.map(({ value }) => value.name) ?? []);
    if (then.length === 0) continue;
    const relation = given.relation?.value ?? 'before';
    if (first.length === 0) {
      if (relation === 'while') findings.push(remark(reminder, rule, timeline.steps.list[then[0]!]!));
      if (relation === 'once') findings.push(remark(owed, rule, timeline.steps.list[then[0]!]!));
      continue;
    }
    if (relation === 'once') continue;
    findings.push(...grouped(rule, pairs(rule, first, then, scopes, results), timeline));
  }
  return findings;
}

function remark(sort: FindingSort<[rule: Rule, later: string]>, rule: Rule, step: Step): Finding {
  return named(
    { sort: sort as unknown as FindingSort<never>, code: '', severity: 'note', place: step.place, details: [rule, step.name] },
    rule,
  );
}

function named(found: Finding, rule: Rule): Finding {
  const source = rule.given.source?.value;
  return { ...found, code: `sequence/${rule.name}`, ...(source === undefined ? {} : { source }) };
}

/** Steps that a name of a rule stands for: a kind of work, a state, an inspection, or a milestone of that name. */
function sidesOf({ model, timeline }: Results): (names: readonly string[]) => readonly number[] {
  const doers = new Map<string, number[]>();
  const add = (name: string, step: number): void => {
    const list = doers.get(name);
    if (list === undefined) doers.set(name, [step]);
    else if (!list.includes(step)) list.push(step);
  };
  timeline.steps.list.forEach((step, number) => {
    if (step.kind === 'task') for (const { value } of step.given.does?.value ?? []) add(value.work.name, number);
    else if (step.kind !== 'delivery') add(step.name, number);
  });
  const states = new Map(
    model.rows('state').map((state) => [state.name, (state.given['made by']?.value ?? []).map(({ value }) => value.name)]),
  );
  return (names) => {
    const steps = new Set<number>();
    for (const name of names) {
      for (const step of doers.get(name) ?? []) steps.add(step);
      for (const work of states.get(name) ?? []) for (const step of doers.get(work) ?? []) steps.add(step);
    }
    return [...steps].sort((a, b) => a - b);
  };
}

/** For each later step, its worst outcome; steps whose order is held have none. */
function pairs(
  rule: Rule,
  first: readonly number[],
  then: readonly number[],
  scopes: Scopes,
  results: Results,
): ReadonlyMap<number, Outcome> {
  const { timeline, order } = results;
  const scope = rule.given.scope?.value ?? 'house';
  const wait = rule.given.wait?.value;
  const needed = wait === undefined ? undefined : waiting(wait);
  const worst = new Map<number, Outcome>();
  for (const later of then) {
    if (isRecorded(later, timeline)) continue;
    for (const earlier of first) {
      if (earlier === later || then.includes(earlier) || !meets(scopes, scope, earlier, later)) continue;
      if (reaches(order, earlier, later)) {
        if (needed === undefined || needed.lag === 0) continue;
        const on = waitOnChain(timeline.network, order, earlier, later);
        if ((needed.clock === WORKING ? on.working : on.calendar) >= needed.lag) continue;
      } else if (reaches(order, later, earlier) && first.includes(later)) continue;
      const outcome = outcomeOf(earlier, later, needed, timeline);
      const before = worst.get(later);
      if (before === undefined || isWorse(outcome, before)) worst.set(later, outcome);
    }
  }
  return worst;
}

function isRecorded(step: number, timeline: Timeline): boolean {
  const record = timeline.progress.records.get(step);
  return (
    record?.started !== undefined ||
    record?.finished !== undefined ||
    !Number.isNaN(timeline.timing.fixedFinish?.[step] ?? Number.NaN)
  );
}

function outcomeOf(
  earlier: number,
  later: number,
  needed: { lag: number; clock: number } | undefined,
  timeline: Timeline,
): Outcome {
  const { timing, crews } = timeline;
  const calendar = timing.calendars[timing.calendarOf[later]!]!;
  const wait = needed === undefined ? 0 : needed.lag;
  const free = crews.finish[earlier]! + wait;
  const start = crews.start[later]!;
  return free <= start
    ? { kind: 'luck', earlier, distance: workBetween(calendar, free, start) }
    : { kind: 'broken', earlier, distance: workBetween(calendar, start, free) };
}

function isWorse(a: Outcome, b: Outcome): boolean {
  if (a.kind !== b.kind) return a.kind === 'broken';
  return a.kind === 'broken' ? a.distance > b.distance : a.distance < b.distance;
}

/** Right by luck is one rung milder than broken. */
const milder: { readonly [severity in Severity]: Severity } = { error: 'warning', warning: 'note', note: 'note' };

/** Above three findings of one rule, one stands at the first step and names the others. */
function grouped(rule: Rule, outcomes: ReadonlyMap<number, Outcome>, timeline: Timeline): readonly Finding[] {
  const all = [...outcomes].map(([later, outcome]) => findingOf(rule, later, outcome, timeline));
  if (all.length <= 3) return all;
  const kinds = (['broken', 'luck'] as const).map((kind) =>
    [...outcomes].flatMap(([, outcome], at) => (outcome.kind === kind ? [all[at]!] : [])),
  );
  return kinds.flatMap((list) => {
    const [first, ...others] = list;
    if (first === undefined || list.length <= 3) return list;
    const related = others.slice(0, 20).map((each) => ({ place: each.place, note: `the same of "${String(each.details[1])}"` }));
    return [{ ...first, related: [...(first.related ?? []), ...related] }];
  });
}

function findingOf(rule: Rule, later: number, outcome: Outcome, timeline: Timeline): Finding {
  const step = timeline.steps.list[later]!;
  const earlier = timeline.steps.list[outcome.earlier]!;
  const severity = rule.given.severity?.value ?? 'note';
  const laterDay = dayOfStart(timeline.crews.start[later]!, timeline);
  const earlierDay = dayOf(timeline.crews.finish[outcome.earlier]!, timeline);
  const wait =
    rule.given.wait === undefined
      ? ''
      : `, and ${rule.given.wait.value.value / DAY_MINUTES >= 1 ? plural(Math.round(rule.given.wait.value.value / DAY_MINUTES), 'day') : 'some hours'} must pass`;
  const days = plural(Math.round((outcome.distance / timeline.minutesPerDay) * 10) / 10, 'working day');
  const sort = outcome.kind === 'broken' ? broken : byLuck;
  return named(
    {
      sort: sort as unknown as FindingSort<never>,
      code: '',
      severity: outcome.kind === 'broken' ? severity : milder[severity],
      place: step.place,
      details: [rule, step.name, earlier.name, laterDay, earlierDay, days, wait],
      related: [{ place: earlier.place, note: `"${earlier.name}", which comes first` }],
      fixes: waitFix(step, earlier),
    },
    rule,
  );
}

function plural(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

function dayOfStart(moment: number, timeline: Timeline): string {
  return timeline.dated
    ? dayAndMonth(Math.floor(moment / DAY_MINUTES))
    : `day ${1 + Math.floor(moment / DAY_MINUTES) - timeline.start}`;
}

function dayOf(moment: number, timeline: Timeline): string {
  return timeline.dated ? dayAndMonth(dayOfFinish(moment)) : `day ${1 + dayOfFinish(moment) - timeline.start}`;
}

/** Adds the link that would hold the order, where the step's own line has room for it. */
function waitFix(step: Step, earlier: Step): readonly Fix[] {
  const also = step.given['also after'] ?? step.given.after;
  const title = `Let "${step.name}" wait for "${earlier.name}"`;
  if (also !== undefined) return [{ kind: 'insert-after', title, place: also.place, text: `, ${earlier.name}` }];
  return [{ kind: 'append', title, place: step.place, text: ` also after ${earlier.name}` }];
}
