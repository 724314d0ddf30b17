// A better order of work, proposed: how much sooner the plan would be done, how much sooner nothing can be, which links to
// write, and which steps move. As a table for people and as an answer for programs (server/schemas/improve.schema.json).
import { workBetween } from '#schedule/calendar';
import type { Proposal } from '#schedule/search/proposal';
import type { Timeline } from '#schedule/timeline';
import { finishDay, momentText, tableDays } from './days.ts';
import { planLabel } from './summary.ts';
import { counted, left, type Table, withoutEmpty } from './table.ts';
import { type View, writeDays } from './view.ts';

/** What is known beyond the search: a solver found that nothing is shorter, or could not say, and why. */
export type Proof = { readonly kind: 'bound' | 'solver' | 'open' } | { readonly kind: 'unanswered'; readonly why: string };

export interface ImproveAnswer {
  readonly screed: 1;
  readonly seed: number;
  readonly schedules: number;
  readonly finishNow: string;
  readonly finish: string;
  readonly lowerBound: string;
  /** Working minutes of the plan's calendar. */
  readonly sooner: number;
  readonly gap: number;
  readonly minutesPerDay: number;
  readonly proven: boolean;
  /** Whether `links` bring the dates about by themselves. */
  readonly held: boolean;
  readonly links: readonly { readonly step: string; readonly after: string; readonly crew?: string }[];
  readonly moved: readonly MovedStep[];
}

export interface MovedStep {
  readonly name: string;
  readonly trade?: string;
  readonly startNow: string;
  readonly finishNow: string;
  readonly start: string;
  readonly finish: string;
}

export function improveAnswer({ plan: { timeline } }: View, proposal: Proposal, proof: Proof): ImproveAnswer {
  const { seed, schedules, before, end, lowerBound, links } = proposal;
  const { crews, steps, trades, minutesPerDay } = timeline;
  const moment = (at: number): string => momentText(at, timeline);
  return {
    screed: 1,
    seed,
    schedules,
    finishNow: moment(before),
    finish: moment(end),
    lowerBound: moment(isProven(proposal, proof) ? end : lowerBound),
    sooner: worked(end, before, timeline),
    gap: isProven(proposal, proof) ? 0 : worked(lowerBound, end, timeline),
    minutesPerDay,
    proven: isProven(proposal, proof),
    held: links !== undefined,
    links: (links ?? []).map(({ from, to }) => ({
      step: steps.list[to]!.name,
      after: steps.list[from]!.name,
      ...(trades[to] === undefined ? {} : { crew: trades[to].name }),
    })),
    moved: movedSteps(timeline, proposal).map((step) => ({
      name: steps.list[step]!.name,
      ...(trades[step] === undefined ? {} : { trade: trades[step].name }),
      startNow: moment(crews.start[step]!),
      finishNow: moment(crews.finish[step]!),
      start: moment(proposal.start[step]!),
      finish: moment(proposal.finish[step]!),
    })),
  };
}

export function improveTable(view: View, proposal: Proposal, proof: Proof): Table {
  const { timeline } = view.plan;
  const { crews, steps, trades } = timeline;
  const days = tableDays(timeline);
  return withoutEmpty({
    heading: headline(view, proposal, proof),
    columns: [left('Step'), left('Trade'), left('Begins now'), left('Done now'), left('Would begin'), left('Would be done')],
    rows: movedSteps(timeline, proposal).map((step) => [
      steps.list[step]!.name,
      trades[step]?.label ?? '',
      days.start(crews.start[step]!),
      days.finish(crews.start[step]!, crews.finish[step]!),
      days.start(proposal.start[step]!),
      days.finish(proposal.start[step]!, proposal.finish[step]!),
    ]),
    totals: [],
    remarks: [],
  });
}

function headline(view: View, proposal: Proposal, proof: Proof): readonly string[] {
  const { timeline } = view.plan;
  const { before, end, schedules, seed, links } = proposal;
  const tried = `${counted(schedules, 'schedule')} tried, seed ${seed}`;
  const day = (moment: number): string => finishDay(moment, timeline);
  const sooner = writeDays(worked(end, before, timeline), view.style);
  const found = (then: string, now: string): string => {
    if (end >= before) return `done ${now}; no order of work was found that is done sooner`;
    return then === now
      ? `could be done ${sooner} of work sooner on the same day, ${now}`
      : `could be done ${then} instead of ${now}, ${sooner} of work sooner`;
  };
  const lines = [`${planLabel(view)}: ${found(day(end), day(before))} (${tried}).`];
  lines.push(limitText(view, proposal, proof));
  if (end >= before) return lines;
  lines.push('The plan is not changed. Before you book by this, see that the order suits the trades and the site.');
  if (links === undefined) lines.push('No few links hold this order; give the steps below their days by "not before".');
  else {
    lines.push(links.length === 1 ? 'This line brings it about:' : 'These lines bring it about:');
    for (const { from, to } of links) {
      const [first, then] = [timeline.steps.list[from]!, timeline.steps.list[to]!];
      const trade = timeline.trades[to]?.label;
      lines.push(`  ${then.kind} ${then.name}: also after ${first.name}${trade === undefined ? '' : ` (${trade}: that first)`}`);
    }
  }
  return lines;
}

function limitText({ plan: { timeline }, style }: View, proposal: Proposal, proof: Proof): string {
  const { end, lowerBound } = proposal;
  if (end <= lowerBound) return 'No order can be done sooner: links, hours and crews leave no room.';
  if (proof.kind === 'solver') return 'No order can be done sooner: the solver HiGHS looked at them all.';
  const gap = writeDays(worked(lowerBound, end, timeline), style);
  const open = `No order can be done before ${finishDay(lowerBound, timeline)}: at most ${gap} of work are left to find.`;
  return proof.kind === 'unanswered' ? `${open} ${proof.why}` : open;
}

function isProven({ end, lowerBound }: Proposal, proof: Proof): boolean {
  return end <= lowerBound || proof.kind === 'solver';
}

function worked(from: number, to: number, { timing }: Timeline): number {
  return Math.max(0, workBetween(timing.calendars[timing.planCalendar]!, from, to));
}

/** Steps that would begin or be done at another moment, by when they would begin. */
function movedSteps({ steps, crews }: Timeline, { start, finish }: Proposal): readonly number[] {
  return steps.list
    .map((_, step) => step)
    .filter((step) => start[step] !== crews.start[step] || finish[step] !== crews.finish[step])
    .sort((a, b) => start[a]! - start[b]! || a - b);
}
