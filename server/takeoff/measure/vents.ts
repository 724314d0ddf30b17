// Vents of attics and crawl spaces: free area as a share of the floor, and the sizes of the ways in.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { levelShape } from '#model/facts/level';
import type { Roof } from '#model/model';
import type { Literal, Portion, Where } from '../lines.ts';
import { asSize, counted, portion } from './portion.ts';
import { rectangle } from './runs.ts';

const ofFloor = form('free area of vents', 'attic floor × share', (floor = 0, share = 0) => floor * share);
const high = form('free area near the ridge', 'free area × share near the ridge', (area = 0, share = 0) => area * share);
const low = form('free area at the eaves', 'free area − what is near the ridge', (area = 0, above = 0) => area - above);

/** `1/150` as it is written. */
export function shareOf(text: string): Quantity<'number'> | undefined {
  const [, over, under] = /^(\d+(?:\.\d+)?)\/(\d[\d,]*)$/.exec(text) ?? [];
  const [part, whole] = [Number(over), Number(under?.replaceAll(',', ''))];
  return part > 0 && whole > 0 ? constant(`share of the floor, ${text}`, part / whole, 'number') : undefined;
}

/** 22" x 30". */
export function twoSides({
  left,
  right,
}: {
  readonly left: Quantity<'length'>;
  readonly right: Quantity<'length'>;
}): readonly Literal[] {
  return [asSize(left), asSize(right)];
}

/**
 * Of an attic: vents at the eaves and near the ridge, where there is one, and the way in. `usual` is the share near the ridge
 * where the roof does not say.
 */
export function atticPortions({ given }: Roof, hasRidge: boolean, usual: Quantity<'number'>, where: Where): readonly Portion[] {
  const { vents, access } = given;
  const portions: Portion[] = [];
  const area = vents === undefined ? undefined : openArea(given);
  if (vents !== undefined && area !== undefined) {
    const share = vents.value.high ?? usual;
    const above = hasRidge && share.value > 0 ? measure('area', high, area, share) : undefined;
    const below = above === undefined ? area : measure('area', low, area, above);
    if (below.value > 0) portions.push(portion('low-vent-area', where, below));
    if (above !== undefined) portions.push(portion('high-vent-area', where, above));
  }
  if (access !== undefined)
    portions.push(portion('attic-access-count', where, counted('way in', 1), { sizes: twoSides(access.value) }));
  return portions;
}

function openArea({ vents, over, size }: Roof['given']): Quantity<'area'> | undefined {
  const open = vents!.value.open;
  if (typeof open !== 'string') return open;
  const share = shareOf(open);
  const floor =
    size === undefined
      ? over === undefined
        ? undefined
        : levelShape(over.value)?.area
      : rectangle(size.value.left, size.value.right);
  return share === undefined || floor === undefined ? undefined : measure('area', ofFloor, floor, share);
}
