// The working behind an order of concrete: the margin over what the drawing says, how many trucks bring it, what is in the
// last one.
import { form, measure } from '#kit/quantity';
import type { Purchase } from '#takeoff/lines';
import { truckloadsOf } from '#takeoff/truckloads';
import { type ListedReason, listedReason } from './listed-reason.ts';
import type { View } from './view.ts';

const over = form('order margin', 'ordered − net', (ordered = 0, net = 0) => ordered - net);
const overShare = form('order margin as a share', '(ordered − net) ÷ net', (ordered = 0, net = 0) =>
  net > 0 ? (ordered - net) / net : 0,
);

/** None for what does not come by the truck. */
export function truckReasons(purchase: Purchase, view: View): readonly ListedReason[] {
  const loads = truckloadsOf(purchase);
  if (loads.length === 0 || purchase.net.dimension !== 'volume') return [];
  const { bought, net } = purchase;
  const share = listedReason(measure('number', overShare, bought, net), view);
  return [
    { ...listedReason(measure('volume', over, bought, net), view), inputs: [] },
    { ...share, text: `${Math.round((share.value ?? 0) * 1000) / 10}%`, inputs: [] },
    ...loads.flatMap(({ label, ordered, trucks, last, short }) => {
      const name = loads.length > 1 ? `${label}: ` : '';
      return [
        ...(loads.length > 1 ? [listedReason(ordered, view, `${name}ordered`)] : []),
        listedReason(trucks, view, `${name}trucks`),
        ...(trucks.value > 1 || short !== undefined ? [listedReason(short ?? last, view)] : []),
      ];
    }),
  ];
}
