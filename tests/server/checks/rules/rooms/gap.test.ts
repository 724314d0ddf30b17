// Gaps between rooms that are the width of no wall.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'rooms/gap';
const plan = (east: string, more = ''): string => `
level main
  footprint  20' x 24'
  walls      ext-2x6
  partitions int-2x4
room bed on main at 5 1/2", 5 1/2"
  size 10' x 23'-1"
room living on main at ${east}, 5 1/2"
  size 8'-9 1/2" x 23'-1"
${more}`;

test('a gap as thick as the framing of the level’s partitions is a wall', () => {
  expect(checked(plan(`10'-9"`)).messages(CODE)).toEqual([]);
});

test('any other is told, with what the wall there would be', () => {
  expect(checked(plan(`10'-8 3/4"`)).messages(CODE)).toEqual([
    'Between "living" and "bed" 3 1/4" are left, and the wall there is 3 1/2". One of the sizes on the drawing is off. Move the room, or name the wall that stands there: "wall … between … of …".',
    '"living" stops 1/4" short of the framing of the east wall, though rooms are measured to the framing. One of the sizes on the drawing is off. Check them, or accept with what fills the gap.',
  ]);
});

test('a wall that the plan names between two rooms is the one that counts', () => {
  const wall = 'wall wet between bed, living of int-2x6\n';
  expect(checked(plan(`10'-9"`, wall)).messages(CODE)[0]).toMatch(/3 1\/2" are left, and the wall there is 5 1\/2"/);
});

test('rooms that touch are open to each other, or have no room for a wall', () => {
  const touching = `
level main
  partitions int-2x4
room kitchen on main at 0', 0'
  size 10' x 10'
room living on main at 10', 0'
  size 10' x 10'
`;
  expect(checked(touching).messages(CODE)[0]).toMatch(/"living" and "kitchen" touch, so there is no room for the 3 1\/2" wall/);
  expect(checked(`${touching}  open to kitchen\n`).messages(CODE)).toEqual([]);
});

test('rooms that only pass at a corner, and rooms with another between them, have no wall in common', () => {
  expect(
    checked(`
      level main
        partitions int-2x4
      room bed on main at 0', 0'
        size 10' x 10'
      room bath on main at 10'-5", 9'-6"
        size 5' x 8'
    `).messages(CODE),
  ).toEqual([]);
});

test('a level that does not say what its partitions are is not asked', () => {
  expect(
    checked(`level main\nroom a on main at 0', 0'\n  size 10' x 10'\nroom b on main at 10'-1", 0'\n  size 5' x 10'\n`).messages(
      CODE,
    ),
  ).toEqual([]);
});
