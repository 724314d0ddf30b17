// Quantities as a table: by item, with what is bought; or by room, trade or element. Net, needed and bought are never
// mixed, and the heading says which is which.
import type { Quantity } from '#kit/quantity';
import type { Purchase } from '#takeoff/lines';
import { planLabel } from './summary.ts';
import { counted, left, right, type Table, withoutEmpty } from './table.ts';
import { countedLines, countedPurchases, groupLines, type Sum, sums, type TakeOffGrouping } from './takeoff-lines.ts';
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
  const rest = sums(lines.filter((line) => !bought.has(line)).map((line) => ({ line, share: 1 })));
  return {
    heading: [
      `${planLabel(view)}: quantities of the whole plan.`,
      MEANING,
      'Buy is what is needed in packages, rounded up once for the whole plan.',
    ],
    columns: [left('Item'), right('Net'), right('Needed'), right('Buy'), right('Labour')],
    rows: [
      ...purchases.map((purchase) => [
        purchase.label,
        write(purchase.net, view.style),
        write(purchase.needed, view.style),
        buyText(purchase, view),
        labour(minutesOf(purchase), view),
      ]),
      ...rest.map((sum) => [sum.label, write(sum.net, view.style), optional(sum.needed, view), '', labour(sum.minutes, view)]),
    ],
    totals: [],
    remarks:
      lines.length === 0 ? ['Nothing is taken off: the plan has no rooms, levels or other things to measure.'] : ownerless(view),
  };
}

function grouped(by: 'room' | 'trade' | 'element', view: View): Table {
  const rows = groupLines(countedLines(view), by, view).flatMap(({ label, parts }) =>
    sums(parts).map((sum, at) => [at === 0 ? label : '', ...cells(sum, view)]),
  );
  return {
    heading: [
      `${planLabel(view)}: quantities by ${by}.`,
      MEANING,
      'What is bought is rounded up once for the whole plan, so it stands only in the listing by item.',
    ],
    columns: [left(`${by[0]!.toUpperCase()}${by.slice(1)}`), left('Item'), right('Net'), right('Needed'), right('Labour')],
    rows,
    totals: [],
    remarks: ownerless(view),
  };
}

function cells({ label, net, needed, minutes }: Sum, view: View): readonly string[] {
  return [label, write(net, view.style), optional(needed, view), labour(minutes, view)];
}

/** '112 sheets', '6 1/4 cy'. */
export function buyText({ bought, package: word, holds }: Purchase, view: View): string {
  if (holds === undefined && bought.dimension !== 'number') return write(bought, view.style);
  const count = write({ value: bought.value, dimension: 'number' }, view.style);
  return word === 'each' ? count : `${count} ${bought.value === 1 ? word : plural(word)}`;
}

function plural(word: string): string {
  if (/(?:s|x|ch|sh)$/.test(word)) return `${word}es`;
  return `${word}s`;
}

function optional(quantity: Pick<Quantity, 'value' | 'dimension' | 'unit'> | undefined, view: View): string {
  return quantity === undefined ? '' : write(quantity, view.style);
}

function labour(minutes: number | undefined, view: View): string {
  return minutes === undefined || minutes === 0 ? '' : write({ value: minutes, dimension: 'time' }, view.style);
}

function minutesOf({ lines }: Purchase): number | undefined {
  const rated = lines.filter((line) => line.hours !== undefined);
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
