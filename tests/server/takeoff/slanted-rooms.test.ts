// Rooms beside slanted walls: the wall between them is found, gaps and overlaps are told as for square ones; a sloped ceiling
// over slanted sides.
import { describe, expect, test } from 'vitest';
import { factsOf } from '#model/facts';
import { amount } from '#tests/support/amounts';
import { checked } from '#tests/support/checked';
import { planOf } from '#tests/support/plan';

/** A nook in the corner of a hall, 10 by 10 ft with 6 ft cut off at 45 degrees; the hall lies round it. */
const house = (corner: string, more = '') => `
window w-6040 6'-0" x 4'-0"
window w-9040 9'-0" x 4'-0"
level main
  footprint 20' x 24'
  height 8'
  walls ext-2x6
  partitions int-2x4
room nook on main at 5 1/2", 5 1/2"
  outline corners 0 x 0, 10' x 0, 10' x 4', 4' x 10', 0 x 10'
${more}room hall on main at 5 1/2", 5 1/2"
  outline corners 10'-3 1/2" x 0, 19'-1" x 0, 19'-1" x 23'-1", 0 x 23'-1", 0 x 10'-3 1/2", ${corner} x 10'-3 1/2", 10'-3 1/2" x ${corner}
`;
// The wall is 3 1/2 in thick: at a corner that turns by 45 degrees its far side goes on by 3 1/2 x tangent of 22.5 = 1.45 in.
const RIGHT = `4'-1 7/16"`;

test('the wall between is 4 + 4 ft and a slanted stretch of 6 x √2 ft', () => {
  const plan = planOf(house(RIGHT), { library: 'built-in' });
  const plates = amount(plan.lines('partition-plate-length')[0]?.net, 'ft');
  expect(plates).toBeCloseTo(3 * (8 + 6 * Math.sqrt(2)), 2);
});

test('a wall across a corner of the house runs into the outside walls at both ends', () => {
  // 3 1/2 in thick, so 3 1/2 x √2 = 4.95 in along both walls.
  const far = `6'-4 15/16"`;
  const plan = planOf(
    `level main
  footprint 20' x 24'
  height 8'
  walls ext-2x6
  partitions int-2x4
room nook on main at 5 1/2", 5 1/2"
  outline corners 0 x 0, 6' x 0, 0 x 6'
room hall on main at 5 1/2", 5 1/2"
  outline corners ${far} x 0, 19'-1" x 0, 19'-1" x 23'-1", 0 x 23'-1", 0 x ${far}
`,
    { library: 'built-in' },
  );
  expect(amount(plan.lines('partition-plate-length')[0]?.net, 'ft')).toBeCloseTo(3 * 6 * Math.sqrt(2), 2);
  // Once round 88 ft less four corners of 5 1/2 in, at 16 in: 65 spaces and one; two more at four corners and two crossings.
  expect(plan.line('wall-stud-count', 'stud 2x6').net.value).toBe(66 + 4 * 2 + 2 * 2);
});

test('a gap of another width is told with the way it looks', () => {
  expect(checked(house(RIGHT)).messages('rooms/gap')).toEqual([]);
  expect(checked(house(`4'-5"`)).messages('rooms/gap')).toEqual([
    expect.stringMatching(/^Between "hall" and "nook" 6" are left, and the wall there is 3 1\/2"/),
  ]);
});

test('rooms that lie on one another over a slanted side are told with what they share', () => {
  expect(checked(house(RIGHT)).loud).toEqual([]);
  expect(checked(house(`3'-6"`)).messages('rooms/overlap')).toEqual([
    expect.stringMatching(/^"hall" and "nook" share .* of floor/),
  ]);
});

test('a window fits along the slanted wall or not: it has 8 ft 5 13/16 in', () => {
  const window = (type: string) =>
    checked(house(RIGHT, `  windows 1 ${type} in northeast\n`)).messages('openings/wider-than-wall');
  expect(window('w-6040')).toEqual([]);
  expect(window('w-9040')).toEqual([expect.stringContaining('more than the northeast wall of "nook" has')]);
});

test('an outside wall that slants: a room must reach it, and not go beyond', () => {
  const cabin = (cut: string) => `
level main
  footprint corners 0 x 0, 20' x 0, 20' x 14', 14' x 20', 0 x 20'
  height 8'
  walls ext-2x6
room all on main at 5 1/2", 5 1/2"
  outline corners 0 x 0, 19'-1" x 0, 19'-1" x ${cut}, ${cut} x 19'-1", 0 x 19'-1"
`;
  // 5 1/2 in inside: 14 ft less 5 1/2 in, less 5 1/2 x tangent of 22.5 = 2.28 in.
  expect(checked(cabin(`13'-4 1/4"`)).loud).toEqual([]);
  expect(checked(cabin(`13'-1"`)).messages('rooms/gap')).toEqual([expect.stringContaining('of the northeast wall')]);
  expect(checked(cabin(`13'-8"`)).loud).toEqual(['error rooms/outside-level all']);
});

describe('a ceiling from 8 ft in the west to 12 ft in the east over 10 by 8 ft with 4 ft cut off in the north-east', () => {
  const room = planOf(`level main
  height 8'
room loft on main
  outline corners 0 x 0, 10' x 0, 10' x 4', 6' x 8', 0 x 8'
  sloped 8' in west, 12' in east
`).model.list('room')[0]!;

  test('walls by their heights on average: 8 ft, 10, 12, 11.2, 9.2', () => {
    // West 8 x 8; south 10 x 10; east 4 x 12; the cut √32 x (10.4 + 12) / 2; north 6 x (8 + 10.4) / 2.
    const walls = 64 + 100 + 48 + Math.sqrt(32) * 11.2 + 6 * 9.2;
    expect(amount(factsOf(room)['wall-area'], 'sf')).toBeCloseTo(walls, 3);
  });

  test('volume: the whole box less a prism over the triangle, whose middle lies 8 ft 8 in from the west', () => {
    expect(amount(factsOf(room).volume, 'cf')).toBeCloseTo(80 * 10 - 8 * (8 + 0.4 * (6 + 8 / 3)), 3);
  });
});

test('the same up to the middle and down again: both halves by their own middles', () => {
  const room = planOf(`level main
  height 8'
room loft on main
  outline corners 0 x 0, 10' x 0, 10' x 4', 6' x 8', 0 x 8'
  sloped 8' in west, 12' in middle
`).model.list('room')[0]!;
  // West half 5 x 8 at 10 ft. East half: 40 sf at 10 ft less the triangle, whose middle is 4/3 ft from the east wall.
  expect(amount(factsOf(room).volume, 'cf')).toBeCloseTo(400 + 400 - 8 * (8 + 0.8 * (4 / 3)), 3);
});
