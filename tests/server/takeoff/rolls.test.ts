// Lengths off a roll. Published: constructionwork.com, Carpet and vinyl (a room of 15 by 16 ft takes 12 by 20 ft, the fill of
// 3 ft in four pieces); ehow.com, How to estimate carpet installation (14 by 16 ft: two lengths of 16 ft, 32 ft, one way, two
// of 14 ft, 28 ft, the other).
import { expect, test } from 'vitest';
import { FOOT } from '#kit/dimension';
import { constant } from '#kit/quantity';
import { fromBase } from '#kit/units';
import type { Line } from '#takeoff/lines';
import { laidRolls } from '#takeoff/rolls';
import { planOf } from '#tests/support/plan';

const feet = (value: number) => constant('l', value * FOOT, 'length');
const laid = (east: number, north: number, more: { trim?: number; pieced?: boolean; width?: number } = {}) => {
  const face = { label: 'floor', length: feet(east), height: feet(north), openings: [] };
  const [only] = laidRolls([{ faces: () => [face] } as unknown as Line], {
    width: feet(more.width ?? 12),
    trim: feet(more.trim ?? 0),
    pieced: more.pieced ?? false,
  });
  return {
    run: only!.run,
    widths: only!.widths,
    strip: only!.strip / FOOT,
    pieces: only!.pieces,
    length: only!.length.value / FOOT,
    seams: only!.seams / FOOT,
  };
};

// The book lays the first length 16 ft long, and its fill of 3 ft in four pieces. Across, 15 ft and a fill of 4 ft in three
// pieces come to 20 ft as well, with 15 + 2 x 4 ft of seams in place of 16 + 3 x 3.
test('15 by 16 ft, the fill pieced: 20 ft off the roll', () => {
  expect(laid(16, 15, { pieced: true })).toEqual({ run: 'north-south', widths: 1, strip: 4, pieces: 3, length: 20, seams: 23 });
  expect(laid(16, 15)).toMatchObject({ length: 30 });
});

test('14 by 16 ft in whole lengths: 28 ft, not 32', () =>
  expect(laid(14, 16)).toEqual({ run: 'east-west', widths: 1, strip: 4, pieces: 1, length: 28, seams: 14 }));

test('a room as wide as the roll has no seam and no waste; a narrow one takes one length', () => {
  expect(laid(12, 20)).toMatchObject({ run: 'north-south', widths: 1, strip: 0, length: 20, seams: 0 });
  expect(laid(5, 8)).toMatchObject({ run: 'east-west', widths: 0, length: 5, seams: 0 });
  expect(laid(5, 8, { trim: 0.25 })).toMatchObject({ length: 5.5 });
});

test('bought by the roll’s whole width unless the plan counts by area with waste', () => {
  const bought = (counts: string) =>
    fromBase(
      planOf(`plan p\n${counts}room den\n  size 14' x 16'\n  floor carpet\n`, { library: 'built-in' }).purchase('carpet').bought
        .value,
      'sf',
    );
  // Two lengths of 14 ft and twice 3 in: 29 ft of 12 ft.
  expect(bought('  counts carpet by rolls-laid\n')).toBeCloseTo(348, 6);
  expect(bought('')).toBeCloseTo(348, 6);
  expect(bought('  counts carpet by rolls-by-area\n')).toBeCloseTo(247, 6);
});

// 5'-6" and 6'-4" by 3'-5": strips of 11'-10" together, cut from 3'-11" of a roll of 12 ft: 47 sf, where each by itself takes 94.
test('strips of two floors that run the same way share a length', () => {
  const plan = (more: string) =>
    fromBase(
      planOf(
        `plan p\nroom laundry\n  size 5'-6" x 3'-5"\n  floor sheet-vinyl\nroom utility\n  size ${more} x 3'-5"\n  floor sheet-vinyl\n`,
        { library: 'built-in' },
      ).purchase('sheet-vinyl').bought.value,
      'sf',
    );
  expect(plan(`6'-4"`)).toBeCloseTo(47, 6);
  // 6'-7" does not fit beside 5'-6": 94 sf; turned, both would take more.
  expect(plan(`6'-7"`)).toBeCloseTo(94, 6);
});

test('a floor with a slanted side takes lengths as far as it reaches', () => {
  const shape = [
    [0, 0],
    [20, 0],
    [20, 12],
    [14, 18],
    [0, 18],
  ].map(([x = 0, y = 0]) => ({ x: x * FOOT, y: y * FOOT }));
  const face = { label: 'floor', length: feet(20), height: feet(18), openings: [], shapes: [shape] };
  const [only] = laidRolls([{ faces: () => [face] } as unknown as Line], { width: feet(12), trim: feet(0), pieced: false });
  // North to south: 18 ft and, from 12 to 20 ft east, as far as 18 ft still: 36; east to west 20 and 20: 40.
  expect(only).toMatchObject({ run: 'north-south', widths: 1 });
  expect(only!.length.value / FOOT).toBeCloseTo(36, 6);
});
