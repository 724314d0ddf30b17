// Sheets laid out wall by wall. Published: Dagostino & Peterson, Estimating in Building Construction, 7th ed., example 16-3,
// whose outside walls (148 ft of 8 ft: 37 sheets) and ceiling (24 by 50 ft: 38) come to the same laid out. The rest by hand.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FOOT } from '#kit/dimension';
import { constant } from '#kit/quantity';
import type { Line } from '#takeoff/lines';
import { laidSheets } from '#takeoff/sheets';
import { checked } from '#tests/support/checked';

const assemblies = `assembly inner for wall
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
  layer drywall 1/2"
assembly lid for ceiling
  layer joist 2x6 at 16" oc
  layer drywall 5/8"
`;
const SHORT_SHEETS = "material drywall\n  sold by sheet of 4' x 8'\n";
const bought = (item: string, room: string, more = '', counts = 'laid-board') => {
  const { plan } = checked(`plan p
  counts drywall by ${counts}
${more}level main
  height 8'
  partitions inner
  ceiling lid
${assemblies}${room}`);
  const purchase = plan.takeOff.purchases().find((each) => each.item === item);
  const feet = (value: number) => Math.round((value / FOOT) * 1000) / 1000;
  return (purchase?.sticks ?? (purchase === undefined ? [] : [{ bought: purchase.bought, holds: purchase.holds! }])).map(
    ({ bought: { value }, holds }) => `${value} of ${holds.inputs.map((side) => feet(side.value)).join(' x ')}`,
  );
};

describe('example 16-3', () => {
  const house = "room house on main\n  size 24' x 50'\n";
  test('outside walls 37 sheets, ceiling 38', () => {
    expect(bought('drywall 1/2"', house, SHORT_SHEETS)).toEqual(['37 of 4 x 8']);
    expect(bought('drywall 5/8"', house, SHORT_SHEETS)).toEqual(['38 of 4 x 8']);
  });
  test('the author’s own count stays: whole sheets in each part, 5 %, and up once more', () =>
    expect(bought('drywall 5/8"', house, '', 'sheets-by-part')).toEqual(['40 of 4 x 8']));
});

test('the length that leaves nothing is chosen: two courses along walls of 12 ft and 20 ft', () =>
  expect(bought('drywall 1/2"', "room den on main\n  size 12' x 20'\n")).toEqual(['4 of 4 x 12', '8 of 4 x 10']));

// 8'-1" of wall on board of 4 ft: the inch at the foot stays open behind the base; 2" do not.
test('what the base covers is not filled, more is', () => {
  const room = (height: string) => `room den on main\n  size 8' x 8'\n  height ${height}\n`;
  expect(bought('drywall 1/2"', room('8\'-1"'), SHORT_SHEETS)).toEqual(['8 of 4 x 8']);
  // Four strips of 2 in lie side by side in one sheet of 8 ft.
  expect(bought('drywall 1/2"', room('8\'-2"'), SHORT_SHEETS)).toEqual(['9 of 4 x 8']);
});

// 16 by 7 ft is more than 32 sf: that wall is 8 ft beside the door and a foot over it.
test('a large opening is left out, a window is laid over', () => {
  const room = (line: string) =>
    `door big "Garage door" 16' x 7', exterior\nwindow w-1 "Window" 3' x 5', sill 24"\nroom den on main\n  size 24' x 8'\n${line}`;
  expect(bought('drywall 1/2"', room(''), SHORT_SHEETS)).toEqual(['16 of 4 x 8']);
  expect(bought('drywall 1/2"', room('  windows 2 w-1 in north\n'), SHORT_SHEETS)).toEqual(['16 of 4 x 8']);
  // 6 sheets less one for each 8 ft beside it, and over it four pieces of a foot by four across one sheet.
  expect(bought('drywall 1/2"', room('  doors 1 big in north\n'), SHORT_SHEETS)).toEqual(['13 of 4 x 8']);
});

test('whatever the faces, all of each is covered, and by no less than its area', () => {
  const lengths = fc.integer({ min: 6, max: 500 });
  fc.assert(
    fc.property(fc.array(fc.tuple(lengths, lengths), { minLength: 1, maxLength: 6 }), (sizes) => {
      const faces = sizes.map(([length, height], at) => ({
        label: `${at}`,
        length: constant('l', length, 'length'),
        height: constant('h', height, 'length'),
        openings: [],
      }));
      const sheets = [96, 120, 144].map((length) => ({
        word: 'sheet',
        loose: false,
        holds: {
          ...constant('sheet', 48 * length, 'area'),
          inputs: [constant('w', 48, 'length'), constant('l', length, 'length')],
        },
      }));
      const laid = laidSheets(
        [{ faces: () => faces } as unknown as Line],
        sheets,
        { short: 0, deducts: Number.POSITIVE_INFINITY },
        'feet',
      )!;
      const area = sizes.reduce((sum, [length, height]) => sum + length * height, 0);
      expect(laid.bought).toBeGreaterThanOrEqual(area - 1e-6);
      for (const { face, way, courses, run, strip } of laid.faces) {
        const across = way === 'along' ? face.height.value : face.length.value;
        expect(courses * 48 + strip).toBeCloseTo(across, 6);
        expect(run).toBe(way === 'along' ? face.length.value : face.height.value);
      }
    }),
    { numRuns: 200 },
  );
});
