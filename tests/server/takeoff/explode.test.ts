// What becomes of geometry with rows: which work, which goods, deductions, laps, waste, coverage, hours, what comes along.
import { describe, expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const wall = `
level main
  footprint 20' x 30'
  height 10'
  walls outer
window big 6'-0" x 6'-0"
window small 3'-0" x 4'-0"
room all on main
  windows 1 big, 2 small
`;
const assembly = (layer: string) => `
material stud laid framing
  size 2x4 actual 1 1/2" x 3 1/2"
assembly outer for wall
  layer stud 2x4
  layer ${layer}
`;
const gross = 1000;
const net = gross - 36 - 24;

describe('needed', () => {
  const needed = (row: string, unit = 'sf') => {
    const rows = `material cover laid sheets\n${row}${assembly('cover')}work put\n  installs cover by wall-sheathing-area\n`;
    return amount(planOf(wall, { library: [rows] }).line('wall-sheathing-area').needed, unit);
  };
  test('without a row of its own all openings are off', () => expect(needed('')).toBe(net));
  test('openings up to a size stay in', () => expect(needed('  deducts openings over 15 sf\n')).toBe(gross - 36));
  test('openings of just that size stay in', () => expect(needed('  deducts openings over 36 sf\n')).toBe(gross));
  test('waste added', () => expect(needed('  waste 5% added\n')).toBeCloseTo(net * 1.05, 6));
  test('waste divided', () => expect(needed('  waste 15% divided\n')).toBeCloseTo(net / 0.85, 6));
  test('a lap as a share', () => expect(needed('  lap 10%\n  waste 5% added\n')).toBeCloseTo(net * 1.1 * 1.05, 6));
  test('a lap as a length of a roll’s width', () =>
    expect(needed(`  sold by roll of 3' x 100'\n  lap 6"\n`)).toBeCloseTo((net * 36) / 30, 6));
  test('area into volume by thickness', () => expect(needed('  thick 2"\n  sold by cf\n', 'cf')).toBeCloseTo(net / 6, 6));
  test('area into weight', () => expect(needed('  weighs 2 lb/sf\n  sold by lb\n', 'lb')).toBeCloseTo(net * 2, 6));
});

test('courses are bought by length: the area over what shows of each', () => {
  const rows = `material board laid courses\n  sold by piece of 12'\n  waste 10% added\n${assembly('board, 6" to the weather')}work side\n  installs board by wall-cladding-area\n`;
  const line = planOf(wall, { library: [rows] }).line('wall-cladding-area');
  expect(amount(line.needed, 'ft')).toBeCloseTo(net * 2 * 1.1, 6);
});

describe('which work', () => {
  const cover = (laid: string, installs: string, name = 'cover') =>
    planOf(wall, { library: [`material ${name} laid ${laid}\nmaterial other laid ${laid}\n${assembly(name)}${installs}`] });

  test('a sheet is what the work that installs it says: sheathing, insulation or cladding', () => {
    expect(cover('sheets', 'work a\n  installs cover by wall-foam-area\n').line('wall-foam-area').work?.name).toBe('a');
    expect(cover('sheets', 'work a\n  installs cover by wall-cladding-area\n').line('wall-cladding-area').work?.name).toBe('a');
  });

  test('goods that no work names go with what is laid alike, where one work alone does that', () => {
    expect(cover('courses', 'work a\n  installs other by wall-cladding-area\n').line('wall-cladding-area').work?.name).toBe('a');
    const two = 'work a\n  installs other by wall-cladding-area\nwork b\n  installs other by wall-cladding-area\n';
    expect(cover('courses', two).line('wall-cladding-area').work).toBeUndefined();
  });

  test('goods unknown to the library keep their line, without work', () => {
    const plan = planOf(wall, { library: [`${assembly('larch')}work side\n  installs stud by wall-cladding-area\n`] });
    const line = plan.line('wall-cladding-area', 'larch');
    expect([line.item, line.work, amount(line.net, 'sf')]).toEqual(['larch', undefined, net]);
    expect(plan.purchase('larch').bought).toBe(plan.purchase('larch').needed);
  });

  test('a plan’s own work for the same goods stands before the library’s', () => {
    const rows = `material cover laid sheets\n${assembly('cover')}work a\n  installs cover by wall-sheathing-area\n`;
    const plan = planOf(`${wall}work mine\n  installs cover by wall-sheathing-area\n`, { library: [rows] });
    expect(plan.lines('wall-sheathing-area').map(({ work }) => work?.name)).toEqual(['mine']);
  });

  test('goods by a second name are the row’s own', () => {
    const rows = `material cover laid sheets\n  also blanket\n${assembly('blanket')}work a\n  installs blanket by wall-sheathing-area\n`;
    expect(planOf(wall, { library: [rows] }).line('wall-sheathing-area').item).toBe('cover');
  });
});

describe('portions that name no goods', () => {
  const footing = `foundation strip\n  40' long\n  footing 20" x 8", 2 #4\n`;
  test('sizes choose among the goods of a work', () => {
    const rows = `material thin laid strip\n  size #3\nmaterial thick laid strip\n  size #4\nwork tie\n  installs thin, thick by footing-bar-length\n`;
    expect(planOf(footing, { library: [rows] }).line('footing-bar-length').item).toBe('thick #4');
  });

  test('where nothing chooses, the work and its hours stay, no goods are guessed, and it is said', () => {
    const rows = `material one laid poured\nmaterial two laid poured\nwork pour "Pour"\n  installs one, two by footing-volume\n  labour 1 h/cf by footing-volume\n`;
    const plan = planOf(footing, { library: [rows] });
    const line = plan.line('footing-volume');
    expect([line.goods, amount(line.hours, 'h')]).toEqual([undefined, expect.closeTo((40 * 20 * 8) / 144, 6)]);
    expect(plan.messages).toEqual([
      'takeoff/goods-open: "Pour" may install one, two, and nothing says which, so no goods are counted. Name them where they are laid.',
    ]);
  });
});

describe('what comes along', () => {
  const floor = `room a\n  size 10' x 10'\n  floor tile\n`;
  const rows = (more: string) =>
    `material tile laid tiles\nmaterial grout laid coats\nmaterial mortar laid bulk\n  waste 10% added\nmaterial other laid tiles\nwork set\n  installs tile by tile-area\n${more}`;

  test('a coat goes over goods that are none; other goods of the measure do not', () => {
    const plan = planOf(floor, {
      library: [rows('work fill\n  installs grout by tile-area\nwork odd\n  installs other by tile-area\n')],
    });
    expect(plan.takeOff.lines.map(({ item }) => item)).toEqual(['tile', 'grout']);
  });

  test('what a work uses up is a line of its own, with its waste and no hours', () => {
    const plan = planOf(floor, { library: [rows('  uses mortar 50 lb for each 75 sf by tile-area\n  labour 0.1 h/sf\n')] });
    const [tile, mortar] = plan.takeOff.lines;
    expect([tile?.item, amount(tile?.hours, 'h')]).toEqual(['tile', expect.closeTo(10, 9)]);
    expect([mortar?.id, amount(mortar?.net, 'lb'), amount(mortar?.needed, 'lb'), mortar?.hours]).toEqual([
      'mortar@a.floor',
      expect.closeTo((100 * 50) / 75, 6),
      expect.closeTo((110 * 50) / 75, 6),
      undefined,
    ]);
  });

  test('work that only has hours by a measure counts where a task does it, and so does what it uses up', () => {
    const seal = 'work seal\n  labour 0.02 h/sf by tile-area\n  uses mortar 1 lb for each 1 sf by tile-area\n';
    const without = planOf(floor, { library: [rows(seal)] });
    expect(without.takeOff.byWork.get('seal')?.map(({ onlyIfDone, id }) => [onlyIfDone, id])).toEqual([
      [true, 'seal@a.floor'],
      [true, 'mortar@a.floor'],
    ]);
    expect(without.takeOff.purchases().map(({ item }) => item)).toEqual(['tile']);
    const withTask = planOf(`${floor}task sealing does seal\n`, { library: [rows(seal)] });
    expect(withTask.takeOff.purchases().map(({ item }) => item)).toEqual(['tile', 'mortar']);
  });
});

test('a fixture names the works that set it and prepare for it; others with hours by the count leave it alone', () => {
  const rows = `
work set
  labour 3 h each by fixture-count
work drains
  labour 4 h each by fixture-count
  uses pipe 15 ft for each 1 each by fixture-count
work wiring
  labour 1 h each by fixture-count
material pipe laid strip
  sold by piece of 10'
fixture toilet
  set by set
  roughed by drains
  counted as fixture
`;
  const plan = planOf('room a\n  fixtures 2 toilet, 1 bidet\n', { library: [rows] });
  expect(
    plan.takeOff.lines.map(({ item, work, hours, onlyIfDone }) => [item, work?.name, amount(hours, 'h'), onlyIfDone]),
  ).toEqual([
    ['toilet', 'set', 6, undefined],
    ['fixture count', 'drains', 8, undefined],
    ['pipe', 'drains', Number.NaN, undefined],
    ['bidet', undefined, Number.NaN, undefined],
    ['fixture count', 'set', 3, true],
    ['fixture count', 'drains', 4, true],
    ['pipe', 'drains', Number.NaN, true],
    ['fixture count', 'wiring', 1, true],
  ]);
  expect(plan.purchase('pipe').bought.value).toBe(3);
});

test('hours for the whole of it stand once, whatever the quantity', () => {
  const rows =
    'work dig\n  installs earth by trench-volume\n  labour 2 h by trench-volume\n  labour 0.5 h/cy by trench-volume\nitem earth by volume\n';
  const plan = planOf("trench a 27' long, 10' deep, 1' wide\n", { library: [rows] });
  expect(amount(plan.line('trench-volume').hours, 'h')).toBeCloseTo(2 + 0.5 * 10, 9);
});

test('and once for an element, though it is measured in several places', () => {
  const rows = 'material membrane laid membrane\nmaterial tile laid tiles\nwork flood\n  labour 2 h by membrane-area\n';
  const plan = planOf(
    "room a\n  size 5' x 8'\n  floor tile over membrane\n  wet 60 sf tile over membrane\ntask test does flood\n",
    { library: [rows] },
  );
  expect(plan.takeOff.byWork.get('flood')?.map(({ where, hours }) => [where.part, amount(hours, 'h')])).toEqual([
    ['wet walls', 2],
    ['floor', Number.NaN],
  ]);
});
