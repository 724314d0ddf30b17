// What goods cost over the whole plan; and, when somebody asks, whose cost each line is.
import { DAY_MINUTES } from '#kit/dates';
import { shareCents } from '#kit/money';
import type { Price } from '#model/model';
import type { Timeline } from '#schedule/timeline';
import type { Line, Purchase } from '#takeoff/lines';
import type { CostLine, Missing } from './cost-lines.ts';
import type { Covered } from './covered.ts';
import { type MaterialCost, materialCost } from './material.ts';
import { type Prices, priceFor } from './prices.ts';
import { placeOf } from './step-costs.ts';
import { sharesByLine } from './whose-goods.ts';

export interface Materials {
  readonly costs: readonly MaterialCost[];
  /** Of goods that no bid, price for the work or allowance covers. */
  readonly cents: number;
  readonly missing: readonly Missing[];
}

/** What each purchase came to at the last look. */
export interface GoodsMemory {
  readonly bills: WeakMap<Purchase, Bill>;
}
export function goodsMemory(): GoodsMemory {
  return { bills: new WeakMap() };
}

/** A purchase at a price, with the lines of it that are not paid for otherwise. */
interface Bill {
  readonly price: Price | undefined;
  /** Undefined where nothing covers any of it. */
  readonly covered: ReadonlySet<Line> | undefined;
  /** The first line that is not covered; undefined where all are. */
  readonly first: Line | undefined;
  /** Undefined where no price fits. */
  readonly cost: MaterialCost | undefined;
  readonly cents: number;
}

export function materialsOf(
  purchases: readonly Purchase[],
  covered: Covered,
  timeline: Timeline,
  prices: Prices,
  memory: GoodsMemory,
): Materials {
  const costs: MaterialCost[] = [];
  const missing: Missing[] = [];
  let cents = 0;
  for (const purchase of purchases) {
    const lines = covered.items.has(purchase.item) ? covered.lines : undefined;
    const before = memory.bills.get(purchase);
    const known = before !== undefined && before.covered === lines ? before : undefined;
    const first = known === undefined ? firstOpen(purchase.lines, lines) : known.first;
    const day = first !== undefined && isDated(purchase.goods.name, prices) ? dayOf(first, timeline) : undefined;
    const price = priceFor(purchase.goods, day, prices);
    const bill = known?.price === price && known !== undefined ? known : billOf(purchase, price, lines, first);
    if (bill !== before) memory.bills.set(purchase, bill);
    if (first === undefined) continue;
    if (bill.cost === undefined) missing.push({ kind: 'price', what: purchase.label, line: first });
    else {
      costs.push(bill.cost);
      cents += bill.cents;
    }
  }
  return { costs, cents, missing };
}

function firstOpen(lines: readonly Line[], covered: ReadonlySet<Line> | undefined): Line | undefined {
  return covered === undefined ? lines[0] : lines.find((line) => !covered.has(line));
}

function billOf(
  purchase: Purchase,
  price: Price | undefined,
  covered: ReadonlySet<Line> | undefined,
  first: Line | undefined,
): Bill {
  const cost = price === undefined || first === undefined ? undefined : materialCost(purchase, price);
  let cents = cost?.cents ?? 0;
  if (cost !== undefined && covered !== undefined && purchase.lines.some((line) => covered.has(line))) {
    cents = 0;
    cost.byLine().forEach((part, at) => {
      if (!covered.has(purchase.lines[at]!)) cents += part;
    });
  }
  return { price, covered, first, cost, cents };
}

function isDated(name: string, prices: Prices): boolean {
  return prices.dated && prices.byName.get(name)?.some((price) => price.given.until !== undefined) === true;
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
