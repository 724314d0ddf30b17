// Foundations: strip footings and walls on their centre line, forms, bars, bolts, damp-proofing and drain; what is dug for
// them, slabs, piers and beams stand in files of their own.
import { type Finding, finding } from '#kit/finding';
import { form, measure, type Quantity } from '#kit/quantity';
import { levelOnGround } from '#model/facts/level';
import type { FloorShape } from '#model/floor-shape';
import type { ElementOf, Foundation } from '#model/model';
import type { Portion, Where } from '../lines.ts';
import { lengthMissing } from '../problems.ts';
import { boltCount } from './bolts.ts';
import { digPortions } from './excavation.ts';
import { framingGoods, wallThickness } from './layers.ts';
import { pierPortions } from './piers.ts';
import { asSize, counted, type Measured, portion } from './portion.ts';
import { closedLength, lengthOutside, piecesAlong, piecesRound, turnsOfShape, wallPieces } from './runs.ts';
import { slabPortions } from './slab.ts';

export type Site = ElementOf<'site'>;
export type Item = ElementOf<'item'>;

/** What the parts of a foundation share. */
export interface Ground {
  readonly foundation: Foundation;
  readonly where: Where;
  readonly shape: FloorShape | undefined;
  /** Centre line of the wall and footing, or the length given. */
  readonly length: Quantity<'length'> | undefined;
  readonly closed: boolean;
  readonly wallThickness: Quantity<'length'> | undefined;
  readonly wallHeight: Quantity<'length'> | undefined;
  readonly footingWidth: Quantity<'length'> | undefined;
  readonly footingDepth: Quantity<'length'> | undefined;
  /** How far the footing stands out beyond the wall. */
  readonly projection: Quantity<'length'> | undefined;
}

const half = form('footing beyond the wall', '(footing width − wall thickness) ÷ 2', (footing = 0, wall = 0) =>
  Math.max(0, (footing - wall) / 2),
);
const byDepth = form('concrete', 'length × width × depth', (length = 0, width = 0, depth = 0) => length * width * depth);
const wallVolume = form(
  'concrete',
  'length × thickness × height',
  (length = 0, thick = 0, height = 0) => length * thick * height,
);
const wallFace = form('face of the wall', 'length, corners once × height', (length = 0, height = 0) => length * height);
const bothSides = form('forms', '2 sides × length × height', (length = 0, height = 0) => 2 * length * height);
const alongBars = form('bars', 'bars × length', (count = 0, length = 0) => count * length);
const uprightBars = form('upright bars', 'bars × height of the wall', (count = 0, height = 0) => count * height);
const stoneVolume = form('stone', 'length × depth × as wide as deep', (length = 0, depth = 0) => length * depth * depth);

/**
 * `dug` is the library's row for what is dug: it says how steep a soil may stand. `longest` is the longest sill plate that is
 * sold, in base units, 0 where nobody knows.
 */
export function measureFoundation(
  foundation: Foundation,
  site: Site | undefined,
  dug: Item | undefined,
  longest: number,
): Measured {
  const ground = groundOf(foundation);
  const { given } = foundation;
  const findings: Finding[] = [];
  const needsLength = given.footing ?? given.wall ?? given.drain ?? given.bolts;
  if (needsLength !== undefined && ground.length === undefined)
    findings.push(finding(lengthMissing, needsLength.place, foundation.label));
  const portions = [
    ...digPortions(ground, site, dug, findings),
    ...footingPortions(ground),
    ...wallPortions(ground),
    ...besidePortions(ground, longest),
    ...slabPortions(ground, findings),
    ...pierPortions(ground),
  ];
  return { portions, findings };
}

function groundOf(foundation: Foundation): Ground {
  const { given } = foundation;
  const level = given.under?.value;
  const shape = level === undefined ? undefined : levelOnGround(level);
  const wall = given.wall?.value.size;
  const footing = given.footing?.value.size;
  const thickness = wall?.left ?? footing?.left;
  const length = given.long?.value ?? (shape === undefined ? undefined : closedLength(shape, thickness));
  return {
    foundation,
    where: level === undefined ? { element: foundation.slot } : { element: foundation.slot, level: level.slot },
    shape,
    length,
    closed: given.long === undefined && shape !== undefined,
    wallThickness: wall?.left,
    wallHeight: wall?.right,
    footingWidth: footing?.left,
    footingDepth: footing?.right,
    projection: wall === undefined || footing === undefined ? undefined : measure('length', half, footing.left, wall.left),
  };
}

function footingPortions({ foundation, where, length, footingWidth, footingDepth }: Ground): readonly Portion[] {
  if (length === undefined || footingWidth === undefined || footingDepth === undefined) return [];
  const { concrete, footing } = foundation.given;
  const portions = [
    portion('footing-volume', where, measure('volume', byDepth, length, footingWidth, footingDepth), { goods: concrete?.value }),
    portion('footing-form-area', where, measure('area', bothSides, length, footingDepth)),
  ];
  const bars = footing?.value.bars;
  if (bars !== undefined)
    portions.push(
      portion('footing-bar-length', where, measure('length', alongBars, counted('bars', bars.count), length), {
        sizes: [bars.bar],
      }),
    );
  return portions;
}

function wallPortions({ foundation, where, length, closed, wallThickness, wallHeight }: Ground): readonly Portion[] {
  if (length === undefined || wallThickness === undefined || wallHeight === undefined) return [];
  const { concrete, wall, blocks } = foundation.given;
  if (blocks !== undefined)
    return [portion('block-wall-area', where, measure('area', wallFace, length, wallHeight), { goods: blocks.value })];
  const portions = [
    portion('stem-wall-volume', where, measure('volume', wallVolume, length, wallThickness, wallHeight), {
      goods: concrete?.value,
    }),
    portion('stem-wall-form-area', where, measure('area', bothSides, length, wallHeight)),
  ];
  const bars = wall?.value.bars;
  if (bars !== undefined) {
    const count = closed ? piecesRound(length, bars.at) : piecesAlong(length, bars.at);
    portions.push(
      portion('stem-wall-bar-length', where, measure('length', uprightBars, count, wallHeight), { sizes: [bars.bar] }),
    );
  }
  return portions;
}

/** What goes on and beside the wall: bolts, sill, damp-proofing, drain. */
function besidePortions(ground: Ground, longest: number): readonly Portion[] {
  const { foundation, where, shape, length, projection } = ground;
  const { bolts, drain, slab, wall } = foundation.given;
  const portions: Portion[] = [];
  if (bolts !== undefined && length !== undefined) {
    const size = asSize(bolts.value.size);
    portions.push(
      portion('anchor-bolt-count', where, boltCount(foundation, ground.closed ? shape : undefined, length, longest), {
        sizes: [size],
      }),
    );
  }
  const level = foundation.given.under?.value;
  if (level !== undefined && shape !== undefined && (wall !== undefined || slab !== undefined)) {
    const walls = level.given.walls?.value;
    const depth = walls === undefined ? undefined : wallThickness(walls);
    const sizes = walls === undefined ? undefined : framingGoods(walls)?.sizes;
    portions.push(portion('sill-length', where, closedLength(shape, depth), { sizes, pieces: wallPieces(shape, depth) }));
  }
  const coated = coatedHeight(ground);
  if (coated !== undefined) {
    const around = shape === undefined || foundation.given.long !== undefined ? length : shape.perimeter;
    if (around !== undefined)
      portions.push(
        portion('damp-proof-area', where, dampProof(around, coated, shape === undefined ? undefined : projection, shape)),
      );
  }
  const round = shape === undefined || foundation.given.long !== undefined ? length : lengthOutside(shape, projection);
  if (drain !== undefined && round !== undefined) {
    const { pipe, in: bed } = drain.value;
    portions.push(
      portion('foundation-drain-length', where, round, { sizes: [asSize(pipe)] }),
      portion('foundation-drain-stone-volume', where, measure('volume', stoneVolume, round, bed.depth), { goods: bed.of }),
    );
  }
  return portions;
}

const belowGrade = form('height below ground', 'bottom below ground − depth of the footing', (bottom = 0, footing = 0) =>
  Math.max(0, bottom - footing),
);
const lesser = form('height coated', 'the lesser of height below ground and wall height', (below = 0, wall = 0) =>
  Math.min(below, wall),
);
function coatedHeight({ foundation, footingDepth, wallHeight }: Ground): Quantity<'length'> | undefined {
  const to = foundation.given['damp-proof']?.value;
  if (to === undefined) return undefined;
  if (to !== 'grade') return to;
  const bottom = foundation.given.bottom?.value;
  if (bottom === undefined) return wallHeight;
  const below = footingDepth === undefined ? bottom : measure('length', belowGrade, bottom, footingDepth);
  return wallHeight === undefined ? below : measure('length', lesser, below, wallHeight);
}

const coating = form('area coated', 'length × height', (length = 0, height = 0) => length * height);
const coatingOver = form(
  'area coated',
  'length × (height + footing beyond the wall) + 4 × footing beyond the wall²',
  (length = 0, height = 0, over = 0) => length * (height + over) + 4 * over * over,
  'Peterson, Construction Estimating, problem 9-1: the coat is carried over the footing, and a square more stands at each corner',
);
const coatingOverSlanted = form(
  'area coated',
  'length × (height + footing beyond the wall) + turns of its corners × footing beyond the wall²',
  (length = 0, height = 0, over = 0, turns = 0) => length * (height + over) + turns * over * over,
);
function dampProof(
  length: Quantity<'length'>,
  height: Quantity<'length'>,
  over: Quantity<'length'> | undefined,
  shape: FloorShape | undefined,
): Quantity<'area'> {
  if (over !== undefined && shape !== undefined && !shape.square)
    return measure('area', coatingOverSlanted, length, height, over, turnsOfShape(shape));
  return over === undefined ? measure('area', coating, length, height) : measure('area', coatingOver, length, height, over);
}
