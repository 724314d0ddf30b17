// The site: what is stripped round the house, silt fence, drive.
import { form, measure } from '#kit/quantity';
import { levelOnGround } from '#model/facts/level';
import type { Level } from '#model/model';
import type { Portion } from '../lines.ts';
import type { Site } from './foundation.ts';
import { inPart, type Measured, portion } from './portion.ts';
import { areaOutside, rectangle } from './runs.ts';

const stripped = form('topsoil', 'area stripped × depth', (area = 0, depth = 0) => area * depth);

/** `house` is the level on the ground; without one only what the site itself gives is counted. */
export function measureSite(site: Site, house: Level | undefined): Measured {
  const { topsoil, clear, strip, fence, drive } = site.given;
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
  if (drive !== undefined) portions.push(portion('drive-area', where, rectangle(drive.value.left, drive.value.right)));
  return { portions, findings: [] };
}
