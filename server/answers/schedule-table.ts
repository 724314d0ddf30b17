// The steps of a plan with their dates: with crews as limits, and by links alone beside them; how many days each has to
// spare, and what it waits for.
import { holderOf, holdOf } from '#schedule/holds';
import type { Timeline } from '#schedule/timeline';
import { lengthMinutes, span, tableDays } from './days.ts';
import { nameOf } from './holding.ts';
import { finishText, planLabel } from './summary.ts';
import { left, right, type Table, withoutEmpty } from './table.ts';
import { type Style, type View, writeDays } from './view.ts';

/** Steps by the day they begin; only those of a trade, where one is named. */
export function scheduleTable(view: View, trade?: string): Table {
  const { plan, style } = view;
  const { timeline } = plan;
  const numbers = stepsByStart(timeline).filter((step) => trade === undefined || timeline.trades[step]?.name === trade);
  const finish = finishText(view);
  const days = tableDays(timeline);
  return withoutEmpty({
    heading: [
      `${planLabel(view)}${trade === undefined ? '' : `, ${tradeLabel(trade, timeline)}`}: ${finish === undefined ? 'no steps' : finish}.`,
      'Dates are those with crews as limits. By links alone, where it differs, is what the order of work would allow if every trade had crews enough.',
      'To spare is how long a step may slip before the end moves; before the next, how long until another step feels it. d is a working day.',
      ...(timeline.dated ? [] : ['The plan gives no first day, so working days are counted: its first is day 1.']),
    ],
    columns: [
      left('Step'),
      left('Trade'),
      left('Begins'),
      left('Done'),
      right('Takes'),
      left('By links alone'),
      right('To spare'),
      right('Before the next'),
      left('Waits last for'),
      left('Stands'),
    ],
    rows: numbers.map((step) => row(step, timeline, days, style)),
    totals: [],
    remarks: [],
  });
}

function row(step: number, timeline: Timeline, days: ReturnType<typeof tableDays>, style: Style): readonly string[] {
  const { steps, trades, crews, byLinks, floats } = timeline;
  const [start, finish] = [crews.start[step]!, crews.finish[step]!];
  const open = standing(step, timeline) !== 'done';
  const holder = open ? holderOf(holdOf(step, timeline)) : undefined;
  return [
    steps.list[step]!.name,
    trades[step]?.label ?? '',
    days.start(start),
    days.finish(start, finish),
    lengthText(step, timeline, style),
    byLinks.start[step] === start && byLinks.finish[step] === finish
      ? ''
      : span(byLinks.start[step]!, byLinks.finish[step]!, timeline),
    open ? spareText(floats.totalFloat[step]!, style) : '',
    open ? spareText(floats.freeFloat[step]!, style) : '',
    holder === undefined ? '' : nameOf(holder, timeline),
    isAssumed(step, timeline) ? 'taken as done' : (standing(step, timeline) ?? ''),
  ];
}

/** 'none', '4d'; below zero, how late it is: '3d late'. */
export function spareText(minutes: number, style: Style): string {
  const text = writeDays(Math.abs(minutes), style);
  // Minutes that no table shows are none.
  if (/^0(\.0)? ?[a-z]+$/.test(text)) return 'none';
  return minutes > 0 ? text : `${text} late`;
}

/** '3.2d', 'a visit'; nothing for a moment. */
export function lengthText(step: number, timeline: Timeline, style: Style): string {
  const { minutes, basis } = timeline.durations[step]!;
  switch (basis) {
    case 'span':
      return writeDays(lengthMinutes(step, timeline), style);
    case 'moment':
      return '';
    case 'visit':
      return 'a visit';
    case 'none':
      return '?';
    case 'given':
    case 'rate':
      return writeDays(minutes, style);
  }
}

/** How far it is by the diary. */
export function standing(step: number, { progress, timing }: Timeline): 'done' | 'begun' | undefined {
  if (progress.asOf === undefined) return undefined;
  if (!Number.isNaN(timing.fixedFinish?.[step] ?? Number.NaN)) return 'done';
  return Number.isNaN(timing.fixedStart?.[step] ?? Number.NaN) ? undefined : 'begun';
}

/** Done, and not by the diary: all that follows it has begun. */
export function isAssumed(step: number, timeline: Timeline): boolean {
  return standing(step, timeline) === 'done' && timeline.progress.records.get(step)?.finished === undefined;
}

/** Steps by the moment they begin, then by the moment they are done, then in plan order. */
export function stepsByStart({ steps, crews }: Timeline): readonly number[] {
  return steps.list
    .map((_, step) => step)
    .sort((a, b) => crews.start[a]! - crews.start[b]! || crews.finish[a]! - crews.finish[b]! || a - b);
}

function tradeLabel(name: string, { trades }: Timeline): string {
  return trades.find((trade) => trade?.name === name)?.label ?? name;
}
