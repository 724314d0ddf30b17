// What is laid where: slanted walls and floors, and openings in the walls that they stand in. By hand.
import { expect, test } from 'vitest';
import { FOOT } from '#kit/dimension';
import { bandsOf } from '#kit/shapes/bands';
import type { Line } from '#takeoff/lines';
import { checked } from '#tests/support/checked';

const SHELL = `assembly inner for wall
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
  layer drywall 1/2"
assembly outer for wall
  layer drywall 1/2"
  layer stud 2x6 at 16" oc
  layer osb 7/16"
assembly lid for ceiling
  layer joist 2x6 at 16" oc
  layer drywall 5/8"
`;
const plan = (text: string) => checked(`plan p\n${text}${SHELL}`).plan;
const bought = (item: string, text: string) =>
  plan(text)
    .takeOff.purchases()
    .find((each) => each.item === item)?.bought.value;
const feet = (value: number) => Math.round((value / FOOT) * 100) / 100;
const faces = (item: string, text: string) =>
  plan(text)
    .takeOff.lines.filter((line: Line) => line.item === item)
    .flatMap((line: Line) => line.faces?.() ?? [])
    .map(({ label, length, openings }) => [label, feet(length.value), ...openings.map((opening) => opening.label)].join(' '));

const FIVE = "footprint corners 0 x 0, 30' x 0, 30' x 20', 10' x 30', 0 x 30'";

// 898.9 sf of wall (30 + 20 + 22.36 + 10 + 30 ft, 8 ft high) is 28.1 sheets. South, west: 60 ft in two courses; east, north,
// northeast: 5 + 3 + 6 upright or two courses of 22.36 ft; no way of it takes fewer than 29.
test('a slanted wall is a rectangle as long as it is', () => {
  const text = `  counts osb by laid-sheets\nlevel main\n  ${FIVE}\n  height 8'\n  walls outer\n`;
  expect(faces('osb 7/16"', text)).toEqual(['south 30', 'east 20', 'northeast 22.36', 'north 10', 'west 30']);
  expect(bought('osb 7/16"', text)).toBeGreaterThanOrEqual(29);
});

// From (30, 20) the side runs to (10, 30), 2 ft westward for each foot north: courses of 4 ft begin 30, 22 and 14 ft long.
test('courses of stepping length lie on a floor with a slanted side', () => {
  const [band] = [bandsOf([[0, 0, 30, 0, 30, 20, 10, 30, 0, 30]].map(pairs), 4)];
  expect(band.map(({ reaches }) => reaches)).toEqual([
    [[0, 30]],
    [[0, 30]],
    [[0, 30]],
    [[0, 30]],
    [[0, 30]],
    [[0, 30]],
    [[0, 22]],
    [[0, 14]],
  ]);
  const floor = `  counts subfloor by laid-sheets\nlevel main\n  ${FIVE}\n  height 8'\n  walls outer\n  floor floor-2x10\n`;
  expect(bought('subfloor 23/32"', floor)! * 32).toBeGreaterThanOrEqual(800);
  const bay = `  counts subfloor by laid-sheets\nlevel main\n  footprint 28' x 36'\n  bay 10' x 2' in south at 9'\n  height 8'\n  walls outer\n  floor floor-2x10\n`;
  // 28 by 36 ft and a bay of 10 and 6 ft by 2: 1,024 sf and more, 32 sheets at least.
  expect(bought('subfloor 23/32"', bay)! * 32).toBeGreaterThanOrEqual(1024);
});

function pairs(list: readonly number[]) {
  return list.flatMap((x, at) => (at % 2 === 0 ? [{ x, y: list[at + 1]! }] : []));
}

// Two rooms side by side, a third north of both: den 10 x 12 at the west, study 12 x 12 at the east.
const ROOMS = `level main
  footprint 23' x 20'
  height 8'
  walls outer
  partitions inner
  ceiling lid
door d-1 "Inside door" 2'-8" x 6'-8"
door d-out "Outside door" 3' x 6'-8", exterior
door d-c "Closet doors" 5' x 6'-8", bifold
window w-1 "Window" 3' x 5', sill 24"
room den on main at 5 1/2", 5 1/2"
  size 9'-8" x 12'
  doors 1 d-1 to study, 1 d-out
room study on main at 10'-5", 5 1/2"
  size 12'-1 1/2" x 12'
  windows 2 w-1 in south at 1', 7'
  closet 6' x 2' in north, 1 d-c
`;
test('doors hang in the wall that both rooms share, else where no room lies; closet doors in the closet’s front', () => {
  const of = (room: string) =>
    plan(ROOMS)
      .takeOff.lines.filter((line: Line) => line.item === 'drywall 1/2"' && line.id.includes(room))
      .flatMap((line: Line) => line.faces?.() ?? [])
      .map(({ label, openings }) => [label, ...openings.map((opening) => opening.label)].join(': '));
  expect(of('den')).toEqual(['south', 'east: Inside door', 'north', 'west: Outside door']);
  expect(of('study')).toEqual([
    'south: Window: Window',
    'east',
    'north',
    'west: Inside door',
    'closet in the north, front: Closet doors',
    'closet in the north, inside: Closet doors',
  ]);
});

test('the level’s wall has the door that its room has without saying where', () =>
  expect(faces('osb 7/16"', ROOMS)).toEqual(['south 23 Window Window', 'east 20', 'north 23', 'west 20 Outside door']));

test('what is open to another room is taken out where that room lies, in the middle of a side too', () => {
  const open = `level main
  height 8'
  partitions inner
  ceiling lid
window w-1 "Window" 3' x 5', sill 24"
room den on main at 0, 0
  size 20' x 12'
  windows 1 w-1 in north at 1'
room study on main at 8', 12'-4 1/2"
  size 6' x 8'
  open to den
`;
  expect(faces('drywall 1/2"', open)).toEqual([
    'south 20',
    'east 12',
    'north, part 1 6',
    'north, part 2 8 Window',
    'west 12',
    'east 8',
    'north 6',
    'west 8',
  ]);
});

const UNDER = (roof: string) => `level main
  footprint 28' x 32'
  height 8'
  walls outer
roof main over main
  ${roof}
  deck osb 7/16"
`;
const roofFaces = (roof: string) =>
  plan(UNDER(roof))
    .takeOff.lines.filter((line: Line) => line.item === 'osb 7/16"' && line.where.part !== 'walls' && line.where.part !== 'rim')
    .flatMap((line: Line) => line.faces?.() ?? [])
    .map(({ label, length, height }) => `${label} ${feet(length.value)} x ${feet(height.value)}`);

// 6:12 over 28 ft: 7 ft of rise; rafters (14 + 1.5) x 1.118 = 17.33 ft; 32 + 2 x 1 ft of ridge.
test('slopes of a gable roof and the triangles under them', () =>
  expect(roofFaces('shape gable 6:12, ridge north-south\n  overhang 18" eaves, 12" rakes')).toEqual([
    'east slope 34 x 17.33',
    'west slope 34 x 17.33',
    'gable 1 28 x 7',
    'gable 2 28 x 7',
  ]));

// A hip roof without overhang: trapezia of 32 ft and triangles of 28 ft, all 14 x 1.118 = 15.65 ft up the slope.
test('slopes of a hip roof', () =>
  expect([...roofFaces('shape hip 6:12')].sort()).toEqual([
    'east slope 32 x 15.65',
    'north slope 28 x 15.65',
    'south slope 28 x 15.65',
    'west slope 32 x 15.65',
  ]));

test('a shed has two ends and a high side above its low wall', () =>
  expect(roofFaces('shape shed 3:12, high north')).toEqual([
    'slope 28 x 32.98',
    'end 1 32 x 8',
    'end 2 32 x 8',
    'high side 28 x 8',
  ]));

// 12 by 10 ft, from 6 ft at the south to 8 ft in the middle and down again: ends rise to a point, the ceiling in two slopes of
// the square root of 5 x 5 + 2 x 2 = 5.39 ft.
test('walls and ceiling of a room under a slope', () => {
  const room = `level main
  height 8'
  partitions inner
  ceiling lid
room loft on main
  size 12' x 10'
  sloped 6' in south, 8' in middle
`;
  expect(faces('drywall 1/2"', room)).toEqual(['south 12', 'east 10', 'north 12', 'west 10']);
  const [, gable] = plan(room)
    .takeOff.lines.filter((line: Line) => line.item === 'drywall 1/2"')
    .flatMap((line: Line) => line.faces?.() ?? []);
  expect(gable?.shapes?.[0]?.map(({ x, y }) => [feet(x), feet(y)])).toEqual([
    [0, 0],
    [10, 0],
    [10, 6],
    [5, 8],
    [0, 6],
  ]);
  const ceiling = plan(room)
    .takeOff.lines.filter((line: Line) => line.item === 'drywall 5/8"')
    .flatMap((line: Line) => line.faces?.() ?? []);
  expect(ceiling.map(({ length, height }) => [feet(length.value), feet(height.value)])).toEqual([
    [12, 5.39],
    [12, 5.39],
  ]);
});
