// Rooms: whose face is boarded with what, what tile and openings take away, doors between rooms, partitions from gaps.
import { describe, expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const rows = `
material drywall laid sheets
  sold by sheet of 4' x 8'
  serves as board
  size 1/2"
material moisture-board laid sheets
  sold by sheet of 4' x 8'
  serves as board
  for-rooms bathing
  size 1/2"
material pine laid boards
  serves as lining
material backer laid sheets
  sold by sheet of 3' x 5'
material tile laid tiles
  sold by sf
material sheet-membrane laid membrane
  sold by sf
material primer laid coats
  sold by gal
  covers 250 sf per gal
material paint laid coats
  sold by gal
  covers 350 sf per gal
  coats 2
  under it primer
material grout laid coats
  sold by bag of 25 lb
  covers 100 sf per bag
material stud laid framing
  size 2x4 actual 1 1/2" x 3 1/2"
  size 2x6 actual 1 1/2" x 5 1/2"
material plate laid framing
  size 2x4 actual 1 1/2" x 3 1/2"
  size 2x6 actual 1 1/2" x 5 1/2"
material base laid strip
  sold by piece of 8'
item taping by area
assembly outer for wall
  layer drywall 1/2"
  layer stud 2x6 at 16" oc
assembly inner for partition
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
  layer drywall 1/2"
assembly wet for partition
  layer moisture-board 1/2"
  layer stud 2x6 at 16" oc
  layer drywall 1/2"
assembly lid for ceiling
  layer drywall 1/2"
work hang
  scope    in room
  installs drywall, moisture-board by board-area
work tape
  scope    in room
  installs taping by board-area
work line-walls
  scope    in room
  installs pine by lining-area
work set-backer
  scope    in room
  installs backer by tile-backer-area
work lay-membrane
  scope    in room
  installs sheet-membrane by membrane-area
work set-tile
  scope    in room
  installs tile by tile-area
work grout-tile
  scope    in room
  installs grout by tile-area
work prime
  scope    in room
  installs primer by painted-wall-area, painted-ceiling-area
work paint-walls
  scope    in room
  installs paint by painted-wall-area, painted-ceiling-area
work run-base
  scope    in room
  installs base by base-length
work frame
  scope    on level
  installs stud by partition-stud-count, wall-stud-count
  installs plate by partition-plate-length, wall-plate-length
work hang-doors
  scope    in room
  installs door by inside-door-count
window w-3050 3'-0" x 5'-0", sill 24"
door d-3068 3'-0" x 6'-8", exterior
door d-2868 2'-8" x 6'-8"
`;
const level = `
level main
  footprint 28' x 16'
  height 8'
  walls outer
  partitions inner
  ceiling lid
`;
const taken = (text: string) => planOf(level + text, { library: [rows] });
const area = (plan: ReturnType<typeof planOf>, measure: 'board-area' | 'tile-area' | 'painted-wall-area', goods: string) =>
  plan.lines(measure, goods).map(({ id, net }) => [id, Math.round(amount(net, 'sf') * 100) / 100]);

describe('board', () => {
  test('comes from the assemblies: walls less openings, ceiling whole', () => {
    const plan = taken(`room a on main\n  size 10' x 12'\n  windows 1 w-3050 in south\n  doors 1 d-3068 in west\n`);
    expect(area(plan, 'board-area', 'drywall')).toEqual([
      ['drywall 1/2"@a.walls', 44 * 8 - 15 - 20],
      ['drywall 1/2"@a.ceiling', 120],
    ]);
  });

  test('what a room names takes its place; paint alone leaves it; bare walls have none', () => {
    const named = taken(`room a on main\n  size 10' x 12'\n  walls moisture-board 1/2", paint\n  ceiling bare\n`);
    expect(area(named, 'board-area', 'drywall')).toEqual([]);
    expect(area(named, 'board-area', 'moisture-board')).toEqual([['moisture-board 1/2"@a.walls', 352]]);
    const painted = taken(`room a on main\n  size 10' x 12'\n  walls paint\n`);
    expect(area(painted, 'board-area', 'drywall')[0]).toEqual(['drywall 1/2"@a.walls', 352]);
    const bare = taken(`room a on main\n  size 10' x 12'\n  walls bare\n  ceiling bare\n`);
    expect(bare.lines('board-area')).toEqual([]);
  });

  test('a lining takes its place too, and is counted as lining', () => {
    const plan = taken(`room a on main\n  size 10' x 12'\n  walls pine\n  ceiling bare\n`);
    expect(plan.lines('board-area')).toEqual([]);
    expect(amount(plan.line('lining-area').net, 'sf')).toBe(352);
  });

  test('taping goes along with whatever board it is', () => {
    const plan = taken(`room a on main\n  size 10' x 12'\n  walls moisture-board 1/2"\n  ceiling bare\n`);
    expect(plan.takeOff.byWork.get('tape')?.map(({ item, net }) => [item, amount(net, 'sf')])).toEqual([['taping', 352]]);
  });

  test('finishes taken from another room are those that are not given here', () => {
    const plan = taken(
      `room a on main\n  size 10' x 10'\n  walls paint\n  base base\nroom b on main\n  size 8' x 8'\n  finish as a\n  base none\nroom c on main\n  size 8' x 8'\n  finish as b\n`,
    );
    expect(area(plan, 'painted-wall-area', 'paint').map(([id]) => id)).toEqual([
      'paint@a.walls',
      'paint@b.walls',
      'paint@c.walls',
    ]);
    expect(plan.lines('base-length').map(({ where }) => where.room?.name)).toEqual(['a']);
  });
});

describe('tile and paint', () => {
  test('a wet wall on a backer takes board and paint away; a splash only paint', () => {
    const plan = taken(
      `room a on main\n  size 10' x 12'\n  walls paint\n  ceiling bare\n  wet 60 sf tile over backer, sheet-membrane\n  tile 32 sf tile\n`,
    );
    expect(area(plan, 'board-area', 'drywall')).toEqual([['drywall 1/2"@a.walls', 352 - 60]]);
    expect(area(plan, 'painted-wall-area', 'paint')).toEqual([['paint@a.walls', 352 - 60 - 32]]);
    expect(area(plan, 'tile-area', 'tile')).toEqual([
      ['tile@a.wet-walls', 60],
      ['tile@a.splash', 32],
    ]);
    expect(plan.lines('membrane-area').map(({ net }) => amount(net, 'sf'))).toEqual([60]);
  });

  test('tile to a height leaves out what of a window and a door lies below it', () => {
    const plan = taken(
      `room a on main\n  size 10' x 12'\n  walls tile over sheet-membrane to 4'-0", paint above\n  windows 1 w-3050 in south\n  doors 1 d-2868\n`,
    );
    // The window's sill is at 24 in: 3 ft by 2 ft of it, and 2 ft 8 in by 4 ft of the door.
    const tiled = 44 * 4 - 6 - (32 / 12) * 4;
    expect(amount(plan.line('tile-area', 'tile').net, 'sf')).toBeCloseTo(tiled, 6);
    expect(amount(plan.line('painted-wall-area', 'paint').net, 'sf')).toBeCloseTo(352 - 15 - (32 / 12) * (80 / 12) - tiled, 6);
  });

  test('paint brings its primer by the primer’s own work, in its own coats', () => {
    const plan = taken(`room a on main\n  size 10' x 12'\n  walls paint\n  ceiling bare\n`);
    const [paint, primer] = ['paint', 'primer'].map((goods) => plan.line('painted-wall-area', goods));
    expect([paint?.work?.name, paint?.coats, amount(paint?.needed, 'gal')]).toEqual([
      'paint-walls',
      2,
      expect.closeTo((352 * 2) / 350, 9),
    ]);
    expect([primer?.work?.name, primer?.coats, amount(primer?.needed, 'gal')]).toEqual([
      'prime',
      1,
      expect.closeTo(352 / 250, 9),
    ]);
  });

  test('grout follows tile on the floor as well', () => {
    const plan = taken(`room a on main\n  size 10' x 10'\n  floor tile over sheet-membrane\n`);
    expect(plan.line('tile-area', 'grout').needed?.value).toBeCloseTo(1, 9);
    expect(plan.purchase('grout').bought.value).toBe(1);
  });
});

describe('doors between rooms', () => {
  const two = (a: string, b: string) =>
    taken(`room a on main\n  size 10' x 10'\n  base base\n${a}room b on main\n  size 10' x 10'\n  base base\n${b}`);
  const faces = (plan: ReturnType<typeof planOf>) => plan.lines('base-length').map(({ net }) => amount(net, 'ft'));

  test('told by one room, cut from both, hung once', () => {
    const plan = two('', `  doors 1 d-2868 to a\n`);
    expect(faces(plan)).toEqual([expect.closeTo(40 - 32 / 12, 6), expect.closeTo(40 - 32 / 12, 6)]);
    expect(plan.lines('inside-door-count').length).toBe(1);
  });

  test('told by both rooms it is still one door', () => {
    const plan = two(`  doors 1 d-2868 to b\n`, `  doors 1 d-2868 to a\n`);
    expect(faces(plan)).toEqual([expect.closeTo(40 - 32 / 12, 6), expect.closeTo(40 - 32 / 12, 6)]);
    expect(plan.lines('inside-door-count').map(({ where }) => where.room?.name)).toEqual(['a']);
  });
});

describe('inside walls', () => {
  // Clear sizes 12 ft and 14 ft 9 1/2 in with 3 1/2 in between, in a shell of 2x6: 28 ft.
  const placed = (more = '', b = `12'-9", 5 1/2"`) => `
room a on main at 5 1/2", 5 1/2"
  size 12' x 15'-1"
  walls paint
room b on main at ${b}
  size 14'-9 1/2" x 15'-1"
  walls paint
${more}`;

  test('the gap between placed rooms is a wall as long as both', () => {
    const plan = taken(placed());
    expect(plan.lines('partition-plate-length').map(({ item, net }) => [item, amount(net, 'ft')])).toEqual([
      ['plate 2x4', expect.closeTo(3 * (15 + 1 / 12), 6)],
    ]);
    const studs = plan.line('partition-stud-count').net;
    // 15 ft 1 in at 16 in is 12 spaces, 13 studs; both ends run into outside walls.
    expect([studs.value, studs.inputs[3]?.value]).toEqual([13, 0]);
    expect(plan.line('wall-stud-count').net.inputs[3]?.value).toBe(2);
  });

  test('a named wall is of its own make, and its board faces the room named first', () => {
    const plan = taken(placed('wall plumbing between b, a of wet\n'));
    expect(plan.line('partition-stud-count').item).toBe('stud 2x6');
    const wall = 8 * (15 + 1 / 12);
    const board = plan.lines('board-area', 'moisture-board').map(({ id, net }) => [id, amount(net, 'sf')]);
    expect(board).toEqual([['moisture-board 1/2"@b.walls', expect.closeTo(wall, 6)]]);
    expect(amount(plan.lines('board-area', 'drywall')[2]?.net, 'sf')).toBeCloseTo(
      8 * 2 * (14 + 9.5 / 12 + 15 + 1 / 12) - wall,
      6,
    );
  });

  test.each([
    ['the second named is a bath', 'sleeping', 'bathing', ['moisture-board 1/2"@b.walls']],
    ['the first named is a bath', 'bathing', 'sleeping', ['moisture-board 1/2"@a.walls']],
    ['both are baths', 'bathing', 'bathing', ['moisture-board 1/2"@a.walls', 'moisture-board 1/2"@b.walls']],
    ['neither is', 'closet', 'sleeping', []],
  ])('board for baths looks to the bath: %s', (_, a, b, boards) => {
    const rooms = placed('wall plumbing between a, b of wet\n').split('  walls paint\n');
    const plan = taken(`${rooms[0]}  use ${a}\n  walls paint\n${rooms[1]}  use ${b}\n  walls paint\n${rooms[2]}`);
    expect(plan.lines('board-area', 'moisture-board').map(({ id }) => id)).toEqual(boards);
  });

  test('no wall where rooms touch', () => {
    const plan = taken(placed('', `12'-5 1/2", 5 1/2"`));
    expect(plan.lines('partition-plate-length')).toEqual([]);
    expect(amount(plan.lines('painted-wall-area', 'paint')[0]?.net, 'sf')).toBeCloseTo(8 * (2 * 12 + 15 + 1 / 12), 6);
  });

  test('a length given stands before the rooms’', () => {
    const plan = planOf(level.replace('partitions inner', "partitions inner, 86' long") + placed(), { library: [rows] });
    expect(amount(plan.line('partition-plate-length').net, 'ft')).toBe(3 * 86);
  });

  test('rooms that are not placed ask for one or the other', () => {
    const plan = taken(`room a on main\n  size 10' x 10'\nroom b on main\n  size 10' x 10'\n`);
    expect(plan.messages.map((message) => message.split(':')[0])).toEqual(['takeoff/partitions-missing']);
  });

  test('a closet has a front, one end, and both faces of them', () => {
    const plan = taken(
      `room a on main\n  size 10' x 12'\n  walls paint\n  ceiling bare\n  closet 6'-0" x 2'-0" in south, 1 d-2868\n`,
    );
    expect(amount(plan.line('partition-plate-length').net, 'ft')).toBe(3 * 8);
    expect(amount(plan.line('board-area', 'drywall').net, 'sf')).toBeCloseTo(8 * (44 + 16) - 2 * (32 / 12) * (80 / 12), 6);
  });
});

describe('the latch of a door goes by the rooms on both its sides', () => {
  const hall = (use: string, door: string) => `plan p
level main
  footprint 24' x 32'
door d-in 2'-8" x 6'-8"
door d-fold 5'-0" x 6'-8", bifold
room hall on main
  use passage
  size 4' x 10'
room one on main
  use ${use}
  size 10' x 10'
  doors 1 ${door} to hall
room closet on main
  use closet
  size 3' x 3'
  doors 1 d-in to one
`;
  const latches = (use: string, door = 'd-in') => {
    const plan = planOf(hall(use, door), { library: 'built-in' });
    return ['passage-set', 'privacy-set'].map((item) =>
      plan.takeOff.lines.filter((line) => line.item === item).reduce((sum, { net }) => sum + net.value, 0),
    );
  };
  test.each([
    ['a bath', 'bathing', [1, 1]],
    ['a bedroom, and its closet', 'sleeping', [1, 1]],
    ['a store', 'storage', [2, 0]],
  ])('%s', (_, use, counts) => expect(latches(use)).toEqual(counts));
  test('a door that folds has none', () => expect(latches('bathing', 'd-fold')).toEqual([1, 0]));
});
