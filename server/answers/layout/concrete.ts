// Concrete by pour: net, the margin that the order has over it, the trucks that bring it, and what the last one lacks.
import type { Purchase } from '#takeoff/lines';
import { truckloadsOf } from '#takeoff/truckloads';
import { left, right, type Table, withoutEmpty } from '../table.ts';
import { type View, write } from '../view.ts';
import { shareText } from './words.ts';

export function concreteTable(purchases: readonly Purchase[], view: View): Table | undefined {
  const rows = purchases.flatMap((purchase) => {
    const { label, net, bought } = purchase;
    return truckloadsOf(purchase).map(({ label: pour, ordered, trucks, last, short }, at, all): readonly string[] => [
      label,
      pour,
      at === 0 ? write(net, view.style) : '',
      at === 0 ? shareText(bought.value - net.value, net.value) : '',
      write(ordered, view.style),
      all.length > 0 ? write(trucks, view.style) : '',
      write(last, view.style),
      short === undefined ? '' : write(short, view.style),
    ]);
  });
  if (rows.length === 0) return undefined;
  return withoutEmpty({
    heading: ['Concrete by pour. The margin is what is ordered over the net of the drawing.'],
    columns: [
      left('Concrete'),
      left('Pour'),
      right('Net'),
      right('Margin'),
      right('Order'),
      right('Trucks'),
      right('In the last'),
      right('Short of the least load'),
    ],
    rows,
    totals: [],
    remarks: [],
  });
}
