// What `explain` says of how an item is laid out: in one line, since `screed layout` has the whole.
import type { Purchase } from '#takeoff/lines';
import { type ListedReason, saying } from '../listed-reason.ts';
import type { View } from '../view.ts';
import { notLaidText } from './not-laid.ts';
import { rollsOf, rollText } from './rolls.ts';
import { laidOf, sheetsText, wasteText } from './sheets.ts';
import { tiledOf, tileText } from './tile.ts';

/** None for what is not laid out. */
export function layoutReasons(purchase: Purchase, view: View): readonly ListedReason[] {
  const sheets = laidOf(purchase, view);
  const rolls = rollsOf(purchase, view);
  const tiles = tiledOf(purchase, view);
  return [
    ...(sheets === undefined
      ? []
      : [
          saying(
            'laid wall by wall',
            `${sheetsText(sheets, view)}; ${wasteText(purchase, sheets, view)}${rest(purchase, sheets.faces, view)}`,
          ),
        ]),
    ...(rolls === undefined
      ? []
      : [saying('laid in lengths', `${rollText(purchase, rolls, view)}${rest(purchase, rolls.floors, view)}`)]),
    ...(tiles === undefined ? [] : [saying('laid in rows and columns', tileText(purchase, tiles))]),
  ];
}

/** What goes by area beside it, as the end of the line. */
function rest(...of: Parameters<typeof notLaidText>): string {
  return notLaidText(...of)
    .map((text) => `; ${text.trim().replace('Not laid', 'not laid')}`)
    .join('');
}
