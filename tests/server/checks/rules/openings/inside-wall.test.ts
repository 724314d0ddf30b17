// Windows in walls that do not look out.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'openings/inside-wall';
const plan = (side: string, what = 'windows 1 w-3050'): string => `
level main
  footprint 20' x 24'
  walls ext-2x6
window w-3050 3' x 5'
door d-3068 3' x 6'-8", exterior
door d-2868 2'-8" x 6'-8"
room bed on main at 5 1/2", 5 1/2"
  size 10' x 10'
  ${what} in ${side}
`;

test.each(['south', 'west'])('%s looks out', (side) => expect(checked(plan(side)).messages(CODE)).toEqual([]));

test.each(['north', 'east'])('%s does not', (side) => {
  expect(checked(plan(side)).messages(CODE)[0]).toMatch(
    new RegExp(`"w-3050" stands in the ${side} wall of "bed", and that is an inside wall`),
  );
  expect(checked(plan(side, 'doors 1 d-3068')).messages(CODE)).toHaveLength(1);
});

test('an inside door may stand where it likes', () => {
  expect(checked(plan('north', 'doors 1 d-2868')).messages(CODE)).toEqual([]);
});

test('a room without a place is not asked', () => {
  expect(checked(plan('north').replace(` at 5 1/2", 5 1/2"`, '')).messages(CODE)).toEqual([]);
});
