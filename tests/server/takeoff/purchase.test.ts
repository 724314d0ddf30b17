// From what is needed to what is bought: rounded up once, in the first package that fits or the step of the order; sticks
// cut to pieces by the stock that leaves least over.
import { describe, expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { emptyPlanMemory, planOf } from '#tests/support/plan';

const floors = (row: string, ...areas: readonly string[]) =>
  planOf(areas.map((size, index) => `room r${index}\n  size ${size}\n  floor plank\n`).join(''), {
    library: [`material plank laid boards\n${row}work lay\n  installs plank by floor-finish-area\n`],
  }).purchase('plank');

describe('packages', () => {
  test('are rounded up once over the plan, not in each room', () => {
    const bought = floors('  sold by box of 20 sf\n', "10' x 3'", "10' x 3'");
    expect([bought.bought.value, bought.package, amount(bought.holds, 'sf')]).toEqual([3, 'box', 20]);
  });
  test('the first that is measured like the goods', () => {
    expect(floors("  sold by piece of 12'\n  sold by box of 20 sf\n", "10' x 3'").package).toBe('box');
  });
  test('by the unit itself come in whole units, without a package', () => {
    const bought = floors('  sold by sf\n  waste 5% added\n', "10' x 3'");
    expect([amount(bought.bought, 'sf'), bought.holds, bought.package]).toEqual([32, undefined, 'sf']);
  });
  test('a step of the order goes before the package', () => {
    expect(amount(floors('  sold by sf\n  rounds up to 25 sf\n', "10' x 3'").bought, 'sf')).toBe(50);
  });
  test('goods without a package are bought as needed', () => {
    const bought = floors('', "10' x 3'");
    expect([amount(bought.bought, 'sf'), bought.package]).toEqual([30, '']);
  });
});

describe('packages in the units of the plan', () => {
  const board = (units: string, row: string) =>
    planOf(`plan p\n  units ${units}\nroom r\n  size 3 m x 2.4 m\n  floor plank\n`, {
      library: [`material plank laid boards\n${row}work lay\n  installs plank by floor-finish-area\n`],
    }).purchase('plank');
  const both = '  sold by box of 20 sf\n  sold by box of 2 m2\n';

  test('go first, wherever they stand in the row', () => {
    expect(board('mm', both).holds?.unit).toBe('m2');
    expect(board('feet', both).holds?.unit).toBe('sf');
    expect(board('feet', '  sold by box of 2 m2\n  sold by box of 20 sf\n').holds?.unit).toBe('sf');
  });
  test('a sheet is known by its sides', () => {
    const row = "  sold by sheet of 4' x 8'\n  sold by sheet of 1200 mm x 2400 mm\n";
    expect(amount(board('metric', row).holds, 'm2')).toBeCloseTo(2.88, 9);
  });
  test('the only ones there are, are bought whatever the units', () => {
    expect(board('mm', '  sold by box of 20 sf\n').holds?.unit).toBe('sf');
  });
  test('the step of the order likewise', () => {
    const steps = '  sold by sf\n  sold by m2\n  rounds up to 5 sf\n  rounds up to 0.5 m2\n';
    expect(amount(board('mm', steps).bought, 'm2')).toBeCloseTo(7.5, 9);
    expect(amount(board('feet', steps).bought, 'sf')).toBe(80);
  });
  test('are chosen anew when the plan changes its units', () => {
    const memory = emptyPlanMemory();
    const plan = (units: string) =>
      planOf(`plan p\n  units ${units}\nroom r\n  size 3 m x 2.4 m\n  floor plank\n`, {
        memory,
        library: [`material plank laid boards\n${both}work lay\n  installs plank by floor-finish-area\n`],
      });
    expect(['feet', 'metric', 'feet'].map((units) => plan(units).purchase('plank').holds?.unit)).toEqual(['sf', 'm2', 'sf']);
  });
  test('sticks are cut from lengths of the plan', () => {
    const joists = planOf('plan p\n  units mm\nlevel main\n  footprint 6000 x 3900\n  floor joists\n  joists run north-south\n', {
      library: [
        "material joist laid framing\n  sold by piece of 13'\n  sold by piece of 4.2 m\n  size 48x198 actual 48 mm x 198 mm\nassembly joists for floor\n  layer joist 48x198 at 600 mm oc\nwork frame\n  installs joist by floor-frame-length\n",
      ],
    });
    expect(joists.takeOff.purchases().map(({ holds, bought }) => [amount(holds, 'm'), bought.value])).toEqual([[4.2, 11]]);
  });
});

describe('sticks', () => {
  const joists = (stock: readonly string[], span: string, waste = '0%') =>
    planOf(`level main\n  footprint 40' x ${span}\n  floor joists\n  joists run north-south\n`, {
      library: [
        `material joist laid framing\n${stock.map((length) => `  sold by piece of ${length}\n`).join('')}  waste ${waste} added\n  size 2x10 actual 1 1/2" x 9 1/4"\nassembly joists for floor\n  layer joist 2x10 at 16" oc\nwork frame\n  installs joist by floor-frame-length\n`,
      ],
    })
      .takeOff.purchases()
      .map(({ holds, bought }) => [amount(holds, 'ft'), bought.value]);

  // 40 ft at 16 in: 31 joists.
  test('the next length that holds the piece', () => expect(joists(["8'", "12'", "16'"], "11'")).toEqual([[12, 31]]));
  test('two from one stick where that leaves least over', () => expect(joists(["8'", "14'"], "7'")).toEqual([[14, 16]]));
  test('a piece longer than any stock takes several', () => expect(joists(["8'", "14'", "16'"], "28'")).toEqual([[14, 62]]));
  test('never spliced where one stick is long enough', () => expect(joists(["6'", "16'"], "12'")).toEqual([[16, 31]]));
  test('waste is in whole sticks once', () => expect(joists(["12'"], "12'", '10%')).toEqual([[12, 35]]));
  test('what cutting leaves over counts as waste', () => expect(joists(["14'"], "12'", '10%')).toEqual([[14, 31]]));
  test('another length for one stick is not worth it', () => expect(joists(["8'", "14'"], "7'")).toEqual([[14, 16]]));
});

test('what is dug is bought by no one, but loads are counted where the row says what a truck carries', () => {
  const dug = (load: string) =>
    planOf("trench a 27' long, 10' deep, 1' wide\n", {
      library: [`item earth by volume\n  swells 25%\n${load}work dig\n  installs earth by trench-volume\n`],
    }).takeOff.purchases();
  expect(dug('')).toEqual([]);
  expect(dug('  load 5 cy\n').map(({ bought, package: word }) => [bought.value, word])).toEqual([[3, 'load']]);
});
