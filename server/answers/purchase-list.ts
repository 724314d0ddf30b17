// What to buy for the whole house: from whom, with which delivery, how much, how heavy, by when, for how much. Goods that
// come with an accepted bid, with work at a price of its own, or out of money set aside stand in groups of their own.
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import { type Quantity, total } from '#kit/quantity';
import type { MaterialCost } from '#money/material';
import { brings, type DeliveryDates, deliveryDates } from '#schedule/delivery-dates';
import { pouredApart } from '#schedule/pours';
import { weightOf } from '#takeoff/bought';
import type { Line, NamedGoods, Purchase } from '#takeoff/lines';
import { allPurchases, countedLines, isMeasuredOnly } from './takeoff-lines.ts';
import type { View } from './view.ts';

export interface BuyLine {
  readonly item: string;
  readonly label: string;
  /** Mostly one; goods that are cut in one place and not in another are bought in two ways. */
  readonly purchases: readonly Purchase[];
  readonly weight: Quantity | undefined;
  /** The first step that uses them, and the day it begins. */
  readonly first: number | undefined;
  readonly wanted: number | undefined;
  /** Whole cents, before tax; undefined where no price stands for it, or it costs nothing more. */
  readonly cents: number | undefined;
  /** What is paid for where a price is for what is laid and not for the packages that are bought. */
  readonly paidAs: Quantity | undefined;
}

/** How a group of goods comes to the site. */
export type Way =
  | { readonly kind: 'delivery'; readonly dates: DeliveryDates }
  | { readonly kind: 'no-delivery' }
  | { readonly kind: 'allowance'; readonly allowance: Slot }
  | { readonly kind: 'bid'; readonly bid: Slot }
  /** Paid for with these steps. */
  | { readonly kind: 'steps'; readonly steps: readonly number[] };

export interface BuyGroup {
  /** Undefined where neither a delivery nor a price says it, or a trade brings the goods. */
  readonly supplier: Slot | undefined;
  readonly way: Way;
  readonly lines: readonly BuyLine[];
  readonly cents: number;
}

/** Suppliers in plan order, each with its deliveries as they are wanted, then what no delivery brings; then the rest. */
export function purchaseList(view: View): readonly BuyGroup[] {
  const { timeline, budget, takeOff } = view.plan;
  const deliveries = deliveryDates(timeline);
  const counts = new Set(countedLines(view));
  const groups = new Map<string, Making>();
  const add = (key: string, supplier: Slot | undefined, way: Way, purchase: Purchase, cost?: MaterialCost): void => {
    if (isMeasuredOnly(purchase) || !purchase.lines.some((line) => counts.has(line))) return;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { supplier, way, bought: [{ purchase, cost }] });
    else group.bought.push({ purchase, cost });
  };
  const priced = budget.priced ? budget.goods : allPurchases(view).map((purchase) => ({ purchase, cost: undefined }));
  for (const { purchase, cost } of priced) {
    const dates = deliveries.find(({ delivery }) => brings(delivery, namesOf(purchase.goods)));
    const supplier = dates?.delivery.given.from?.value ?? cost?.prices[0]?.given.from?.value;
    const way: Way = dates === undefined ? { kind: 'no-delivery' } : { kind: 'delivery', dates };
    add(`${supplier?.name ?? ''} ${dates?.step ?? 'loose'}`, supplier, way, purchase, cost);
  }
  for (const [key, { way, lines }] of coveredBy(view, counts))
    for (const purchase of pouredApart(takeOff.boughtFor(lines), timeline, takeOff.boughtFor))
      add(`covered ${key}`, undefined, way, purchase);
  return inOrder(
    [...groups.values()].map((group) => finished(group, view)),
    view,
  );
}

/** Lines of goods that are paid for otherwise, once each: what money is set aside for is chosen by whoever sets it aside. */
function coveredBy(
  { plan: { budget } }: View,
  counts: ReadonlySet<Line>,
): ReadonlyMap<string, { readonly way: Way; readonly lines: readonly Line[] }> {
  const covered = new Map<string, { way: Way; lines: Line[] }>();
  const taken = new Set<Line>();
  const first = budget.paidFor.filter(({ allowance }) => allowance !== undefined);
  for (const { lines, step, bid, allowance } of [...first, ...budget.paidFor]) {
    const own = lines.filter(
      (line) => line.goods !== undefined && line.goods.of?.kind !== 'item' && counts.has(line) && !taken.has(line),
    );
    if (own.length === 0) continue;
    for (const line of own) taken.add(line);
    const key = `${allowance?.name ?? ''}/${bid?.name ?? ''}`;
    const known = covered.get(key);
    if (known === undefined) covered.set(key, { way: wayOf(step, bid, allowance), lines: own });
    else {
      known.lines.push(...own);
      if (known.way.kind === 'steps' && step !== undefined) known.way = { kind: 'steps', steps: [...known.way.steps, step] };
    }
  }
  return covered;
}

interface Making {
  readonly supplier: Slot | undefined;
  readonly way: Way;
  readonly bought: { readonly purchase: Purchase; readonly cost: MaterialCost | undefined }[];
}

function wayOf(step: number | undefined, bid: Slot | undefined, allowance: Slot | undefined): Way {
  if (allowance !== undefined) return { kind: 'allowance', allowance };
  return bid === undefined ? { kind: 'steps', steps: step === undefined ? [] : [step] } : { kind: 'bid', bid };
}

function namesOf({ name, of }: NamedGoods): { readonly name: string; readonly also: readonly string[] } {
  const also =
    of !== undefined && 'also' in of.given ? of.given.also.flatMap((line) => line.value.map(({ value }) => value.name)) : [];
  return { name, also };
}

/** One line an item. */
function finished({ supplier, way, bought }: Making, view: View): BuyGroup {
  const items = new Map<string, Making['bought'][number][]>();
  for (const each of bought) addTo(items, each.purchase.item, each);
  const lines = [...items.values()].map((list): BuyLine => {
    const purchases = list.map(({ purchase }) => purchase);
    const weights = purchases.map(weightOf);
    const known = weights.filter((weight) => weight !== undefined);
    const cents = list.flatMap(({ cost }) => cost?.cents ?? []);
    const laid = list.flatMap(({ purchase, cost }) => (cost?.prices[0]?.takes?.basis === 'laid' ? [purchase.net] : []));
    return {
      item: purchases[0]!.item,
      label: purchases[0]!.label,
      purchases,
      weight: known.length < weights.length ? undefined : known.length === 1 ? known[0] : total('weight', 'weight', known),
      ...firstUse(purchases, view),
      cents: cents.length < list.length ? undefined : cents.reduce((sum, each) => sum + each, 0),
      paidAs: laid.length < 2 ? laid[0] : total('laid', laid[0]!.dimension, laid),
    };
  });
  const cents = lines.reduce((sum, line) => sum + (line.cents ?? 0), 0);
  return { supplier, way, lines: [...lines].sort((a, b) => (a.wanted ?? NEVER) - (b.wanted ?? NEVER)), cents };
}

const NEVER = Number.MAX_SAFE_INTEGER;

/** Of the steps that use any of it, the one that begins first. */
function firstUse(purchases: readonly Purchase[], { plan: { timeline } }: View): Pick<BuyLine, 'first' | 'wanted'> {
  const { claims, crews, steps } = timeline;
  const lines = new Set(purchases.flatMap((purchase) => purchase.lines));
  const works = new Set([...lines].map(({ work }) => work?.name));
  let first: number | undefined;
  for (const work of works)
    for (const task of (work === undefined ? undefined : claims.byWork.get(work))?.tasks ?? []) {
      const step = steps.index.get(task.slot)!;
      if (!claims.byStep[step]!.some(({ line }) => lines.has(line))) continue;
      if (first === undefined || crews.start[step]! < crews.start[first]!) first = step;
    }
  return { first, wanted: first === undefined ? undefined : Math.floor(crews.start[first]! / (24 * 60)) };
}

const WAYS: readonly Way['kind'][] = ['delivery', 'no-delivery', 'allowance', 'bid', 'steps'];

function inOrder(groups: readonly BuyGroup[], { plan: { model } }: View): readonly BuyGroup[] {
  const order = model.names.order;
  const supplierOf = ({ supplier }: BuyGroup): number => (supplier === undefined ? NEVER : (order.get(supplier) ?? NEVER));
  const dayOf = ({ way, lines }: BuyGroup): number =>
    way.kind === 'delivery' ? (way.dates.wanted ?? way.dates.comes) : (lines[0]?.wanted ?? NEVER);
  return [...groups].sort(
    (a, b) =>
      rank(a) - rank(b) ||
      supplierOf(a) - supplierOf(b) ||
      WAYS.indexOf(a.way.kind) - WAYS.indexOf(b.way.kind) ||
      dayOf(a) - dayOf(b),
  );
}

/** What somebody must buy stands before what comes by itself. */
function rank({ way }: BuyGroup): number {
  return way.kind === 'delivery' || way.kind === 'no-delivery' ? 0 : WAYS.indexOf(way.kind);
}
