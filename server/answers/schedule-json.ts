// The schedule for programs. Moments are local, without a time zone; lengths, waits and floats are whole working minutes.
// The shape is published in server/schemas/schedule.schema.json.
import { isoDate } from '#kit/dates';
import { holderOf, holdOf } from '#schedule/holds';
import { FINISH_FINISH, FINISH_START, type LinkKind, START_FINISH, START_START } from '#schedule/network';
import type { Timeline } from '#schedule/timeline';
import { CALENDAR_DAYS, WORKING } from '#schedule/waits';
import { lengthMinutes, momentText } from './days.ts';
import { nameOf } from './holding.ts';
import { standing } from './schedule-table.ts';
import type { View } from './view.ts';

export interface ScheduleAnswer {
  readonly screed: 1;
  /** Whether the plan has a first day. Without one, 'day 3T08:00' is a moment of its third working day. */
  readonly dated: boolean;
  /** What `start` and `finish` heed beside links and calendars. */
  readonly limits: 'crews';
  readonly minutesPerDay: number;
  readonly asOf?: string;
  readonly start: string;
  readonly finish: string;
  readonly tasks: readonly ListedStep[];
}

export interface ListedStep {
  readonly name: string;
  readonly kind: 'task' | 'inspection' | 'milestone' | 'delivery';
  readonly label: string;
  readonly phase?: string;
  readonly trade?: string;
  /** With crews as limits. */
  readonly start: string;
  readonly finish: string;
  readonly duration: number;
  /** By links alone. */
  readonly earlyStart: string;
  readonly earlyFinish: string;
  /** On the network with the hand-overs of crews in it. */
  readonly lateStart: string;
  readonly lateFinish: string;
  readonly totalFloat: number;
  readonly freeFloat: number;
  readonly critical: boolean;
  readonly standing: 'open' | 'begun' | 'done';
  /** The step it waits last for: by a link, or for its crew. */
  readonly heldBy?: string;
  readonly predecessors: readonly Predecessor[];
}

export interface Predecessor {
  readonly name: string;
  readonly link: 'finish-start' | 'start-start' | 'finish-finish' | 'start-finish';
  /** Minutes; below zero a lead. */
  readonly lag: number;
  /** What the lag counts: working minutes, whole calendar days, or minutes round the clock. */
  readonly clock: 'working' | 'calendar-days' | 'around';
  /** The plan's words it comes from: 'after', 'in order', 'brings' … */
  readonly words: string;
}

export function scheduleAnswer({ plan: { timeline } }: View, trade?: string): ScheduleAnswer {
  const { steps, trades, start, crews, minutesPerDay, dated, progress } = timeline;
  const before = predecessorsOf(timeline);
  const tasks = steps.list.map((_, step) => step).filter((step) => trade === undefined || trades[step]?.name === trade);
  return {
    screed: 1,
    dated,
    limits: 'crews',
    minutesPerDay,
    ...(progress.asOf === undefined ? {} : { asOf: isoDate(progress.asOf) }),
    start: momentText(
      crews.start.reduce((first, each) => Math.min(first, each), Math.max(start * 1440, crews.end)),
      timeline,
    ),
    finish: momentText(crews.end, timeline),
    tasks: tasks.map((step) => listedStep(step, before[step] ?? [], timeline)),
  };
}

function listedStep(step: number, predecessors: readonly Predecessor[], timeline: Timeline): ListedStep {
  const { steps, trades, crews, byLinks, floats } = timeline;
  const { name, kind, label } = steps.list[step]!;
  const phase = steps.phases[step];
  const trade = trades[step];
  const holder = holderOf(holdOf(step, timeline));
  const moment = (of: Float64Array): string => momentText(of[step]!, timeline);
  return {
    name,
    kind,
    label,
    ...(phase === undefined ? {} : { phase: phase.name }),
    ...(trade === undefined ? {} : { trade: trade.name }),
    start: moment(crews.start),
    finish: moment(crews.finish),
    duration: lengthMinutes(step, timeline),
    earlyStart: moment(byLinks.start),
    earlyFinish: moment(byLinks.finish),
    lateStart: moment(floats.lateStart),
    lateFinish: moment(floats.lateFinish),
    totalFloat: floats.totalFloat[step]!,
    freeFloat: floats.freeFloat[step]!,
    critical: floats.critical[step] === 1,
    standing: standing(step, timeline) ?? 'open',
    ...(holder === undefined ? {} : { heldBy: nameOf(holder, timeline) }),
    predecessors,
  };
}

function predecessorsOf(timeline: Timeline): readonly Predecessor[][] {
  const lists: Predecessor[][] = timeline.steps.list.map(() => []);
  for (const { from, to, kind, lag, clock, words } of timeline.links)
    lists[to]?.push({
      name: nameOf(from, timeline),
      link: linkWord(kind),
      lag,
      clock: clock === WORKING ? 'working' : clock === CALENDAR_DAYS ? 'calendar-days' : 'around',
      words,
    });
  return lists;
}

function linkWord(kind: LinkKind): Predecessor['link'] {
  switch (kind) {
    case FINISH_START:
      return 'finish-start';
    case START_START:
      return 'start-start';
    case FINISH_FINISH:
      return 'finish-finish';
    case START_FINISH:
      return 'start-finish';
  }
}
