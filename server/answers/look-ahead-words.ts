// How the next weeks are said: what to do on a call, when somebody comes and goes, and the message for each trade.
import { clock, DAY_MINUTES, dayAndMonth, shortDate } from '#kit/dates';
import { type Call, type LookAhead, type Stay, shownName, type TradeAhead } from './look-ahead.ts';
import { planLabel } from './summary.ts';
import { listed } from './table.ts';
import { type View, writeDays } from './view.ts';

/** 'Tue 11 May': weekday, day and month, since all lie within weeks. */
export function shownDay(day: number): string {
  return shortDate(day).replace(/ -?\d+$/, '');
}

/** 'Tue 11 May', with '10:30' where it does not begin with the day. */
export function beginsText({ start, firstDay, wholeDays }: Stay, opens: boolean): string {
  return wholeDays || opens ? shownDay(firstDay) : `${shownDay(firstDay)} ${timeOf(start)}`;
}

export function endsText({ start, finish, lastDay, wholeDays }: Stay, closes: boolean): string {
  return wholeDays || closes || start === finish ? shownDay(lastDay) : `${shownDay(lastDay)} ${timeOf(finish)}`;
}

/** The time of day, to the quarter of an hour: nobody comes at 7:52. */
export function timeOf(moment: number): string {
  const minute = moment - Math.floor(moment / DAY_MINUTES) * DAY_MINUTES;
  return clock(Math.round(minute / QUARTER) * QUARTER);
}

const QUARTER = 15;

const DOES: Readonly<Record<Call['kind'], string>> = {
  order: 'Order',
  measure: 'Measure and order',
  confirm: 'Confirm',
  book: 'Book',
  get: 'Get',
  renew: 'Renew',
};

/** 'Order', 'Confirm' … */
export function doText({ kind }: Call): string {
  return DOES[kind];
}

/** 'Ruiz Plumbing, 555-0142'. */
export function whoText({ who, phone }: Pick<Call, 'who' | 'phone'>): string {
  return phone === undefined ? who : `${who}, ${phone}`;
}

/** What for: 'comes Mon 17 May: sills, girder, joists'. */
export function forText(call: Call, { plan: { timeline } }: View): string {
  const day = shownDay(call.for);
  const names = call.steps.map((step) => shownName(timeline.steps.list[step]!));
  switch (call.kind) {
    case 'confirm':
      return `to come ${day}: ${names.slice(0, MOST_NAMES).join(', ')}${names.length > MOST_NAMES ? ' …' : ''}`;
    case 'order':
    case 'measure':
      return `wanted on site ${day}`;
    case 'book':
      return `visit on ${day}`;
    case 'get':
      return day;
    case 'renew':
      return `good to ${day}, if nothing renewed it`;
  }
}

const MOST_NAMES = 4;

/** A message for one trade, short enough for a telephone. */
export function messageText({ trade, stays, confirmBy }: TradeAhead, view: View): string {
  const address = view.plan.model.plan?.given.address?.value;
  const asked = confirmBy === undefined ? [] : [`Please confirm by ${shownDay(confirmBy)}.`];
  const head = `${trade.label}, ${planLabel(view)}${address === undefined ? '' : `, ${address}`}:`;
  return [head, ...stayLines(stays, view), ...asked, ''].join('\n');
}

/** '- Tue 25 May 10:00 to 16:45: joists (6.8 h)'. */
function stayLines(stays: readonly Stay[], view: View): readonly string[] {
  const { timeline } = view.plan;
  return stays.map((each) => {
    const from = beginsText(each, false);
    const to = endsText(each, false);
    const one = each.firstDay === each.lastDay;
    const when = each.wholeDays
      ? one
        ? from
        : `${from} to ${to}`
      : one
        ? each.start === each.finish
          ? from
          : `${shownDay(each.firstDay)} ${timeOf(each.start)} to ${timeOf(each.finish)}`
        : `${from} to ${to}`;
    const { basis, minutes } = timeline.durations[each.step]!;
    const takes = basis === 'given' || basis === 'rate' ? ` (${writeDays(minutes, view.style)})` : '';
    const where = each.where.length === 0 ? '' : `, ${listed(each.where)}`;
    return `- ${when}: ${shownName(timeline.steps.list[each.step]!)}${where}${takes}${each.begun ? ', under way' : ''}`;
  });
}

/** All messages, one below the other; what to call stands first. */
export function messagesText(ahead: LookAhead, view: View): string {
  const heading = `${planLabel(view)}, ${shownDay(ahead.from)} to ${shownDay(ahead.to)}`;
  const calls = ahead.calls.map(
    (call) =>
      `- ${call.late ? `was due ${dayAndMonth(call.by)}` : call.by === ahead.from ? 'today' : shownDay(call.by)}: ${doText(call).toLowerCase()} ${call.about}${call.who === '' || call.who === call.about ? '' : ` (${whoText(call)})`}, ${forText(call, view)}`,
  );
  const first = calls.length === 0 ? [] : [['To call:', ...calls, ''].join('\n')];
  const comes = ahead.arrivals.map(
    (each) =>
      `- ${shownDay(each.day)}: ${shownName(view.plan.timeline.steps.list[each.step]!)}${each.who === '' ? '' : ` (${whoText(each)})`}`,
  );
  const second = comes.length === 0 ? [] : [['Comes, or is reached:', ...comes, ''].join('\n')];
  const third = ahead.unnamed.length === 0 ? [] : [['No trade named:', ...stayLines(ahead.unnamed, view), ''].join('\n')];
  return [`${heading}\n`, ...first, ...second, ...ahead.trades.map((each) => messageText(each, view)), ...third].join('\n');
}
