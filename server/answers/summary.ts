// A plan in one line: when it is done, against its target; what it costs; how much there is to answer.
import { endOf } from '#checks/ends';
import { DAY_MINUTES, dayAndMonth, isoDate, shortDate } from '#kit/dates';
import type { Severity } from '#kit/finding';
import { workBetween } from '#schedule/calendar';
import { finishDay, lastDay } from './days.ts';
import { counted, listed } from './table.ts';
import { type View, writeWholeMoney } from './view.ts';

export interface Counts {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
}

export function countsOf(findings: readonly { readonly severity: Severity }[]): Counts {
  const of = (severity: Severity): number => findings.filter((each) => each.severity === severity).length;
  return { errors: of('error'), warnings: of('warning'), notes: of('note') };
}

/** 'no errors, 2 warnings and 1 note'. */
export function countsText({ errors, warnings, notes }: Counts): string {
  return listed([counted(errors, 'error'), counted(warnings, 'warning'), counted(notes, 'note')]);
}

/** 'Larkspur cottage: done Thu 2 Dec 2027, 11 working days before its target of 17 Dec; $201,345.' Empty for a plan of neither steps nor prices. */
export function planSummary(view: View): string {
  const parts = [finishText(view), costText(view)].filter((part) => part !== undefined);
  return parts.length === 0 ? '' : `${planLabel(view)}: ${parts.join('; ')}.`;
}

export function planLabel({ plan, fileName }: View): string {
  return plan.model.plan?.label ?? fileName(plan.root);
}

/** Undefined where the plan has no steps. */
export function finishText({ plan: { timeline, model } }: View): string | undefined {
  const end = endOf(timeline);
  if (end === undefined) return undefined;
  if (!timeline.dated) return `done on ${finishDay(end.moment, timeline)}`;
  const done = `done ${shortDate(lastDay(timeline))}`;
  const target = model.plan?.given.target?.value;
  if (target === undefined) return done;
  const { calendars, planCalendar } = timeline.timing;
  const due = (target + 1) * DAY_MINUTES;
  const days = workBetween(calendars[planCalendar]!, end.moment, due) / timeline.minutesPerDay;
  const early = Math.floor(days + 1e-9);
  const late = Math.max(1, Math.ceil(-days - 1e-9));
  if (end.moment > due) return `${done}, ${counted(late, 'working day')} after its target of ${dayAndMonth(target)}`;
  return early === 0
    ? `${done}, just by its target`
    : `${done}, ${counted(early, 'working day')} before its target of ${dayAndMonth(target)}`;
}

/** Undefined where the plan says nothing of money. */
export function costText({ plan: { budget }, style }: View): string | undefined {
  if (!budget.priced) return undefined;
  const kept = budget.contingency > 0 ? ` with ${writeWholeMoney(budget.contingency, style)} contingency` : '';
  const open = budget.missing.length > 0 ? `, leaving out ${counted(budget.missing.length, 'thing')} without a price` : '';
  return `${writeWholeMoney(budget.total, style)}${kept}${open}`;
}

/** The day it is done, '2027-12-02' or 'day 20'; undefined without steps. */
export function finishOf({ plan: { timeline } }: View): string | undefined {
  if (timeline.steps.list.length === 0) return undefined;
  return timeline.dated ? isoDate(lastDay(timeline)) : finishDay(timeline.crews.end, timeline);
}
