// DOOR: take-off + timeline + prices → the budget: cost lines in whole cents, tax and contingency, and what no money stands
// for yet. One ladder decides which money counts for a step.
import { DAY_MINUTES } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import { shareCents } from '#kit/money';
import type { Slot } from '#kit/place';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { ElementOf, Task } from '#model/model';
import type { Model } from '#model/resolve';
import { people, personMinutes } from '#schedule/durations';
import type { Timeline } from '#schedule/timeline';
import type { Line, Purchase } from '#takeoff/lines';
import type { TakeOff } from '#takeoff/take-off';
import type { Budget, CostLine, Missing } from './cost-lines.ts';
import { materialCost } from './material.ts';
import { type Prices, priceFor, pricesOf } from './prices.ts';

export const priceMissing = findingSort<[what: string, others: number]>({
  code: 'money/price-missing',
  severity: 'note',
  say: (what, others) =>
    `No price stands for ${what}${others > 0 ? ` and ${others} more` : ''}, so the total leaves ${others > 0 ? 'them' : 'it'} out. Add a price, or an accepted bid that holds it.`,
});

export const rateMissing = findingSort<[trade: string]>({
  code: 'money/rate-missing',
  severity: 'note',
  say: (trade) =>
    `The hours of "${trade}" have no rate, so the total leaves them out. Add "at $50/h", a price for the step, or an accepted bid.`,
});

type Bid = ElementOf<'bid'>;

export function budgetOf(
  model: Model,
  takeOff: TakeOff,
  timeline: Timeline,
): { readonly value: Budget; readonly findings: readonly Finding[] } {
  const prices = pricesOf(model.list('price'));
  const bids = model.list('bid').filter((bid) => bid.given.accepted !== undefined && bid.given.for !== undefined);
  const priced =
    prices.byName.size > 0 ||
    bids.length > 0 ||
    model.list('trade').some((trade) => trade.given.at !== undefined) ||
    timeline.steps.list.some((step) => step.given.costs !== undefined);
  const lines: CostLine[] = [];
  const missing: Missing[] = [];
  if (priced) {
    const owners = ownersOf(timeline);
    const covered = new Set<Line>();
    stepCosts(model, timeline, prices, bids, lines, missing, covered);
    materialCosts(takeOff.purchases(), owners, covered, timeline, prices, lines, missing);
    allowances(model, lines);
  }
  const net = sum(lines);
  const taxed = model.plan?.given.tax?.value;
  const base = taxed === undefined ? 0 : taxed.on === 'all' ? net : sum(lines.filter((line) => line.kind === 'material'));
  const tax = taxed === undefined ? 0 : Math.round(base * taxed.rate.value);
  const contingency = Math.round((net + tax) * (model.plan?.given.contingency?.value.value ?? 0));
  const value: Budget = { lines, net, tax, contingency, total: net + tax + contingency, missing, priced };
  return { value, findings: missingFindings(missing, timeline, model) };
}

function sum(lines: readonly CostLine[]): number {
  return lines.reduce((total, line) => total + line.cents, 0);
}

/** The step that claims the greater part of each line. */
function ownersOf(timeline: Timeline): ReadonlyMap<Line, readonly { step: number; share: number }[]> {
  const owners = new Map<Line, { step: number; share: number }[]>();
  for (const [task, claims] of timeline.claims.byTask) {
    const step = timeline.steps.index.get(task.slot)!;
    for (const { line, share } of claims) {
      const list = owners.get(line);
      if (list === undefined) owners.set(line, [{ step, share }]);
      else list.push({ step, share });
    }
  }
  return owners;
}

const labourCost = form('labour', 'hours × rate', (minutes = 0, rate = 0) => Math.round(minutes * rate));
const unitCost = form('cost', 'quantity × unit price', (quantity = 0, price = 0) => Math.round(quantity * price));
const hireCost = form('hire', 'time × rate', (minutes = 0, rate = 0) => Math.round(minutes * rate));

function stepCosts(
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
    const bid = step.kind === 'task' ? bids.find((each) => holds(each, step, timeline.trades[number]?.slot)) : undefined;
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

/** A bid holds a step of its trade, but for what it leaves out; where it says what it includes, only that. */
function holds(bid: Bid, task: Task, trade: Slot | undefined): boolean {
  if (trade === undefined || !bid.given.for!.value.trades.some(({ value }) => value === trade)) return false;
  const names = [task.name, ...(task.given.does?.value ?? []).map(({ value }) => value.work.name)];
  const out = bid.given['leaves out']?.value.map(({ value }) => value.name) ?? [];
  if (names.some((name) => out.includes(name))) return false;
  const included = bid.given.includes?.value.map(({ value }) => value.name);
  return included === undefined || names.some((name) => included.includes(name));
}

/** A bid is one price: shared among the steps it holds by their length, so that every grouping closes. */
function bidLines(bid: Bid, steps: readonly number[], timeline: Timeline, lines: CostLine[]): void {
  const { money, trades } = bid.given.for!.value;
  const whole = cents(money);
  const trade = trades[0]?.value;
  const base = { kind: 'work', rung: 'bid', label: bid.label, working: () => money } as const;
  if (steps.length === 0) {
    lines.push({ ...base, cents: whole, ...(trade === undefined ? {} : { trade }) });
    return;
  }
  const shares = shareCents(
    whole,
    steps.map((number) => Math.max(1, timeline.durations[number]!.minutes)),
  );
  steps.forEach((step, at) => {
    lines.push({ ...base, cents: shares[at]!, step, ...(trade === undefined ? {} : { trade }) });
  });
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

function placeOf(line: Line): { room?: Slot; level?: Slot; element: Slot } {
  const { room, level, element } = line.where;
  return { element, ...(room === undefined ? {} : { room }), ...(level === undefined ? {} : { level }) };
}

function materialCosts(
  purchases: readonly Purchase[],
  owners: ReadonlyMap<Line, readonly { step: number; share: number }[]>,
  covered: ReadonlySet<Line>,
  timeline: Timeline,
  prices: Prices,
  lines: CostLine[],
  missing: Missing[],
): void {
  for (const purchase of purchases) {
    const open = purchase.lines.filter((line) => !covered.has(line));
    const [first] = open;
    if (first === undefined) continue;
    const owner = owners.get(first)?.[0]?.step;
    const day = owner === undefined || !timeline.dated ? undefined : Math.floor(timeline.crews.start[owner]! / DAY_MINUTES);
    const price = priceFor(purchase.goods, day, prices);
    const cost = price === undefined ? undefined : materialCost(purchase, price);
    if (cost === undefined) {
      missing.push({ kind: 'price', what: purchase.label, line: first });
      continue;
    }
    for (const { line, cents: part } of cost.byLine) {
      if (covered.has(line) || part === 0) continue;
      const steps = owners.get(line) ?? [];
      const shares = shareCents(part, steps.length === 0 ? [1] : steps.map(({ share }) => share));
      shares.forEach((each, at) => {
        const step = steps[at]?.step;
        const trade = step === undefined ? undefined : timeline.trades[step]?.slot;
        lines.push({
          kind: 'material',
          rung: 'rate',
          label: purchase.label,
          cents: each,
          line,
          working: cost.working,
          ...placeOf(line),
          ...(step === undefined ? {} : { step }),
          ...(trade === undefined ? {} : { trade }),
        });
      });
    }
  }
}

/** Money kept for goods not yet chosen: what it stands for has no price of its own. */
function allowances(model: Model, lines: CostLine[]): void {
  for (const allowance of model.list('allowance')) {
    const money = allowance.takes;
    if (money === undefined) continue;
    lines.push({
      kind: 'allowance',
      rung: 'given',
      label: allowance.label,
      cents: cents(money),
      element: allowance.slot,
      working: () => money,
    });
  }
}

/** One note for all goods without a price, and one for each trade without a rate. */
function missingFindings(missing: readonly Missing[], timeline: Timeline, model: Model): readonly Finding[] {
  const findings: Finding[] = [];
  const goods = missing.filter((each) => each.kind === 'price');
  const [first] = goods;
  if (first?.line !== undefined) {
    const place = model.element(first.line.where.element)?.place;
    if (place !== undefined)
      findings.push(
        finding(
          priceMissing,
          place,
          goods
            .slice(0, 6)
            .map((each) => each.what)
            .join(', '),
          Math.max(0, goods.length - 6),
        ),
      );
  }
  const told = new Set<Slot>();
  for (const { kind, trade, what } of missing) {
    if (kind !== 'rate' || trade === undefined || told.has(trade)) continue;
    told.add(trade);
    const element = model.element(trade);
    if (element !== undefined) findings.push(finding(rateMissing, element.place, what));
  }
  void timeline;
  return findings;
}
