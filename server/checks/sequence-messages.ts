// How a broken order, and one that is right by luck, are told: what is wrong with the days, why it matters, what to do. A
// hazard is named first, and the last word is the deferral to those who decide.
import { DAY_MINUTES } from '#kit/dates';
import { type Finding, type FindingSort, type Fix, findingSort, type Severity } from '#kit/finding';
import type { Rule, Step } from '#model/model';
import { workBetween } from '#schedule/calendar';
import type { PlanLink } from '#schedule/links';
import { waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { WORKING } from '#schedule/waits';
import { longestOf } from './chain-waits.ts';
import type { Results } from './check.ts';
import { editionOf, sourceIn } from './editions.ts';
import { namesHazard } from './hazard.ts';
import type { Outcome } from './outcomes.ts';
import { counted, doneText, startText } from './show.ts';
import { tornOutText } from './torn-out.ts';

interface Told {
  readonly rule: Rule;
  readonly later: string;
  readonly earlier: string;
  readonly laterDay: string;
  readonly earlierDay: string;
  /** 'more than 3 working days of slip' that would break it. */
  readonly slip: string;
  /** '7 days' that must pass; undefined without a wait. */
  readonly wait: string | undefined;
  /** The earlier is a visit, and this would come out again for it: '1,204 sf of Drywall'; empty where nothing is measured. */
  readonly tornOut: string | undefined;
}

export const broken: FindingSort<[told: Told]> = findingSort<[told: Told]>({
  code: 'sequence/broken',
  severity: 'error',
  say: ({ rule, later, earlier, laterDay, earlierDay, wait, tornOut }) =>
    spoken(
      rule,
      tornOut === undefined
        ? `"${later}" begins on ${laterDay}, but "${earlier}" is done on ${earlierDay}${wait === undefined ? '' : `, and ${wait} must pass`}.`
        : `"${later}" begins on ${laterDay}, before "${earlier}" has passed on ${earlierDay}${tornOut === '' ? '.' : `: ${tornOut} would come out again.`}`,
      '',
    ),
});

export const byLuck: FindingSort<[told: Told]> = findingSort<[told: Told]>({
  code: 'sequence/by-luck',
  severity: 'warning',
  say: ({ rule, later, earlier, laterDay, earlierDay, slip, wait }) =>
    spoken(
      rule,
      `"${later}" (${laterDay}) comes after "${earlier}" (${earlierDay}${wait === undefined ? '' : `, and ${wait} must pass`}) only by luck: no chain of links holds it there, and ${slip} would break it.`,
      `Let "${later}" wait for "${earlier}".`,
    ),
});

export const waitByLuck: FindingSort<[told: Told]> = findingSort<[told: Told]>({
  code: 'sequence/wait-by-luck',
  severity: 'warning',
  say: ({ rule, later, earlier, laterDay, earlierDay, wait }) =>
    spoken(
      rule,
      `"${later}" (${laterDay}) waits for "${earlier}" (${earlierDay}), but that ${wait} pass in between is luck: no link asks for as much.`,
      `Write "${earlier} + ${wait}".`,
    ),
});

type Speaking = { readonly given: Pick<Rule['given'], 'because' | 'remedy'> };

export function isHazard(rule: Speaking): boolean {
  return namesHazard(rule.given.because?.value ?? '');
}

/** What, why, what to do; a hazard before all. */
export function spoken(rule: Speaking, what: string, todo: string): string {
  const because = rule.given.because?.value ?? '';
  const remedy = rule.given.remedy?.value ?? '';
  const last =
    todo === '' || isHazard(rule) ? [todo, remedy === '' ? 'Change the order, or accept with a reason.' : remedy] : [todo];
  return (isHazard(rule) ? [because, what, ...last] : [what, because, ...last]).filter((part) => part !== '').join(' ');
}

/** By luck is never worse than a warning, as nothing is wrong yet; but what holds a hazard back is not left to luck. */
function luckSeverity(rule: Rule, severity: Severity): Severity {
  return severity === 'error' && !(rule.given.relation?.value === 'hold' && isHazard(rule)) ? 'warning' : severity;
}

export function outcomeFinding(rule: Rule, later: number, outcome: Outcome, { timeline, model }: Results): Finding {
  const step = timeline.steps.list[later]!;
  const earlier = timeline.steps.list[outcome.earlier]!;
  const severity = rule.given.severity?.value ?? 'note';
  const sort = outcome.kind === 'broken' ? broken : outcome.linked ? waitByLuck : byLuck;
  const told: Told = {
    rule,
    later: step.name,
    earlier: earlier.name,
    laterDay: startText(timeline.crews.start[later]!, timeline),
    earlierDay: doneText(outcome.earlier, timeline),
    slip: slipText(later, outcome, timeline),
    wait: waitText(rule),
    tornOut: isCovering(rule, outcome, timeline) ? tornOutText(later, worksThen(rule), timeline, model) : undefined,
  };
  return ruleFinding(
    rule,
    editionOf(model),
    sort,
    outcome.kind === 'broken' ? severity : luckSeverity(rule, severity),
    step,
    [told],
    {
      related: [{ place: earlier.place, note: `"${earlier.name}", which comes first` }],
      fixes: outcome.linked ? waitFix(later, outcome.earlier, rule, timeline) : linkFix(step, earlier, rule),
    },
  );
}

/**
 * What would break an order that is right by luck: so much delay of the earlier step, in working days of those who do it; or,
 * where one crew does both and a delay pushes both, another order of its work.
 */
function slipText(later: number, outcome: Outcome, { timing, trades }: Timeline): string {
  const trade = trades[outcome.earlier];
  if (trade !== undefined && trade === trades[later] && (trade.given.crews?.value ?? 1) === 1)
    return `another order of work of "${trade.name}", which does both,`;
  const calendar = timing.calendars[timing.calendarOf[outcome.earlier]!]!;
  const spare = workBetween(calendar, outcome.free, outcome.start) / longestOf(calendar);
  const days = Math.floor(spare * 10 + 1e-9) / 10;
  return days === 0 ? 'any slip' : `more than ${counted(days, 'working day')} of slip`;
}

/** Whether work begins before a visit that it must wait for. */
export function isCovering({ given }: Rule, { kind, earlier, linked }: Outcome, { steps }: Timeline): boolean {
  return kind === 'broken' && !linked && given.relation?.value === 'hold' && steps.list[earlier]!.kind === 'inspection';
}

function worksThen({ given }: Rule): ReadonlySet<string> {
  return new Set(given.then?.value.map(({ value }) => value.name));
}

/** A finding of a rule carries the rule's code, and its source with the section of the plan's edition. */
export function ruleFinding<A extends readonly unknown[]>(
  rule: Rule,
  edition: string | undefined,
  sort: FindingSort<A>,
  severity: Severity,
  step: Step,
  details: A,
  more: Pick<Finding, 'related' | 'fixes'>,
): Finding {
  const source = sourceIn(rule, edition);
  return {
    sort: sort as unknown as FindingSort<never>,
    code: `sequence/${rule.name}`,
    severity,
    place: step.place,
    details,
    ...more,
    ...(source === undefined ? {} : { source }),
  };
}

/** '7 days', '24h', '2d': as it may stand after a plus. */
export function waitText({ given: { wait } }: Rule): string | undefined {
  return wait === undefined ? undefined : spelled(wait.value);
}

/** A wait as a plan spells it. */
export function spelled(given: Parameters<typeof waiting>[0]): string {
  const { lag, clock } = waiting(given);
  if (clock === WORKING) return given.unit === 'w' ? `${lag / 2400}w` : `${lag / 480}d`;
  if (given.unit === 'days' || given.unit === 'weeks') return counted(lag / DAY_MINUTES, 'day');
  return `${lag / 60}h`;
}

/** Adds the link that would hold the order, with the rule's wait, where the step's own line has room for it. */
function linkFix(step: Step, earlier: Step, rule: Rule): readonly Fix[] {
  return [waitingFix(step, [waitedFor(earlier, rule)], `Let "${step.name}" wait for "${earlier.name}"`)];
}

/** 'tape + 2 days': as it stands behind `after`. */
export function waitedFor(earlier: Step, rule: Rule): string {
  const wait = waitText(rule);
  return wait === undefined ? earlier.name : `${earlier.name} + ${wait}`;
}

export function waitingFix(step: Step, names: readonly string[], title: string): Fix {
  const also = step.given['also after'] ?? step.given.after;
  const text = names.join(', ');
  if (also !== undefined) return { kind: 'insert-after', title, place: also.place, text: `, ${text}` };
  return { kind: 'append', title, place: step.place, text: ` also after ${text}` };
}

/** Adds the wait to the plain link between the two, where there is one. */
function waitFix(later: number, earlier: number, rule: Rule, { links }: Timeline): readonly Fix[] {
  const wait = waitText(rule);
  const link = links.find(
    (each: PlanLink) => each.from === earlier && each.to === later && each.lag === 0 && SPOKEN.has(each.words),
  );
  if (link === undefined || wait === undefined) return [];
  return [{ kind: 'insert-after', title: `Wait ${wait}`, place: link.place, text: ` + ${wait}` }];
}

/** Links whose place is the name in the later step's own line. */
const SPOKEN: ReadonlySet<string> = new Set(['after', 'also after']);
