// Why a step begins when it does, in words: the link that was tight, the crew, machine or room it had to wait for, a date, a
// record, or the plan's first day.
import { DAY_MINUTES } from '#kit/dates';
import type { Step } from '#model/model';
import type { Hold } from '#schedule/holds';
import type { Limit } from '#schedule/limits';
import type { PlanLink } from '#schedule/links';
import { FINISH_FINISH, FINISH_START, START_FINISH, START_START } from '#schedule/network';
import { orderableFrom } from '#schedule/step-times';
import { datesBetween, mustStart } from '#schedule/step-windows';
import type { Timeline } from '#schedule/timeline';
import { CALENDAR_DAYS, WORKING } from '#schedule/waits';
import { briefStart, stepFinishDay } from './days.ts';
import { type Style, writeDays } from './view.ts';

/** After 'because': '"footings" is done 2 Apr'. */
export function holdText(hold: Hold, step: number, timeline: Timeline, style: Style): string {
  switch (hold.kind) {
    case 'link':
      return linkText(hold.link, timeline, style);
    case 'crew':
      return `${takenText(hold.of)} "${nameOf(hold.from, timeline)}" until ${doneDay(hold.from, timeline)}`;
    case 'date':
      return dateText(timeline.steps.list[step]!, step, timeline);
    case 'record':
      return 'the diary says so';
    case 'plan':
      return 'nothing holds it later';
  }
}

/** 'its crew (Framing) is at', 'the machine "crane" is at', 'the room "bath" is full with'. */
function takenText(limit: Limit | undefined): string {
  switch (limit?.kind) {
    case undefined:
      return 'its crew is at';
    case 'trade':
      return `its crew (${limit.label}) is at`;
    case 'firm':
      return `the crew of its firm (${limit.label}) is at`;
    case 'machine':
      return `the machine "${limit.name}" is at`;
    case 'room':
      return `the room "${limit.name}" is taken by`;
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
        : `${name} begins ${begins} and must be ${Math.round(link.share * 100)}% done${after}`;
    case FINISH_FINISH:
      return `it is done with ${name}, ${doneDay(from, timeline)}${after}`;
    case START_FINISH:
      return `it is done after ${name} begins, ${begins}${after}`;
  }
}

/** '+ 2d', '+ 3 days', '+ 24 h', '2d before', 'called 1 day ahead'; empty without a wait. */
export function waitText({ lag, clock, notice }: PlanLink, style: Style): string {
  if (lag === 0) return '';
  if (notice !== undefined) return `called ${sizeText(notice, clock, style)} ahead`;
  const text = sizeText(Math.abs(lag), clock, style);
  return lag > 0 ? `+ ${text}` : `${text} before`;
}

function sizeText(size: number, clock: PlanLink['clock'], style: Style): string {
  const days = size / DAY_MINUTES;
  if (clock === WORKING) return writeDays(size, style);
  return clock === CALENDAR_DAYS ? `${days} ${days === 1 ? 'day' : 'days'}` : `${size / 60} h`;
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
  const starts = mustStart(step);
  if (starts !== undefined && starts * DAY_MINUTES === moment) return `it must start on ${day}`;
  const window = datesBetween(step);
  if (window !== undefined && window.first * DAY_MINUTES === moment) return `its dates begin on ${day}`;
  const asked = step.given['not before']?.value;
  if (asked !== undefined && asked * DAY_MINUTES === moment) return `it is not to begin before ${day}`;
  const expected = progress.records.get(number)?.notBefore;
  if (expected !== undefined && expected * DAY_MINUTES === moment) return `the diary expects it on ${day}`;
  if (step.kind === 'delivery' && step.given.lead !== undefined && !isDiarysDay(moment, timeline)) {
    if (step.given.ordered !== undefined) return `it is on its way until ${day}`;
    const from = briefStart(orderableFrom(number, timeline.start, progress) * DAY_MINUTES, timeline);
    return `it is not ordered yet, and ordered on ${from} it comes on ${day}`;
  }
  if (step.kind === 'milestone' && step.given.on !== undefined) return `it is set for ${day}`;
  const failed = progress.records.get(number)?.failed.at(-1);
  if (failed !== undefined) return `it failed on ${briefStart(failed * DAY_MINUTES, timeline)} and is called again`;
  if (step.kind === 'milestone' && progress.asOf !== undefined && moment < (progress.asOf + 1) * DAY_MINUTES)
    return `the diary stands at ${briefStart(progress.asOf * DAY_MINUTES, timeline)} and all before it is done`;
  if (progress.asOf !== undefined && isDiarysDay(moment, timeline))
    return `the diary stands at ${briefStart(progress.asOf * DAY_MINUTES, timeline)} and it has not begun`;
  return `the diary expects it on ${day}`;
}

/** Held by nothing but the diary's day: from the next morning on. */
function isDiarysDay(moment: number, { progress: { asOf } }: Timeline): boolean {
  return asOf !== undefined && moment === (asOf + 1) * DAY_MINUTES;
}
