// Window wells outside a room: the wells, what is dug for them and hauled away, and the stone that drains them.
import { form, measure, type Quantity } from '#kit/quantity';
import type { Room } from '#model/model';
import type { Portion, Where } from '../lines.ts';
import { counted, inPart, portion } from './portion.ts';
import { rectangle } from './runs.ts';

const halfRound = form(
  'half-round window well',
  'π ÷ 4 × width × clear space',
  (width = 0, out = 0) => (Math.PI * width * out) / 4,
);
const dug = form('pit of the window well', 'area × (depth + stone)', (area = 0, deep = 0, stone = 0) => area * (deep + stone));
const stoneIn = form('stone in the window well', 'area × depth of the stone', (area = 0, stone = 0) => area * stone);

/** Nothing is dug for one that does not tell its depth. */
export function wellPortions(room: Room, where: Where): readonly Portion[] {
  const wells = room.given.well;
  return wells.flatMap((line, index) => {
    const { size, deep, form: shape } = line.value;
    const at = inPart(where, wells.length === 1 ? 'well' : `well ${index + 1}`);
    const area: Quantity<'area'> =
      shape === undefined ? rectangle(size.left, size.right) : measure('area', halfRound, size.left, size.right);
    const stone = line.deeper.stone?.value;
    const portions = [portion('window-well-count', at, counted('window wells', 1))];
    if (deep !== undefined)
      portions.push(
        portion('window-well-volume', at, measure('volume', dug, area, deep, ...(stone === undefined ? [] : [stone.depth]))),
      );
    if (stone !== undefined)
      portions.push(portion('window-well-stone-volume', at, measure('volume', stoneIn, area, stone.depth), { goods: stone.of }));
    return portions;
  });
}
