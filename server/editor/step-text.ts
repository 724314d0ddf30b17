// A step's dates, length, time to spare and money, in the words that hints and hovers share.

import { finishDay, lengthMinutes, startDay } from '#answers/days';
import { spareText as spareIn } from '#answers/schedule-table';
import { counted } from '#answers/table';
import { type Style, writeDays, writeWholeMoney } from '#answers/view';
import { dayAndMonth, dayOfFinish, dayOfStart, shortWeekday, weekday } from '#kit/dates';
import type { Timeline } from '#schedule/timeline';
import type { Plan } from '#server/pipeline';
import { centsOfStep } from './figures.ts';

/** 'Mon 5 Apr – Thu 8 Apr', or one day; 'day 3 – day 5' without a first day. */
export function datesText(start: number, finish: number, timeline: Timeline): string {
  const isMoment = start === finish;
  if (!timeline.dated) {
    const [from, to] = [startDay(start, timeline), isMoment ? startDay(finish, timeline) : finishDay(finish, timeline)];
    return from === to ? from : `${from} – ${to}`;
  }
  const [first, last] = [dayOfStart(start), isMoment ? dayOfStart(finish) : dayOfFinish(finish)];
  return last <= first ? dayText(first) : `${dayText(first)} – ${dayText(last)}`;
}

/** 'Mon 5 Apr'. */
export function dayText(day: number): string {
  return `${shortWeekday(weekday(day))} ${dayAndMonth(day)}`;
}

/** '4 days to spare', '3.2 h to spare', 'no days to spare', '2.5 days too late'. */
export function spareText(minutes: number, style: Style): string {
  if (spareIn(minutes, style) === 'none') return 'no days to spare';
  const size = Math.abs(minutes);
  const days = Math.round((size / style.minutesPerDay) * 10) / 10;
  const length = size < style.minutesPerDay ? writeDays(size, style) : counted(days, 'day');
  return `${length} ${minutes > 0 ? 'to spare' : 'too late'}`;
}

/** The parts of a step's hint, in order: dates, length, time to spare, money. */
export function stepParts(plan: Plan, number: number, style: Style): readonly string[] {
  const { timeline, budget } = plan;
  const { crews, floats, durations, progress } = timeline;
  const step = timeline.steps.list[number]!;
  const duration = durations[number]!;
  const record = progress.records.get(number);
  const parts = [datesText(crews.start[number]!, crews.finish[number]!, timeline)];
  if (step.kind === 'task' && duration.basis !== 'none') parts.push(lengthText(plan, number, style));
  if (record?.finished !== undefined) parts.push('done');
  else parts.push(spareText(floats.totalFloat[number]!, style));
  const cents = centsOfStep(plan, number);
  if (budget.priced && cents !== 0) parts.push(writeWholeMoney(cents, style));
  return parts;
}

/** '3.2d', or 'given 3d, the rate says 2.6d'. */
export function lengthText({ timeline }: Plan, number: number, style: Style): string {
  const { basis, rate } = timeline.durations[number]!;
  const length = writeDays(lengthMinutes(number, timeline), style);
  return basis !== 'given' || rate === undefined ? length : `given ${length}, the rate says ${writeDays(rate, style)}`;
}
