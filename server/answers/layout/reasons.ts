// What `explain` says of how an item is laid out: in one line, since `screed layout` has the whole.
import type { Purchase } from '#takeoff/lines';
import { type ListedReason, saying } from '../listed-reason.ts';
import type { View } from '../view.ts';
import { laidOf, sheetsText, wasteText } from './sheets.ts';

/** None for what is not laid out. */
export function layoutReasons(purchase: Purchase, view: View): readonly ListedReason[] {
  const laid = laidOf(purchase, view);
  return laid === undefined ? [] : [saying('laid wall by wall', `${sheetsText(laid, view)}; ${wasteText(purchase, laid, view)}`)];
}
