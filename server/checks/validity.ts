// What stays valid only for a time: a permit that lapses where no visit is passed, marks on the ground that fade. Told once, at
// the first step that begins when it has run out.
import { DAY_MINUTES } from '#kit/dates';
import { type Finding, type FindingSort, findingSort } from '#kit/finding';
import type { Rule, Step } from '#model/model';
import { waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { afterFinish, CALENDAR_DAYS } from '#schedule/waits';
import type { Results } from './check.ts';
import { editionOf } from './editions.ts';
import { keptWhile } from './kept.ts';
import { begunAt } from './outcomes.ts';
import { concerns } from './rule-things.ts';
import { scopesOf } from './scopes.ts';
import { ruleFinding, spelled, spoken } from './sequence-messages.ts';
import { doneDay, doneText, finishText, startText } from './show.ts';
import { doingIn, type Side, sidesOf } from './sides.ts';

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
  const anchors = [...new Set([...gets, ...renewing])].sort((a, b) => crews.finish[a]! - crews.finish[b]! || a - b);
  const scopes = scopesOf(results);
  let [at, got, last] = [0, undefined as number | undefined, undefined as number | undefined];
  for (const later of looked) {
    const start = crews.start[later]!;
    for (; at < anchors.length && anchors[at] !== later && crews.finish[anchors[at]!]! <= start; at++) {
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
      lastDay: doneText(last, timeline),
      lastTo: finishText(to, timeline),
    };
    const severity = rule.given.severity?.value ?? 'note';
    const related = [{ place: steps.list[got]!.place, note: `"${told.got}", which is good for ${told.goodFor}` }];
    return [ruleFinding(rule, editionOf(model), lapsed, severity, step, [told], { related })];
  }
  return [];
}

/** The moment it runs out: whole days are counted from the day it is got. */
function validTo(last: number, goodFor: Time, timeline: Timeline): number {
  const { timing, crews } = timeline;
  const { lag, clock } = waiting(goodFor);
  if (clock === CALENDAR_DAYS) return (doneDay(last, timeline) + 1) * DAY_MINUTES + lag;
  return afterFinish(timing.calendars[timing.planCalendar]!, crews.finish[last]!, lag, clock);
}

/** How long the plan itself says that it stays valid. */
function saidOf(step: Step): Time | undefined {
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
