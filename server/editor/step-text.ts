// A step's dates, length, time to spare and money, in the words that hints and hovers share.
import { finishDay, startDay } from '#answers/days';
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

/** '4 days to spare', 'no days to spare', '2.5 days too late'. */
export function spareText(minutes: number, minutesPerDay: number): string {
  const days = Math.round((Math.abs(minutes) / minutesPerDay) * 10) / 10;
  if (minutes < 0) return days === 0 ? 'a little too late' : `${counted(days, 'day')} too late`;
  return days === 0 ? (minutes > 0 ? 'hours to spare' : 'no days to spare') : `${counted(days, 'day')} to spare`;
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
  else parts.push(spareText(floats.totalFloat[number]!, timeline.minutesPerDay));
  const cents = centsOfStep(plan, number);
  if (budget.priced && cents !== 0) parts.push(writeWholeMoney(cents, style));
  return parts;
}

/** '3.2d', or 'given 3d, the rate says 2.6d'. */
export function lengthText({ timeline }: Plan, number: number, style: Style): string {
  const { minutes, basis, rate } = timeline.durations[number]!;
  const length = writeDays(tenths(minutes, style), style);
  if (basis !== 'given' || rate === undefined) return length;
  return `given ${length}, the rate says ${writeDays(tenths(rate, style), style)}`;
}

/** To a tenth of a day, but never to nothing. */
function tenths(minutes: number, { minutesPerDay }: Style): number {
  const days = Math.round((minutes / minutesPerDay) * 10) / 10;
  return days === 0 && minutes > 0 ? (Math.round((minutes / minutesPerDay) * 100) / 100) * minutesPerDay : days * minutesPerDay;
}
