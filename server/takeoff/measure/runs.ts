// Lengths of walls that close round an outline, with every corner counted once: long walls full, the walls between them
// short by what the corners take; which is also the length on the centre line.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { lengthOfSide, turnAt, turnsSquare } from '#kit/shapes/outline';
import type { FloorShape } from '#model/floor-shape';
import type { Pieces } from '../lines.ts';

const onceRound = form(
  'length, corners once',
  'perimeter − 4 × thickness',
  (perimeter = 0, thickness = 0) => perimeter - 4 * thickness,
);
const onceRoundWalked = form(
  'length, corners once',
  'perimeter − (corners outward − corners inward) × thickness',
  (perimeter = 0, outward = 0, inward = 0, thickness = 0) => perimeter - (outward - inward) * thickness,
);

const onceRoundSlanted = form(
  'length, corners once',
  'perimeter − turns × thickness (each corner turns by the tangent of half its angle: a square one by 1)',
  (perimeter = 0, turns = 0, thickness = 0) => perimeter - turns * thickness,
);
/** As the working shows it. */
export const turnsOfShape = ({ turns }: FloorShape): Quantity<'number'> => constant('turns of its corners', turns, 'number');

/**
 * Length of a wall of a thickness whose outside face is the outline. It serves for the centre line too: for walls that
 * close, the centre line is as long as the long walls full and the short walls between.
 */
export function closedLength(shape: FloorShape, thickness: Quantity<'length'> | undefined): Quantity<'length'> {
  if (thickness === undefined) return shape.perimeter;
  if (!shape.square) return measure('length', onceRoundSlanted, shape.perimeter, turnsOfShape(shape), thickness);
  return shape.inside === 0
    ? measure('length', onceRound, shape.perimeter, thickness)
    : measure(
        'length',
        onceRoundWalked,
        shape.perimeter,
        constant('corners outward', shape.outside, 'number'),
        constant('corners inward', shape.inside, 'number'),
        thickness,
      );
}

const between = form(
  'wall between',
  'side − what the corners take',
  (side = 0, corners = 0, thickness = 0) => side - corners * thickness,
);
const corner = constant('corners', 1, 'number');

/**
 * Each wall of a closed outline by itself: those that run the way of the longest side full, the others between them. At a
 * corner that is not square both are cut to the angle, out of pieces as long as their outer face (common practice).
 */
export function wallPieces(shape: FloorShape, thickness: Quantity<'length'> | undefined): readonly Pieces[] {
  const { outline } = shape;
  const sides = outline.map((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    const way = from.y === to.y ? 'east-west' : from.x === to.x ? 'north-south' : 'slanted';
    return { way, length: lengthOfSide(from, to) };
  });
  const longest = (run: string) => Math.max(0, ...sides.flatMap(({ way, length }) => (way === run ? length : [])));
  const full = longest('east-west') >= longest('north-south') ? 'east-west' : 'north-south';
  return sides.map((side, index) => {
    const length = constant('side', side.length, 'length');
    const takes = side.way === full || side.way === 'slanted' ? 0 : cornerTakes(shape, index) + cornerTakes(shape, index + 1);
    const wall =
      takes === 0 || thickness === undefined
        ? length
        : measure('length', between, length, constant('corners', takes, 'number'), thickness);
    return { count: one, length: wall };
  });
}
const one = { ...corner, form: { ...corner.form, label: 'walls' } };

/** How many thicknesses the wall round a corner takes: one, where it is square and turns outward; inward it adds one. */
function cornerTakes({ outline }: FloorShape, index: number): number {
  const at = index % outline.length;
  if (!turnsSquare(outline, at)) return 0;
  return turnAt(outline, at) > 0 ? 1 : -1;
}

const outward = form('length round outside', 'perimeter + 8 × how far outside', (perimeter = 0, out = 0) => perimeter + 8 * out);
const outwardSlanted = form(
  'length round outside',
  'perimeter + 2 × turns × how far outside',
  (perimeter = 0, turns = 0, out = 0) => perimeter + 2 * turns * out,
);
/** Once round at a distance outside the outline; for right-angled outlines four corners more turn outward than inward. */
export function lengthOutside(shape: FloorShape, out: Quantity<'length'> | undefined): Quantity<'length'> {
  if (out !== undefined && !shape.square) return measure('length', outwardSlanted, shape.perimeter, turnsOfShape(shape), out);
  return out === undefined ? shape.perimeter : measure('length', outward, shape.perimeter, out);
}

const areaWithin = form(
  'area within the walls',
  'area − perimeter × thickness + 4 × thickness²',
  (area = 0, perimeter = 0, thickness = 0) => area - perimeter * thickness + 4 * thickness * thickness,
);
const areaWithinSlanted = form(
  'area within the walls',
  'area − perimeter × thickness + turns × thickness²',
  (area = 0, perimeter = 0, turns = 0, thickness = 0) => area - perimeter * thickness + turns * thickness * thickness,
);
export function areaInside(shape: FloorShape, thickness: Quantity<'length'> | undefined): Quantity<'area'> {
  if (thickness !== undefined && !shape.square)
    return measure('area', areaWithinSlanted, shape.area, shape.perimeter, turnsOfShape(shape), thickness);
  return thickness === undefined ? shape.area : measure('area', areaWithin, shape.area, shape.perimeter, thickness);
}

const areaAround = form(
  'area with what lies around',
  'area + perimeter × around + 4 × around²',
  (area = 0, perimeter = 0, around = 0) => area + perimeter * around + 4 * around * around,
);
const areaAroundSlanted = form(
  'area with what lies around',
  'area + perimeter × around + turns × around²',
  (area = 0, perimeter = 0, turns = 0, around = 0) => area + perimeter * around + turns * around * around,
);
export function areaOutside(shape: FloorShape, around: Quantity<'length'> | undefined): Quantity<'area'> {
  if (around !== undefined && !shape.square)
    return measure('area', areaAroundSlanted, shape.area, shape.perimeter, turnsOfShape(shape), around);
  return around === undefined ? shape.area : measure('area', areaAround, shape.area, shape.perimeter, around);
}

const spacesAndOne = form('pieces', 'length ÷ spacing rounded up, and one', (length = 0, spacing = 1) =>
  spacing > 0 ? spaces(length, spacing) + 1 : 0,
);
const spacesOnly = form('pieces', 'length ÷ spacing rounded up', (length = 0, spacing = 1) =>
  spacing > 0 ? spaces(length, spacing) : 0,
);
const spacesAndEnds = form('pieces', 'length ÷ spacing rounded up, and those at the end', (length = 0, spacing = 1, ends = 0) =>
  spacing > 0 ? spaces(length, spacing) + ends : 0,
);
/** Pieces along a run with one at each end. */
export function piecesAlong(
  length: Quantity<'length'>,
  spacing: Quantity<'length'>,
  ends?: Quantity<'number'>,
): Quantity<'number'> {
  return ends === undefined
    ? measure('number', spacesAndOne, length, spacing)
    : measure('number', spacesAndEnds, length, spacing, ends);
}
/** Pieces along a run that closes, so that the last space has no end of its own. */
export function piecesRound(length: Quantity<'length'>, spacing: Quantity<'length'>): Quantity<'number'> {
  return measure('number', spacesOnly, length, spacing);
}

function spaces(length: number, spacing: number): number {
  const exact = length / spacing;
  return Math.max(0, Math.ceil(exact - exact * 1e-9));
}

const lengthWidthArea = form('area', 'length × width', (length = 0, width = 0) => length * width);
export function rectangle(length: Quantity<'length'>, width: Quantity<'length'>): Quantity<'area'> {
  return measure('area', lengthWidthArea, length, width);
}
