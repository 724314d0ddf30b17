// How a purchase list is said: who sells, which delivery brings, by when to order, what comes without being bought.
import { missedOrderDay } from '#checks/late-orders';
import type { DeliveryDates } from '#schedule/delivery-dates';
import { leadText, tableDay } from './days.ts';
import type { BuyGroup, Way } from './purchase-list.ts';
import { listed } from './table.ts';
import { labelOf } from './takeoff-lines.ts';
import type { View } from './view.ts';

/** 'Hollis Lumber, 555-0177'. */
export function supplierText({ supplier, way }: BuyGroup, view: View): string {
  if (supplier === undefined)
    return way.kind === 'delivery' || way.kind === 'no-delivery'
      ? 'No supplier named'
      : 'Comes without being bought, or is not chosen yet';
  const element = view.plan.model.element(supplier);
  const phone = element?.kind === 'supplier' ? element.given.phone?.value : undefined;
  return phone === undefined ? labelOf(supplier, view) : `${element?.label ?? supplier.name}, ${phone}`;
}

/** 'Lumber and sheathing (lumber-here): lead 1 week, order by Fri 30 Apr, planned for Mon 10 May, wanted by Wed 12 May'. */
export function wayText(way: Way, view: View): string {
  const { timeline, model } = view.plan;
  switch (way.kind) {
    case 'delivery':
      return `${way.dates.delivery.label} (${way.dates.delivery.name}): ${deliveryText(way.dates, view)}`;
    case 'no-delivery':
      return timeline.steps.list.some(({ kind }) => kind === 'delivery')
        ? 'No delivery brings these'
        : 'To fetch or have delivered';
    case 'allowance':
      return `Not chosen yet: money is set aside (${way.allowance.name})`;
    case 'bid': {
      const bid = model.element(way.bid);
      const firm = bid?.kind === 'bid' ? bid.given.by?.value : undefined;
      return `In the accepted bid of ${firm === undefined ? way.bid.name : labelOf(firm, view)} (${way.bid.name}), with materials`;
    }
    case 'steps':
      return `Paid for with the work of ${listed(way.steps.map((step) => timeline.steps.list[step]!.name))}`;
  }
}

function deliveryText(dates: DeliveryDates, view: View): string {
  const { timeline } = view.plan;
  const { lead, ordered } = dates.delivery.given;
  const dayText = tableDay(timeline);
  if (dates.came) return `came ${dayText(dates.comes)}`;
  const missed = missedOrderDay(dates, timeline);
  const by = missed ?? dates.orderBy;
  return [
    ...(lead === undefined ? [] : [`lead ${leadText(lead.value, view.style)}`]),
    ...(ordered === undefined ? [] : [`ordered ${dayText(ordered.value)}`]),
    ...(by === undefined ? [] : [`order by ${dayText(by)}${missed === undefined ? '' : ', a day that has passed'}`]),
    `planned for ${dayText(dates.comes)}`,
    ...(dates.wanted === undefined ? [] : [`wanted by ${dayText(dates.wanted)}`]),
  ].join(', ');
}
