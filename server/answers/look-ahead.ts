// The next weeks: who is on site when and where, and whom to call by when: crews to confirm, goods to order, visits to book,
// what is to be got or renewed. The tables, the messages, the calendar files and the JSON are made from it.
import { DAY_MINUTES, dayOfFinish, dayOfStart } from '#kit/dates';
import type { Slot } from '#kit/place';
import type { Delivery, Step, Trade } from '#model/model';
import { nextWork } from '#schedule/calendar';
import { deliveryDates, orderDay } from '#schedule/delivery-dates';
import { waiting } from '#schedule/links';
import { isStanding } from '#schedule/step-windows';
import { hasFinished, hasStarted } from '#schedule/timing';
import { labelOf } from './takeoff-lines.ts';
import type { View } from './view.ts';

export interface LookAhead {
  /** Whole days, both included. */
  readonly from: number;
  readonly to: number;
  /** Trades that are on site in these days, in the order in which they come. */
  readonly trades: readonly TradeAhead[];
  /** Tasks and visits of these days that no trade is named for. */
  readonly unnamed: readonly Stay[];
  /** The earliest first; what is overdue stands before today. */
  readonly calls: readonly Call[];
  /** Deliveries that come, and milestones that fall on these days. */
  readonly arrivals: readonly Arrival[];
}

export interface Arrival {
  readonly step: number;
  readonly day: number;
  /** Who sends it. */
  readonly who: string;
  readonly phone: string | undefined;
}

export interface TradeAhead {
  readonly trade: Trade;
  /** The firm that does it, with its number, where the plan names one. */
  readonly who: string;
  readonly phone: string | undefined;
  readonly stays: readonly Stay[];
  /** The last day to confirm their next coming; undefined where they are there, are the owner, or nothing says how long before. */
  readonly confirmBy: number | undefined;
}

/** A step in these days. */
export interface Stay {
  readonly step: number;
  readonly start: number;
  readonly finish: number;
  readonly firstDay: number;
  readonly lastDay: number;
  /** It begins with a day's work and ends with one. */
  readonly wholeDays: boolean;
  /** Began before these days, goes on after them. */
  readonly begun: boolean;
  readonly goesOn: boolean;
  /** Rooms, levels or other things; empty where it is all over the place. */
  readonly where: readonly string[];
}

export type CallKind = 'order' | 'measure' | 'confirm' | 'book' | 'get' | 'renew';

export interface Call {
  readonly kind: CallKind;
  /** The last day to call. */
  readonly by: number;
  readonly late: boolean;
  readonly who: string;
  readonly phone: string | undefined;
  /** What it is about: a delivery, a step, several steps of a trade; a firm's paper. */
  readonly steps: readonly number[];
  readonly about: string;
  /** The day it is for: they come, it is wanted, it runs out. */
  readonly for: number;
  /** Which coming of which trade it confirms, counted from the plan's first: the same however the dates move. */
  readonly coming?: { readonly trade: string; readonly nth: number };
}

/** `from`: a whole day; else the day the diary stands at, else the plan's first. */
export function lookAhead(view: View, weeks: number, from?: number, only?: string): LookAhead {
  const { timeline, model } = view.plan;
  const first = from ?? timeline.progress.asOf ?? timeline.start;
  const to = first + weeks * 7 - 1;
  const trades = model
    .list('trade')
    .filter(({ name }) => only === undefined || name === only)
    .map((trade) => tradeAhead(trade, first, to, view))
    .filter(({ stays }) => stays.length > 0)
    .sort((a, b) => a.stays[0]!.start - b.stays[0]!.start);
  const calls = [
    ...(only === undefined ? [...orders(first, to, view), ...papers(first, to, view)] : []),
    ...model.list('trade').flatMap((trade) => (only === undefined || trade.name === only ? comings(trade, first, to, view) : [])),
    ...visitsAndTerms(first, to, only, view),
  ];
  const arrivals = only === undefined ? arrivalsIn(first, to, view) : [];
  // What stands there needs nobody.
  const unnamed =
    only === undefined ? staysIn(undefined, first, to, view).filter(({ step }) => !isStanding(timeline.steps.list[step]!)) : [];
  return { from: first, to, trades, unnamed, calls: calls.sort((a, b) => a.by - b.by || a.for - b.for), arrivals };
}

function arrivalsIn(from: number, to: number, view: View): readonly Arrival[] {
  const { crews, steps, timing } = view.plan.timeline;
  return steps.list
    .flatMap((each, step): readonly Arrival[] => {
      const day = dayOfStart(crews.start[step]!);
      if ((each.kind !== 'delivery' && each.kind !== 'milestone') || hasFinished(timing, step) || day < from || day > to)
        return [];
      return [{ step, day, ...(each.kind === 'delivery' ? whoSends(each, view) : { who: '', phone: undefined }) }];
    })
    .sort((a, b) => a.day - b.day || a.step - b.step);
}

function whoSends({ given }: Delivery, { plan: { model } }: View): { readonly who: string; readonly phone: string | undefined } {
  const supplier = given.from === undefined ? undefined : model.element(given.from.value);
  return {
    who: supplier?.label ?? 'No supplier named',
    phone: supplier?.kind === 'supplier' ? supplier.given.phone?.value : undefined,
  };
}

// ---- who is there ----

function tradeAhead(trade: Trade, from: number, to: number, view: View): TradeAhead {
  const stays = staysIn(trade, from, to, view);
  const confirm = comings(trade, from, to, view)[0];
  return { trade, ...whoDoes(trade, view), stays, confirmBy: confirm?.by };
}

function staysIn(trade: Trade | undefined, from: number, to: number, view: View): readonly Stay[] {
  return stepsOf(trade, view)
    .map((step) => stay(step, from, to, view))
    .filter(({ firstDay, lastDay }) => lastDay >= from && firstDay <= to);
}

/** Open tasks and visits by the moment they begin. */
function stepsOf(trade: Trade | undefined, view: View): readonly number[] {
  const { timing } = view.plan.timeline;
  return allOf(trade, view).filter((step) => !hasFinished(timing, step));
}

function allOf(trade: Trade | undefined, { plan: { timeline } }: View): readonly number[] {
  const { steps, trades, crews } = timeline;
  return steps.list
    .flatMap(({ kind }, step) => ((kind === 'task' || kind === 'inspection') && trades[step] === trade ? [step] : []))
    .sort((a, b) => crews.start[a]! - crews.start[b]! || crews.finish[a]! - crews.finish[b]! || a - b);
}

function stay(step: number, from: number, to: number, view: View): Stay {
  const { crews, timing } = view.plan.timeline;
  const [start, finish] = [crews.start[step]!, crews.finish[step]!];
  const firstDay = dayOfStart(start);
  const lastDay = start === finish ? firstDay : dayOfFinish(finish);
  const own = timing.calendars[timing.calendarOf[step]!]!;
  return {
    step,
    start,
    finish,
    firstDay,
    lastDay,
    wholeDays:
      start !== finish && start <= nextWork(own, firstDay * DAY_MINUTES) && nextWork(own, finish) >= (lastDay + 1) * DAY_MINUTES,
    begun: firstDay < from || hasStarted(timing, step),
    goesOn: lastDay > to,
    where: whereOf(step, view),
  };
}

/** No more places than this are told one by one. */
const MOST_PLACES = 4;

function whereOf(step: number, view: View): readonly string[] {
  const { steps, claims } = view.plan.timeline;
  const task = steps.list[step]!;
  if (task.kind !== 'task') return [];
  const said = task.given.in?.value ?? task.given.on?.value;
  if (said !== undefined) return said.map(({ value }) => labelOf(value, view));
  const rooms = new Set<Slot>();
  for (const { line } of claims.byStep[step]!) {
    if (line.where.room === undefined) return [];
    rooms.add(line.where.room);
  }
  const labels = [...rooms].map((slot) => labelOf(slot, view));
  return labels.length <= MOST_PLACES ? labels : [];
}

/** The firm whose accepted bid has the trade; else the first firm that does it; else the trade itself. */
function whoDoes(
  { slot, label }: Trade,
  { plan: { model } }: View,
): { readonly who: string; readonly phone: string | undefined } {
  const bid = model
    .list('bid')
    .find(({ given }) => given.accepted !== undefined && given.for?.value.trades.some(({ value }) => value === slot) === true);
  const chosen = bid?.given.by?.value;
  const firms = model.list('firm');
  const firm =
    firms.find((each) => each.slot === chosen) ??
    firms.find(({ given }) => given.does?.value.some(({ value }) => value === slot));
  return firm === undefined ? { who: label, phone: undefined } : { who: firm.label, phone: firm.given.phone?.value };
}

// ---- whom to call ----

/** Each coming of a trade to the site, confirmed so long ahead as the trade says, or the plan. Who costs nothing is the owner. */
function comings(trade: Trade, from: number, to: number, view: View): readonly Call[] {
  const { timeline, model } = view.plan;
  const { crews, timing } = timeline;
  const notice = trade.given.call?.value ?? (trade.given.at?.value.value === 0 ? undefined : model.plan?.given.call?.value);
  if (notice === undefined || trade.given.sees !== undefined) return [];
  const calls: Call[] = [];
  // Who was there yesterday is there. What is done counts, so that a coming keeps its number.
  let there = Number.NEGATIVE_INFINITY;
  let nth = 0;
  let steps: number[] = [];
  for (const step of allOf(trade, view)) {
    if (timeline.steps.list[step]!.kind !== 'task') continue;
    const day = dayOfStart(crews.start[step]!);
    const by = orderDay(day, notice, timeline);
    // Who is on site when it is time to call is told there.
    const isNew = there === Number.NEGATIVE_INFINITY || by > dayOfFinish(there);
    there = Math.max(there, crews.finish[step]!);
    if (!isNew) {
      steps.push(step);
      continue;
    }
    nth++;
    steps = [step];
    if (hasStarted(timing, step) || day < from || by > to) continue;
    const coming = { trade: trade.name, nth };
    calls.push({ kind: 'confirm', by, late: by < from, ...whoDoes(trade, view), steps, about: trade.label, for: day, coming });
  }
  return calls;
}

/** Deliveries that nobody has ordered; what is measured first is ordered on the day it can be measured. */
function orders(from: number, to: number, view: View): readonly Call[] {
  const { timeline } = view.plan;
  return deliveryDates(timeline).flatMap(({ delivery, step, came, orderBy, wanted, comes }): readonly Call[] => {
    const { given } = delivery;
    if (came || given.ordered !== undefined || timeline.progress.records.get(step)?.notBefore !== undefined) return [];
    const rest = { ...whoSends(delivery, view), steps: [step], about: shownName(delivery), for: wanted ?? comes };
    const measured = given['measured after']?.value ?? [];
    if (measured.length > 0) {
      const after = measured.flatMap(({ value }) => timeline.steps.index.get(value.step) ?? []);
      const done = Math.max(...after.map((each) => dayOfFinish(timeline.crews.finish[each]!)));
      return done >= from && done <= to ? [{ kind: 'measure', by: done, late: false, ...rest }] : [];
    }
    // Of what is past, only what is still wanted, or was late when the diary was written.
    const { asOf } = timeline.progress;
    const isPast = orderBy !== undefined && orderBy < from && rest.for < from && (asOf === undefined || orderBy > asOf);
    return orderBy === undefined || orderBy > to || isPast ? [] : [{ kind: 'order', by: orderBy, late: orderBy < from, ...rest }];
  });
}

/** Visits, booked with their notice; and what a step gets for a time: permits, marks on the ground. */
function visitsAndTerms(from: number, to: number, only: string | undefined, view: View): readonly Call[] {
  const { timeline } = view.plan;
  const { steps, trades, crews, timing } = timeline;
  return steps.list.flatMap((step, number): readonly Call[] => {
    const trade = trades[number];
    if (only !== undefined && trade?.name !== only) return [];
    const who = trade === undefined ? { who: '', phone: undefined } : whoDoes(trade, view);
    const day = dayOfStart(crews.start[number]!);
    const rest = { ...who, steps: [number], about: shownName(step) };
    if (step.kind === 'inspection' && !hasStarted(timing, number)) {
      const notice = step.given.call?.value ?? trade?.given.call?.value;
      const by = notice === undefined ? day : orderDay(day, notice, timeline);
      return day >= from && by <= to ? [{ kind: 'book', by, late: by < from, ...rest, for: day }] : [];
    }
    if (step.kind !== 'task' && step.kind !== 'milestone') return [];
    const good = step.given['good for']?.value;
    if (good === undefined) return [];
    if (!hasStarted(timing, number))
      return step.kind === 'task' && day >= from && day <= to ? [{ kind: 'get', by: day, late: false, ...rest, for: day }] : [];
    const last = lastDayOf(number, waiting(good).lag, view);
    return last >= from && last <= to ? [{ kind: 'renew', by: last, late: false, ...rest, for: last }] : [];
  });
}

/** Days are counted from the day it is got. */
function lastDayOf(step: number, minutes: number, { plan: { timeline } }: View): number {
  return dayOfStart(timeline.crews.finish[step]!) + Math.floor(minutes / DAY_MINUTES);
}

/** Insurance and licences of firms that run out in these days. */
function papers(from: number, to: number, { plan: { model } }: View): readonly Call[] {
  return model.list('firm').flatMap(({ label, given }) => {
    const own = [
      ['insurance', given.insured?.value],
      ['licence', given.licensed?.value],
    ] as const;
    return own.flatMap(([what, day]): readonly Call[] =>
      day === undefined || day < from || day > to
        ? []
        : [
            {
              kind: 'renew',
              by: day,
              late: false,
              who: label,
              phone: given.phone?.value,
              steps: [],
              about: `${what} of ${label}`,
              for: day,
            },
          ],
    );
  });
}

/** The label, else the name as words: 'wall-forms' is 'wall forms'. Of visits always the name: the library's labels are long. */
export function shownName({ name, label, kind }: Step): string {
  return label === name || kind === 'inspection' ? name.replaceAll('-', ' ') : label;
}
