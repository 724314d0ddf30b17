// The site: what is stripped round the house, what holds its soil, and the drive. Strips that are graded are in `graded.ts`.
import { form, measure } from '#kit/quantity';
import { levelOnGround } from '#model/facts/level';
import type { Level } from '#model/model';
import type { Portion, Where } from '../lines.ts';
import type { Item, Site } from './foundation.ts';
import { gradedPortions } from './graded.ts';
import { inPart, type Measured, portion } from './portion.ts';
import { areaOutside, rectangle } from './runs.ts';

const stripped = form('topsoil', 'area stripped × depth', (area = 0, depth = 0) => area * depth);

/** `house` is the level on the ground; without one only what the site itself gives is counted. `filled` tells how fill settles. */
export function measureSite(site: Site, house: Level | undefined, filled: Item | undefined): Measured {
  const { topsoil, clear, strip, fence, wattles, entrance } = site.given;
  const where = { element: site.slot };
  const portions: Portion[] = [];
  const shape = house === undefined ? undefined : levelOnGround(house);
  if (shape !== undefined && (topsoil !== undefined || clear !== undefined)) {
    const area = areaOutside(shape, clear?.value);
    portions.push(portion('strip-area', where, area));
    if (topsoil !== undefined) portions.push(portion('strip-volume', where, measure('volume', stripped, area, topsoil.value)));
  }
  for (const [index, { value }] of strip.entries()) {
    const area = rectangle(value.left, value.right);
    const at = inPart(where, `strip ${index + 1}`);
    portions.push(portion('strip-area', at, area));
    if (topsoil !== undefined) portions.push(portion('strip-volume', at, measure('volume', stripped, area, topsoil.value)));
  }
  if (fence !== undefined) portions.push(portion('silt-fence-length', where, fence.value));
  if (wattles !== undefined) portions.push(portion('wattle-length', where, wattles.value));
  if (entrance !== undefined)
    portions.push(portion('entrance-area', where, rectangle(entrance.value.left, entrance.value.right)));
  portions.push(...drivePortions(site, where), ...gradedPortions(site, where, filled));
  return { portions, findings: [] };
}

const course = form('course of the drive', 'area × depth', (area = 0, depth = 0) => area * depth);

/** The usual depth of its stone stands in the library. */
function drivePortions({ given: { drive } }: Site, where: Where): readonly Portion[] {
  if (drive === undefined) return [];
  const area = rectangle(drive.value.left, drive.value.right);
  const { base, paving } = drive.deeper;
  const portions = [portion('drive-area', where, area)];
  if (base === undefined) portions.push(portion('drive-usual-area', where, area));
  else {
    const { depth, of: goods } = base.value;
    portions.push(portion('drive-based-area', where, area));
    portions.push(portion('drive-base-volume', where, measure('volume', course, area, depth), { goods }));
  }
  if (paving !== undefined) {
    const { depth, of: goods } = paving.value;
    portions.push(
      portion('drive-paving-area', where, area),
      portion('drive-paving-volume', where, measure('volume', course, area, depth), { goods }),
    );
  }
  return portions;
}
