// The library's rows put in order for the take-off: which work installs what by which measure, what it uses, its hours.
import type { GoodsRow, Material, WorkKind } from '#model/model';
import type { Model } from '#model/resolve';
import type { Measure } from './lines.ts';

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
}

export interface RowsMemory {
  key: readonly unknown[];
  rows: Rows | undefined;
}
export function rowsMemory(): RowsMemory {
  return { key: [], rows: undefined };
}

/** The same object for as long as every row is. */
export function rowsOf(model: Model, memory: RowsMemory): Rows {
  const works = model.rows('work');
  const goods: readonly GoodsRow[] = [...model.rows('material'), ...model.rows('item'), ...model.rows('fixture')];
  const key = [...works, ...goods];
  if (memory.rows === undefined || !sameList(memory.key, key)) {
    memory.key = key;
    memory.rows = arranged(works, goods);
  }
  return memory.rows;
}

export function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((each, index) => each === b[index]);
}

function arranged(works: readonly WorkKind[], list: readonly GoodsRow[]): Rows {
  const goods = new Map<string, GoodsRow>();
  for (const row of list) {
    goods.set(row.name, row);
    if (row.kind === 'material' || row.kind === 'fixture')
      for (const line of row.given.also)
        for (const { value } of line.value) if (!goods.has(value.name)) goods.set(value.name, row);
  }
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
        push(installing, measure, { work, goods: names });
      }
    }
    const also = [...work.given.labour, ...work.given.uses].flatMap(({ value }) =>
      value.by === undefined || own.has(value.by) ? [] : [value.by],
    );
    for (const measure of new Set(also)) push(besides, measure, work);
  }
  return { works, installing, besides, goods, installed };
}

function push<K, T>(map: Map<K, T[]>, key: K, value: T): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
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
