// From what is needed to what is bought: rounded up once, in the first package that fits or the step of the order; sticks
// cut to pieces by the stock that leaves least over.
import { describe, expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

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
});

test('what is dug is bought by no one, but loads are counted where the row says what a truck carries', () => {
  const dug = (load: string) =>
    planOf("trench a 27' long, 10' deep, 1' wide\n", {
      library: [`item earth by volume\n  swells 25%\n${load}work dig\n  installs earth by trench-volume\n`],
    }).takeOff.purchases();
  expect(dug('')).toEqual([]);
  expect(dug('  load 5 cy\n').map(({ bought, package: word }) => [bought.value, word])).toEqual([[3, 'load']]);
});
