// The purchase list for programs: as JSON, whose shape is published in server/schemas/buy.schema.json, and as a sheet.
import { isoDate } from '#kit/dates';
import { packagesIn } from '#takeoff/bought';
import { type Amount, amountOf } from './amount.ts';
import { wayText } from './buy-words.ts';
import { leadText } from './days.ts';
import { type BuyGroup, type BuyLine, purchaseList } from './purchase-list.ts';
import { day, money, number, type Sheet, type SheetCell, text } from './sheet.ts';
import { bought } from './takeoff-json.ts';
import { buyText } from './takeoff-table.ts';
import type { View } from './view.ts';

export interface BuyAnswer {
  readonly screed: 1;
  readonly currency: string;
  readonly groups: readonly ListedGroup[];
  /** Whole cents, before tax. */
  readonly cents: number;
}

interface ListedGroup {
  readonly way: BuyGroup['way']['kind'];
  readonly label: string;
  readonly supplier?: string;
  /** The name of the delivery, the bid or the allowance. */
  readonly name?: string;
  readonly steps?: readonly string[];
  readonly lead?: string;
  readonly ordered?: string;
  readonly orderBy?: string;
  readonly comes?: string;
  readonly came?: boolean;
  readonly cents: number;
  readonly lines: readonly ListedLine[];
}

interface ListedLine {
  readonly item: string;
  readonly label: string;
  readonly text: string;
  readonly packages: readonly (Amount & { readonly holds?: Amount })[];
  readonly weight?: Amount;
  readonly onSiteBy?: string;
  readonly firstUsedBy?: string;
  readonly cents?: number;
}

export function buyAnswer(view: View): BuyAnswer {
  const groups = purchaseList(view);
  return {
    screed: 1,
    currency: view.style.currency,
    groups: groups.map((group) => listedGroup(group, view)),
    cents: groups.reduce((sum, { cents }) => sum + cents, 0),
  };
}

function listedGroup({ supplier, way, lines, cents }: BuyGroup, view: View): ListedGroup {
  const { steps } = view.plan.timeline;
  return {
    way: way.kind,
    label: wayText(way, view),
    ...(supplier === undefined ? {} : { supplier: supplier.name }),
    ...(nameOf(way) === undefined ? {} : { name: nameOf(way)! }),
    ...(way.kind === 'steps' ? { steps: way.steps.map((step) => steps.list[step]!.name) } : {}),
    ...(way.kind === 'delivery' ? deliveryDays(way.dates, view) : {}),
    cents,
    lines: lines.map((line) => listedLine(line, view)),
  };
}

function nameOf(way: BuyGroup['way']): string | undefined {
  switch (way.kind) {
    case 'delivery':
      return way.dates.delivery.name;
    case 'bid':
      return way.bid.name;
    case 'allowance':
      return way.allowance.name;
    default:
      return undefined;
  }
}

type Dates = Extract<BuyGroup['way'], { kind: 'delivery' }>['dates'];

function deliveryDays(
  { delivery, comes, came, orderBy }: Dates,
  view: View,
): Pick<ListedGroup, 'lead' | 'ordered' | 'orderBy' | 'comes' | 'came'> {
  const { lead, ordered } = delivery.given;
  return {
    ...(lead === undefined ? {} : { lead: leadText(lead.value, view.style) }),
    ...(ordered === undefined ? {} : { ordered: isoDate(ordered.value) }),
    ...(orderBy === undefined ? {} : { orderBy: dateText(orderBy, view) }),
    comes: dateText(comes, view),
    came,
  };
}

/** Without a first day of the plan the days are counted from it. */
function dateText(of: number, { plan: { timeline } }: View): string {
  return timeline.dated ? isoDate(of) : `day ${of - timeline.start + 1}`;
}

function listedLine({ item, label, purchases, weight, wanted, first, cents }: BuyLine, view: View): ListedLine {
  const { timeline } = view.plan;
  return {
    item,
    label,
    text: purchases.map((purchase) => buyText(purchase, view)).join(', '),
    packages: purchases.flatMap((purchase) =>
      packagesIn(purchase).map((each) => ({
        ...bought({ ...purchase, ...each, net: purchase.net }, view),
        ...(each.holds === undefined ? {} : { holds: amountOf(each.holds, view.style) }),
      })),
    ),
    ...(weight === undefined ? {} : { weight: amountOf(weight, view.style) }),
    ...(wanted === undefined ? {} : { onSiteBy: dateText(wanted, view) }),
    ...(first === undefined ? {} : { firstUsedBy: timeline.steps.list[first]!.name }),
    ...(cents === undefined ? {} : { cents }),
  };
}

/** One row a package or a length of sticks; days are days where the plan has dates. */
export function buySheet(view: View): Sheet {
  const { timeline } = view.plan;
  const dated = (of: number | undefined): SheetCell => (of === undefined ? undefined : timeline.dated ? of : undefined);
  return {
    name: 'Buy',
    currency: view.style.currency,
    columns: [
      text('supplier'),
      text('comes by'),
      text('delivery'),
      text('item'),
      text('label'),
      text('buy'),
      number('quantity'),
      text('unit'),
      number('weight'),
      text('weight unit'),
      day('on site by'),
      text('first used by'),
      text('lead'),
      day('ordered'),
      day('order by'),
      day('comes'),
      money('cost'),
      text('currency'),
    ],
    rows: purchaseList(view).flatMap(({ supplier, way, lines }) =>
      lines.map((line): readonly SheetCell[] => {
        const [only, ...others] = line.purchases;
        const amount = others.length === 0 ? bought(only!, view) : undefined;
        const weight = line.weight === undefined ? undefined : amountOf(line.weight, view.style);
        const dates = way.kind === 'delivery' ? way.dates : undefined;
        const lead = dates?.delivery.given.lead?.value;
        return [
          supplier?.name,
          way.kind,
          nameOf(way) ?? (way.kind === 'steps' ? way.steps.map((step) => timeline.steps.list[step]!.name).join(' ') : undefined),
          line.item,
          line.label,
          line.purchases.map((purchase) => buyText(purchase, view)).join(', '),
          amount?.quantity,
          amount?.unit,
          weight?.quantity,
          weight?.unit,
          dated(line.wanted),
          line.first === undefined ? undefined : timeline.steps.list[line.first]!.name,
          lead === undefined ? undefined : leadText(lead, view.style),
          dated(dates?.delivery.given.ordered?.value),
          dated(dates?.orderBy),
          dated(dates?.comes),
          line.cents,
          line.cents === undefined ? undefined : view.style.currency,
        ];
      }),
    ),
  };
}
