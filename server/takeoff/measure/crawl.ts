// The crawl space: what covers its ground, from wall to wall.
import { levelOnGround } from '#model/facts/level';
import type { ElementOf, Foundation } from '#model/model';
import { type Measured, portion } from './portion.ts';
import { areaInside } from './runs.ts';

/** `walls` is the foundation that stands round it, if there is one. */
export function measureCrawl(crawl: ElementOf<'crawl'>, walls: Foundation | undefined): Measured {
  const { under, cover } = crawl.given;
  const shape = under === undefined ? undefined : levelOnGround(under.value);
  if (shape === undefined || under === undefined || cover === undefined) return { portions: [], findings: [] };
  const area = areaInside(shape, walls?.given.wall?.value.size.left);
  const where = { element: crawl.slot, level: under.value.slot };
  return { portions: [portion('crawl-cover-area', where, area, { goods: cover.value })], findings: [] };
}
