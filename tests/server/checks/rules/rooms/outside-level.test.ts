// Rooms that reach into or past the outside wall, and rooms larger than their level.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'rooms/outside-level';
const level = (walls: string): string => `level main\n  footprint 20' x 24'\n${walls}`;

test('what is known of the outside wall is taken off its level', () => {
  const room = `room living on main at 5 1/2", 5 1/2"\n  size 19'-1 1/2" x 23'-1"\n`;
  expect(checked(level('') + room).messages(CODE)).toEqual([]);
  const walled = checked(level('  walls ext-2x6\n') + room);
  expect(walled.messages(CODE)[0]).toMatch(/reaches 1\/2" too far east: clear of the outside wall, "main" ends at 19'-6 1\/2"\./);
  expect(walled.marks(CODE)).toEqual([`line 5: 19'-1 1/2" x 23'-1"`]);
});

test('each side is looked at, and the worst is told', () => {
  const text = (at: string): string => `${level('')}room living on main at ${at}\n  size 10' x 10'\n`;
  expect(checked(text(`-1', 0'`)).messages(CODE)[0]).toMatch(/1'-0" too far west/);
  expect(checked(text(`0', 15'`)).messages(CODE)[0]).toMatch(/1'-0" too far north/);
  expect(checked(text(`12', 16'`)).messages(CODE)[0]).toMatch(/2'-0" too far (?:north|east)/);
});

test('a level that is no rectangle: the corner it does not have is outside', () => {
  const ell = `level main\n  footprint east 20', north 10', west 8', north 10', west 12', south 20'\n`;
  const room = (at: string): string => `room bed on main at ${at}\n  size 6' x 6'\n`;
  expect(checked(ell + room(`2', 12'`)).messages(CODE)).toEqual([]);
  expect(checked(ell + room(`14', 8'`)).messages(CODE)[0]).toMatch(/^24 sf of "bed" lie in or beyond the outside wall/);
});

test('a room without a place is only held against the level’s own size, the way it runs', () => {
  const room = (size: string): string => `${level('')}room hall on main\n  size ${size}\n`;
  expect(checked(room(`20' x 24'`)).messages(CODE)).toEqual([]);
  expect(checked(room(`24' x 20'`)).messages(CODE)[0]).toMatch(/"hall" is 24'-0" from west to east, and "main" has 20'-0" clear/);
});
