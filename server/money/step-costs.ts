// What a step costs: fees and hire always; its work by the ladder: an accepted bid, a given cost, a unit price, or
// person-hours at the trade's rate.
import type { Slot } from '#kit/place';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Step, Task, Trade } from '#model/model';
import type { Model } from '#model/resolve';
import type { Claim } from '#schedule/claims';
import { type Duration, people, personMinutes } from '#schedule/durations';
import type { Line } from '#takeoff/lines';
import { type Bid, holdsStep } from './bids.ts';
import type { CostLine, Missing } from './cost-lines.ts';
import { failedVisits } from './failed-visits.ts';
import { type Prices, priceFor } from './prices.ts';

export interface StepCost {
  /** Without the number of the step, which may move. */
  readonly lines: readonly CostLine[];
  readonly missing: readonly Missing[];
  /** Take-off lines whose goods are paid for with the step. */
  readonly covers: readonly Line[];
  readonly bid: Bid | undefined;
}

/** What the price of a step hangs on beside it, its claims and its length: unit prices of its works, machines it needs. */
export function othersOf(step: Step, model: Model, prices: Prices): readonly unknown[] {
  if (step.kind === 'inspection') return failedVisits(model.list('progress')).get(step.slot) ?? NO_OTHERS;
  if (step.kind !== 'task') return NO_OTHERS;
  const { does, needs } = step.given;
  let others: unknown[] | undefined;
  for (const { value } of does?.value ?? []) {
    const list = prices.byName.get(value.work.name);
    if (list !== undefined) (others ??= []).push(...list);
  }
  for (const { value } of needs?.value ?? []) (others ??= []).push(model.element(value.machine));
  return others ?? NO_OTHERS;
}

const NO_OTHERS: readonly unknown[] = [];

export interface Pricing {
  readonly step: Step;
  readonly trade: Trade | undefined;
  readonly duration: Duration;
  readonly claims: readonly Claim[];
  readonly prices: Prices;
  readonly bids: readonly Bid[];
  readonly model: Model;
}

export function priced(pricing: Pricing): StepCost {
  const { step, trade, claims, bids } = pricing;
  const where = trade === undefined ? {} : { trade: trade.slot };
  const lines: CostLine[] = [];
  const missing: Missing[] = [];
  const fee = step.given.fee?.value;
  if (fee !== undefined)
    lines.push({
      ...where,
      kind: 'fee',
      rung: 'given',
      label: `${step.label}: fee`,
      cents: Math.round(fee.value),
      working: () => fee,
    });
  for (const visit of failedVisits(pricing.model.list('progress')).get(step.slot) ?? [])
    lines.push({
      ...where,
      kind: 'fee',
      rung: 'given',
      label: `${step.label}: a visit that failed`,
      cents: Math.round(visit.fee.value),
      working: () => visit.fee,
    });
  if (step.kind === 'task') lines.push(...hire(step, where, pricing.model));
  const bid = step.kind === 'task' && bids.length > 0 ? bids.find((each) => holdsStep(each, step, trade?.slot)) : undefined;
  if (bid !== undefined)
    return { lines, missing, covers: bid.given['labour only'] === undefined ? claims.map(({ line }) => line) : [], bid };
  const costs = step.given.costs?.value;
  if (costs !== undefined) {
    lines.push({
      ...where,
      kind: 'work',
      rung: 'given',
      label: step.label,
      cents: Math.round(costs.value),
      working: () => costs,
    });
    return { lines, missing, covers: claims.map(({ line }) => line), bid: undefined };
  }
  if (step.kind !== 'task') return { lines, missing, covers: [], bid: undefined };
  const covers = unitPriced(step, where, pricing, lines);
  labour(step, where, pricing, covers, lines, missing);
  return { lines, missing, covers: [...covers], bid: undefined };
}

const shared = form('share', 'quantity × share', (quantity = 0, share = 0) => quantity * share);
const unitCost = form('cost', 'quantity × unit price', (quantity = 0, price = 0) => Math.round(quantity * price));
const labourCost = form('labour', 'hours × rate', (minutes = 0, rate = 0) => Math.round(minutes * rate));
const hireCost = form('hire', 'time × rate', (minutes = 0, rate = 0) => Math.round(minutes * rate));

/** Work with a price by the unit, material included. */
function unitPriced(task: Task, where: { trade?: Slot }, { claims, prices }: Pricing, lines: CostLine[]): ReadonlySet<Line> {
  const covers = new Set<Line>();
  for (const { value } of task.given.does?.value ?? []) {
    const { work } = value;
    const price = priceFor({ name: work.name, of: work, sizes: [] }, undefined, prices)?.takes?.money;
    if (price === undefined) continue;
    for (const { line, share } of claims) {
      if (line.work?.name !== work.name || (price.dimension !== `money/${line.net.dimension}` && line.net.dimension !== 'number'))
        continue;
      const working = (): Quantity<'money'> =>
        measure(
          'money',
          unitCost,
          measure(line.net.dimension, shared, line.net, constant('share of it', share, 'number')),
          price,
        );
      lines.push({
        ...where,
        kind: 'work',
        rung: 'unit-price',
        label: work.label,
        cents: working().value,
        line,
        working,
        ...placeOf(line),
      });
      covers.add(line);
    }
  }
  return covers;
}

function labour(
  task: Task,
  where: { trade?: Slot },
  { claims, trade, duration }: Pricing,
  covers: ReadonlySet<Line>,
  lines: CostLine[],
  missing: Missing[],
): void {
  const own = covers.size === 0 ? claims : claims.filter(({ line }) => !covers.has(line));
  if (claims.length > 0 && own.length === 0) return;
  // A length given for the whole task is what is paid, not what the rate says.
  const byLength = duration.minutes * people(task, trade);
  const byRate = covers.size === 0 ? duration.personMinutes : personMinutes(own);
  const given = duration.basis === 'given' ? byLength : (byRate ?? byLength);
  if (given === 0) return;
  const rate = trade?.given.at?.value;
  if (rate === undefined) {
    if (trade !== undefined) missing.push({ kind: 'rate', what: trade.label, trade: trade.slot });
    return;
  }
  const working = (): Quantity => measure('money', labourCost, constant('person-hours', given, 'time'), rate);
  lines.push({
    ...where,
    kind: 'labour',
    rung: 'rate',
    label: `${task.label}: labour`,
    cents: Math.round(given * rate.value),
    working,
  });
}

function hire(task: Task, where: { trade?: Slot }, model: Model): readonly CostLine[] {
  return (task.given.needs?.value ?? []).flatMap(({ value }): CostLine[] => {
    const machine = model.element(value.machine);
    const rate = machine?.kind === 'machine' ? machine.given.at?.value : undefined;
    if (machine?.kind !== 'machine' || rate === undefined || rate.dimension !== 'money/time') return [];
    const time = constant('time on site', Math.max(machine.given['at least']?.value.value ?? 0, value.time?.value ?? 0), 'time');
    const working = (): Quantity => measure('money', hireCost, time, rate);
    return [{ ...where, kind: 'hire', rung: 'rate', label: machine.label, cents: Math.round(time.value * rate.value), working }];
  });
}

export function placeOf(line: Line): { room?: Slot; level?: Slot; element: Slot } {
  const { room, level, element } = line.where;
  return { element, ...(room === undefined ? {} : { room }), ...(level === undefined ? {} : { level }) };
}
