// Figures that only hazards ask for: how steep a hole stands and how steep its soil may, how far it is down from a floor,
// an eave, a wall's top. Worked out of what is given; undefined is what nobody gave.
import { NONE } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { degreesOf } from '#kit/units/tangent';
import type { Element, ElementOf, Foundation, Level, Roof, Trench } from '#model/model';
import type { Model } from '#model/resolve';
import { sideSlopeOf } from '#model/side-slope';
import { dryWellDepth } from '#takeoff/measure/dry-well';
import { roofFigures } from '#takeoff/measure/roof-figures';
import { quantityOf } from './conditions.ts';
import { keptFor, keptWhile } from './kept.ts';

type Facts = { readonly [fact: string]: Quantity | undefined };

/** A fact of a thing, a value that it gives, or a figure of this file. */
export function safetyFact(thing: Element, fact: string, model: Model): Quantity | undefined {
  return ownFacts(thing, model)[fact] ?? quantityOf(thing, fact);
}

function ownFacts(thing: Element, model: Model): Facts {
  return HAVE_FACTS.has(thing.kind) ? factsOfThing(thing, model) : NO_FACTS;
}

const HAVE_FACTS: ReadonlySet<string> = new Set(['trench', 'foundation', 'dry-well', 'level', 'roof']);
const NO_FACTS: Facts = {};

const factsOfThing = keptWhile(
  (thing: Element, model: Model) => [
    thing,
    model.list('level'),
    model.list('foundation'),
    model.list('roof'),
    model.list('site'),
    model.rows('item'),
    model.rows('work'),
  ],
  (thing, model): Facts => {
    switch (thing.kind) {
      case 'trench':
      case 'foundation':
        return sides(thing, model);
      case 'dry-well':
        return { depth: dryWellDepth(thing), 'soil-slope': soilSlope('dry-well-volume', model) };
      case 'level':
        return levelHeights(thing, model);
      case 'roof':
        return roofHeights(thing, model);
      default:
        return NO_FACTS;
    }
  },
);

// ---- holes ----

const lacking = form('slope that is lacking', 'what the soil asks for − side slope', (soil = 0, side = 0) =>
  Math.max(0, soil - side),
);

/** Slopes are level to upright, so more is flatter. */
function sides(thing: Trench | Foundation, model: Model): Facts {
  const given = thing.given.slope?.value;
  const soil = soilSlope(thing.kind === 'trench' ? 'trench-volume' : 'excavation-volume', model);
  if (given === undefined) return { 'soil-slope': soil };
  const side = sideSlopeOf(given);
  return {
    'side-slope': side,
    'soil-slope': soil,
    'slope-lacking': soil === undefined ? undefined : allowedAngle(given, soil) ? none : measure('slope', lacking, soil, side),
  };
}

const none = constant('nothing lacks', 0, 'slope');

/** The published table has whole degrees beside its slopes, 34 for 1.5 to 1: an angle given is held against those. */
function allowedAngle(given: Quantity<'slope'>, soil: Quantity<'slope'>): boolean {
  return given.unit === 'deg' && degreesOf(given.value) - 1e-9 <= Math.round(degreesOf(1 / soil.value));
}

/** How flat the site's soil must stand: of soil that nobody has classified, the flattest of the library's row. */
function soilSlope(measured: string, model: Model): Quantity<'slope'> | undefined {
  const rows = slopesBy(model.rows('work')).get(measured) ?? [];
  const names = new Set(rows);
  const slopes = model.rows('item').flatMap(({ name, given }) => (names.has(name) ? given.slope : []));
  const soil = model.list('site')[0]?.given.soil?.value.toLowerCase();
  const own = slopes.find(({ value }) => value.soil.toLowerCase() === soil);
  if (own !== undefined) return own.value.slope;
  return slopes.reduce<Quantity<'slope'> | undefined>(
    (flattest, { value: { slope } }) => (flattest === undefined || slope.value > flattest.value ? slope : flattest),
    undefined,
  );
}

/** Goods that the works dig or fill, by measure. */
const slopesBy = keptFor((works: readonly ElementOf<'work'>[]): ReadonlyMap<string, readonly string[]> => {
  const found = new Map<string, string[]>();
  for (const { given } of works)
    for (const { value } of given.installs)
      for (const { value: by } of value.by) {
        const list = found.get(by) ?? [];
        list.push(...value.goods.map((each) => each.value.name));
        found.set(by, list);
      }
  return found;
});

// ---- heights ----

const aboveGround = form('floor above the ground', 'wall + footing − bottom', (wall = 0, footing = 0, bottom = 0) =>
  Math.max(0, wall + footing - bottom),
);
const onTop = form('on the storey below', 'its floor + its height', (floor = 0, height = 0) => floor + height);
const openBelow = form(
  'down from the edge',
  'floor above the ground + hole beside the wall',
  (floor = 0, hole = 0) => floor + hole,
);
const wallTop = form('top of the walls above the ground', 'floor + height', (floor = 0, height = 0) => floor + height);
const withGable = form('top of the gable above the ground', 'top of the walls + rise', (top = 0, rise = 0) => top + rise);
const ground = constant('floor at the ground', 0, 'length');

/** Joists and beams are left out, so the true height is a little more. */
function levelHeights(level: Level, model: Model): Facts {
  const floor = floorHeight(level, model);
  const height = level.given.height?.value;
  const base = foundationUnder(level, model);
  const hole = base === undefined ? undefined : quantityOf(base, 'fill');
  return {
    // The hole round a foundation stands open while the floor goes on.
    drop: hole === undefined ? floor : measure('length', openBelow, floor, hole),
    'floor-height': floor,
    'wall-top': height === undefined ? undefined : measure('length', wallTop, floor, height),
  };
}

/** A level without a foundation of its own stands on the one before it. */
function floorHeight(level: Level, model: Model): Quantity<'length'> {
  const levels = model.list('level');
  let at = levels.indexOf(level);
  const above: Level[] = [];
  while (at > 0 && foundationUnder(levels[at]!, model) === undefined) above.push(levels[--at]!);
  const lowest = levels[at] ?? level;
  const base = foundationUnder(lowest, model);
  let floor = base === undefined ? ground : baseHeight(base);
  for (const each of above.reverse())
    if (each.given.height !== undefined) floor = measure('length', onTop, floor, each.given.height.value);
  return floor;
}

function baseHeight({ given: { wall, footing, bottom } }: Foundation): Quantity<'length'> {
  if (wall === undefined || bottom === undefined) return ground;
  return measure('length', aboveGround, wall.value.size.right, footing?.value.size.right ?? ground, bottom.value);
}

const underLevels = keptFor((foundations: readonly Foundation[]): ReadonlyMap<Slot, readonly Foundation[]> => {
  const found = new Map<Slot, Foundation[]>();
  for (const each of foundations) if (each.given.under !== undefined) addTo(found, each.given.under.value.slot, each);
  return found;
});

/** The one with a wall, where several carry the level. */
function foundationUnder(level: Level, model: Model): Foundation | undefined {
  const all = underLevels(model.list('foundation')).get(level.slot) ?? NONE;
  return all.find(({ given }) => given.wall !== undefined) ?? all[0];
}

/** A gable's wall goes up to its ridge, and a shed's to its high edge. */
function roofHeights(roof: Roof, model: Model): Facts {
  const level = roof.given.over?.value;
  const eaves = level === undefined ? undefined : levelHeights(level, model)['wall-top'];
  const figures = roofFigures(roof);
  const isPointed = figures !== undefined && figures.form !== 'hip' && figures.form !== 'flat';
  return {
    'eaves-height': eaves,
    'wall-top': eaves === undefined || !isPointed ? eaves : measure('length', withGable, eaves, figures.rise),
  };
}
