// Tile on each floor: columns and rows, whole tiles and cut ones, what is taken from the boxes; beside the percent rule.
import { roundUp } from '#kit/quantity';
import { tileBy } from '#takeoff/laid-out';
import type { Purchase } from '#takeoff/lines';
import { type LaidTiles, laidTiles, type TileBy } from '#takeoff/tiles';
import { left, right, type Table, withoutEmpty } from '../table.ts';
import { type View, write } from '../view.ts';
import { bookOf } from './book.ts';
import { laidNet, notLaidText } from './not-laid.ts';
import { faceText } from './words.ts';

interface Tiled {
  readonly by: TileBy;
  readonly floors: readonly LaidTiles[];
}

/** Undefined for what is no tile of a known size, or lies on no floor. */
export function tiledOf({ goods, lines }: Purchase, view: View): Tiled | undefined {
  const row = goods.of;
  if (row?.kind !== 'material' || row.given.laid?.value !== 'tiles') return undefined;
  const by = tileBy(goods, row, bookOf(row, view));
  const floors = by === undefined ? [] : laidTiles(lines, by);
  return by === undefined || floors.length === 0 ? undefined : { by, floors };
}

export function tileTable(purchases: readonly Purchase[], view: View): Table | undefined {
  const rows = purchases.flatMap((purchase): Table['rows'] => {
    const tiled = tiledOf(purchase, view);
    if (tiled === undefined) return [];
    return [
      `${purchase.label}: ${tileText(purchase, tiled)}`,
      ...notLaidText(purchase, tiled.floors, view),
      ...tiled.floors.map((floor) => floorRow(floor, view)),
    ];
  });
  if (rows.length === 0) return undefined;
  return withoutEmpty({
    heading: [
      'Tile on floors, in columns and rows with their joints, before what breaks. Walls of tile, and floors with slanted sides, go by area.',
    ],
    columns: [
      left('Where'),
      right('Size'),
      right('Columns'),
      right('Rows'),
      right('Whole'),
      right('Cut'),
      left('Cut to'),
      right('Tiles'),
    ],
    rows,
    totals: [],
    remarks: [],
  });
}

/** '54 tiles with their cuts; by area and waste 48'. */
export function tileText({ lines }: Purchase, { by, floors }: Tiled): string {
  const tiles = floors.reduce((sum, floor) => sum + floor.tiles.value, 0);
  const { needed } = laidNet(lines, floors);
  // The rule of books: area with waste over a tile with its joint.
  const each = (by.width.value + by.joint.value) * (by.length.value + by.joint.value);
  return `${tiles} tiles with their cuts; by area with waste ${roundUp(needed / each)}`;
}

function floorRow(
  { line, face, columns, rows, whole, cut, lastColumn, lastRow, tiles }: LaidTiles,
  view: View,
): readonly string[] {
  const length = (value: number): string => write({ value, dimension: 'length' }, view.style);
  return [
    `  ${faceText(line, face, view)}`,
    `${length(face.length.value)} x ${length(face.height.value)}`,
    `${columns}`,
    `${rows}`,
    `${whole}`,
    cut === 0 ? '' : `${cut}`,
    [lastColumn, lastRow]
      .filter((each) => each > 0)
      .map(length)
      .join(', '),
    `${tiles.value}`,
  ];
}
