// What a plan costs, as a table: under any heading, with tax, contingency, and what the total leaves out.
import { COST_COLUMNS, type CostColumn, type CostGrouping, groupCosts, sumsOf } from './cost-groups.ts';
import { planLabel } from './summary.ts';
import { counted, left, right, type Table } from './table.ts';
import { type View, writeMoney } from './view.ts';

const HEADINGS: Readonly<Record<CostColumn, string>> = {
  material: 'Materials',
  work: 'Work',
  fees: 'Fees',
  hire: 'Hire',
  allowance: 'Set aside',
};

export function costTable(by: CostGrouping, view: View): Table {
  const { plan, style } = view;
  const { budget } = plan;
  const groups = groupCosts(by, view);
  const all = sumsOf(budget.lines);
  const columns = COST_COLUMNS.filter((column) => groups.some(({ cents }) => cents[column] !== 0));
  const cell = (cents: number): string => (cents === 0 ? '' : writeMoney(cents, style));
  const last = (label: string, cents: number): readonly string[] => [label, ...columns.map(() => ''), writeMoney(cents, style)];
  const rate = plan.model.plan?.given.contingency?.value;
  return {
    heading: [
      `${planLabel(view)}: what it costs, by ${by === 'element' ? 'element of UNIFORMAT II' : by === 'part' ? 'part of the house' : by}.`,
      'Materials are what is bought, by the prices of the plan. Work is the accepted bid, else the sum given, else the unit price, else hours at the trade’s rate.',
    ],
    columns: [left(`${by[0]!.toUpperCase()}${by.slice(1)}`), ...columns.map((column) => right(HEADINGS[column])), right('Total')],
    rows: groups.map(({ label, cents, total }) => [
      label,
      ...columns.map((column) => cell(cents[column])),
      writeMoney(total, style),
    ]),
    totals: budget.priced
      ? [
          ['Together', ...columns.map((column) => cell(all.cents[column])), writeMoney(all.total, style)],
          ...(budget.tax === 0 ? [] : [last('Tax', budget.tax)]),
          ...(budget.contingency === 0
            ? []
            : [last(`Contingency${rate === undefined ? '' : `, ${percent(rate.value)}`}`, budget.contingency)]),
          ...(budget.tax === 0 && budget.contingency === 0 ? [] : [last('Total', budget.total)]),
        ]
      : [],
    remarks: budget.priced ? leftOut(view) : ['The plan gives no prices, rates, bids or costs, so nothing adds up yet.'],
  };
}

/** What no money stands for, so that nobody takes the total for the whole. */
function leftOut({ plan: { budget } }: View): readonly string[] {
  const of = (kind: 'price' | 'rate'): readonly string[] => [
    ...new Set(budget.missing.filter((each) => each.kind === kind).map(({ what }) => what)),
  ];
  const [goods, trades] = [of('price'), of('rate')];
  return [
    ...(goods.length === 0 ? [] : [`Left out, for want of a price: ${some(goods)}.`]),
    ...(trades.length === 0 ? [] : [`Left out, for want of a rate: the hours of ${some(trades)}.`]),
  ];
}

function some(words: readonly string[]): string {
  const shown = words.slice(0, 12).join(', ');
  return words.length > 12 ? `${shown} and ${counted(words.length - 12, 'other')}` : shown;
}

function percent(share: number): string {
  return `${Math.round(share * 10_000) / 100}%`;
}
