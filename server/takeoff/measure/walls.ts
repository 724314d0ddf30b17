// The outside walls of a level: surface gross and net, studs, plates, headers, and every layer that does not face a room.
import { type Finding, finding } from '#kit/finding';
import { form, measure, type Quantity } from '#kit/quantity';
import { type Point, turnsSquare } from '#kit/shapes/outline';
import { levelShape } from '#model/facts/level';
import type { FloorShape } from '#model/floor-shape';
import type { ElementOf, Level } from '#model/model';
import type { FramingCounts } from '../conventions.ts';
import { actualSize, sizeText } from '../goods.ts';
import type { Faces, Literal, Pieces, Portion, Where } from '../lines.ts';
import { heightMissing, spacingMissing } from '../problems.ts';
import { sideFaces } from './faces.ts';
import { isPanel, type Layer, layersOf, wallThickness } from './layers.ts';
import { type Held, netOf } from './openings.ts';
import { outsideTrim } from './outside-trim.ts';
import type { WallOpening } from './panel-layout.ts';
import { panelPortions } from './panels.ts';
import { counted, type Measured, portion } from './portion.ts';
import { rimHeight } from './rim.ts';
import { closedLength, piecesAlong, wallPieces } from './runs.ts';
import { paintable, type Stretch, wallLayers } from './wall-layers.ts';

const surface = form('wall surface', 'length round × height', (length = 0, height = 0) => length * height);
const eachWall = form('studs at the spacing', 'those of each wall from end to end, added', (...counts) =>
  counts.reduce((sum, count) => sum + count, 0),
);
export const studCount = form(
  'studs',
  'at the spacing + corners × extra + crossings × extra + openings × extra + doors × extra',
  (spaced = 0, corners = 0, corner = 0, crossings = 0, crossing = 0, openings = 0, opening = 0, doors = 0, door = 0) =>
    spaced + corners * corner + crossings * crossing + openings * opening + doors * door,
);
const withSlanted = form(
  'studs along the walls',
  'at the spacing + corners not square × extra',
  (spaced = 0, corners = 0, extra = 0) => spaced + corners * extra,
);
export const plateLength = form('plates', 'plates × length', (plates = 0, length = 0) => plates * length);
export const studHeight = form('length of a stud', 'height − plates × their thickness', (height = 0, plates = 0, thickness = 0) =>
  Math.max(0, height - plates * thickness),
);
const headerLength = form(
  'header',
  'count × pieces side by side × (opening + bearing)',
  (count = 0, plies = 0, width = 0, bearing = 0) => count * plies * (width + bearing),
);
const headerPieces = form('pieces of headers', 'count × pieces side by side', (count = 0, plies = 0) => count * plies);
const headerPiece = form('length of a piece', 'opening + bearing', (width = 0, bearing = 0) => width + bearing);
const headers = form('headers', 'the headers, added', (...lengths) => lengths.reduce((sum, length) => sum + length, 0));
const withRim = form('height outside', 'height + height of the rim', (height = 0, rim = 0) => height + rim);
const openingCount = form('openings', 'the openings, added', (...counts) => counts.reduce((sum, count) => sum + count, 0));

/**
 * `held` are the openings in outside walls; `crossings` how many inside walls run into them, where rooms are placed; `sill`
 * whether the level stands on a foundation wall or slab; `openings` where they stand, for walls of panels; `spots` the places of `held` on the level, for sheets.
 */
export function measureWalls(
  level: Level,
  held: readonly Held[],
  crossings: number,
  panels: ElementOf<'panels'> | undefined,
  sill: boolean,
  counts: FramingCounts,
  openings: readonly WallOpening[] = [],
  spots: readonly (Point | undefined)[] = [],
): Measured {
  const shape = levelShape(level);
  const assembly = level.given.walls?.value;
  if (shape === undefined) return { portions: [], findings: [] };
  const height = level.given.height?.value;
  if (height === undefined)
    return { portions: [], findings: assembly === undefined ? [] : [finding(heightMissing, level.place, level.label)] };
  const where = { element: level.slot, part: 'walls', level: level.slot };
  const area = netOf(measure('area', surface, shape.perimeter, height), held);
  const findings: Finding[] = [];
  const portions = [portion('wall-gross-area', where, area.gross)];
  if (assembly === undefined) return { portions, findings };
  const { main } = layersOf(assembly);
  const length = closedLength(shape, wallThickness(assembly));
  const rim = rimHeight(level, sill, counts);
  const faces: Faces = () => sideFaces(shape, height, held, spots);
  const upright = { where, area, length, height: studLength(height, main, counts), faces };
  const stretch: Stretch = rim === undefined ? upright : { ...upright, outside: measure('length', withRim, height, rim) };
  if (isPanel(main)) portions.push(...panelPortions(main!, shape, height, area, panels, openings, where));
  else if (main !== undefined)
    portions.push(...framing(main, level, shape, length, height, held, crossings, counts, where, findings));
  portions.push(...wallLayers(assembly, stretch, findings), ...paintable(assembly, stretch));
  portions.push(...outsideTrim(assembly, shape, { ...stretch, height }, held));
  return { portions, findings };
}

function framing(
  main: Layer,
  level: Level,
  shape: FloorShape,
  length: Quantity<'length'>,
  height: Quantity<'length'>,
  held: readonly Held[],
  crossings: number,
  counts: FramingCounts,
  where: Where,
  findings: Finding[],
): readonly Portion[] {
  const portions: Portion[] = [];
  const spacing = main.deeper.at?.value;
  if (spacing === undefined) findings.push(finding(spacingMissing, main.place, main.value.name));
  else {
    const { square, slanted } = cornersOf(shape);
    const corners = counted('corners', square);
    const met = counted('inside walls that meet them', crossings);
    const spaced = counts.wallByWall
      ? measure(
          'number',
          eachWall,
          ...wallPieces(shape, undefined).map((wall) => piecesAlong(wall.length, spacing, counts.endStuds)),
        )
      : piecesAlong(length, spacing, counts.endStuds);
    const along =
      slanted === 0
        ? spaced
        : measure('number', withSlanted, spaced, counted('corners not square', slanted), counts.slantedCornerStuds);
    const count = studs(along, corners, met, held, counts);
    portions.push(
      portion('wall-stud-count', where, count, {
        goods: main.value,
        pieces: [{ count, length: studLength(height, main, counts) }],
      }),
    );
  }
  portions.push(
    portion('wall-plate-length', where, measure('length', plateLength, counts.plates, length), { sizes: main.value.sizes }),
  );
  return [...portions, ...headerPortions(level, held, counts, where)];
}

interface Headers {
  readonly sizes: readonly Literal[] | undefined;
  readonly lengths: Quantity<'length'>[];
  readonly pieces: Pieces[];
}

/** Headers by their size: that of the opening, else of the level; what says none is bought as header lumber of no size told. */
function headerPortions(level: Level, held: readonly Held[], counts: FramingCounts, where: Where): readonly Portion[] {
  const bySize = new Map<string, Headers>();
  for (const { type, count, width } of held) {
    const clear = type?.given.rough?.value.left ?? width;
    if (clear === undefined) continue;
    const told = (type?.given.header ?? level.given.headers)?.value;
    const plies = told?.plies === undefined ? counts.headerPlies : counted('pieces side by side', told.plies);
    const key = told === undefined ? '' : sizeText(told.size);
    let list = bySize.get(key);
    if (list === undefined)
      bySize.set(key, (list = { sizes: told === undefined ? undefined : [told.size], lengths: [], pieces: [] }));
    list.lengths.push(measure('length', headerLength, count, plies, clear, counts.headerBearing));
    list.pieces.push({
      count: measure('number', headerPieces, count, plies),
      length: measure('length', headerPiece, clear, counts.headerBearing),
    });
  }
  return [...bySize.values()].map(({ sizes, lengths, pieces }) =>
    portion('wall-header-length', where, measure('length', headers, ...lengths), { sizes, pieces }),
  );
}

function cornersOf({ square, outside, inside, outline }: FloorShape): { readonly square: number; readonly slanted: number } {
  if (square) return { square: outside + inside, slanted: 0 };
  const slanted = outline.filter((_, index) => !turnsSquare(outline, index)).length;
  return { square: outline.length - slanted, slanted };
}

/** Studs of a run with what its corners, crossings and openings add. */
export function studs(
  spaced: Quantity<'number'>,
  corners: Quantity<'number'>,
  crossings: Quantity<'number'>,
  held: readonly Held[],
  { cornerStuds, crossingStuds, openingStuds, doorStuds }: FramingCounts,
): Quantity<'number'> {
  const all = [spaced, corners, cornerStuds, crossings, crossingStuds];
  if (doorStuds.value === openingStuds.value) return measure('number', studCount, ...all, openingsOf(held), openingStuds);
  const [doors, others] = [held.filter(isDoor), held.filter((each) => !isDoor(each))];
  return measure('number', studCount, ...all, openingsOf(others), openingStuds, openingsOf(doors), doorStuds);
}

const isDoor = ({ type }: Held): boolean => type?.kind === 'door';
const openingsOf = (held: readonly Held[]): Quantity<'number'> =>
  measure('number', openingCount, ...held.map(({ count }) => count));

/** A stud stands between the plates, which are as thick as it is. */
export function studLength(
  height: Quantity<'length'>,
  main: Layer | undefined,
  { plates, plateThickness }: FramingCounts,
): Quantity<'length'> {
  if (main === undefined || isPanel(main)) return height;
  return measure('length', studHeight, height, plates, actualSize(main.value)?.left ?? plateThickness);
}
