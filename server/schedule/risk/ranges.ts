// What of a plan is not certain: lengths of steps and leads of deliveries with a least, a likely and a most; visits that may
// fail. A range of its own goes before what the trade says of all its lengths, and that before what the plan says.
import { DAY_MINUTES } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Quantity } from '#kit/quantity';
import { middle } from '#model/evaluate';
import type { Delivery, Step, Trade } from '#model/model';
import type { Model } from '#model/resolve';
import type { Timeline } from '../timeline.ts';
import { hasFinished, hasStarted } from '../timing.ts';

export interface Range {
  /** Number of the step. */
  readonly step: number;
  readonly what: 'length' | 'lead' | 'day';
  /** Minutes: of work for a length; as the wait counts them for a lead; for a day that the diary expects, since 1970. */
  readonly least: number;
  readonly likely: number;
  readonly most: number;
  readonly from: 'step' | 'trade' | 'plan' | 'diary';
}

export interface Visit {
  readonly step: number;
  /** How often it fails, 0 to 1. */
  readonly fails: number;
}

export interface Uncertain {
  /** In plan order. */
  readonly ranges: readonly Range[];
  readonly visits: readonly Visit[];
}

export const noRange = findingSort<[given: string]>({
  code: 'schedule/no-range',
  severity: 'warning',
  say: (given) =>
    `"lengths" says how far lengths stray, from and to; of ${given} alone nothing can be told, so they count as certain. Write both: lengths 85%..140%.`,
});

/** Where the plan or a trade says how far lengths stray, but not from where to where. */
export function rangeFindings(model: Model): readonly Finding[] {
  const findings: Finding[] = [];
  for (const each of [model.plan, ...model.list('trade')]) {
    const lengths = each?.given.lengths;
    if (lengths === undefined || endsOf(lengths.value.share) !== undefined) continue;
    findings.push(finding(noRange, lengths.place, `${Math.round(lengths.value.share.value * 100)}%`));
  }
  return findings;
}

/** Of what is still to be done; what is recorded is certain. */
export function uncertainOf(model: Model, timeline: Timeline): Uncertain {
  const { steps, trades, timing } = timeline;
  const ranges: Range[] = [];
  const visits: Visit[] = [];
  steps.list.forEach((step, number) => {
    if (hasFinished(timing, number)) return;
    const trade = trades[number];
    const range =
      step.kind === 'delivery' ? leadRange(step, number, timeline) : lengthRange(step, number, trade, model, timeline);
    if (range !== undefined && range.most > range.least) ranges.push(range);
    const day = dayRange(number, timeline);
    if (day !== undefined) ranges.push(day);
    const fails = step.kind === 'inspection' ? (step.given.fails ?? trade?.given.fails)?.value.value : undefined;
    if (fails !== undefined && fails > 0 && timing.wholeDays?.[number] === 1)
      visits.push({ step: number, fails: Math.min(MOST_OFTEN, fails) });
  });
  return { ranges, visits };
}

/** A visit that never passes would have no end. */
const MOST_OFTEN = 0.9;

/** The least and the most of a quantity that was given as a range. */
export function endsOf(quantity: Quantity): readonly [least: number, most: number] | undefined {
  if (quantity.form !== middle || quantity.inputs.length !== 2) return undefined;
  const [low, high] = [quantity.inputs[0]!.value, quantity.inputs[1]!.value];
  return low <= high ? [low, high] : [high, low];
}

function lengthRange(
  step: Step,
  number: number,
  trade: Trade | undefined,
  model: Model,
  { durations }: Timeline,
): Range | undefined {
  if (step.kind !== 'task' && step.kind !== 'inspection') return undefined;
  const takes = step.given.takes?.value;
  const own = takes === undefined ? undefined : endsOf(takes.time);
  if (own !== undefined) {
    const likely = takes!.likely?.value ?? takes!.time.value;
    return { step: number, what: 'length', ...ordered(own[0], likely, own[1]), from: 'step' };
  }
  const general = trade?.given.lengths ?? model.plan?.given.lengths;
  const { minutes, basis } = durations[number]!;
  if (general === undefined || minutes <= 0 || (basis !== 'given' && basis !== 'rate')) return undefined;
  const ends = endsOf(general.value.share);
  if (ends === undefined) return undefined;
  const likely = general.value.likely?.value ?? Math.max(ends[0], Math.min(1, ends[1]));
  return {
    step: number,
    what: 'length',
    ...ordered(ends[0] * minutes, likely * minutes, ends[1] * minutes),
    from: general === trade?.given.lengths ? 'trade' : 'plan',
  };
}

/** Of a delivery that somebody has begun to wait for by date, or that has come, the diary says when. */
function leadRange({ given }: Delivery, number: number, { timing, progress }: Timeline): Range | undefined {
  const ends = given.lead === undefined ? undefined : endsOf(given.lead.value);
  if (ends === undefined || hasStarted(timing, number) || progress.records.get(number)?.notBefore !== undefined) return undefined;
  return { step: number, what: 'lead', ...ordered(ends[0], given.lead!.value.value, ends[1]), from: 'step' };
}

/** Of what has not begun, and is expected from one day to another. */
function dayRange(number: number, { timing, progress }: Timeline): Range | undefined {
  const record = progress.records.get(number);
  if (record?.expected === undefined || hasStarted(timing, number)) return undefined;
  const { first, last } = record.expected;
  if (last <= first) return undefined;
  const [least, likely, most] = [first, record.notBefore!, last].map((day) => day * DAY_MINUTES) as [number, number, number];
  return { step: number, what: 'day', least, likely, most, from: 'diary' };
}

function ordered(least: number, likely: number, most: number): Pick<Range, 'least' | 'likely' | 'most'> {
  return { least, likely: Math.max(least, Math.min(most, likely)), most };
}
