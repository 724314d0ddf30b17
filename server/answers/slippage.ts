// Slippage in words: which step, how many days, through which chain; and what it does to the money.
import { dayAndMonth, shortDate } from '#kit/dates';
import type { Step } from '#model/model';
import { chosenSchedule } from '#schedule/as-planned';
import { chainTo, lastSlip, type Slip, type Slippage, slippage } from '#schedule/slippage';
import { type ListedReason, saying } from './listed-reason.ts';
import { counted, listed } from './table.ts';
import { type View, writeMoney } from './view.ts';

export type { Slippage } from '#schedule/slippage';

export interface Cause {
  readonly step: number;
  /** Working days that it adds to the chain; below zero, makes good. */
  readonly days: number;
  /** After its name: 'takes 2 days longer'. */
  readonly text: string;
}

const kept = new WeakMap<View['plan'], Map<string | undefined, Slippage | undefined>>();

/** Against the schedule of that name, or the latest that the plan keeps. */
export function slippageOf({ plan }: View, name?: string): Slippage | undefined {
  let known = kept.get(plan);
  if (known === undefined) kept.set(plan, (known = new Map()));
  if (!known.has(name)) {
    const against = chosenSchedule(plan.model, name);
    known.set(name, against === undefined ? undefined : slippage(plan.timeline, against));
  }
  return known.get(name);
}

/** "as planned on 1 Mar 2027 (bank)". */
export function plannedText({ against: { element, on } }: Slippage): string {
  return on === undefined ? `as planned in "${element.label}"` : `as planned on ${shortDate(on)}`;
}

/** '3 working days later', '1 working day earlier', 'neither later nor earlier'. */
export function laterText(days: number): string {
  if (days === 0) return 'neither later nor earlier';
  return `${counted(Math.abs(days), 'working day')} ${days > 0 ? 'later' : 'earlier'}`;
}

/** What the chain that leads to a step gained and lost, the first first. */
export function causesOf(step: number, { slips }: Slippage, view: View): readonly Cause[] {
  return chainTo(step, slips).flatMap((slip): readonly Cause[] => {
    if (slip.planned === undefined) return [{ step: slip.step, days: 0, text: 'was added since' }];
    const days = slip.own!;
    return days === 0 ? [] : [{ step: slip.step, days, text: causeText(slip, days, view) }];
  });
}

/** The end in one sentence. */
export function whyEnd(slipped: Slippage, view: View): string {
  const { end } = slipped;
  if (end.days === 0) return `The end is ${laterText(0)} than ${plannedText(slipped)} (${shortDate(end.now)}).`;
  const last = lastSlip(slipped);
  const rest = end.days - (last.days ?? 0);
  const other = last.days === undefined || rest === 0 ? '' : `, and "${nameOf(last.step, view)}" now ends last`;
  return `The end is ${laterText(end.days)} than ${plannedText(slipped)} (${shortDate(end.now)} instead of ${shortDate(end.planned)})${because(last.step, slipped, view)}${other}.`;
}

/** A step in one sentence; undefined where it was not planned then. */
export function whySlip(step: number, slipped: Slippage, view: View): string | undefined {
  const slip = slipped.slips[step];
  if (slip?.planned === undefined || slip.days === undefined) return undefined;
  if (slip.days === 0) return `It is done ${plannedText(slipped)}.`;
  return `It is done ${laterText(slip.days)} than ${plannedText(slipped)} (${dayAndMonth(slip.done)} instead of ${dayAndMonth(slip.planned.done)})${because(step, slipped, view)}.`;
}

/** For explain and hover. */
export function slipReason(step: number | undefined, view: View): readonly ListedReason[] {
  const slipped = slippageOf(view);
  if (slipped === undefined) return [];
  if (step === undefined) return [saying('against the plan', whyEnd(slipped, view), moneyReasons(slipped, view))];
  const why = whySlip(step, slipped, view);
  return [saying('against the plan', why ?? `It was added since ${plannedText(slipped).replace('as planned on ', '')}.`)];
}

export interface MoneyEffect {
  readonly cents: number;
  readonly text: string;
}

/** What the plan costs more or less than then; and what the days cost by themselves. Whole cents. */
export function moneyEffects({ against, end }: Slippage, { plan, style }: View): readonly MoneyEffect[] {
  const effects: MoneyEffect[] = [];
  if (against.cents !== undefined && plan.budget.priced) {
    const cents = plan.budget.total - against.cents;
    const [now, then] = [plan.budget.total, against.cents].map((each) => writeMoney(each, style));
    const change = `${writeMoney(Math.abs(cents), style)} ${cents > 0 ? 'more' : 'less'}`;
    effects.push({
      cents,
      text: cents === 0 ? `It costs the same: ${now}.` : `It costs ${now} instead of ${then}: ${change}.`,
    });
  }
  const rate = plan.model.plan?.given.carrying?.value;
  const days = end.now - end.planned;
  if (rate !== undefined && days !== 0) {
    const cents = Math.round(rate.value * days * DAY);
    effects.push({
      cents,
      text: `${counted(Math.abs(days), 'calendar day')} of carrying it ${days > 0 ? 'come' : 'fall'} ${days > 0 ? 'on top' : 'away'}: ${writeMoney(Math.abs(cents), style)}.`,
    });
  }
  return effects;
}

/** Minutes of a calendar day: what each week costs by itself runs on through nights and weekends. */
const DAY = 24 * 60;

function moneyReasons(slipped: Slippage, view: View): readonly ListedReason[] {
  return moneyEffects(slipped, view).map(({ text }) => saying('money', text));
}

function because(step: number, slipped: Slippage, view: View): string {
  const causes = causesOf(step, slipped, view);
  const own = causes.filter(({ days }) => days !== 0);
  if (own.length === 0) return '';
  // The largest first; small change is summed up.
  const largest = [...own].sort((a, b) => Math.abs(b.days) - Math.abs(a.days)).slice(0, MOST_CAUSES);
  const told = own.filter((cause) => largest.includes(cause));
  const rest = own.filter((cause) => !largest.includes(cause)).reduce((sum, { days }) => sum + days, 0);
  const said = told.map((cause) => `"${nameOf(cause.step, view)}" ${cause.text}`);
  if (own.length > told.length) said.push(`others ${rest >= 0 ? 'add' : 'make good'} ${counted(Math.abs(rest), 'day')}`);
  const chain = chainTo(step, slipped.slips).map((slip) => slip.step);
  const through = chain.slice(chain.indexOf(told[0]!.step) + 1).map((each) => nameOf(each, view));
  return `: ${listed(said)}${through.length === 0 ? '' : `, through ${shortened(through)}`}`;
}

const MOST_CAUSES = 3;
const MOST_LINKS = 5;

function shortened(names: readonly string[]): string {
  if (names.length <= MOST_LINKS) return names.join(' → ');
  return [...names.slice(0, 2), `${names.length - 4} more`, ...names.slice(-2)].join(' → ');
}

function causeText(slip: Slip, days: number, view: View): string {
  const { timeline } = view.plan;
  const longer = slip.longer!;
  const later = days - longer;
  const parts: string[] = [];
  if (later !== 0) parts.push(laterCause(slip, later, timeline));
  if (longer !== 0) parts.push(`takes ${counted(Math.abs(longer), 'day')} ${longer > 0 ? 'longer' : 'less'}`);
  return listed(parts);
}

/** It began so many days later than what it waits for explains. */
function laterCause({ step, after, stillOpen }: Slip, days: number, timeline: View['plan']['timeline']): string {
  const size = counted(Math.abs(days), 'day');
  if (days < 0) return `makes good ${size}`;
  const { kind } = timeline.steps.list[step]!;
  const open = stillOpen === undefined ? '' : ` (the diary stands on ${dayAndMonth(stillOpen)}, and it ${NOT_YET[kind]})`;
  if (kind === 'delivery') return `comes ${size} later${open}`;
  if (timeline.crews.heldByTask[step]! >= 0)
    return `waits ${size} more for its crew, which is at "${timeline.steps.list[after!]!.name}"`;
  return `begins ${size} later${open}`;
}

const NOT_YET: Readonly<Record<Step['kind'], string>> = {
  task: 'has not begun',
  inspection: 'has not passed',
  delivery: 'has not come',
  milestone: 'is not reached',
};

function nameOf(step: number, { plan: { timeline } }: View): string {
  return timeline.steps.list[step]!.name;
}
