// Moments as dates. A plan without a first day has no dates: its days are counted, the first working day being day 1.
import { civil, DAY_MINUTES, dayAndMonth, dayOfFinish, dayOfStart, isoMoment, shortDate } from '#kit/dates';
import type { Quantity } from '#kit/quantity';
import { formatQuantity } from '#kit/units';
import { workBetween } from '#schedule/calendar';
import type { Timeline } from '#schedule/timeline';
import { type Style, writeDays } from './view.ts';

/** 'Mon 5 Apr 2027', or 'day 3': the day on which what begins at this moment begins. */
export function startDay(moment: number, timeline: Timeline): string {
  return timeline.dated ? shortDate(dayOfStart(moment)) : dayNumber(dayOfStart(moment), timeline);
}

/** The day on which what ends at this moment ends. */
export function finishDay(moment: number, timeline: Timeline): string {
  return timeline.dated ? shortDate(dayOfFinish(moment)) : dayNumber(dayOfFinish(moment), timeline);
}

/** A whole day: 'Mon 5 Apr 2027', or 'day 3'. */
export function dayText(day: number, timeline: Timeline): string {
  return timeline.dated ? shortDate(day) : dayNumber(day, timeline);
}

/** '9 weeks', '3 days', '2d'. */
export function leadText(lead: Pick<Quantity, 'value' | 'dimension' | 'unit'>, style: Style): string {
  return lead.unit === 'd' || lead.unit === 'w' ? writeDays(lead.value, style, lead.unit) : formatQuantity(lead, style.system);
}

/** '5 Apr', where the year is plain. */
export function briefStart(moment: number, timeline: Timeline): string {
  return timeline.dated ? dayAndMonth(dayOfStart(moment)) : dayNumber(dayOfStart(moment), timeline);
}

export function briefFinish(moment: number, timeline: Timeline): string {
  return timeline.dated ? dayAndMonth(dayOfFinish(moment)) : dayNumber(dayOfFinish(moment), timeline);
}

/** '5 – 8 Apr': from the day it begins to the day it ends; one day where they are the same. */
export function span(start: number, finish: number, timeline: Timeline): string {
  // A moment falls on a day; what has a length begins and ends.
  const [from, to] =
    start === finish
      ? [briefStart(start, timeline), briefStart(finish, timeline)]
      : [briefStart(start, timeline), briefFinish(finish, timeline)];
  return from === to ? from : `${from} – ${to}`;
}

/** The day of a step's finish; of a step without length, the day it falls on. */
export function stepFinishDay(start: number, finish: number, timeline: Timeline): string {
  return start === finish ? startDay(finish, timeline) : finishDay(finish, timeline);
}

/** How days are written in a table of the plan: without the year where all lie in one. */
export function tableDays(timeline: Timeline): {
  readonly start: (moment: number) => string;
  readonly finish: (start: number, finish: number) => string;
} {
  const { start, dated } = timeline;
  const oneYear = dated && civil(start).year === civil(lastDay(timeline)).year;
  const cut = (day: string): string => (oneYear ? day.replace(/ \d{4}$/, '') : day);
  return { start: (moment) => cut(startDay(moment, timeline)), finish: (from, to) => cut(stepFinishDay(from, to, timeline)) };
}

/** The same for whole days. */
export function tableDay(timeline: Timeline): (day: number) => string {
  const { start } = tableDays(timeline);
  return (day) => start(day * DAY_MINUTES);
}

/** '2027-04-05T08:00'; without a first day 'day 3T08:00'. */
export function momentText(moment: number, timeline: Timeline): string {
  const text = isoMoment(moment);
  return timeline.dated ? text : `${dayNumber(dayOfStart(moment), timeline)}${text.slice(text.indexOf('T'))}`;
}

/** For each timeline, the number of each day from its first. */
const numbered = new WeakMap<Timeline, number[]>();

/** Working days of the plan from its first day, which is number 1; a day nobody works has the number of the last that was. */
function dayNumber(day: number, timeline: Timeline): string {
  const { timing, start } = timeline;
  const calendar = timing.calendars[timing.planCalendar]!;
  let numbers = numbered.get(timeline);
  if (numbers === undefined) numbered.set(timeline, (numbers = []));
  for (let each = start + numbers.length; each <= day; each++) {
    const works = workBetween(calendar, each * DAY_MINUTES, (each + 1) * DAY_MINUTES) > 0;
    numbers.push((numbers[numbers.length - 1] ?? 0) + (works ? 1 : 0));
  }
  return `day ${Math.max(1, numbers[day - start] ?? 1)}`;
}

/** Working minutes of a step; of one that stands from step to step, those between its start and its end. */
export function lengthMinutes(step: number, { durations, timing, crews }: Timeline): number {
  const { minutes, basis } = durations[step]!;
  if (basis !== 'span') return minutes;
  return workBetween(timing.calendars[timing.calendarOf[step]!]!, crews.start[step]!, crews.finish[step]!);
}

/** The last day of the plan: the day its last step is done. */
export function lastDay({ crews, steps }: Timeline): number {
  const last = steps.list.findIndex((_, at) => crews.finish[at] === crews.end && crews.start[at] !== crews.end);
  // Where only moments end last, they fall on a day.
  return last < 0 ? dayOfStart(crews.end) : dayOfFinish(crews.end);
}
