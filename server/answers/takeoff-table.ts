// Quantities as a table: by item, with what is bought; or by room, trade or element. Net, needed and bought are never
// mixed, and the heading says which is which.
import { FOOT, METRE, MILLIMETRE } from '#kit/dimension';
import { addTo } from '#kit/gathered';
import { shareCents } from '#kit/money';
import { type Quantity, roundUp } from '#kit/quantity';
import { readUnit } from '#kit/units';
import type { Line, Purchase } from '#takeoff/lines';
import { truckloadsOf } from '#takeoff/truckloads';
import { planLabel } from './summary.ts';
import { counted, left, right, type Table, withoutEmpty } from './table.ts';
import {
  countedLines,
  countedPurchases,
  groupLines,
  isMeasuredOnly,
  type Sum,
  sums,
  type TakeOffGrouping,
} from './takeoff-lines.ts';
import { type View, write } from './view.ts';

const MEANING =
  'Net is geometry alone. Needed is net with waste, laps and coats, less openings, as each material’s convention says.';

export function takeOffTable(by: TakeOffGrouping, view: View): Table {
  return withoutEmpty(by === 'item' ? byItem(view) : grouped(by, view));
}

function byItem(view: View): Table {
  const lines = countedLines(view);
  const purchases = countedPurchases(view, new Set(lines));
  const bought = new Set(purchases.flatMap((purchase) => purchase.lines));
  const told = new Set<Line>();
  const rest = sums(lines.filter((line) => !bought.has(line)).map((line) => ({ line, share: 1 })));
  const isSplit = ({ item, pour }: Purchase): boolean =>
    pour !== undefined && purchases.filter((other) => other.item === item).length > 1;
  const row = (purchase: Purchase): readonly string[] => [
    isSplit(purchase) ? `${purchase.label}: ${purchase.pour?.label}` : purchase.label,
    amountText(whole(netOf(purchase.net, purchase.needed)), undefined, view),
    amountText(whole(purchase.needed), purchase, view),
    buyText(purchase, view),
    labour(minutesOf(purchase, told), view),
  ];
  const goods = purchases.filter((purchase) => !isMeasuredOnly(purchase));
  const measured = purchases.filter(isMeasuredOnly);
  return {
    heading: [
      `${planLabel(view)}: quantities of the whole plan.`,
      MEANING,
      'Buy is what is needed in packages, rounded up once for the whole plan. Labour is person-hours by the rates.',
    ],
    columns: [left('Item'), right('Net'), right('Needed'), right('Buy'), right('Labour')],
    rows: [
      ...goods.map((purchase) => row(purchase)),
      ...(measured.length === 0 && rest.length === 0
        ? []
        : [
            ...(goods.length === 0 ? [] : ['', 'Work, and what is measured but not bought']),
            ...measured.map((purchase) => row(purchase)),
            ...rest.map((sum) => [
              sum.label,
              amountText(sum.net, undefined, view),
              optional(sum.needed, undefined, view),
              '',
              labour(sum.minutes, view),
            ]),
          ]),
    ],
    totals: [],
    remarks:
      lines.length === 0 ? ['Nothing is taken off: the plan has no rooms, levels or other things to measure.'] : ownerless(view),
  };
}

function grouped(by: Exclude<TakeOffGrouping, 'item'>, view: View): Table {
  const lines = countedLines(view);
  const purchaseOf = new Map(
    countedPurchases(view, new Set(lines)).flatMap((purchase) => purchase.lines.map((line) => [line, purchase] as const)),
  );
  const groups = groupLines(lines, by, view).map(({ label, parts }) => ({ label, sums: sums(parts) }));
  const all = groups.flatMap((group) => group.sums);
  const nets = sharedOut(all, ({ net }) => net);
  const needs = sharedOut(all, ({ net, needed }) => (net.dimension === 'number' ? needed : undefined));
  const rows = groups.flatMap((group) =>
    group.sums.map((sum, at) => [
      at === 0 ? group.label : '',
      sum.label,
      amountText(nets.get(sum) ?? netOf(sum.net, sum.needed), undefined, view),
      optional(needs.get(sum) ?? sum.needed, purchaseOf.get(sum.lines[0]!), view),
      labour(sum.minutes, view),
    ]),
  );
  return {
    heading: [
      `${planLabel(view)}: quantities by ${by === 'element' ? 'element of UNIFORMAT II' : by === 'part' ? 'part of the house' : by}.`,
      MEANING,
      'What is bought is rounded up once for the whole plan, so it stands only in the listing by item. Counted goods are shared out whole, so that they add up. Labour is person-hours by the rates.',
    ],
    columns: [left(`${by[0]!.toUpperCase()}${by.slice(1)}`), left('Item'), right('Net'), right('Needed'), right('Labour')],
    rows,
    totals: [],
    remarks: ownerless(view),
  };
}

/** Counted things whole in every group, so that the groups add up to the whole of the plan: the largest parts get what is left. */
function sharedOut(sums: readonly Sum[], amount: (sum: Sum) => Bare | undefined): ReadonlyMap<Sum, Bare> {
  const items = new Map<string, { readonly sum: Sum; readonly value: number }[]>();
  for (const sum of sums) {
    const own = amount(sum);
    if (own?.dimension === 'number') addTo(items, sum.item, { sum, value: own.value });
  }
  const shared = new Map<Sum, Bare>();
  for (const parts of items.values()) {
    const all = roundUp(parts.reduce((total, { value }) => total + value, 0));
    const shares = shareCents(
      all,
      parts.map(({ value }) => value),
    );
    parts.forEach(({ sum }, at) => {
      shared.set(sum, { value: shares[at]!, dimension: 'number' });
    });
  }
  return shared;
}

/** What is counted is whole, before its waste and with it: 61.6 chairs are 62. */
function whole(amount: Bare): Bare {
  return amount.dimension === 'number' ? { value: roundUp(amount.value), dimension: amount.dimension } : amount;
}

type Bare = Pick<Quantity, 'value' | 'dimension' | 'unit'>;

/** Net in the unit that is needed; what is blown in by weight is spoken of in cubic feet. */
function netOf(net: Bare, needed: Bare | undefined): Bare {
  if (needed?.dimension === net.dimension && needed.unit !== undefined) return { ...net, unit: needed.unit };
  return net.dimension === 'volume' && needed?.dimension === 'weight' ? { ...net, unit: 'cf' } : net;
}

/** Lengths run on, as they are ordered: 822.2 lf. What is needed is told in the unit it is sold by. */
function amountText(quantity: Bare, purchase: Purchase | undefined, view: View): string {
  const { value, dimension } = quantity;
  if (dimension === 'length') return runText(value, view);
  if (purchase !== undefined && readUnit(purchase.package)?.dimension === dimension)
    return write({ value, dimension, unit: purchase.package }, view.style);
  // Bags and tubes that an area needs are no pieces of it.
  if (dimension === 'number' && purchase !== undefined && purchase.net.dimension !== 'number' && purchase.package !== 'each')
    return packages(Math.round(value * 100) / 100, purchase.package, view);
  return write(dimension === 'number' ? { value: Math.round(value * 10) / 10, dimension } : quantity, view.style);
}

/** A length as it is ordered, to a tenth: 822.2 lf, 250.6 m. */
export function runText(value: number, view: View): string {
  const { system } = view.style;
  const size = Math.round((value / (system === 'feet' ? FOOT : METRE)) * 10) / 10;
  return `${write({ value: size, dimension: 'number' }, view.style)} ${system === 'feet' ? 'lf' : 'm'}`;
}

/** '112 sheets of 32 sf', '2.75 cy', '14'. */
export function buyText(purchase: Purchase, view: View): string {
  const { bought, package: word, holds, sticks, larger } = purchase;
  const { value, dimension } = bought;
  if (sticks !== undefined) return sticksText(sticks, word, view);
  if (dimension === 'length') return `${runText(value, view)}${madeTo(purchase, view)}`;
  if (dimension !== 'number') {
    const unit = readUnit(word)?.dimension === dimension ? word : undefined;
    const text = unit === undefined ? write(bought, view.style) : write({ value, dimension, unit }, view.style);
    if (larger !== undefined && unit !== undefined) return `${text} as ${inLarger(value, larger, unit, view)}`;
    return `${text}${trucksText(purchase, view)}`;
  }
  if (word === 'each' || word === '') return write({ value, dimension }, view.style);
  const of = holds === undefined || (holds.dimension === 'number' && holds.value === 1) ? '' : ` of ${holdsText(holds, view)}`;
  return `${packages(value, word, view)}${of}`;
}

/** ' in 2 trucks'. */
function trucksText(purchase: Purchase, view: View): string {
  const trucks = truckloadsOf(purchase).reduce((sum, load) => sum + load.trucks.value, 0);
  return trucks === 0 ? '' : ` in ${packages(trucks, 'truck', view)}`;
}

/** What is made to the length ordered: ' as 3 of 9.6 m'. */
function madeTo({ lines }: Purchase, view: View): string {
  const pieces = lines.flatMap((line) => line.pieces ?? []);
  if (lines.some((line) => line.pieces === undefined) || pieces.length === 0) return '';
  const counts = new Map<number, number>();
  for (const { count, length } of pieces) counts.set(length.value, (counts.get(length.value) ?? 0) + count.value);
  const parts = [...counts].map(([value, count]) => {
    const length = view.style.system === 'feet' ? write({ value, dimension: 'length' }, view.style) : runText(value, view);
    return `${write({ value: roundUp(count), dimension: 'number' }, view.style)} of ${length}`;
  });
  return ` as ${parts.join(', ')}`;
}

/** '3 buckets of 5 gal', '1 bucket of 5 gal and 2 gal'. */
function inLarger(value: number, { word, holds }: NonNullable<Purchase['larger']>, unit: string, view: View): string {
  const count = Math.floor(value / holds.value + 1e-9);
  const rest = value - count * holds.value;
  const text = `${packages(count, word, view)} of ${holdsText(holds, view)}`;
  return rest < 1e-6 * value ? text : `${text} and ${write({ value: rest, dimension: holds.dimension, unit }, view.style)}`;
}

/** '4 pieces of 16', 2 of 12''. */
function sticksText(sticks: NonNullable<Purchase['sticks']>, word: string, view: View): string {
  return sticks
    .map(({ bought: { value }, holds }, at) =>
      at === 0
        ? `${packages(value, word, view)} of ${holdsText(holds, view)}`
        : `${write({ value, dimension: 'number' }, view.style)} of ${holdsText(holds, view)}`,
    )
    .join(', ');
}

/** What one package holds: a sheet by its sides; a stick in metres where the plan is metric. */
export function holdsText(holds: Quantity, view: View): string {
  const [width, length] = holds.inputs;
  if (holds.dimension === 'area' && width !== undefined && length !== undefined) return sidesText(width, length, view);
  if (view.style.system === 'feet' || holds.dimension !== 'length') return write(holds, view.style);
  return `${metres(holds, view)} m`;
}

/** 4' x 8', 1200 x 2400 mm, 1.5 x 50 m. */
function sidesText(width: Quantity, length: Quantity, view: View): string {
  if (view.style.system === 'feet') return `${write(width, view.style)} x ${write(length, view.style)}`;
  // Sheets are named in millimetres, without marks between the thousands; rolls in metres.
  if (length.value < 4 * METRE) return `${Math.round(width.value / MILLIMETRE)} x ${Math.round(length.value / MILLIMETRE)} mm`;
  return `${metres(width, view)} x ${metres(length, view)} m`;
}

function metres({ value }: Quantity, view: View): string {
  return write({ value: Math.round((value / METRE) * 100) / 100, dimension: 'number' }, view.style);
}

function packages(count: number, word: string, view: View): string {
  const many = /(?:s|x|ch|sh)$/.test(word) ? `${word}es` : `${word}s`;
  return `${write({ value: count, dimension: 'number' }, view.style)} ${count === 1 ? word : many}`;
}

function optional(quantity: Bare | undefined, purchase: Purchase | undefined, view: View): string {
  return quantity === undefined ? '' : amountText(quantity, purchase, view);
}

function labour(minutes: number | undefined, view: View): string {
  return minutes === undefined || minutes === 0 ? '' : write({ value: minutes, dimension: 'time' }, view.style);
}

/** Of lines that stand under no purchase above: sticks of two lengths may be for one line. */
function minutesOf({ lines }: Purchase, told: Set<Line>): number | undefined {
  const rated = lines.filter((line) => line.hours !== undefined && !told.has(line));
  for (const line of rated) told.add(line);
  return rated.length === 0 ? undefined : rated.reduce((sum, line) => sum + line.hours!.value, 0);
}

/** Work that no task does: how much of the listing has no owner. */
function ownerless({ plan: { timeline } }: View): readonly string[] {
  if (timeline.steps.list.length === 0) return [];
  const works = [...timeline.claims.byWork.values()].filter(({ open }) => open.some(({ line }) => line.onlyIfDone !== true));
  if (works.length === 0) return [];
  return [
    `No task does ${works
      .slice(0, 6)
      .map(({ work }) => work)
      .join(', ')}${works.length > 6 ? ` and ${counted(works.length - 6, 'other')}` : ''}.`,
  ];
}
