// Tile laid on floors in rows and columns with joints between them: whole tiles, and those cut at the walls. A cut tile is one
// tile, unless what is cut off serves for the next. Cuts are balanced at both sides where the plan for the room is drawn; that
// takes as many tiles.
import { INCH, MILLIMETRE } from '#kit/dimension';
import { constant, form, measure, type Quantity, roundUp } from '#kit/quantity';
import type { Face, Line, NamedGoods } from './lines.ts';

type Length = Quantity<'length'>;

export interface TileBy {
  readonly width: Length;
  readonly length: Length;
  readonly joint: Length;
  /** What is cut off a tile serves where it is large enough. */
  readonly pieced: boolean;
}

export interface LaidTiles {
  readonly line: Line;
  readonly face: Face;
  readonly columns: number;
  readonly rows: number;
  readonly whole: number;
  readonly cut: number;
  /** Width of the cut column and height of the cut row in base units; 0 where whole tiles fill the floor. */
  readonly lastColumn: number;
  readonly lastRow: number;
  /** What is taken from boxes for it. */
  readonly tiles: Quantity<'number'>;
}

const eachCut = form('tiles', 'columns × rows', (columns = 0, rows = 0) => columns * rows);
const fromOne = form(
  'tiles',
  'whole + cuts at one side ÷ how many one tile gives, rounded up, for each side + the corner',
  (whole = 0, columnCuts = 0, perColumn = 1, rowCuts = 0, perRow = 1, corner = 0) =>
    whole + roundUp(columnCuts / perColumn) + roundUp(rowCuts / perRow) + corner,
);

export function laidTiles(lines: readonly Line[], by: TileBy): readonly LaidTiles[] {
  return lines.flatMap((line) => (line.faces?.() ?? []).flatMap((face) => laid(line, face, by) ?? []));
}

/** Columns to the east, rows to the north; the way round that takes fewer tiles, the first of equals as the size is written. */
function laid(line: Line, face: Face, by: TileBy): LaidTiles | undefined {
  // Cut slanting, it goes by area.
  if (face.shapes !== undefined) return undefined;
  const one = oneWay(line, face, by);
  const other =
    by.width.value === by.length.value ? undefined : oneWay(line, face, { ...by, width: by.length, length: by.width });
  return one === undefined || (other !== undefined && other.tiles.value < one.tiles.value) ? other : one;
}

function oneWay(line: Line, face: Face, { width, length, joint, pieced }: TileBy): LaidTiles | undefined {
  const across = inLine(face.length.value, width.value, joint.value);
  const up = inLine(face.height.value, length.value, joint.value);
  if (across === undefined || up === undefined) return undefined;
  const columns = across.whole + (across.last > 0 ? 1 : 0);
  const rows = up.whole + (up.last > 0 ? 1 : 0);
  const whole = across.whole * up.whole;
  const cut = columns * rows - whole;
  const counted = (label: string, value: number): Quantity<'number'> => constant(label, value, 'number');
  const tiles = pieced
    ? measure(
        'number',
        fromOne,
        counted('whole', whole),
        counted('cut in the last column', across.last > 0 ? up.whole : 0),
        counted('of one tile', perTile(width.value, across.last)),
        counted('cut in the last row', up.last > 0 ? across.whole : 0),
        counted('of one tile', perTile(length.value, up.last)),
        counted('corner', across.last > 0 && up.last > 0 ? 1 : 0),
      )
    : measure('number', eachCut, counted('columns', columns), counted('rows', rows));
  return { line, face, columns, rows, whole, cut, lastColumn: across.last, lastRow: up.last, tiles };
}

/** Whole tiles in a line with a joint after each, and what is left for a cut one. */
function inLine(extent: number, tile: number, joint: number): { readonly whole: number; readonly last: number } | undefined {
  if (!(tile > 0) || !(extent > 0)) return undefined;
  const pitch = tile + joint;
  const whole = Math.floor((extent + joint) / pitch + EXACT);
  const last = extent - whole * pitch;
  return { whole, last: last > SLIVER ? last : 0 };
}

function perTile(tile: number, piece: number): number {
  return piece > 0 ? Math.max(1, Math.floor(tile / piece + EXACT)) : 1;
}

/** Nobody cuts a tile this thin: a joint at the wall takes it up. */
const SLIVER = 3 * MILLIMETRE;
const EXACT = 1e-9;

/** The sides of a tile by its size: 12x12 in inches, 300x300 in millimetres. */
export function tileSides({ sizes }: NamedGoods): { readonly width: Length; readonly length: Length } | undefined {
  const size = sizes.find((each) => each.kind === 'nominal' && each.across.length === 2);
  if (size?.kind !== 'nominal') return undefined;
  const [one = 0, other = 0] = size.across;
  const unit = Math.max(one, other) > LARGEST_INCHES ? MILLIMETRE : INCH;
  return {
    width: constant('width of a tile', Math.min(one, other) * unit, 'length'),
    length: constant('length of a tile', Math.max(one, other) * unit, 'length'),
  };
}

/** A size that is larger is in millimetres: no tile is 5 ft long, none 60 mm. */
const LARGEST_INCHES = 60;
