// The crawl space: what covers its ground from wall to wall, vents through its walls, the way in.
import { form, measure, type Quantity } from '#kit/quantity';
import { levelShape } from '#model/facts/level';
import type { ElementOf, Foundation } from '#model/model';
import type { Portion } from '../lines.ts';
import { counted, type Measured, portion } from './portion.ts';
import { areaInside } from './runs.ts';
import { shareOf, twoSides } from './vents.ts';

const ventArea = form('free area of vents', 'area × share', (area = 0, share = 0) => area * share);

/** `walls` is the foundation that stands round it, if there is one. */
export function measureCrawl(crawl: ElementOf<'crawl'>, walls: Foundation | undefined): Measured {
  const { under, cover, vents, access } = crawl.given;
  const where = under === undefined ? { element: crawl.slot } : { element: crawl.slot, level: under.value.slot };
  const shape = under === undefined ? undefined : levelShape(under.value);
  const portions: Portion[] = [];
  if (shape !== undefined) {
    const area: Quantity<'area'> = areaInside(shape, walls?.given.wall?.value.size.left);
    if (cover !== undefined) portions.push(portion('crawl-cover-area', where, area, { goods: cover.value }));
    const share = vents === undefined ? undefined : shareOf(vents.value);
    if (share !== undefined) portions.push(portion('crawl-vent-area', where, measure('area', ventArea, shape.area, share)));
  }
  // A hatch in the floor above is made on site of the floor itself.
  if (access !== undefined && access.deeper['through floor'] === undefined)
    portions.push(portion('crawl-access-count', where, counted('way in', 1), { sizes: twoSides(access.value) }));
  return { portions, findings: [] };
}
