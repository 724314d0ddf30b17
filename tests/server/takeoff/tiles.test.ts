// Tile in rows and columns, by hand: a tile of 12 in and a joint of 1/8 in repeat every 12 1/8 in.
import { expect, test } from 'vitest';
import { INCH } from '#kit/dimension';
import { constant } from '#kit/quantity';
import type { Line } from '#takeoff/lines';
import { laidTiles } from '#takeoff/tiles';
import { planOf } from '#tests/support/plan';

const inches = (value: number) => constant('l', value * INCH, 'length');
const laid = (east: number, north: number, size: readonly [number, number], pieced = false) => {
  const face = { label: 'floor', length: inches(east), height: inches(north), openings: [] };
  const [only] = laidTiles([{ faces: () => [face] } as unknown as Line], {
    width: inches(size[0]),
    length: inches(size[1]),
    joint: inches(0.125),
    pieced,
  });
  const { columns, rows, whole, cut, lastColumn, lastRow, tiles } = only!;
  return { columns, rows, whole, cut, last: [lastColumn / INCH, lastRow / INCH], tiles: tiles.value };
};

// Nine whole tiles take 9 x 12.125 in; 120 in leave 10 7/8 in for a cut one.
test('10 by 10 ft: nine whole tiles each way and a cut one', () => {
  const expected = { columns: 10, rows: 10, whole: 81, cut: 19, last: [10.875, 10.875], tiles: 100 };
  expect(laid(120, 120, [12, 12])).toEqual(expected);
  // Nothing that is cut off is large enough for another.
  expect(laid(120, 120, [12, 12], true)).toEqual(expected);
});

// 100 in: eight whole, 3 in left, four of which come out of one tile: nine rows take three tiles in place of nine.
test('8 ft 4 in by 10 ft: narrow cuts come out of one tile where the rule allows', () => {
  expect(laid(100, 120, [12, 12])).toEqual({ columns: 9, rows: 10, whole: 72, cut: 18, last: [3, 10.875], tiles: 90 });
  expect(laid(100, 120, [12, 12], true).tiles).toBe(72 + 3 + 8 + 1);
});

test('whole tiles fill a floor that is a multiple of them, less the last joint', () =>
  expect(laid(10 * 12.125 - 0.125, 12, [12, 12])).toMatchObject({ whole: 10, cut: 0, tiles: 10 }));

// 12 x 24 in: across 50 in four 12s and a cut or two 24s and a cut; up 49 in two 24s and a cut or four 12s and a cut.
test('a long tile lies the way that takes fewer', () => {
  expect(laid(50, 49, [12, 24]).tiles).toBe(15);
  expect(laid(24.125 * 3, 12.125, [12, 24]).tiles).toBe(3);
});

test('boxes by the layout where the plan chooses it, else by area and percent', () => {
  const boxes = (counts: string) =>
    planOf(`plan p\n${counts}room bath\n  size 10' x 10'\n  floor porcelain-tile 12x12\n`, { library: 'built-in' }).purchase(
      'porcelain-tile 12x12',
    ).bought.value;
  // 100 tiles, 103 with what breaks: 103 sf in boxes of 15 sf; by area 110 sf.
  expect(boxes('  counts porcelain-tile by tile-laid\n')).toBe(7);
  expect(boxes('')).toBe(8);
});
