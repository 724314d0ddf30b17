// Which works take goods that are counted by a measure: those that install them, and those that go along with them; and
// which goods a work means where a plan names none.
import type { GoodsRow } from '#model/model';
import { comesIn, materialOf } from './goods.ts';
import type { Literal, Measure, NamedGoods, Portion } from './lines.ts';
import { type Installing, materialNamed, type Rows, type Taking } from './rows.ts';

/** A portion with several measures is counted by the first that some work installs its goods by. */
export function measureOf({ measure, otherwise, goods }: Portion, rows: Rows): Measure {
  if (otherwise === undefined || goods === undefined) return measure;
  return (
    [measure, ...otherwise].find((each) => (rows.installing.get(each) ?? []).some((entry) => names(entry, goods))) ?? measure
  );
}

function names({ goods }: Installing, named: NamedGoods): boolean {
  return goods.includes(named.name) || (named.of !== undefined && named.of.kind !== 'material' && goods.includes(named.of.kind));
}

/** In the order of the works: those that install the goods, and those that go along with them. */
export function takingsOf(by: Measure, named: NamedGoods | undefined, rows: Rows): readonly Taking[] {
  let ofMeasure = rows.takings.get(by);
  if (ofMeasure === undefined) rows.takings.set(by, (ofMeasure = new Map()));
  const key = named === undefined ? '' : (named.of ?? named.name);
  let takings = ofMeasure.get(key);
  if (takings === undefined) {
    const entries = rows.installing.get(by) ?? [];
    const installers = named === undefined ? [] : installersOf(entries, named, rows);
    takings = entries
      .map((entry) => ({ entry, own: installers.includes(entry) }))
      .filter(({ entry, own }) => own || follows(entry, named, rows));
    ofMeasure.set(key, takings);
  }
  return takings;
}

/** Entries that name the goods; for goods no work names, those that install goods laid the same way, if one work alone does. */
function installersOf(entries: readonly Installing[], named: NamedGoods, rows: Rows): readonly Installing[] {
  const direct = entries.filter((entry) => names(entry, named));
  const material = materialOf(named);
  if (direct.length > 0 || material === undefined || rows.installed.has(named.name)) return lastWork(direct);
  const laid = material.given.laid?.value;
  const alike = entries.filter(({ goods }) =>
    goods.some((name) => laid !== undefined && materialNamed(rows, name)?.given.laid?.value === laid),
  );
  return new Set(alike.map(({ work }) => work)).size === 1 ? alike.slice(0, 1) : [];
}

/** Of several works that install the same goods by the same measure the last counts: a plan's own stands after the library's. */
function lastWork(entries: readonly Installing[]): readonly Installing[] {
  const last = entries[entries.length - 1]?.work;
  return entries.filter(({ work }) => work === last);
}

/** Whether a work goes along with goods that it does not install itself: it is measured only, or goes over them as a coat. */
function follows({ goods }: Installing, named: NamedGoods | undefined, rows: Rows): boolean {
  if (named === undefined) return true;
  const coat = materialOf(named)?.given.laid?.value === 'coats';
  return goods.every((name) => {
    const row = rows.goods.get(name);
    return row?.kind === 'item' || (!coat && row?.kind === 'material' && row.given.laid?.value === 'coats');
  });
}

/**
 * The goods of an entry for a portion that names none: the only ones, those that come in the sizes given, or a coat that
 * brings another of the list with it, which is the whole of the work. Undefined where nothing chooses.
 */
export function usualGoods({ goods }: Installing, sizes: readonly Literal[], rows: Rows): NamedGoods | undefined {
  const [only] = goods;
  if (goods.length === 1 && only !== undefined) return inSizes(only, sizes, rows);
  const fitting = goods.find((name) => {
    const row = materialNamed(rows, name);
    return sizes.length > 0 && row !== undefined && row.given.size.length > 0 && comesIn(row, sizes);
  });
  if (fitting !== undefined) return inSizes(fitting, sizes, rows);
  const whole = goods.find((name) => goods.includes(materialNamed(rows, name)?.given['under it']?.value.name ?? ''));
  return whole === undefined ? undefined : inSizes(whole, sizes, rows);
}

/** Sizes of a portion hold for goods that come in them; what has no sizes, or others, goes without: one object for all. */
export function inSizes(name: string, sizes: readonly Literal[], rows: Rows): NamedGoods {
  const of: GoodsRow | undefined = rows.goods.get(name);
  const fits = of?.kind === 'material' ? of.given.size.length > 0 && comesIn(of, sizes) : true;
  if (fits && sizes.length > 0) return { name: of?.name ?? name, of, sizes };
  let plain = rows.plain.get(name);
  if (plain === undefined) rows.plain.set(name, (plain = { name: of?.name ?? name, of, sizes: [] }));
  return plain;
}
