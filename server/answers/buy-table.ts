// The purchase list as a table for whoever stands at the counter or waits for the truck: by supplier and delivery.
import { supplierText, wayText } from './buy-words.ts';
import { dayText, tableDay } from './days.ts';
import { type BuyGroup, type BuyLine, purchaseList } from './purchase-list.ts';
import { standing } from './schedule-table.ts';
import { planLabel } from './summary.ts';
import { left, right, type Table, withoutEmpty } from './table.ts';
import { buyText } from './takeoff-table.ts';
import { type View, write, writeMoney } from './view.ts';

export function buyTable(view: View): Table {
  const groups = purchaseList(view);
  const { timeline, budget } = view.plan;
  const { asOf } = timeline.progress;
  const steps = timeline.steps.list.length > 0;
  return withoutEmpty({
    heading: [
      `${planLabel(view)}: what to buy, by supplier and delivery${asOf === undefined ? '' : `, seen from ${dayText(asOf, timeline)}`}.`,
      'Each line is what is needed in packages, rounded up once. Weight is of the goods without packing, where it is known.',
      ...(steps
        ? [
            'On site by is the day the first step that uses them begins. Order by is the last day that leaves the lead until then.',
          ]
        : []),
    ],
    columns: [left('Item'), left('Buy'), right('Weight'), left('On site by'), right('Cost')],
    rows: groups.flatMap((group, at) => [
      ...(supplierText(group, view) === (groups[at - 1] === undefined ? undefined : supplierText(groups[at - 1]!, view))
        ? []
        : [...(at === 0 ? [] : ['']), supplierText(group, view)]),
      `  ${wayText(group.way, view)}${sumsText(group, view)}`,
      ...group.lines.map((line) => cells(line, group, view)),
    ]),
    totals: budget.priced
      ? [
          [
            'Together, before tax',
            '',
            '',
            '',
            writeMoney(
              groups.reduce((sum, { cents }) => sum + cents, 0),
              view.style,
            ),
          ],
        ]
      : [],
    remarks:
      groups.length === 0
        ? ['Nothing is bought: the plan has no rooms, levels or other things to measure.']
        : unpriced(groups, view),
  });
}

function cells(line: BuyLine, { way }: BuyGroup, view: View): readonly string[] {
  return [
    `    ${line.label}`,
    boughtText(line, view),
    line.weight === undefined ? '' : weightText(line.weight.value, view),
    wantedText(line, view),
    line.cents === undefined ? (isBought(way) && view.plan.budget.priced ? 'no price' : '') : writeMoney(line.cents, view.style),
  ];
}

/** '33 boxes of 23.6 sf'; a price for what is laid says so, since a whole box is brought: '; paid as 730.3 sf laid'. */
function boughtText({ purchases, paidAs }: BuyLine, view: View): string {
  const bought = purchases.map((purchase) => buyText(purchase, view)).join(', ');
  return paidAs === undefined ? bought : `${bought}; paid as ${write(paidAs, view.style)} laid`;
}

/** The day that the first use begins on; of a use that has begun, since when. */
function wantedText({ wanted, first }: BuyLine, { plan: { timeline } }: View): string {
  if (wanted === undefined) return '';
  const text = tableDay(timeline)(wanted);
  return first !== undefined && standing(first, timeline) !== undefined ? `used ${text}` : text;
}

function isBought(way: BuyGroup['way']): boolean {
  return way.kind === 'delivery' || way.kind === 'no-delivery';
}

/** What a truck brings: '; about 9,420 lb, $5,560.00'. */
function sumsText({ way, lines, cents }: BuyGroup, view: View): string {
  if (!isBought(way)) return '';
  const weight = lines.reduce((sum, line) => sum + (line.weight?.value ?? 0), 0);
  const all = lines.every((line) => line.weight !== undefined);
  const said = [
    ...(weight === 0 ? [] : [`${all ? 'about' : 'at least'} ${weightText(weight, view)}`]),
    ...(cents === 0 ? [] : [writeMoney(cents, view.style)]),
  ];
  return said.length === 0 ? '' : `; ${said.join(', ')}`;
}

/** Whole pounds or kilograms: no scale is read closer. */
function weightText(value: number, view: View): string {
  return write({ value, dimension: 'weight' }, view.style).replace(/\.\d+(?= )/, '');
}

function unpriced(groups: readonly BuyGroup[], { plan: { budget } }: View): readonly string[] {
  const open = groups.filter(({ way }) => isBought(way)).flatMap(({ lines }) => lines.filter(({ cents }) => cents === undefined));
  return !budget.priced || open.length === 0
    ? []
    : [`Left out of the sum, for want of a price: ${open.map(({ label }) => label).join(', ')}.`];
}
