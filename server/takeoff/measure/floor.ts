// The floor of a level: joists and rim, or panels; the deck on them; what fills the space between. What lies under it faces
// the room below and is counted there.
import { type Finding, finding } from '#kit/finding';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Outline } from '#kit/shapes/outline';
import { type Rectangle, rectanglesOf } from '#kit/shapes/region';
import { spansAcross } from '#kit/shapes/spans-across';
import { levelBody, levelShape } from '#model/facts/level';
import { type FloorShape, isRectangular } from '#model/floor-shape';
import type { Goods, Level } from '#model/model';
import { inSpace, thicknessOf } from '../goods.ts';
import type { Faces, Pieces, Portion, Where } from '../lines.ts';
import { spacingMissing } from '../problems.ts';
import { bayJoists } from './bay-floor.ts';
import { flatFaces } from './faces.ts';
import { isFace, isFrame, isPanel, type Layer } from './layers.ts';
import { laidOf, type Measured, portion } from './portion.ts';
import { piecesAlong, piecesRound } from './runs.ts';

const joistLength = form('joists', 'joists × length', (count = 0, length = 0) => count * length);
const lengths = form('joists', 'the joists of each part of the floor, added', (...values) =>
  values.reduce((sum, value) => sum + value, 0),
);
const counts = form('joists', 'the joists of each part of the floor, added', (...values) =>
  values.reduce((sum, value) => sum + value, 0),
);

const acrossEnds = form(
  'rim',
  'length round − 2 × length of a joist',
  (round = 0, joist = 0) => Math.max(0, round - 2 * joist),
  'common practice: the rim lies across the ends of the joists, and the first and last of them close the other two sides',
);

export function measureFloor(level: Level): Measured {
  const shape = levelShape(level);
  const floor = level.given.floor?.value;
  if (shape === undefined || floor === undefined) return { portions: [], findings: [] };
  const where = { element: level.slot, part: 'floor', level: level.slot };
  const findings: Finding[] = [];
  const portions = floor.given.layer.flatMap((layer) => layerPortions(layer, level, shape, where, findings));
  return { portions, findings };
}

function layerPortions(layer: Layer, level: Level, shape: FloorShape, where: Where, findings: Finding[]): readonly Portion[] {
  const goods = layer.value;
  if (isFace(goods)) return [];
  if (isPanel(layer)) return [portion('floor-panel-area', where, shape.area, { goods })];
  return isFrame(layer)
    ? joists(layer, level, shape, where, findings)
    : [laidOnFloor(goods, shape.area, where, () => flatFaces(shape, 'floor'))];
}

/** A layer that is neither framing nor panel nor the face of a room. */
export function laidOnFloor(goods: Goods, area: Quantity<'area'>, where: Where, faces?: Faces): Portion {
  switch (laidOf(goods)) {
    case 'batts':
    case 'loose':
      return portion('floor-insulation-area', where, area, { goods, depth: thicknessOf(goods) });
    case 'membrane':
    case 'rolls':
      return portion('wall-barrier-area', where, area, { goods });
    default:
      return portion('floor-deck-area', where, area, {
        goods,
        faces,
        otherwise: ['floor-insulation-area', 'wall-sheathing-area', 'wall-foam-area'],
      });
  }
}

function joists(layer: Layer, level: Level, shape: FloorShape, where: Where, findings: Finding[]): readonly Portion[] {
  const portions: Portion[] = [];
  const spacing = layer.deeper.at?.value;
  // Of a floor that is one rectangle: as long as the two outer joists, which close it along their sides.
  let ends: Quantity<'length'> | undefined;
  if (spacing === undefined) findings.push(finding(spacingMissing, layer.place, layer.value.name));
  else {
    const own = joistPieces(level, levelBody(level) ?? shape, spacing);
    if (isRectangular(levelBody(level) ?? shape)) ends = own[0]?.length;
    const pieces = [...own, ...bayJoists(level, spacing.value)];
    const each = pieces.map(({ count, length }) => measure('length', joistLength, count, length));
    const [only] = each;
    const all = each.length === 1 && only !== undefined ? only : measure('length', lengths, ...each);
    const count = pieces.length === 1 ? pieces[0]!.count : measure('number', counts, ...pieces.map((piece) => piece.count));
    portions.push(
      portion('floor-frame-length', where, all, { goods: layer.value, pieces }),
      portion('joist-count', where, count),
    );
  }
  const rim = ends === undefined ? shape.perimeter : measure('length', acrossEnds, shape.perimeter, ends);
  portions.push(portion('rim-length', where, rim, { sizes: layer.value.sizes }));
  const filled = layer.deeper['filled with'];
  if (filled !== undefined)
    portions.push(
      portion('floor-insulation-area', where, shape.area, {
        goods: inSpace(filled.value, spacing, thicknessOf(layer.value)),
        depth: thicknessOf(layer.value),
      }),
    );
  return portions;
}

/**
 * Joists run the short way unless the plan says which. A floor with corners inward is cut into rectangles: across the way
 * given, or else so that the longest joist is shortest, with joists the short way of each. Bays have joists of their own.
 */
function joistPieces(level: Level, shape: FloorShape, spacing: Quantity<'length'>): readonly Pieces[] {
  const given = level.given.joists?.value;
  if (!shape.square) return joistsAcross(shape, given, spacing);
  if (isRectangular(shape)) {
    const run = given ?? (shape.width.value <= shape.depth.value ? 'east-west' : 'north-south');
    const [length, along] = run === 'east-west' ? [shape.width, shape.depth] : [shape.depth, shape.width];
    return [{ count: piecesAlong(along, spacing), length }];
  }
  if (given === undefined) return shortWays(shape, spacing);
  const strips = rectanglesOf(given === 'north-south' ? shape.outline : turned(shape.outline));
  return strips.map(({ west, east, south, north }, index) => {
    const along = constant('part of the floor', east - west, 'length');
    // The last part has a joist at its far end; the others share it with the next.
    const count = index === strips.length - 1 ? piecesAlong(along, spacing) : piecesRound(along, spacing);
    return { count, length: constant('length of a joist', north - south, 'length') };
  });
}

/**
 * Under a floor with slanted sides: one at each space and one at the far end, each as long as the floor is there; along the
 * short way of the whole unless the plan says which.
 */
function joistsAcross(
  shape: FloorShape,
  given: 'north-south' | 'east-west' | undefined,
  spacing: Quantity<'length'>,
): readonly Pieces[] {
  const run = given ?? (shape.width.value <= shape.depth.value ? 'east-west' : 'north-south');
  return [...spansAcross(shape.outline, run, spacing.value)]
    .sort(([one], [other]) => other - one)
    .map(([length, count]) => ({
      count: constant('joists', count, 'number'),
      length: constant('length of a joist', length, 'length'),
    }));
}

/** Where parts meet, a wall or beam carries the ends of both: each part has its own end joists. */
function shortWays(shape: FloorShape, spacing: Quantity<'length'>): readonly Pieces[] {
  const short = ({ west, east, south, north }: Rectangle): number => Math.min(east - west, north - south);
  const longest = (parts: readonly Rectangle[]): number => Math.max(...parts.map(short));
  const [upright, level] = [rectanglesOf(shape.outline), rectanglesOf(turned(shape.outline))];
  const parts = longest(level) < longest(upright) ? level : upright;
  return parts.map((part) => {
    const along = Math.max(part.east - part.west, part.north - part.south);
    return {
      count: piecesAlong(constant('part of the floor', along, 'length'), spacing),
      length: constant('length of a joist', short(part), 'length'),
    };
  });
}

/** East and north changed about, so that strips across one way become strips across the other. */
function turned(outline: Outline): Outline {
  return outline.map(({ x, y }) => ({ x: y, y: x })).reverse();
}
