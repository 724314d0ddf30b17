// The next weeks as two tables: whom to call by when, and who is on site, trade by trade.
import { DAY_MINUTES, dayAndMonth, shortDate } from '#kit/dates';
import { nextWork, previousWork } from '#schedule/calendar';
import { holderOf, holdOf } from '#schedule/holds';
import { isStanding } from '#schedule/step-windows';
import { hasFinished } from '#schedule/timing';
import type { LookAhead, Stay } from './look-ahead.ts';
import { shownName } from './look-ahead.ts';
import { beginsText, doText, endsText, forText, shownDay, whoText } from './look-ahead-words.ts';
import { lengthText } from './schedule-table.ts';
import { planLabel } from './summary.ts';
import { left, listed, right, type Table, withoutEmpty } from './table.ts';
import type { View } from './view.ts';

/** One below the other. */
export function lookAheadTables(ahead: LookAhead, view: View): readonly Table[] {
  return [callsTable(ahead, view), ...(ahead.arrivals.length === 0 ? [] : [arrivalsTable(ahead, view)]), onSite(ahead, view)];
}

function arrivalsTable({ arrivals }: LookAhead, { plan: { timeline } }: View): Table {
  return withoutEmpty({
    heading: ['Comes, or is reached.'],
    columns: [left('Day'), left('What'), left('From')],
    rows: arrivals.map((each) => [shownDay(each.day), shownName(timeline.steps.list[each.step]!), whoText(each)]),
    totals: [],
    remarks: [],
  });
}

function callsTable({ from, to, calls }: LookAhead, view: View): Table {
  const { asOf } = view.plan.timeline.progress;
  return {
    heading: [
      `${planLabel(view)}: ${shownDay(from)} to ${shortDate(to)}${asOf === undefined ? '' : `, as the diary stands on ${shownDay(asOf)}`}.`,
      ...(calls.length === 0 ? [] : ['To call, by the last day that leaves the notice or the lead.']),
    ],
    columns: calls.length === 0 ? [] : [left('By'), left('Do'), left('About'), left('Whom'), left('For')],
    rows: calls.map((call) => [
      call.late ? `was ${dayAndMonth(call.by)}` : call.by === from ? 'today' : shownDay(call.by),
      doText(call),
      call.about,
      whoText(call),
      forText(call, view),
    ]),
    totals: [],
    remarks: calls.length === 0 ? ['Nobody is to be called in these days.'] : silent(view),
  };
}

/** Trades that work on site and that nothing says how long ahead to call; who only inspects is booked by the visit. */
function silent({ plan: { model, timeline } }: View): readonly string[] {
  if (model.plan?.given.call !== undefined) return [];
  const { steps, trades, timing } = timeline;
  const working = new Set(
    trades.filter((_, step) => steps.list[step]!.kind === 'task' && !hasFinished(timing, step) && !isStanding(steps.list[step]!)),
  );
  const quiet = model
    .list('trade')
    .filter(
      (trade) =>
        trade.given.call === undefined &&
        trade.given.sees === undefined &&
        trade.given.at?.value.value !== 0 &&
        working.has(trade),
    );
  if (quiet.length === 0) return [];
  const names = quiet.slice(0, MOST_TRADES).map(({ label }) => label);
  const more = quiet.length - names.length;
  return [
    `How long before they come ${listed([...names, ...(more === 0 ? [] : [`${more} more`])])} ${quiet.length === 1 ? 'is' : 'are'} called, the plan does not say: write "call 1 week ahead" below the plan, or below a trade.`,
  ];
}

const MOST_TRADES = 6;

function onSite({ trades, unnamed }: LookAhead, view: View): Table {
  return withoutEmpty({
    heading: ['On site, by trade.'],
    columns: [left('Step'), left('Where'), left('Begins'), left('Done'), right('Takes'), left('Waits last for'), left('Stands')],
    rows: [
      ...trades.flatMap(({ trade, who, phone, stays }, at) => [
        ...(at === 0 ? [] : ['']),
        who === trade.label ? who : `${trade.label}: ${whoText({ who, phone })}`,
        ...stays.map((each) => cells(each, view)),
      ]),
      ...(unnamed.length === 0
        ? []
        : [...(trades.length === 0 ? [] : ['']), 'No trade named', ...unnamed.map((each) => cells(each, view))]),
    ],
    totals: [],
    remarks: trades.length === 0 && unnamed.length === 0 ? ['No trade is on site in these days.'] : [],
  });
}

function cells(stay: Stay, view: View): readonly string[] {
  const { timeline } = view.plan;
  const own = timeline.timing.calendars[timeline.timing.calendarOf[stay.step]!]!;
  const opens = stay.start <= nextWork(own, stay.firstDay * DAY_MINUTES);
  const closes = stay.finish >= previousWork(own, (stay.lastDay + 1) * DAY_MINUTES);
  const holder = stay.begun ? undefined : holderOf(holdOf(stay.step, timeline));
  return [
    `  ${shownName(timeline.steps.list[stay.step]!)}`,
    listed(stay.where),
    beginsText(stay, opens),
    endsText(stay, closes),
    lengthText(stay.step, timeline, view.style),
    holder === undefined ? '' : shownName(timeline.steps.list[holder]!),
    [...(stay.begun ? ['under way'] : []), ...(stay.goesOn ? ['goes on'] : [])].join(', '),
  ];
}
