// What is bought of goods by how they are laid out, where the plan chooses that: sheets by length, rolls by what comes off
// them, tile with its cuts. Lines of which nobody knows the sides, such as slopes, are bought by area beside them.
import { constant, form, measure, type Quantity, roundUp, total } from '#kit/quantity';
import type { System } from '#kit/units';
import type { Material } from '#model/model';
import { inUnitsOf, type Package, packagesOf } from './goods.ts';
import type { Line, NamedGoods } from './lines.ts';
import { wasteFactor } from './needed.ts';
import { notLaid } from './not-laid.ts';
import { areaOff, laidRolls, type RollBy } from './rolls.ts';
import { type LaidSheets, layingOf } from './sheets.ts';
import { laidTiles, type TileBy, tileSides } from './tiles.ts';

export interface LaidOut {
  readonly bought: Quantity;
  readonly word: string;
  readonly holds?: Quantity;
  readonly sticks?: readonly { readonly bought: Quantity<'number'>; readonly holds: Quantity }[];
}

const packages = form('bought', 'needed ÷ what one holds, rounded up', (needed = 0, holds = 1) =>
  holds > 0 ? roundUp(needed / holds) : 0,
);
const steps = form('bought', 'needed rounded up to whole steps', (needed = 0, step = 1) =>
  step > 0 ? roundUp(needed / step) * step : needed,
);
const spare = form('with what breaks', 'tiles × (1 + waste), rounded up', (tiles = 0, waste = 1) => roundUp(tiles * waste));
const asArea = form('area of the tiles', 'tiles × width × length', (tiles = 0, width = 0, length = 0) => tiles * width * length);

/** Undefined where the row does not ask for it, or nobody knows what the goods lie on. */
export function laidOut(goods: NamedGoods, row: Material, lines: readonly Line[], system: System): LaidOut | undefined {
  if (row.given['laid-out'] === undefined) return undefined;
  const bareOf = (laid: readonly { readonly line: Line }[]): readonly Quantity[] =>
    notLaid(lines, new Set(laid.map(({ line }) => line))).map(({ needed }) => needed);
  const ways = inUnitsOf(system, packagesOf(row, goods.sizes));
  switch (row.given.laid?.value) {
    case 'sheets':
      return sheetsBought(goods, row, lines, ways, bareOf, system);
    case 'rolls': {
      const by = rollBy(row, system);
      const rolls = by === undefined ? [] : laidRolls(lines, by);
      if (by === undefined || rolls.length === 0) return undefined;
      return areaBought([areaOff(rolls, by.width, lines[0]!.needed?.unit), ...(bareOf(rolls) as Quantity<'area'>[])], ways);
    }
    case 'tiles': {
      const by = tileBy(goods, row);
      const tiles = by === undefined ? [] : laidTiles(lines, by);
      if (by === undefined || tiles.length === 0) return undefined;
      const count = measure(
        'number',
        spare,
        total(
          'tiles',
          'number',
          tiles.map((each) => each.tiles),
        ),
        constant('with waste', wasteFactor(row), 'number'),
      );
      return areaBought([measure('area', asArea, count, by.width, by.length), ...(bareOf(tiles) as Quantity<'area'>[])], ways);
    }
    default:
      return undefined;
  }
}

/** How a roll is laid by a row; undefined where it does not say how wide it is. */
export function rollBy(
  row: Material,
  system: System,
  laid: Pick<Material['given'], 'trim' | 'pieced'> = row.given,
): RollBy | undefined {
  const [width] = inUnitsOf(
    system,
    row.given['roll-width'].map(({ value }) => value),
  );
  const trim = laid.trim?.value ?? constant('trim', 0, 'length');
  return width === undefined ? undefined : { width, trim, pieced: laid.pieced !== undefined };
}

export function tileBy(
  goods: NamedGoods,
  row: Material,
  laid: Pick<Material['given'], 'pieced'> = row.given,
): TileBy | undefined {
  const sides = tileSides(goods);
  const joint = row.given.joint?.value ?? constant('joint', 0, 'length');
  return sides === undefined ? undefined : { ...sides, joint, pieced: laid.pieced !== undefined };
}

/** In whole boxes, or by the unit. */
function areaBought(areas: readonly Quantity<'area'>[], ways: readonly Package[]): LaidOut | undefined {
  const needed = areas.length === 1 ? areas[0]! : total('laid', 'area', areas);
  const way = ways.find(({ holds }) => holds.dimension === 'area');
  if (way === undefined) return undefined;
  if (!way.loose) return { bought: measure('number', packages, needed, way.holds), word: way.word, holds: way.holds };
  const unit = constant(`one ${way.word}`, way.holds.value, 'area');
  const bought = measure('area', steps, needed, unit);
  return { bought: { ...bought, unit: way.word }, word: way.word };
}

function sheetsBought(
  goods: NamedGoods,
  row: Material,
  lines: readonly Line[],
  [usual]: readonly Package[],
  bareOf: (laid: LaidSheets['faces']) => readonly Quantity[],
  system: System,
): LaidOut | undefined {
  const laid = layingOf(goods, row, lines, system);
  if (laid === undefined) return undefined;
  const bare = bareOf(laid.faces);
  const sticks = laid.cut.sticks.map(({ bought, holds }) => ({ bought, holds: laid.packages.get(holds.value)!.holds }));
  if (bare.length > 0 && usual !== undefined && usual.holds.dimension === bare[0]!.dimension) {
    const rest = measure('number', packages, total('where nobody tells its sides', usual.holds.dimension, bare), usual.holds);
    const at = sticks.findIndex(({ holds }) => holds === usual.holds);
    if (at < 0) sticks.push({ bought: rest, holds: usual.holds });
    else sticks[at] = { ...sticks[at]!, bought: total('bought', 'number', [sticks[at]!.bought, rest]) };
  }
  const [only, ...others] = sticks;
  if (only === undefined) return undefined;
  const { word } = laid.cut;
  if (others.length === 0) return { bought: only.bought, word, holds: only.holds };
  const all = total(
    'bought',
    'number',
    sticks.map(({ bought }) => bought),
  );
  return { bought: all, word, sticks };
}
