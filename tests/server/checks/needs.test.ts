// Work that a plan calls for and no task does. Each row of the library names what it rests on; here are the cases that a
// builder meets: window flashing (Building America Solution Center, Fully Flashed Window and Door Openings), the sheet under
// a slab (2012 International Residential Code R506.2.3), marks before digging (29 CFR 1926.651(b)), common practice else.
import { describe, expect, test } from 'vitest';
import { emptyMemory } from '#server/pipeline';
import { checked } from '#tests/support/checked';
import { libraryRows, listOf, valuesOf } from '../library/rows.ts';

const missing = (text: string): readonly string[] => checked(text).told.filter((line) => line.includes(' missing/'));
const does = (...works: readonly string[]): string =>
  `trade us crew of 2 at $50/h\n${works.map((work, at) => `task t${at} does ${work} takes 1d by us${at === 0 ? '' : ` after t${at - 1}`}\n`).join('')}`;

test('windows set and nobody flashes them', () => {
  expect(missing(does('set-windows'))).toEqual(['warning missing/window-flashing t0']);
  expect(missing(does('set-windows', 'set-flashing'))).toEqual([]);
  expect(checked(does('set-windows')).messages('missing/window-flashing')).toEqual([
    'Windows and doors are set and nobody flashes them: "t0" calls for "set-flashing", and no task does it. Water runs in at the sill behind the siding and rots the wall before anybody sees it. Add the flashing of openings: pan, jambs, head; the maker\'s method governs.',
  ]);
});

test('rooms alone call for nothing, nor does a part of the job that is not planned', () => {
  const rooms = "level main\nroom bath on main\n  use bathing\n  size 5' x 8'\n  floor porcelain-tile\n";
  expect(missing(rooms)).toEqual([]);
  expect(missing(`${rooms}${does('frame-walls')}`)).toEqual([]);
});

// Every row that needs nothing but works: the works that call, without those that answer, are told, and with the first
// answer they are not.
describe('each row by works alone', () => {
  const rows = libraryRows().filter(
    (row) => row.kind === 'need' && valuesOf(row, 'when').length === 0 && !row.lines.some((line) => line.startsWith('for ')),
  );
  const plain = rows.filter((row) => !/^need \S+ ".*" for /.test(row.lines[0] ?? '') && valuesOf(row, 'answered by').length > 0);
  const perThing = new Set([
    'damp-proofing',
    'foundation-drain',
    'crawl-cover',
    'deck-ledger',
    'tile-membrane',
    'wet-wall-backing',
  ]);
  test.each(plain.filter(({ name }) => !perThing.has(name)).map((row) => [row.name, row] as const))('%s', (name, row) => {
    const calls = valuesOf(row, 'called by').map((line) => listOf(line)[0]!);
    const answer = listOf(valuesOf(row, 'answered by')[0]!)[0]!;
    const told = (text: string): boolean => missing(text).some((line) => line.includes(` missing/${name} `));
    expect(told(does(...calls))).toBe(true);
    const isVisit = libraryRows().some((each) => each.kind === 'inspection' && each.name === answer);
    const answering = isVisit ? `inspection ${answer} by us` : `task done-too does ${answer} takes 1d by us`;
    expect(told(`${does(...calls)}${answering}\n`)).toBe(false);
    if (calls.length > 1) expect(told(does(calls[0]!))).toBe(false);
  });
});

describe('what the plan holds counts as well as what it does', () => {
  const bath = (floor: string, more = ''): string =>
    `level main\n  height 8'\nroom bath on main\n  use bathing\n  size 5' x 8'\n  floor ${floor}\n${more}${does('set-tile')}`;

  test('a tiled floor in a bathing room without a membrane', () => {
    expect(missing(bath('porcelain-tile'))).toEqual(['warning missing/tile-membrane bath']);
    expect(missing(bath('porcelain-tile').replace('use bathing', 'use living'))).toEqual([]);
  });

  test('a membrane that is drawn and nobody lays is told once, with its amount', () => {
    const { told } = checked(bath('porcelain-tile over tile-membrane'));
    expect(told.filter((line) => line.includes(' missing/'))).toEqual([]);
    expect(told.filter((line) => line.includes('work/nobody-does-it')).length).toBeGreaterThan(0);
  });

  test('one bath with a membrane does not answer for another', () => {
    const two = `${bath('porcelain-tile over tile-membrane', "room wc on main\n  use bathing\n  size 4' x 5'\n  floor mosaic-tile\n")}task m does lay-membrane takes 1d by us\n`;
    expect(missing(two)).toEqual(['warning missing/tile-membrane wc']);
  });

  test('a cellar wall is coated and drained; a low wall, or ground that drains well, asks for less', () => {
    const cellar = (wall: string, site = ''): readonly string[] =>
      missing(
        `site lot\n  topsoil 6"\n${site}foundation base\n  footing 20" x 8"\n  wall 8" x ${wall}\n  bottom 80" below grade\n${does('pour-stem-walls', 'backfill-foundation')}`,
      ).filter((line) => !line.includes('anchor'));
    expect(cellar("8'")).toEqual(['warning missing/damp-proofing base', 'warning missing/foundation-drain base']);
    expect(cellar("3'")).toEqual([]);
    expect(cellar("8'", '  drains well\n')).toEqual(['warning missing/damp-proofing base']);
  });

  test('a deck that hangs on the house asks for a ledger, a freestanding one does not', () => {
    const deck = (more: string): readonly string[] => missing(`deck porch\n  size 8' x 6'\n${more}${does('frame-deck')}`);
    expect(deck('')).toEqual(['warning missing/deck-ledger porch']);
    expect(deck('  freestanding\n')).toEqual([]);
  });

  test('a garage slab is excused the sheet, another is not', () => {
    const slab = (use: string): boolean =>
      missing(`level main\nroom one on main\n  use ${use}\n${does('pour-slab')}`).some((line) => line.includes('slab-retarder'));
    expect(slab('garage')).toBe(false);
    expect(slab('living')).toBe(true);
  });

  test('a panel shell wants fresh air: a ventilator among the fixtures is enough', () => {
    const shell = (fixtures: string): boolean =>
      missing(`level main\nroom den on main\n  size 10' x 10'\n${fixtures}${does('set-wall-panels', 'hang-board')}`).some(
        (line) => line.includes('panel-ventilation'),
      );
    expect(shell('')).toBe(true);
    expect(shell('  fixtures 1 ventilator\n')).toBe(false);
  });

  test('alarms: where the code is named its own minimum says so', () => {
    const beds = (plan: string): readonly string[] =>
      missing(`${plan}level main\nroom bed on main\n  use sleeping\n  size 10' x 10'\n${does('set-devices')}`);
    expect(beds('')).toEqual(['warning missing/alarms t0']);
    expect(beds('plan p\n  code irc-2021\n')).toEqual([]);
  });
});

test('what is told as missing is not owed a second time at the final', () => {
  const plan = checked(`
    assembly shell for wall
      layer stud 2x6 at 16" oc, filled with spray-foam
      layer spray-foam 3"
    trade us crew of 2 at $50/h
    trade city
    task foam does spray-insulation takes 1d by us
    inspection building-final by city, after foam
  `);
  expect(plan.told.filter((line) => /foam-barrier|foam-left-bare/.test(line))).toEqual(['note missing/foam-barrier foam']);
});

test('what is done calls for nothing more', () => {
  const plan = `${does('set-windows')}progress 2027-05-10\n  t0 finished 2027-05-07\n`;
  expect(missing(plan)).toEqual([]);
});

test('it can be answered like any finding', () => {
  const accepted = does('set-windows').replace(
    'by us\n',
    'by us\n  accept missing/window-flashing "The window firm brings its own tape"\n',
  );
  expect(checked(accepted).told.filter((line) => /missing|accept/.test(line))).toEqual([]);
});

test('typed into a plan it says what a fresh look says', () => {
  const memory = emptyMemory();
  const bath = (floor: string, works: string): string =>
    `level main\n  height 8'\nroom bath on main\n  use bathing\n  size 5' x 8'\n  floor ${floor}\n${does(...works.split(' '))}`;
  for (const text of [
    bath('porcelain-tile', 'set-tile'),
    bath('sheet-vinyl', 'set-tile'),
    bath('porcelain-tile', 'set-tile lay-membrane'),
    bath('porcelain-tile', 'lay-vinyl set-windows'),
    bath('porcelain-tile', 'set-tile set-windows set-flashing'),
  ])
    expect(checked(text, { memory }).told).toEqual(checked(text).told);
});
