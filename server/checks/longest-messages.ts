// How a step that follows too late is told, and one that others may still make late: both days, what keeps it back, and
// what would bring the two together.
import { sameList } from '#kit/differing';
import { type Finding, type FindingSort, type Fix, findingSort, type Severity } from '#kit/finding';
import type { Rule } from '#model/model';
import { workBetween } from '#schedule/calendar';
import { HELD_BY_DATE } from '#schedule/early-dates';
import { waiting } from '#schedule/links';
import type { Timeline } from '#schedule/timeline';
import { AROUND, afterFinish } from '#schedule/waits';
import { longestOf } from './chain-waits.ts';
import type { Results } from './check.ts';
import { editionOf } from './editions.ts';
import { type Overlong, overlongs } from './longest-waits.ts';
import { type Meetings, meetingsOf } from './meetings.ts';
import { begunAt } from './outcomes.ts';
import { sortOf } from './pairs.ts';
import type { Scopes } from './scopes.ts';
import { ruleFinding, spelled, spoken, waitingFix } from './sequence-messages.ts';
import { counted, doneText, namesText, startText } from './show.ts';
import type { Side } from './sides.ts';

/** By rule: who met whom at the last look, and what was told of it. */
export type LongestMemory = WeakMap<Rule, Looked>;
interface Looked {
  readonly meetings: Meetings;
  readonly scopes: Scopes;
  readonly told: readonly { readonly from: readonly unknown[]; readonly finding: Finding }[];
}

interface Told {
  readonly rule: Rule;
  readonly later: string;
  readonly earlier: string;
  readonly laterDay: string;
  /** 'done on 9 Apr', 'passed by "nailing-check" on 9 Apr'. */
  readonly ended: string;
  /** '18h', '1 day'. */
  readonly most: string;
  /** '63h' that pass, where the rule counts hours. */
  readonly passing: string | undefined;
  /** ': it waits for "felt-truck"'; empty where nothing but the earlier step keeps it. */
  readonly cause: string;
  readonly keepers: readonly string[];
  /** 'more than 0.5 working days of slip'. */
  readonly slip: string;
}

export const tooLate: FindingSort<[told: Told]> = findingSort<[told: Told]>({
  code: 'sequence/too-late',
  severity: 'warning',
  say: ({ rule, later, earlier, laterDay, ended, most, passing, cause }) =>
    spoken(
      rule,
      passing === undefined
        ? `"${later}" begins on ${laterDay}, but "${earlier}" is ${ended}, and no more than ${most} may pass${cause}.`
        : `"${later}" begins on ${laterDay}, ${passing} after "${earlier}" is ${ended}, and no more than ${most} may pass${cause}.`,
      '',
    ),
});

export const inTimeByLuck: FindingSort<[told: Told]> = findingSort<[told: Told]>({
  code: 'sequence/in-time-by-luck',
  severity: 'note',
  say: ({ rule, later, earlier, laterDay, ended, most, keepers, slip }) =>
    spoken(
      rule,
      `"${later}" begins on ${laterDay}, within ${most} of "${earlier}" (${ended}), only by luck: it waits for ${namesText(keepers)} as well, and ${slip} there makes it too late.`,
      `Let "${earlier}" wait for ${namesText(keepers)}.`,
    ),
});

/** What is told of a rule that says the longest that may pass. */
export function longestFindings(
  rule: Rule,
  first: readonly Side[],
  then: readonly Side[],
  scopes: Scopes,
  results: Results,
  memory: LongestMemory,
): readonly Finding[] {
  if (first.length === 0) return [];
  const before = memory.get(rule);
  const meetings = meetingsOf(sortOf(rule), first, then, scopes, before);
  const told: Looked['told'][number][] = [];
  for (const [later, one] of overlongs(rule, meetings, scopes, results)) {
    const from = wordsFrom(later, one, results);
    const old = before?.told[told.length];
    const same = old !== undefined && sameList(old.from, from);
    told.push(same ? old : { from, finding: overlongFinding(rule, later, one, results) });
  }
  memory.set(rule, { meetings, scopes, told });
  return told.map(({ finding }) => finding);
}

function wordsFrom(later: number, { kind, earlier, passed, latest, start, keepers }: Overlong, { timeline, model }: Results) {
  const { steps, crews, timing, dated, start: begin, minutesPerDay, trades, links } = timeline;
  return [
    kind,
    steps.list[later],
    steps.list[earlier],
    start,
    crews.start[earlier],
    crews.finish[earlier],
    passed === undefined ? undefined : steps.list[passed],
    passed === undefined ? undefined : crews.finish[passed],
    latest,
    crews.ready[later],
    // What keeps it, by number: only the present links tell what a number means.
    crews.heldBy[later],
    links,
    trades[later],
    begunAt(earlier, timeline),
    ...keepers.flatMap((each) => [steps.list[each], timing.calendars[timing.calendarOf[each]!]]),
    dated ? undefined : begin,
    minutesPerDay,
    editionOf(model),
  ];
}

function overlongFinding(rule: Rule, later: number, one: Overlong, { timeline, model }: Results): Finding {
  const { steps, crews } = timeline;
  const [step, earlier] = [steps.list[later]!, steps.list[one.earlier]!];
  const most = rule.given.within!.value;
  const told: Told = {
    rule,
    later: step.name,
    earlier: earlier.name,
    laterDay: startText(one.start, timeline),
    ended: endedText(one, timeline),
    most: spelled(most),
    passing: waiting(most).clock === AROUND ? hoursText(one.start - crews.finish[one.passed ?? one.earlier]!) : undefined,
    cause: one.kind === 'late' ? causeOf(later, one, timeline) : '',
    keepers: one.keepers.map((each) => steps.list[each]!.name),
    slip: slipText(one, timeline),
  };
  const severity = rule.given.severity?.value ?? 'note';
  const fixes = begunAt(one.earlier, timeline) === undefined ? keepersFirst(one, timeline) : [];
  return ruleFinding(
    rule,
    editionOf(model),
    one.kind === 'late' ? tooLate : inTimeByLuck,
    one.kind === 'late' ? severity : milder(severity),
    step,
    [told],
    { related: [{ place: earlier.place, note: `"${earlier.name}", which it must follow` }], fixes },
  );
}

/** What is right by luck is told one rung milder. */
function milder(severity: Severity): Severity {
  return severity === 'error' ? 'warning' : 'note';
}

function endedText({ earlier, passed }: Overlong, timeline: Timeline): string {
  const { steps } = timeline;
  const day = doneText(passed ?? earlier, timeline);
  return passed === undefined ? `done on ${day}` : `passed by "${steps.list[passed]!.name}" on ${day}`;
}

function hoursText(minutes: number): string {
  return `${Math.round(minutes / 6) / 10}h`;
}

/** What keeps the later step back, where it is not the earlier one. */
function causeOf(
  later: number,
  { earlier, passed, latest }: Overlong,
  { crews, steps, links, trades, timing }: Timeline,
): string {
  const trade = trades[later];
  if (crews.ready[later]! <= latest && trade !== undefined) return `: its crew ("${trade.name}") is not free sooner`;
  const held = crews.heldBy[later]!;
  if (held === HELD_BY_DATE) return ': it is not to begin sooner';
  const link = links[held];
  if (link === undefined) return '';
  if (link.from !== earlier && link.from !== passed) return `: it waits for "${steps.list[link.from]!.name}"`;
  const bound = afterFinish(timing.calendars[timing.planCalendar]!, crews.finish[link.from]!, link.lag, link.clock);
  return bound > latest ? ': its own link asks for more' : ': nobody works in between';
}

function slipText({ latest, start, keepers }: Overlong, { timing }: Timeline): string {
  const [keeper] = keepers;
  if (keeper === undefined) return '';
  const calendar = timing.calendars[timing.calendarOf[keeper]!]!;
  const days = Math.floor((workBetween(calendar, start, latest) / longestOf(calendar)) * 10 + 1e-9) / 10;
  return days === 0 ? 'any slip' : `more than ${counted(days, 'working day')} of slip`;
}

/** Lets the earlier step wait for what keeps the later one. */
function keepersFirst({ earlier, keepers }: Overlong, { steps }: Timeline): readonly Fix[] {
  if (keepers.length === 0) return [];
  const step = steps.list[earlier]!;
  const names = keepers.map((each) => steps.list[each]!.name);
  return [waitingFix(step, names, `Let "${step.name}" wait for ${namesText(names)}`)];
}
