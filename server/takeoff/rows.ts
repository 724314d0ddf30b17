// The library's rows put in order for the take-off: which work installs what by which measure, what it uses, its hours.
import { sameList } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { System } from '#kit/units';
import type { ElementOf, GoodsRow, Material, WorkKind } from '#model/model';
import type { Model } from '#model/resolve';
import { sticksOf } from './goods.ts';
import type { Measure, NamedGoods } from './lines.ts';

/** One `installs` line: these goods, any one of which it may be, by this measure. */
export interface Installing {
  readonly work: WorkKind;
  readonly goods: readonly string[];
}
export type Labour = WorkKind['given']['labour'][number]['value'];
export type Uses = WorkKind['given']['uses'][number]['value'];

export interface Rows {
  readonly works: readonly WorkKind[];
  readonly installing: ReadonlyMap<Measure, readonly Installing[]>;
  /** Works with hours or other goods by a measure that they install nothing by. */
  readonly besides: ReadonlyMap<Measure, readonly WorkKind[]>;
  /** Goods by name or second name. */
  readonly goods: ReadonlyMap<string, GoodsRow>;
  /** Every name that some work installs. */
  readonly installed: ReadonlySet<string>;
  /** A work's hours and what it uses up, by measure; rows without one go with what it installs. */
  readonly labour: ReadonlyMap<WorkKind, ReadonlyMap<Measure, readonly Labour[]>>;
  readonly uses: ReadonlyMap<WorkKind, ReadonlyMap<Measure, readonly Using[]>>;
  /** Which entries of a measure goods go with: found once for each sort of goods. */
  readonly takings: Map<Measure, Map<GoodsRow | string, readonly Taking[]>>;
  /** Materials that the plan has counted by a book of its choice, as that book counts them. */
  readonly counted: ReadonlyMap<Material, Material>;
  /** Whose units the plan is in. */
  readonly system: System;
  /** Goods without a size by name, made once each. */
  readonly plain: Map<string, NamedGoods>;
  /** Counts the changes of rows within one memory. */
  readonly stamp: number;
  /** What became different since the rows before; undefined where that may be anything. */
  readonly since: Since | undefined;
}
export interface Since {
  readonly stamp: number;
  /** Measures whose works or goods changed, and goods that are no more what they were. */
  readonly measures: ReadonlySet<Measure>;
  readonly goods: ReadonlySet<GoodsRow>;
}

/** An entry that installs the goods themselves, or goes along with them. */
export interface Taking {
  readonly entry: Installing;
  readonly own: boolean;
}
export interface Using {
  readonly uses: Uses;
  readonly goods: NamedGoods;
  /** With which goods, or openings of which sort, alone; and with which not. */
  readonly only: readonly string[] | undefined;
  readonly except: readonly string[] | undefined;
}

export interface RowsMemory {
  lists: readonly (readonly unknown[])[];
  rows: Rows | undefined;
}
export function rowsMemory(): RowsMemory {
  return { lists: [], rows: undefined };
}

/** The same object for as long as every row is. */
export function rowsOf(model: Model, memory: RowsMemory): Rows {
  const works = model.rows('work');
  const goods: readonly (readonly GoodsRow[])[] = [model.rows('material'), model.rows('item'), model.rows('fixture')];
  const chosen = booksOf(model).flatMap(({ name, by }) => [name, by]);
  const system: System = model.settings.units === 'feet' ? 'feet' : 'metric';
  const lists = [works, ...goods, chosen, [system]];
  if (memory.rows === undefined || !lists.every((list, at) => sameList(list, memory.lists[at] ?? [])))
    memory.rows = arranged(works, goods.flat(), countedBy(model, goods.flat()), system, memory.rows);
  memory.lists = lists;
  return memory.rows;
}

/** The books that the plan chooses, and before them the usual ones of goods that are laid out whatever a plan says. */
function booksOf(model: Model): readonly { readonly name: string; readonly by: ElementOf<'convention'> }[] {
  const chosen = (model.plan?.given.counts ?? []).map(({ value }) => ({ name: value.of.name, by: value.by }));
  const usual = model
    .rows('convention')
    .filter(({ given }) => given.usual !== undefined && given['laid-out'] !== undefined)
    .flatMap((by) => (by.given.of?.value ?? []).map(({ value }) => ({ name: value.name, by })));
  return [...usual.filter(({ name }) => !chosen.some((each) => each.name === name)), ...chosen];
}

/** What a book says of counting stands before what the material's own row says. */
function countedBy(model: Model, list: readonly GoodsRow[]): ReadonlyMap<Material, Material> {
  const counted = new Map<Material, Material>();
  for (const { name, by } of booksOf(model)) {
    const row = list.find((each) => each.name === name);
    if (row?.kind !== 'material') continue;
    const { waste, deducts, whole, covers, lap, rounds, nearest, least, 'laid-out': laidOut, trim, pieced } = by.given;
    const own = row.given;
    counted.set(row, {
      ...row,
      given: {
        ...own,
        waste: waste ?? own.waste,
        deducts: deducts ?? own.deducts,
        nearest: nearest ?? own.nearest,
        least: least ?? own.least,
        whole: whole ?? own.whole,
        'laid-out': laidOut ?? own['laid-out'],
        trim: trim ?? own.trim,
        pieced: pieced ?? own.pieced,
        covers: covers ?? own.covers,
        lap: lap ?? own.lap,
        rounds: rounds.length > 0 ? rounds : own.rounds,
      },
    });
  }
  return counted;
}

function arranged(
  works: readonly WorkKind[],
  list: readonly GoodsRow[],
  counted: ReadonlyMap<Material, Material>,
  system: System,
  before: Rows | undefined,
): Rows {
  const goods = new Map<string, GoodsRow>();
  for (const row of list) {
    goods.set(row.name, row);
    if (row.kind === 'material' || row.kind === 'fixture')
      for (const line of row.given.also)
        for (const { value } of line.value) if (!goods.has(value.name)) goods.set(value.name, row);
  }
  const labour = new Map<WorkKind, Map<Measure, Labour[]>>();
  const uses = new Map<WorkKind, Map<Measure, Using[]>>();
  const installing = new Map<Measure, Installing[]>();
  const besides = new Map<Measure, WorkKind[]>();
  const installed = new Set<string>();
  for (const work of works) {
    const own = new Set<Measure>();
    for (const { value } of work.given.installs) {
      const names = value.goods.map(({ value: named }) => goods.get(named.name)?.name ?? named.name);
      for (const name of names) installed.add(name);
      for (const { value: measure } of value.by) {
        own.add(measure);
        addTo(installing, measure, { work, goods: names });
      }
    }
    const also = [...work.given.labour, ...work.given.uses].flatMap(({ value }) =>
      value.by === undefined || own.has(value.by) ? [] : [value.by],
    );
    for (const measure of new Set(also)) addTo(besides, measure, work);
    const hours = new Map<Measure, Labour[]>();
    for (const { value } of work.given.labour)
      for (const measure of value.by === undefined ? own : [value.by]) addTo(hours, measure, value);
    labour.set(work, hours);
    const used = new Map<Measure, Using[]>();
    for (const { value, deeper } of work.given.uses) {
      const using = {
        uses: value,
        goods: { name: value.goods.name, of: value.goods, sizes: [] },
        only: deeper['only for']?.value.map(({ value: { name } }) => name),
        except: deeper['except for']?.value.map(({ value: { name } }) => name),
      };
      for (const measure of value.by === undefined ? own : [value.by]) addTo(used, measure, using);
    }
    uses.set(work, used);
  }
  const stamp = (before?.stamp ?? 0) + 1;
  const found = { counted, takings: new Map(), plain: new Map() };
  const rows: Rows = { works, installing, besides, goods, installed, labour, uses, system, ...found, stamp, since: undefined };
  return before === undefined ? rows : { ...rows, since: sinceThen(rows, before) };
}

/** Which measures and goods a change of rows touches, so that the rest need not be gone through again. */
function sinceThen(now: Rows, before: Rows): Since | undefined {
  if (now.counted.size > 0 || before.counted.size > 0 || now.system !== before.system) return undefined;
  if (!sameList([...now.installed], [...before.installed])) return undefined;
  const works = changed(new Set(now.works), new Set(before.works));
  const goods = changed(new Set(now.goods.values()), new Set(before.goods.values()));
  const measures = new Set<Measure>();
  for (const work of works) {
    for (const { value } of work.given.installs) for (const { value: by } of value.by) measures.add(by);
    for (const { value } of [...work.given.labour, ...work.given.uses]) if (value.by !== undefined) measures.add(value.by);
  }
  const names = new Set([...goods].map(({ name }) => name));
  for (const { installing } of [now, before])
    for (const [measure, entries] of installing)
      if (entries.some((entry) => entry.goods.some((name) => names.has(name)))) measures.add(measure);
  return { stamp: before.stamp, measures, goods };
}

function changed<T>(a: ReadonlySet<T>, b: ReadonlySet<T>): ReadonlySet<T> {
  return new Set([...[...a].filter((each) => !b.has(each)), ...[...b].filter((each) => !a.has(each))]);
}

export function materialNamed(rows: Rows, name: string): Material | undefined {
  const row = rows.goods.get(name);
  return row?.kind === 'material' ? row : undefined;
}

/** The item that is dug, hauled or filled by a measure: it carries swell and slopes. */
export function itemBy(rows: Rows, measure: Measure): Extract<GoodsRow, { kind: 'item' }> | undefined {
  for (const { goods } of rows.installing.get(measure) ?? [])
    for (const name of goods) {
      const row = rows.goods.get(name);
      if (row?.kind === 'item') return row;
    }
  return undefined;
}

/** Goods as the plan's choice of books counts them. */
export function asCounted<T extends NamedGoods | undefined>(goods: T, { counted }: Rows): T {
  const own = counted.size === 0 || goods?.of?.kind !== 'material' ? undefined : counted.get(goods.of);
  return own === undefined ? goods : { ...goods, of: own };
}

/** The longest stick in base units that is sold of what is installed by a measure; 0 where there is none. */
export function longestBy(rows: Rows, by: Measure): number {
  let longest = 0;
  for (const { goods } of rows.installing.get(by) ?? [])
    for (const name of goods) {
      const of = rows.goods.get(name);
      if (of === undefined) continue;
      for (const { holds } of sticksOf({ name, of, sizes: [] }, rows.system)) longest = Math.max(longest, holds.value);
    }
  return longest;
}
