// Portions × library rows → lines: which goods by which work, net, needed and hours; coats that go under or over; what a
// work uses up; labour of works that come with a measure without installing anything by it.
import { type Finding, finding } from '#kit/finding';
import type { Place } from '#kit/place';
import type { GoodsRow, WorkKind } from '#model/model';
import { comesIn, itemText, labelText, materialOf } from './goods.ts';
import { appliesBy, hoursOf, usedUpOf } from './hours.ts';
import type { Line, Measure, NamedGoods, Portion } from './lines.ts';
import { neededOf } from './needed.ts';
import { goodsOpen } from './problems.ts';
import { type Installing, materialNamed, type Rows } from './rows.ts';

export interface Exploded {
  readonly lines: readonly Line[];
  readonly findings: readonly Finding[];
}

/** `scope` names the element in the lines' ids; `place` is where a finding about it stands. */
export function explode(portions: readonly Portion[], rows: Rows, scope: string, place: Place | undefined): Exploded {
  const made: Making = { rows, scope, lines: [], findings: [], ids: new Map(), place };
  for (const portion of portions) {
    const by = measureOf(portion, rows);
    const fixture = portion.goods?.of?.kind === 'fixture' ? portion.goods : undefined;
    if (fixture !== undefined) fixtureLines(fixture, portion, by, made);
    else goodsLines(portion, by, made);
  }
  return { lines: made.lines, findings: made.findings };
}

interface Making {
  readonly rows: Rows;
  readonly scope: string;
  readonly lines: Line[];
  readonly findings: Finding[];
  readonly ids: Map<string, number>;
  readonly place: Place | undefined;
}

/** A portion with several measures is counted by the first that some work installs its goods by. */
function measureOf({ measure, otherwise, goods }: Portion, rows: Rows): Measure {
  if (otherwise === undefined || goods === undefined) return measure;
  return (
    [measure, ...otherwise].find((each) => (rows.installing.get(each) ?? []).some((entry) => names(entry, goods))) ?? measure
  );
}

function names({ goods }: Installing, named: NamedGoods): boolean {
  return goods.includes(named.name) || (named.of !== undefined && named.of.kind !== 'material' && goods.includes(named.of.kind));
}

function goodsLines(portion: Portion, by: Measure, made: Making): void {
  const { rows } = made;
  const entries = rows.installing.get(by) ?? [];
  const named = portion.goods;
  const done = new Set<WorkKind>();
  let found = named === undefined;
  const installers = named === undefined ? entries : installersOf(entries, named, rows);
  for (const entry of entries) {
    const chosen =
      named !== undefined && installers.includes(entry)
        ? named
        : follows(entry, named, rows)
          ? choose(entry, portion, made)
          : undefined;
    if (chosen === undefined) continue;
    if (chosen === named) found = true;
    addGoods(chosen === 'open' ? undefined : chosen, entry.work, portion, by, !done.has(entry.work), made);
    done.add(entry.work);
  }
  if (!found && named !== undefined) addGoods(named, undefined, portion, by, false, made);
  for (const work of rows.besides.get(by) ?? []) if (!done.has(work)) addLabour(work, portion, by, made, true);
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

/** The goods of an entry for a portion that names none: the only ones, or those that come in the sizes given. */
function choose({ goods, work }: Installing, portion: Portion, made: Making): NamedGoods | 'open' {
  const sizes = portion.sizes ?? [];
  const named = (name: string): NamedGoods => {
    const of = made.rows.goods.get(name);
    return {
      name: of?.name ?? name,
      of,
      sizes:
        of?.kind !== 'material' || comesIn(of, sizes) ? (of?.kind === 'material' && of.given.size.length === 0 ? [] : sizes) : [],
    };
  };
  if (goods.length === 1) return named(goods[0]!);
  if (sizes.length > 0) {
    const fitting = goods.find((name) => {
      const row = materialNamed(made.rows, name);
      return row !== undefined && row.given.size.length > 0 && comesIn(row, sizes);
    });
    if (fitting !== undefined) return named(fitting);
  }
  // A coat that brings another of the list with it is the whole of the work.
  const whole = goods.find((name) => goods.includes(materialNamed(made.rows, name)?.given['under it']?.value.name ?? ''));
  if (whole !== undefined) return named(whole);
  if (made.place !== undefined && portion.onlyIfDone === undefined)
    made.findings.push(finding(goodsOpen, made.place, work.label, goods));
  return 'open';
}

function addGoods(
  goods: NamedGoods | undefined,
  work: WorkKind | undefined,
  portion: Portion,
  by: Measure,
  first: boolean,
  made: Making,
): void {
  const row: GoodsRow | undefined = goods?.of;
  const needed = goods === undefined ? undefined : neededOf(goods, row, portion, portion.quantity);
  const hours = work !== undefined && first ? hoursOf(work, by, portion.quantity, goods) : undefined;
  push(made, goods, work, by, portion, {
    net: portion.quantity,
    needed: needed?.quantity,
    hours,
    coats: needed?.coats ?? 1,
    ...(portion.pieces === undefined || row?.kind !== 'material' ? {} : { pieces: portion.pieces }),
  });
  if (work !== undefined && first) addUses(work, portion, by, made, false);
  if (goods !== undefined && row?.kind === 'material') addUnder(row.given['under it']?.value, portion, by, made, [row.name]);
}

/** A coat that goes on first, by the work that puts it on; and what goes under that. */
function addUnder(under: GoodsRow | undefined, portion: Portion, by: Measure, made: Making, seen: readonly string[]): void {
  if (under?.kind !== 'material' || seen.includes(under.name)) return;
  const goods = { name: under.name, of: under, sizes: [] };
  const entry = lastWork((made.rows.installing.get(by) ?? []).filter((each) => names(each, goods)))[0];
  const { coats: _, ...rest } = portion;
  const needed = neededOf(goods, under, rest, portion.quantity);
  const hours = entry === undefined ? undefined : hoursOf(entry.work, by, portion.quantity, goods);
  push(made, goods, entry?.work, by, portion, { net: portion.quantity, needed: needed.quantity, hours, coats: needed.coats });
  if (entry !== undefined) addUses(entry.work, portion, by, made, false);
  addUnder(under.given['under it']?.value, portion, by, made, [...seen, under.name]);
}

function addUses(work: WorkKind, portion: Portion, by: Measure, made: Making, onlyIfDone: boolean): void {
  for (const { value } of work.given.uses) {
    if (!appliesBy(value, work, by, portion.quantity)) continue;
    const goods = { name: value.goods.name, of: value.goods, sizes: [] };
    const net = usedUpOf(value, portion.quantity);
    const needed = neededOf(goods, value.goods, portion, net);
    push(made, goods, work, by, portion, {
      net,
      needed: needed.quantity,
      hours: undefined,
      coats: 1,
      ...(onlyIfDone ? { onlyIfDone: true as const } : {}),
    });
  }
}

function addLabour(work: WorkKind, portion: Portion, by: Measure, made: Making, onlyIfDone: boolean): void {
  const hours = hoursOf(work, by, portion.quantity, portion.goods);
  const asked = onlyIfDone ? { onlyIfDone: true as const } : {};
  push(made, undefined, work, by, portion, { net: portion.quantity, needed: undefined, hours, coats: 1, ...asked });
  addUses(work, portion, by, made, onlyIfDone);
}

/** A fixture names the works that set it and those that prepare for it. */
function fixtureLines(goods: NamedGoods, portion: Portion, by: Measure, made: Making): void {
  const row = goods.of;
  if (row?.kind !== 'fixture') return;
  const setters = row.given['set by']?.value.map(({ value }) => value) ?? [];
  const [first, ...others] = setters;
  push(made, goods, first, by, portion, {
    net: portion.quantity,
    needed: portion.quantity,
    hours: first === undefined ? undefined : hoursOf(first, by, portion.quantity, goods),
    coats: 1,
  });
  if (first !== undefined) addUses(first, portion, by, made, false);
  const roughing = row.given['roughed by']?.value.map(({ value }) => value) ?? [];
  for (const work of new Set([...others, ...roughing])) if (work !== first) addLabour(work, portion, by, made, false);
}

type Counts = Pick<Line, 'net' | 'needed' | 'hours' | 'coats' | 'pieces' | 'onlyIfDone'>;

function push(
  made: Making,
  goods: NamedGoods | undefined,
  work: WorkKind | undefined,
  measure: Measure,
  portion: Portion,
  counts: Counts,
): void {
  const item = goods === undefined ? measureWords(measure) : itemText(goods);
  const label = goods === undefined ? (work?.label ?? measureWords(measure)) : labelText(goods);
  const { where } = portion;
  const scope = where.part === undefined ? made.scope : `${made.scope}.${where.part.replaceAll(' ', '-')}`;
  made.lines.push({
    id: uniqueId(goods === undefined ? (work?.name ?? item) : item, scope, work, made),
    item,
    label,
    goods,
    measure,
    where,
    work,
    ...counts,
    ...(portion.onlyIfDone === undefined ? {} : { onlyIfDone: true as const }),
  });
}

export function measureWords(measure: Measure): string {
  return measure.replaceAll('-', ' ');
}

/** `item@scope`; where an element has the item twice, the work tells them apart, then a number. */
function uniqueId(item: string, scope: string, work: WorkKind | undefined, { ids }: Making): string {
  const plain = `${item}@${scope}`;
  const candidates = work === undefined ? [plain] : [plain, `${plain}.${work.name}`];
  for (const id of candidates) {
    if (ids.has(id)) continue;
    ids.set(id, 1);
    return id;
  }
  const last = candidates[candidates.length - 1]!;
  const next = ids.get(last)! + 1;
  ids.set(last, next);
  return `${last}.${next}`;
}
