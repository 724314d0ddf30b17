// Why a step begins when it does: the link that was tight, the crew it had to wait for, a date, a record, or the plan's
// first day. Read back from the finished passes.
import { DAY_MINUTES } from '#kit/dates';
import type { Step, Trade } from '#model/model';
import { HELD_BY_DATE, HELD_BY_PLAN, HELD_BY_RECORD } from '#schedule/early-dates';
import type { PlanLink } from '#schedule/links';
import { FINISH_FINISH, FINISH_START, START_FINISH, START_START } from '#schedule/network';
import type { Timeline } from '#schedule/timeline';
import { CALENDAR_DAYS, WORKING } from '#schedule/waits';
import { briefStart, stepFinishDay } from './days.ts';
import { type Style, writeDays } from './view.ts';

export type Hold =
  | { readonly kind: 'link'; readonly link: PlanLink }
  | { readonly kind: 'crew'; readonly from: number; readonly trade: Trade | undefined }
  | { readonly kind: 'date' }
  | { readonly kind: 'record' }
  | { readonly kind: 'plan' };

/** What holds a step of the dates that are shown, crews as limits. */
export function holdOf(step: number, timeline: Timeline): Hold {
  const { crews, links, trades } = timeline;
  const giver = crews.heldByTask[step]!;
  if (giver >= 0) return { kind: 'crew', from: giver, trade: trades[step] };
  const by = crews.heldBy[step]!;
  switch (by) {
    case HELD_BY_PLAN:
      return { kind: 'plan' };
    case HELD_BY_DATE:
      return { kind: 'date' };
    case HELD_BY_RECORD:
      return { kind: 'record' };
    default: {
      const link = links[by];
      return link === undefined ? { kind: 'plan' } : { kind: 'link', link };
    }
  }
}

/** The step it waits for, where it is one that holds it. */
export function holderOf(hold: Hold): number | undefined {
  return hold.kind === 'link' ? hold.link.from : hold.kind === 'crew' ? hold.from : undefined;
}

/** After 'because': '"footings" is done 2 Apr'. */
export function holdText(hold: Hold, step: number, timeline: Timeline, style: Style): string {
  switch (hold.kind) {
    case 'link':
      return linkText(hold.link, timeline, style);
    case 'crew':
      return `its crew${hold.trade === undefined ? '' : ` (${hold.trade.label})`} is at "${nameOf(hold.from, timeline)}" until ${doneDay(hold.from, timeline)}`;
    case 'date':
      return dateText(timeline.steps.list[step]!, step, timeline);
    case 'record':
      return 'the diary says so';
    case 'plan':
      return 'nothing holds it later';
  }
}

/** '"footings" is done 2 Apr, + 2 days'. */
export function linkText(link: PlanLink, timeline: Timeline, style: Style): string {
  const { from, kind } = link;
  const name = `"${nameOf(from, timeline)}"`;
  const wait = waitText(link, style);
  const after = wait === '' ? '' : `, ${wait}`;
  const begins = briefStart(timeline.crews.start[from]!, timeline);
  switch (kind) {
    case FINISH_START:
      if (link.words === 'brings') return `${name} brings what it installs on ${doneDay(from, timeline)}${after}`;
      if (link.words === 'looks at') return `it looks at ${name}, done ${doneDay(from, timeline)}${after}`;
      if (link.words === 'holds') return `${name} must pass first, on ${doneDay(from, timeline)}${after}`;
      return `${name} is done ${doneDay(from, timeline)}${after}`;
    case START_START:
      return link.share === undefined
        ? `${name} begins ${begins}${after}`
        : `${name} begins ${begins} and must be ${Math.round(link.share * 100)}% done`;
    case FINISH_FINISH:
      return `it is done with ${name}, ${doneDay(from, timeline)}${after}`;
    case START_FINISH:
      return `it is done after ${name} begins, ${begins}${after}`;
  }
}

/** '+ 2d', '+ 3 days', '+ 24 h', '2d before', 'called 1 day ahead'; empty without a wait. */
export function waitText({ lag, clock, share, notice }: PlanLink, style: Style): string {
  if (lag === 0 || share !== undefined) return '';
  if (notice !== undefined) return `called ${sizeText(notice, clock, style)} ahead`;
  const text = sizeText(Math.abs(lag), clock, style);
  return lag > 0 ? `+ ${text}` : `${text} before`;
}

function sizeText(size: number, clock: PlanLink['clock'], style: Style): string {
  const days = size / DAY_MINUTES;
  if (clock === WORKING) return writeDays(size, style);
  return clock === CALENDAR_DAYS ? `${days} ${days === 1 ? 'day' : 'days'}` : `${size / 60} h`;
}

/** The chain that sets a step's date, itself first: each held by the next. */
export function chainOf(step: number, timeline: Timeline): readonly number[] {
  const chain = [step];
  const seen = new Set(chain);
  for (let at = holderOf(holdOf(step, timeline)); at !== undefined && !seen.has(at); at = holderOf(holdOf(at, timeline))) {
    chain.push(at);
    seen.add(at);
  }
  return chain;
}

export function nameOf(step: number, timeline: Timeline): string {
  return timeline.steps.list[step]?.name ?? '';
}

function doneDay(step: number, timeline: Timeline): string {
  return briefDone(timeline.crews.start[step]!, timeline.crews.finish[step]!, timeline);
}

function briefDone(start: number, finish: number, timeline: Timeline): string {
  const day = stepFinishDay(start, finish, timeline);
  // 'Fri 2 Apr 2027' without its year.
  return timeline.dated ? day.replace(/ \d+$/, '') : day;
}

function dateText(step: Step, number: number, timeline: Timeline): string {
  const { timing, progress } = timeline;
  const moment = timing.notBefore[number]!;
  const day = briefStart(moment, timeline);
  const asked = step.given['not before']?.value;
  if (asked !== undefined && asked * DAY_MINUTES === moment) return `it is not to begin before ${day}`;
  if (step.kind === 'delivery' && step.given.lead !== undefined) return `it is on its way until ${day}`;
  if (step.kind === 'milestone' && step.given.on !== undefined) return `it is set for ${day}`;
  if (progress.asOf !== undefined && moment === (progress.asOf + 1) * DAY_MINUTES)
    return `the diary stands at ${briefStart(progress.asOf * DAY_MINUTES, timeline)} and it has not begun`;
  return `the diary expects it on ${day}`;
}
