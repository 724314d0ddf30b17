// Outlines by sides, by corners, and by rectangles put together and cut away are the same floor; what makes no floor is told.
import { describe, expect, test } from 'vitest';
import { factsOf } from '#model/facts';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const level = (footprint: string) =>
  planOf(`level main\n  footprint ${footprint}\n  height 8'\n  walls ext-2x6\n`, { library: 'built-in' });
const facts = (footprint: string) => factsOf(level(footprint).model.list('level')[0]!);
const codes = (footprint: string) => level(footprint).messages.map((message) => message.split(':')[0]);

describe('an L of a bar 40 by 16 ft and a leg 20 ft wide', () => {
  test.each([
    ['walked', "east 40', north 16', west 20', north 14', west 20', south 30'"],
    ['by its corners', "corners 0 x 0, 40' x 0, 40' x 16', 20' x 16', 20' x 30', 0 x 30'"],
    ['as a bar and a leg', "40' x 16', plus 20' x 14' at 0, 16'"],
    ['as a rectangle less a corner', "40' x 30', less 20' x 14' at 20', 16'"],
    ['as rectangles that overlap', "40' x 16', plus 20' x 30' at 0, 0"],
  ])('%s', (_, footprint) => {
    const found = facts(footprint);
    expect(amount(found['floor-area'], 'sf')).toBeCloseTo(920, 9);
    expect(amount(found.perimeter, 'ft')).toBeCloseTo(140, 9);
    expect(amount(found.width, 'ft')).toBeCloseTo(40, 9);
    expect(amount(found.depth, 'ft')).toBeCloseTo(30, 9);
    expect(found.corners?.value).toBe(6);
    expect(codes(footprint)).toEqual([]);
  });
});

test('what is put and cut counts in its order, and may stand out to the south and west', () => {
  expect(amount(facts("20' x 20', less 10' x 10' at 0, 0, plus 4' x 4' at 0, 6'")['floor-area'], 'sf')).toBeCloseTo(316, 9);
  const bumped = facts("20' x 20', plus 6' x 2' at 7', -2'");
  expect(amount(bumped['floor-area'], 'sf')).toBeCloseTo(412, 9);
  expect(amount(bumped.depth, 'ft')).toBeCloseTo(22, 9);
});

test('a room too', () => {
  const plan = planOf(
    "level main\n  height 8'\nroom bath on main\n  outline 10' x 8', less 4' x 3' at 6', 5'\n  floor sheet-vinyl\n",
    {
      library: 'built-in',
    },
  );
  expect(amount(plan.line('floor-finish-area', 'sheet-vinyl').net, 'sf')).toBeCloseTo(68, 9);
});

test('a side that is a little out of square is told, and counted; one that slants is not told', () => {
  expect(codes("corners 0 x 0, 20' x 0, 19'-9\" x 20', 0 x 20'")).toEqual(['takeoff/outline-askew']);
  expect(amount(facts("corners 0 x 0, 20' x 0, 19'-9\" x 20', 0 x 20'")['floor-area'], 'sf')).toBeCloseTo(397.5, 9);
  expect(codes("corners 0 x 0, 20' x 0, 18' x 20', 0 x 20'")).toEqual([]);
});

describe('what makes no floor', () => {
  test.each([
    ["20' x 20', plus 4' x 4' at 24', 0", 'takeoff/outline-apart'],
    ["20' x 20', plus 4' x 4' at 20', 20'", 'takeoff/outline-apart'],
    ["20' x 20', less 4' x 4' at 8', 8'", 'takeoff/outline-apart'],
    ["20' x 20', less 20' x 20' at 0, 0", 'takeoff/outline-apart'],
    ["corners 0 x 0, 20' x 0", 'takeoff/outline-empty'],
    ["corners 0 x 0, 10' x 0, 10' x 10', 20' x 10', 20' x -5', 5' x -5', 5' x 10', 0 x 10'", 'takeoff/outline-crosses'],
    ["east 20', north 20', west 10', south 30', west 10', north 10'", 'takeoff/outline-crosses'],
    ["east 20', north 20', west 19', south 20'", 'takeoff/outline-open'],
  ])('%s', (footprint, code) => {
    expect(codes(footprint)).toContain(code);
  });
});
