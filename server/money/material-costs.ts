// What goods cost over the whole plan; and, when somebody asks, whose cost each line is.
import { DAY_MINUTES } from '#kit/dates';
import { sameList } from '#kit/differing';
import { shareCents } from '#kit/money';
import type { Price } from '#model/model';
import { pouredApart } from '#schedule/pours';
import type { Steps } from '#schedule/steps';
import type { Timeline } from '#schedule/timeline';
import { packagesIn } from '#takeoff/bought';
import type { Line, Purchase } from '#takeoff/lines';
import type { CostLine, Missing } from './cost-lines.ts';
import type { Covered } from './covered.ts';
import { type MaterialCost, materialCost } from './material.ts';
import { type Prices, pricesFor } from './prices.ts';
import { placeOf } from './step-costs.ts';
import { sharesByLine } from './whose-goods.ts';

/** What is bought and not paid for otherwise, at what cost. */
export interface Goods {
  readonly purchase: Purchase;
  /** Undefined where no price fits. */
  readonly cost: MaterialCost | undefined;
}

export interface Materials {
  readonly goods: readonly Goods[];
  readonly costs: readonly MaterialCost[];
  /** Of goods that no bid, price for the work or allowance covers. */
  readonly cents: number;
  readonly missing: readonly Missing[];
}

/** What each purchase came to at the last look. */
export interface GoodsMemory {
  readonly bills: WeakMap<Purchase, Bill>;
  last: readonly Goods[];
}
export function goodsMemory(): GoodsMemory {
  return { bills: new WeakMap(), last: [] };
}

/** A purchase at its prices, without the lines of it that are paid for otherwise. */
interface Bill {
  readonly prices: readonly (Price | undefined)[];
  /** Undefined where nothing covers any of it. */
  readonly covered: ReadonlySet<Line> | undefined;
  /** Lines that are not covered are bought for themselves: mostly the purchase itself. */
  readonly rest: readonly Purchase[];
  /** The same, pour by pour where it comes by the truck. */
  readonly open: readonly Purchase[];
  readonly goods: readonly Goods[];
}

export function materialsOf(
  purchases: readonly Purchase[],
  covered: Covered,
  timeline: Timeline,
  prices: Prices,
  boughtFor: (lines: readonly Line[]) => readonly Purchase[],
  memory: GoodsMemory,
): Materials {
  const goods: Goods[] = [];
  const costs: MaterialCost[] = [];
  const missing: Missing[] = [];
  let cents = 0;
  for (const purchase of purchases) {
    const lines = covered.items.has(purchase.item) ? covered.lines : undefined;
    const before = memory.bills.get(purchase);
    const known = before !== undefined && before.covered === lines ? before : undefined;
    const rest = known === undefined ? openOf(purchase, lines, boughtFor) : known.rest;
    const open = pouredApart(rest, timeline, boughtFor);
    const first = open[0]?.lines[0];
    const day =
      first !== undefined && isDated(purchase.goods.name, prices)
        ? (orderedOn(timeline.steps).get(purchase.goods.name) ?? dayOf(first, timeline))
        : undefined;
    const own = open.flatMap((each) => pricesFor(each, day, prices));
    const bill =
      known !== undefined && sameList(known.open, open) && sameList(known.prices, own) ? known : billOf(rest, open, own, lines);
    if (bill !== before) memory.bills.set(purchase, bill);
    for (const each of bill.goods) {
      goods.push(each);
      if (each.cost === undefined && each.purchase.pour !== undefined && each !== bill.goods[0]) continue;
      if (each.cost === undefined) missing.push({ kind: 'price', what: each.purchase.label, line: each.purchase.lines[0]! });
      else {
        costs.push(each.cost);
        cents += each.cost.cents;
      }
    }
  }
  if (!sameList(goods, memory.last)) memory.last = goods;
  return { goods: memory.last, costs, cents, missing };
}

function openOf(
  purchase: Purchase,
  covered: ReadonlySet<Line> | undefined,
  boughtFor: (lines: readonly Line[]) => readonly Purchase[],
): readonly Purchase[] {
  if (covered === undefined) return [purchase];
  const open = purchase.lines.filter((line) => !covered.has(line));
  return open.length === purchase.lines.length ? [purchase] : open.length === 0 ? [] : boughtFor(open);
}

function billOf(
  rest: readonly Purchase[],
  open: readonly Purchase[],
  prices: readonly (Price | undefined)[],
  covered: ReadonlySet<Line> | undefined,
): Bill {
  let at = 0;
  const goods = open.map((purchase) => {
    const own = prices.slice(at, (at += packagesIn(purchase).length));
    return { purchase, cost: materialCost(purchase, own) };
  });
  return { prices, covered, rest, open, goods };
}

function isDated(name: string, prices: Prices): boolean {
  return prices.dated && prices.byName.get(name)?.some((price) => price.given.until !== undefined) === true;
}

const orders = new WeakMap<Steps, ReadonlyMap<string, number>>();

/** The day on which goods were ordered, by name: the price of that day holds, however late they come. */
function orderedOn(steps: Steps): ReadonlyMap<string, number> {
  let known = orders.get(steps);
  if (known === undefined) {
    const days = new Map<string, number>();
    for (const step of steps.list) {
      if (step.kind !== 'delivery' || step.given.ordered === undefined) continue;
      for (const { value } of step.given.brings?.value ?? []) days.set(value.name, step.given.ordered.value);
    }
    orders.set(steps, (known = days));
  }
  return known;
}

/** When the step that takes a line begins, if dates are known. */
function dayOf(line: Line, timeline: Timeline): number | undefined {
  if (!timeline.dated) return undefined;
  const { claims, steps, crews } = timeline;
  // The first in plan order, where several do.
  for (const task of (line.work === undefined ? undefined : claims.byWork.get(line.work.name)?.tasks) ?? []) {
    const step = steps.index.get(task.slot)!;
    if (claims.byStep[step]!.some((claim) => claim.line === line)) return Math.floor(crews.start[step]! / DAY_MINUTES);
  }
  return undefined;
}

/** Each cost shared out among the steps that use the goods, to the cent. */
export function materialLines(
  costs: readonly MaterialCost[],
  covered: ReadonlySet<Line>,
  timeline: Timeline,
): readonly CostLine[] {
  const sharesOf = sharesByLine(timeline.claims.byStep.entries());
  return costs.flatMap((cost) =>
    cost.byLine().flatMap((part, at) => {
      const line = cost.purchase.lines[at]!;
      if (part === 0 || covered.has(line)) return [];
      const shares = sharesOf.get(line);
      if (shares === undefined) return [materialLine(cost, line, part, undefined, timeline)];
      const weights = shares.map(({ share }) => share);
      return shareCents(part, weights).map((cents, nth) => materialLine(cost, line, cents, shares[nth]!.step, timeline));
    }),
  );
}

export function materialLine(
  { purchase, working }: MaterialCost,
  line: Line,
  cents: number,
  step: number | undefined,
  { trades }: Timeline,
): CostLine {
  const base = { kind: 'material', rung: 'rate', label: purchase.label, line, working, cents, ...placeOf(line) } as const;
  const trade = step === undefined ? undefined : trades[step];
  return step === undefined ? base : { ...base, step, ...(trade === undefined ? {} : { trade: trade.slot }) };
}
