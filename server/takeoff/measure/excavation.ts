// What is dug for a foundation: the whole plan with sloped sides, or a trench along the walls; what is filled again round
// the walls, and what is left to haul away. All in bank volume, as the earth lies before it is dug.
import { type Finding, finding } from '#kit/finding';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { dugWhole } from '#model/facts/dug-whole';
import { isRectangular } from '#model/floor-shape';
import { sideSlopeOf } from '#model/side-slope';
import type { Portion } from '../lines.ts';
import { slopeMissing } from '../problems.ts';
import type { Ground, Item, Site } from './foundation.ts';
import { portion } from './portion.ts';
import { areaOutside, lengthOutside } from './runs.ts';

const belowStripped = form('depth dug', 'bottom below ground − topsoil stripped before', (bottom = 0, topsoil = 0) =>
  Math.max(0, bottom - topsoil),
);
const beyond = form(
  'dug beyond the wall',
  'footing beyond the wall + working space',
  (footing = 0, space = 0) => footing + space,
);
const averageSide = form(
  'average side',
  'outside of the wall + 2 × dug beyond it + slope × depth',
  (side = 0, out = 0, slope = 0, depth = 0) => side + 2 * out + slope * depth,
);
const averages = form(
  'earth dug',
  'average length × average width × depth (the prismoid beside it is the exact volume)',
  (length = 0, width = 0, depth = 0) => length * width * depth,
  'Dagostino & Peterson, Estimating in Building Construction, 7th ed., example 9-14: average dimensions',
);
const prismoid = form(
  'earth dug, as a prismoid',
  'average length × average width × depth + slope² × depth³ ÷ 3',
  (length = 0, width = 0, depth = 0, slope = 0) => length * width * depth + (slope * slope * depth * depth * depth) / 3,
);
const averageOut = form(
  'beyond the wall on average',
  'dug beyond the wall + slope × depth ÷ 2',
  (out = 0, slope = 0, depth = 0) => out + (slope * depth) / 2,
);
const areaDeep = form('earth dug', 'average area × depth', (area = 0, depth = 0) => area * depth);
const averageWidth = form(
  'average width of the trench',
  'width of the footing + 2 × working space + slope × depth',
  (footing = 0, space = 0, slope = 0, depth = 0) => footing + 2 * space + slope * depth,
);
const trench = form('earth dug', 'length × average width × depth', (length = 0, width = 0, depth = 0) => length * width * depth);

/** Nothing where no bottom is given. */
export function digPortions(
  ground: Ground,
  site: Site | undefined,
  dug: Item | undefined,
  findings: Finding[],
): readonly Portion[] {
  const { foundation, where, shape, length } = ground;
  const bottom = foundation.given.bottom?.value;
  if (bottom === undefined) return [];
  const topsoil = site?.given.topsoil?.value;
  const depth = topsoil === undefined ? bottom : measure('length', belowStripped, bottom, topsoil);
  const slope = sideSlope(ground, depth, site, dug, findings);
  const dig = foundation.given.dig?.value;
  const area = typeof dig === 'object' ? dig : undefined;
  const whole = dugWhole(foundation);
  const volume =
    area !== undefined
      ? measure('volume', areaUpright, area, depth)
      : whole && shape !== undefined
        ? wholePlan(ground, depth, slope)
        : length === undefined
          ? undefined
          : alongWalls(ground, length, depth, slope);
  if (volume === undefined) return [];
  const fill = measure('volume', fillForm, volume, ...standing(ground, depth, volume, whole, area));
  return [
    portion('excavation-volume', where, volume),
    portion('backfill-volume', where, fill),
    portion('haul-volume', where, measure('volume', haulForm, volume, fill)),
  ];
}

/** What stands in the hole afterwards: all of it where only its area is told and no house. */
function standing(
  ground: Ground,
  depth: Quantity<'length'>,
  volume: Quantity<'volume'>,
  whole: boolean,
  area: Quantity<'area'> | undefined,
): readonly Quantity[] {
  if (area === undefined) return whole ? underGround(ground, depth) : inTrench(ground, depth);
  return ground.shape === undefined ? [volume] : underGround(ground, depth);
}

const areaUpright = form('earth dug', 'area × depth', (area = 0, depth = 0) => area * depth);
const fillForm = form('fill round the walls', 'earth dug − what stands in the hole', (dug = 0, ...built) =>
  Math.max(
    0,
    built.reduce((rest, volume) => rest - volume, dug),
  ),
);
const haulForm = form('earth to haul', 'earth dug − fill round the walls', (dug = 0, fill = 0) => dug - fill);

const zero = constant('none', 0, 'length');
const upright = constant('upright sides', 0, 'slope');

function wholePlan(
  { foundation, shape, projection }: Ground,
  depth: Quantity<'length'>,
  slope: Quantity<'slope'>,
): Quantity<'volume'> {
  const plan = shape!;
  const out = measure('length', beyond, projection ?? zero, foundation.given['working-space']?.value ?? zero);
  if (!isRectangular(plan)) {
    const average = measure('length', averageOut, out, slope, depth);
    return measure('volume', areaDeep, areaOutside(plan, average), depth);
  }
  const length = measure('length', averageSide, plan.depth, out, slope, depth);
  const width = measure('length', averageSide, plan.width, out, slope, depth);
  return measure('volume', averages, length, width, depth, measure('volume', prismoid, length, width, depth, slope));
}

function alongWalls(
  { foundation, footingWidth, wallThickness }: Ground,
  length: Quantity<'length'>,
  depth: Quantity<'length'>,
  slope: Quantity<'slope'>,
): Quantity<'volume'> | undefined {
  const footing = footingWidth ?? wallThickness;
  if (footing === undefined) return undefined;
  const width = measure('length', averageWidth, footing, foundation.given['working-space']?.value ?? zero, slope, depth);
  return measure('volume', trench, length, width, depth);
}

/** The slope given; else, from the depth where sides must be made safe, what the soil may stand at. */
function sideSlope(
  { foundation }: Ground,
  depth: Quantity<'length'>,
  site: Site | undefined,
  dug: Item | undefined,
  findings: Finding[],
): Quantity<'slope'> {
  const given = foundation.given.slope?.value;
  if (given !== undefined) return sideSlopeOf(given);
  if (depth.value < (dug?.given.upright?.value.value ?? 0)) return upright;
  const soil = site?.given.soil?.value;
  const row = dug?.given.slope.find(({ value }) => value.soil === soil);
  if (row === undefined) findings.push(finding(slopeMissing, foundation.given.bottom!.place, foundation.label, depth.value));
  return row?.value.slope ?? upright;
}

const houseBelow = form('house below ground', 'area × depth', (area = 0, depth = 0) => area * depth);
const footingOutside = form(
  'footing outside the wall',
  'length round outside × footing beyond the wall × its depth',
  (length = 0, out = 0, depth = 0) => length * out * depth,
);
function underGround(ground: Ground, depth: Quantity<'length'>): readonly Quantity[] {
  const { shape, projection, footingDepth } = ground;
  const built: Quantity[] = [measure('volume', houseBelow, shape!.area, depth)];
  if (projection !== undefined && footingDepth !== undefined)
    built.push(measure('volume', footingOutside, lengthOutside(shape!, projection), projection, footingDepth));
  return [...built, ...stone(ground)];
}

const footingIn = form('footing', 'length × width × depth', (length = 0, width = 0, depth = 0) => length * width * depth);
const wallIn = form(
  'wall below ground',
  'length × thickness × (depth dug − depth of the footing)',
  (length = 0, thick = 0, dug = 0, footing = 0) => length * thick * Math.max(0, dug - footing),
);
function inTrench(ground: Ground, depth: Quantity<'length'>): readonly Quantity[] {
  const { length, footingWidth, footingDepth, wallThickness } = ground;
  const built: Quantity[] = [];
  if (footingWidth !== undefined && footingDepth !== undefined)
    built.push(measure('volume', footingIn, length!, footingWidth, footingDepth));
  if (wallThickness !== undefined) built.push(measure('volume', wallIn, length!, wallThickness, depth, footingDepth ?? zero));
  return [...built, ...stone(ground)];
}

const stoneAround = form(
  'stone round the drain',
  'length × depth × as wide as deep',
  (length = 0, depth = 0) => length * depth * depth,
);
function stone({ foundation, shape, length, projection }: Ground): readonly Quantity[] {
  const drain = foundation.given.drain?.value;
  const round = shape === undefined || foundation.given.long !== undefined ? length : lengthOutside(shape, projection);
  return drain === undefined || round === undefined ? [] : [measure('volume', stoneAround, round, drain.in.depth)];
}
