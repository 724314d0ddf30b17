// What each step costs: fees and hire always; its work by the ladder: an accepted bid, a given cost, a unit price, or
// person-hours at the trade's rate.
import type { Slot } from '#kit/place';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Task } from '#model/model';
import type { Model } from '#model/resolve';
import { people, personMinutes } from '#schedule/durations';
import type { Timeline } from '#schedule/timeline';
import type { Line } from '#takeoff/lines';
import { type Bid, bidLines, holdsStep } from './bids.ts';
import type { CostLine, Missing } from './cost-lines.ts';
import { type Prices, priceFor } from './prices.ts';

const labourCost = form('labour', 'hours × rate', (minutes = 0, rate = 0) => Math.round(minutes * rate));
const unitCost = form('cost', 'quantity × unit price', (quantity = 0, price = 0) => Math.round(quantity * price));
const hireCost = form('hire', 'time × rate', (minutes = 0, rate = 0) => Math.round(minutes * rate));

/** Adds to `lines` and `missing`; `covered` gathers the take-off lines whose goods are paid for already. */
export function stepCosts(
  model: Model,
  timeline: Timeline,
  prices: Prices,
  bids: readonly Bid[],
  lines: CostLine[],
  missing: Missing[],
  covered: Set<Line>,
): void {
  const bidOf = new Map<number, Bid>();
  timeline.steps.list.forEach((step, number) => {
    const where = { step: number, ...(timeline.trades[number] === undefined ? {} : { trade: timeline.trades[number]!.slot }) };
    const fee = step.given.fee?.value;
    if (fee !== undefined)
      lines.push({ ...where, kind: 'fee', rung: 'given', label: `${step.label}: fee`, cents: cents(fee), working: () => fee });
    if (step.kind === 'task') hire(step, where, model, lines);
    const bid = step.kind === 'task' ? bids.find((each) => holdsStep(each, step, timeline.trades[number]?.slot)) : undefined;
    if (bid !== undefined && step.kind === 'task') {
      bidOf.set(number, bid);
      if (bid.given['labour only'] === undefined)
        for (const { line } of timeline.claims.byTask.get(step) ?? []) covered.add(line);
      return;
    }
    const costs = step.given.costs?.value;
    if (costs !== undefined) {
      lines.push({ ...where, kind: 'work', rung: 'given', label: step.label, cents: cents(costs), working: () => costs });
      if (step.kind === 'task') for (const { line } of timeline.claims.byTask.get(step) ?? []) covered.add(line);
      return;
    }
    if (step.kind === 'task') labour(step, number, where, timeline, prices, lines, missing, covered);
  });
  for (const bid of bids)
    bidLines(
      bid,
      [...bidOf].flatMap(([number, each]) => (each === bid ? [number] : [])),
      timeline,
      lines,
    );
}

function cents(money: Quantity): number {
  return Math.round(money.value);
}

function labour(
  task: Task,
  number: number,
  where: { step: number; trade?: Slot },
  timeline: Timeline,
  prices: Prices,
  lines: CostLine[],
  missing: Missing[],
  covered: Set<Line>,
): void {
  const claims = timeline.claims.byTask.get(task) ?? [];
  const works = (task.given.does?.value ?? []).map(({ value }) => value.work);
  for (const work of works) {
    const price = priceFor({ name: work.name, of: work, sizes: [] }, undefined, prices);
    if (price === undefined) continue;
    for (const { line, share } of claims) {
      if (line.work?.name !== work.name) continue;
      const quantity = measure(line.net.dimension, shared, line.net, constant('share of it', share, 'number'));
      const cost = measure('money', unitCost, quantity, price.takes!.money);
      if (price.takes!.money.dimension !== `money/${quantity.dimension}` && quantity.dimension !== 'number') continue;
      lines.push({
        ...where,
        kind: 'work',
        rung: 'unit-price',
        label: work.label,
        cents: cost.value,
        line,
        working: () => cost,
        ...placeOf(line),
      });
      covered.add(line);
    }
  }
  const trade = timeline.trades[number];
  const rate = trade?.given.at?.value;
  const own = claims.filter(({ line }) => !covered.has(line));
  if (works.length > 0 && own.length === 0 && claims.length > 0) return;
  const minutes = personMinutes(own) ?? timeline.durations[number]!.minutes * people(task, trade);
  // A length given for the whole task is what is paid, not what the rate says.
  const given =
    timeline.durations[number]!.basis === 'given' ? timeline.durations[number]!.minutes * people(task, trade) : minutes;
  if (given === 0) return;
  if (rate === undefined) {
    if (trade !== undefined) missing.push({ kind: 'rate', what: trade.label, step: number, trade: trade.slot });
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

const shared = form('share', 'quantity × share', (quantity = 0, share = 0) => quantity * share);

function hire(task: Task, where: { step: number; trade?: Slot }, model: Model, lines: CostLine[]): void {
  for (const { value } of task.given.needs?.value ?? []) {
    const machine = model.element(value.machine);
    if (machine?.kind !== 'machine') continue;
    const rate = machine.given.at?.value;
    if (rate === undefined || rate.dimension !== 'money/time') continue;
    const least = machine.given['at least']?.value.value ?? 0;
    const time = constant('time on site', Math.max(least, value.time?.value ?? 0), 'time');
    lines.push({
      ...where,
      kind: 'hire',
      rung: 'rate',
      label: machine.label,
      cents: Math.round(time.value * rate.value),
      working: () => measure('money', hireCost, time, rate),
    });
  }
}

export function placeOf(line: Line): { room?: Slot; level?: Slot; element: Slot } {
  const { room, level, element } = line.where;
  return { element, ...(room === undefined ? {} : { room }), ...(level === undefined ? {} : { level }) };
}
