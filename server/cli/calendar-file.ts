// The next weeks as a calendar file (iCalendar, RFC 5545), to be brought into whatever calendar a trade keeps. The name of a
// step in its plan, of a call to a trade the number of its coming, is its UID for good, so what is brought in again takes the place of what was there; the stamp and the
// number of the revision grow with each file. Times are local and float: seven o'clock on site is seven o'clock.
import ical, { type ICalCalendar } from 'ical-generator';
import { type LookAhead, type Stay, shownName, type TradeAhead } from '#answers/look-ahead';
import { doText, forText, timeOf, whoText } from '#answers/look-ahead-words';
import { planLabel } from '#answers/summary';
import { listed } from '#answers/table';
import { type View, writeDays } from '#answers/view';
import { DAY_MINUTES, isoDate } from '#kit/dates';

/** `stamp`: minutes since 1970 by universal time. */
export function tradeCalendar(trades: readonly TradeAhead[], view: View, stamp: number): string {
  const [only] = trades;
  const calendar = emptyCalendar(trades.length === 1 ? `${only!.trade.label}, ${planLabel(view)}` : planLabel(view));
  for (const { trade, stays } of trades)
    for (const stay of stays) addStay(calendar, stay, trades.length === 1 ? '' : `${trade.label}: `, view, stamp);
  return `${calendar.toString()}\r\n`;
}

/** What to call and what comes, as whole days. */
export function callsCalendar({ calls, arrivals }: LookAhead, view: View, stamp: number): string {
  const calendar = emptyCalendar(`${planLabel(view)}: to call`);
  const { steps } = view.plan.timeline;
  for (const call of calls) {
    const { coming } = call;
    const step = call.steps[0] === undefined ? call.about : steps.list[call.steps[0]]!.name;
    // Which step a trade comes for first may change with the dates; that it is its second coming does not.
    const about = coming === undefined ? step : `${coming.trade}-${coming.nth}`;
    const event = calendar.createEvent({
      id: uidOf(`${call.kind}-${about.replaceAll(/\W+/g, '-')}`, view),
      sequence: revisionOf(stamp),
      stamp: new Date(stamp * 60_000),
      allDay: true,
      floating: true,
      start: dateOf(call.by * DAY_MINUTES),
      end: dateOf((call.by + 1) * DAY_MINUTES),
      summary: `${doText(call)}: ${call.about}`,
    });
    event.description([whoText(call), forText(call, view)].filter((line) => line !== '').join('\n'));
  }
  for (const { step, day, who, phone } of arrivals) {
    const { name } = steps.list[step]!;
    const event = calendar.createEvent({
      id: uidOf(name, view),
      sequence: revisionOf(stamp),
      stamp: new Date(stamp * 60_000),
      allDay: true,
      floating: true,
      start: dateOf(day * DAY_MINUTES),
      end: dateOf((day + 1) * DAY_MINUTES),
      summary: `${who === '' ? '' : 'Comes: '}${shownName(steps.list[step]!)}`,
    });
    if (who !== '') event.description(whoText({ who, phone }));
  }
  return `${calendar.toString()}\r\n`;
}

function emptyCalendar(name: string): ICalCalendar {
  return ical({ name, prodId: { company: 'Screed', product: 'look-ahead', language: 'EN' } });
}

/**
 * Whole days where it begins and ends with them; by the clock where it lies within one day. What spans days with a part of
 * one stands as whole days, with the hours in its words: nobody works through the night between.
 */
function addStay(calendar: ICalCalendar, stay: Stay, before: string, view: View, stamp: number): void {
  const { timeline, model } = view.plan;
  const { step, start, finish, firstDay, lastDay, wholeDays, where } = stay;
  const { name } = timeline.steps.list[step]!;
  const isTimed = !wholeDays && firstDay === lastDay && start < finish;
  const hours =
    wholeDays || isTimed || start === finish ? [] : [`From ${timeOf(start)}, on the last day until ${timeOf(finish)}`];
  const { minutes, basis } = timeline.durations[step]!;
  const takes = basis === 'given' || basis === 'rate' ? [`Takes ${writeDays(minutes, view.style)} of work`] : [];
  const asOf = timeline.progress.asOf;
  const event = calendar.createEvent({
    id: uidOf(name, view),
    sequence: revisionOf(stamp),
    stamp: new Date(stamp * 60_000),
    allDay: !isTimed,
    floating: true,
    start: dateOf(isTimed ? start : firstDay * DAY_MINUTES),
    end: dateOf(isTimed ? finish : (lastDay + 1) * DAY_MINUTES),
    summary: `${before}${shownName(timeline.steps.list[step]!)}`,
  });
  event.description(
    [
      ...(where.length === 0 ? [] : [listed(where)]),
      ...hours,
      ...takes,
      ...(asOf === undefined ? [] : [`As the job stood on ${isoDate(asOf)}`]),
    ].join('\n'),
  );
  const address = model.plan?.given.address?.value;
  if (address !== undefined) event.location(address);
}

/** A step's name is unique in its plan, so this is as long as it keeps it. */
function uidOf(name: string, { plan: { model } }: View): string {
  return `${name}@${model.plan?.name ?? 'plan'}.screed`;
}

/** Grows with the stamp, and fits the 31 bits that a calendar gives it: minutes since 2020. */
function revisionOf(stamp: number): number {
  return Math.max(0, Math.floor(stamp) - FIRST_STAMP);
}

const FIRST_STAMP = Date.UTC(2020, 0, 1) / 60_000;

/** A local moment, carried as if it were universal time: written without a zone. */
function dateOf(moment: number): Date {
  return new Date(moment * 60_000);
}
