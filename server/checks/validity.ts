// What stays valid only for a time: a permit that lapses where no visit is passed, marks on the ground that fade. Told once, at
// the first step that begins when it has run out.
import { civil, DAY_MINUTES, dayAndMonth, dayOfFinish } from '#kit/dates';
import { type Finding, type FindingSort, findingSort } from '#kit/finding';
import type { Rule, Step } from '#model/model';
import { waiting } from '#schedule/links';
import type { Steps } from '#schedule/steps';
import type { Timeline } from '#schedule/timeline';
import { afterFinish, CALENDAR_DAYS } from '#schedule/waits';
import type { Results } from './check.ts';
import { editionOf } from './editions.ts';
import { keptWhile } from './kept.ts';
import { begunAt, gotBefore } from './outcomes.ts';
import { concerns } from './rule-things.ts';
import { scopesOf } from './scopes.ts';
import { ruleFinding, spelled, spoken } from './sequence-messages.ts';
import { dayText, doneDay, startText } from './show.ts';
import { type Doing, doingIn, type Side, sidesOf } from './sides.ts';

interface Told {
  readonly rule: Rule;
  readonly later: string;
  readonly laterDay: string;
  readonly got: string;
  readonly goodFor: string;
  /** The visit or step that it was last renewed by, and its day; what was got and its own day where nothing did. */
  readonly last: string;
  readonly lastDay: string;
  readonly lastTo: string;
}

export const lapsed: FindingSort<[told: Told]> = findingSort<[told: Told]>({
  code: 'sequence/lapsed',
  severity: 'warning',
  say: ({ rule, later, laterDay, got, goodFor, last, lastDay, lastTo }) =>
    spoken(
      rule,
      last === got
        ? `"${later}" begins on ${laterDay}, but "${got}" (${lastDay}) is good for ${goodFor}, to ${lastTo}, and nothing renews it before.`
        : `"${later}" begins on ${laterDay}, but "${got}" is good for ${goodFor} at a time, and "${last}" on ${lastDay} is the last to renew it: it lapses after ${lastTo}.`,
      '',
    ),
});

/** Names every visit under `renewed by`. */
export const ALL_VISITS = 'inspections';

/** Kept while dates, and those who meet, are the same. */
export const validityFindings = keptWhile((rule: Rule, first: readonly Side[], then: readonly Side[], results: Results) => {
  const { model, timeline } = results;
  const { steps, crews, timing, dated, start } = timeline;
  const { when, unless } = rule.given;
  const asks = when.length + unless.length > 0 ? model : undefined;
  return [rule, first, then, steps, crews, timing, dated, start, scopesOf(results), doingIn(results), editionOf(model), asks];
}, lapsedOf);

function lapsedOf(rule: Rule, first: readonly Side[], then: readonly Side[], results: Results): readonly Finding[] {
  const { timeline, model } = results;
  const { steps, crews } = timeline;
  const gets = [...new Set(first.map(({ step }) => step))];
  const goodFor =
    gets.map((each) => saidOf(steps.list[each]!)).find((each) => each !== undefined) ?? rule.given['good for']?.value;
  if (gets.length === 0 || goodFor === undefined) return [];
  const renewing = renewingIn(rule, results);
  const visits = renewing.filter((each) => steps.list[each]!.kind === 'inspection');
  const looked = [...new Set([...then.map(({ step }) => step), ...visits])].sort(
    (a, b) => crews.start[a]! - crews.start[b]! || a - b,
  );
  const anchors = [...new Set([...gets, ...renewing])].sort((a, b) => gotAt(a, timeline) - gotAt(b, timeline) || a - b);
  const scopes = scopesOf(results);
  let [at, got, last] = [0, undefined as number | undefined, undefined as number | undefined];
  for (const later of looked) {
    const start = crews.start[later]!;
    for (; at < anchors.length && anchors[at] !== later && gotAt(anchors[at]!, timeline) <= start; at++) {
      last = anchors[at]!;
      if (gets.includes(last)) got = last;
    }
    // What begins before it is got is another row's.
    if (got === undefined || last === undefined || begunAt(later, timeline) !== undefined) continue;
    const to = validTo(last, goodFor, timeline);
    if (to >= start || !concerns(rule, later, scopes, model)) continue;
    const step = steps.list[later]!;
    const told: Told = {
      rule,
      later: step.name,
      laterDay: startText(start, timeline),
      got: steps.list[got]!.name,
      goodFor: spelled(goodFor),
      last: steps.list[last]!.name,
      lastDay: yearText(gotDay(last, timeline), start, timeline),
      lastTo: yearText(dayOfFinish(to), start, timeline),
    };
    const severity = rule.given.severity?.value ?? 'note';
    const related = [{ place: steps.list[got]!.place, note: `"${told.got}", which is good for ${told.goodFor}` }];
    return [ruleFinding(rule, editionOf(model), lapsed, severity, step, [told], { related })];
  }
  return [];
}

/** The day on which something is got. */
export function gotDay(step: number, timeline: Timeline): number {
  return gotBefore(step, timeline) ?? doneDay(step, timeline);
}

/** The moment of the same. */
export function gotAt(step: number, timeline: Timeline): number {
  const before = gotBefore(step, timeline);
  return before === undefined ? timeline.crews.finish[step]! : before * DAY_MINUTES;
}

/** '1 Oct', and '1 Oct 2026' where what it is told beside begins in another year. */
export function yearText(day: number, beside: number, timeline: Timeline): string {
  const { year } = civil(day);
  const same = !timeline.dated || year === civil(Math.floor(beside / DAY_MINUTES)).year;
  return same ? dayText(day, timeline) : `${dayAndMonth(day)} ${year}`;
}

const NO_NAMES: readonly string[] = [];
const namesIn = (given: Rule['given']['first']): readonly string[] => given?.value.map(({ value }) => value.name) ?? NO_NAMES;

/** Steps by what the rows of the library judge of them: what lapses, and for each the steps that they look at. */
export function lapsingIn(results: Results): ReadonlyMap<number, ReadonlySet<number>> {
  const { model, timeline } = results;
  return lapsing(doingIn(results), model.rows('rule'), timeline.steps);
}

const lapsing = keptWhile(
  (doing: Doing, rules: readonly Rule[], steps: Steps) => [doing, rules, steps],
  (doing, rules, { list }): ReadonlyMap<number, ReadonlySet<number>> => {
    const found = new Map<number, Set<number>>();
    for (const { given } of rules) {
      const by = given['renewed by']?.value.map(({ value }) => value.name);
      if (by === undefined) continue;
      const judged = sidesOf(namesIn(given.then), doing).map(({ step }) => step);
      if (by.includes(ALL_VISITS)) judged.push(...list.flatMap(({ kind }, at) => (kind === 'inspection' ? [at] : [])));
      for (const { step } of sidesOf(namesIn(given.first), doing))
        found.set(step, new Set([...(found.get(step) ?? []), ...judged]));
    }
    return found;
  },
);

/** The moment it runs out: whole days are counted from the day it is got. */
export function validTo(last: number, goodFor: Time, timeline: Timeline): number {
  const { timing } = timeline;
  const { lag, clock } = waiting(goodFor);
  if (clock === CALENDAR_DAYS) return (gotDay(last, timeline) + 1) * DAY_MINUTES + lag;
  return afterFinish(timing.calendars[timing.planCalendar]!, gotAt(last, timeline), lag, clock);
}

/** How long the plan itself says that it stays valid. */
export function saidOf(step: Step): Time | undefined {
  return step.kind === 'delivery' ? undefined : step.given['good for']?.value;
}
type Time = Parameters<typeof waiting>[0];

function renewingIn({ given }: Rule, results: Results): readonly number[] {
  const { list } = results.timeline.steps;
  const names = given['renewed by']?.value.map(({ value }) => value.name) ?? [];
  const visits = names.includes(ALL_VISITS) ? list.flatMap((step, at) => (step.kind === 'inspection' ? [at] : [])) : [];
  const others = sidesOf(names, doingIn(results)).map(({ step }) => step);
  return [...new Set([...visits, ...others])];
}
