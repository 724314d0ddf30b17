// Portions × library rows → lines: which goods by which work, net, needed and hours; coats that go under or over; what a
// work uses up; labour of works that come with a measure without installing anything by it.
import { type Finding, finding } from '#kit/finding';
import type { Place } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { GoodsRow, WorkKind } from '#model/model';
import { amountOf, type OwnUse, ownUses } from './fixture-uses.ts';
import { itemText, labelText } from './goods.ts';
import { hoursOf, usedUpOf } from './hours.ts';
import type { Line, Measure, NamedGoods, Portion } from './lines.ts';
import { neededOf } from './needed.ts';
import { goodsOpen } from './problems.ts';
import { asCounted, type Installing, type Labour, type Rows, type Using } from './rows.ts';
import { inSizes, measureOf, takingsOf, usualGoods } from './takings.ts';

export interface Exploded {
  readonly lines: readonly Line[];
  readonly findings: readonly Finding[];
}

/** `scope` names the element in the lines' ids; `place` is where a finding about it stands. */
export function explode(portions: readonly Portion[], rows: Rows, scope: string, place: Place | undefined): Exploded {
  const made: Making = { rows, scope, lines: [], findings: [], ids: new Map(), once: new Set(), place };
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
  readonly once: Set<Labour>;
  readonly place: Place | undefined;
}

function goodsLines(portion: Portion, by: Measure, made: Making): void {
  const { rows } = made;
  const named = portion.goods;
  const done = new Set<WorkKind>();
  let found = named === undefined;
  for (const { entry, own } of takingsOf(by, named, rows)) {
    if (own) found = true;
    const chosen = own ? named : chosenGoods(entry, portion, made);
    addGoods(chosen, entry.work, portion, by, !done.has(entry.work), made);
    done.add(entry.work);
  }
  if (!found && named !== undefined) addGoods(named, undefined, portion, by, false, made);
  for (const work of rows.besides.get(by) ?? []) if (!done.has(work)) addLabour(work, portion, by, made, true);
}

/** What a work installs where the plan names nothing; that it is open is said once, and nothing is guessed. */
function chosenGoods(entry: Installing, portion: Portion, { rows, place, findings }: Making): NamedGoods | undefined {
  const goods = usualGoods(entry, portion.sizes ?? [], rows);
  if (goods === undefined && place !== undefined && portion.onlyIfDone === undefined)
    findings.push(finding(goodsOpen, place, entry.work.label, entry.goods));
  return goods;
}

function addGoods(
  named: NamedGoods | undefined,
  work: WorkKind | undefined,
  portion: Portion,
  by: Measure,
  first: boolean,
  made: Making,
): void {
  const goods = asCounted(named, made.rows);
  const row: GoodsRow | undefined = goods?.of;
  const needed = goods === undefined ? undefined : neededOf(goods, row, portion, portion.quantity);
  const hours = work !== undefined && first ? hoursOf(made.rows, work, by, portion.quantity, goods, made.once) : undefined;
  const pieces = row?.kind === 'material' ? portion.pieces : undefined;
  push(made, portion, {
    goods,
    work,
    by,
    net: portion.quantity,
    needed: needed?.quantity,
    hours,
    coats: needed?.coats ?? 1,
    pieces,
    faces: portion.faces,
    onlyIfDone: false,
  });
  if (work !== undefined && first) addUses(work, portion, by, made, false);
  if (goods !== undefined && row?.kind === 'material') addUnder(row.given['under it']?.value, portion, by, made, [row.name]);
}

/** A coat that goes on first, by the work that puts it on; and what goes under that. */
function addUnder(under: GoodsRow | undefined, portion: Portion, by: Measure, made: Making, seen: readonly string[]): void {
  if (under?.kind !== 'material' || seen.includes(under.name)) return;
  const named = { name: under.name, of: under, sizes: [] };
  const work = takingsOf(by, named, made.rows).find(({ own }) => own)?.entry.work;
  const goods = asCounted(named, made.rows);
  const { coats: _, ...rest } = portion;
  const { quantity, coats } = neededOf(goods, goods.of, rest, portion.quantity);
  const hours = work === undefined ? undefined : hoursOf(made.rows, work, by, portion.quantity, goods, made.once);
  push(made, portion, {
    goods,
    work,
    by,
    net: portion.quantity,
    needed: quantity,
    hours,
    coats,
    pieces: undefined,
    onlyIfDone: false,
  });
  if (work !== undefined) addUses(work, portion, by, made, false);
  addUnder(under.given['under it']?.value, portion, by, made, [...seen, under.name]);
}

function addUses(work: WorkKind, portion: Portion, by: Measure, made: Making, onlyIfDone: boolean): void {
  const own = ownUses(portion.goods, made.rows)?.filter((use) => use.work === work) ?? [];
  for (const use of own) addOwnUse(use, portion, by, made, onlyIfDone);
  if (own.length > 0) return;
  for (const using of made.rows.uses.get(work)?.get(by) ?? []) {
    if (!goesWith(using, portion)) continue;
    const { uses, goods: named } = using;
    // A post's base is as wide as the post.
    const sized = portion.sizes === undefined ? named : inSizes(named.name, portion.sizes, made.rows);
    const goods = asCounted(sized, made.rows);
    const net = usedUpOf(uses, portion.quantity);
    if (net === undefined) continue;
    const { quantity } = neededOf(goods, goods.of, portion, net);
    push(made, portion, { goods, work, by, net, needed: quantity, hours: undefined, coats: 1, pieces: undefined, onlyIfDone });
  }
}

/** Whether a work uses something with these goods: a latch on a door that swings, or closes off a bath; cleats under boards. */
function goesWith({ only, except }: Using, { goods, closes = [] }: Portion): boolean {
  const is = (names: readonly string[]): boolean => isAny(goods, names) || closes.some((use) => names.includes(use));
  return (only === undefined || is(only)) && (except === undefined || !is(except));
}

/** By name, or by a word that the row of an opening says: bifold, pocket. */
function isAny(goods: NamedGoods | undefined, names: readonly string[]): boolean {
  if (goods === undefined) return false;
  const given: { readonly [word: string]: unknown } = goods.of?.given ?? {};
  return names.some((name) => name === goods.name || name === goods.of?.name || given[name] !== undefined);
}

function addOwnUse(use: OwnUse, portion: Portion, by: Measure, made: Making, onlyIfDone: boolean): void {
  const { goods, work } = use;
  const net = amountOf(use, portion.quantity);
  const { quantity } = neededOf(goods, goods.of, portion, net);
  push(made, portion, {
    goods,
    work,
    by,
    net,
    needed: quantity,
    hours: undefined,
    coats: 1,
    pieces: undefined,
    onlyIfDone,
  });
}

function addLabour(work: WorkKind, portion: Portion, by: Measure, made: Making, onlyIfDone: boolean): void {
  const hours = hoursOf(made.rows, work, by, portion.quantity, portion.goods, made.once);
  push(made, portion, {
    goods: undefined,
    work,
    by,
    net: portion.quantity,
    needed: undefined,
    hours,
    coats: 1,
    pieces: undefined,
    onlyIfDone,
  });
  addUses(work, portion, by, made, onlyIfDone);
}

/** A fixture names the works that set it and those that prepare for it. */
function fixtureLines(goods: NamedGoods, portion: Portion, by: Measure, made: Making): void {
  const row = goods.of;
  if (row?.kind !== 'fixture') return;
  const setters = row.given['set by']?.value.map(({ value }) => value) ?? [];
  const [first] = setters;
  const net = portion.quantity;
  const hours = first === undefined ? undefined : hoursOf(made.rows, first, by, net, goods, made.once);
  push(made, portion, { goods, work: first, by, net, needed: net, hours, coats: 1, pieces: undefined, onlyIfDone: false });
  if (first !== undefined) addUses(first, portion, by, made, false);
  const roughing = row.given['roughed by']?.value.map(({ value }) => value) ?? [];
  const works = new Set([...setters, ...roughing]);
  for (const work of works) if (work !== first) addLabour(work, portion, by, made, false);
  // What another work brings for it, such as a boot through the roof, counts where somebody does that work.
  for (const use of ownUses(goods, made.rows) ?? []) if (!works.has(use.work)) addOwnUse(use, portion, by, made, true);
}

interface Counted {
  readonly goods: NamedGoods | undefined;
  readonly work: WorkKind | undefined;
  readonly by: Measure;
  readonly net: Quantity;
  readonly needed: Quantity | undefined;
  readonly hours: Quantity<'time'> | undefined;
  readonly coats: number;
  readonly pieces: Portion['pieces'];
  readonly faces?: Portion['faces'];
  readonly onlyIfDone: boolean;
}

function push(made: Making, portion: Portion, counted: Counted): void {
  const { goods, work, by, net, needed, hours, coats, pieces, faces, onlyIfDone } = counted;
  const { where } = portion;
  const item = goods === undefined ? measureWords(by) : itemText(goods);
  const label = goods === undefined ? (work?.label ?? item) : labelText(goods);
  const id = uniqueId(goods === undefined ? (work?.name ?? item) : item, scopeIn(where.part, made), work, made);
  const line: { -readonly [K in keyof Line]: Line[K] } = {
    id,
    item,
    label,
    goods,
    measure: by,
    where,
    work,
    net,
    needed,
    hours,
    coats,
  };
  if (pieces !== undefined) line.pieces = pieces;
  if (faces !== undefined && isLaidOut(goods)) line.faces = faces;
  if (onlyIfDone || portion.onlyIfDone !== undefined) line.onlyIfDone = true;
  made.lines.push(line);
}

const LAID_OUT: ReadonlySet<string | undefined> = new Set(['sheets', 'panels', 'rolls', 'tiles']);
/** What is cut to the walls and floors that it is laid on. */
function isLaidOut(goods: NamedGoods | undefined): boolean {
  return LAID_OUT.has(goods?.of?.kind === 'material' ? goods.of.given.laid?.value : undefined);
}

function scopeIn(part: string | undefined, { scope }: Making): string {
  if (part === undefined) return scope;
  return part.includes(' ') ? `${scope}.${part.replaceAll(' ', '-')}` : `${scope}.${part}`;
}

const words = new Map<Measure, string>();
export function measureWords(measure: Measure): string {
  let text = words.get(measure);
  if (text === undefined) words.set(measure, (text = measure.replaceAll('-', ' ')));
  return text;
}

/** `item@scope`; where an element has the item twice, the work tells them apart, then a number. */
function uniqueId(item: string, scope: string, work: WorkKind | undefined, { ids }: Making): string {
  const plain = `${item}@${scope}`;
  if (!ids.has(plain)) return taken(plain, ids);
  const byWork = work === undefined ? plain : `${plain}.${work.name}`;
  if (!ids.has(byWork)) return taken(byWork, ids);
  const next = ids.get(byWork)! + 1;
  ids.set(byWork, next);
  return `${byWork}.${next}`;
}

function taken(id: string, ids: Map<string, number>): string {
  ids.set(id, 1);
  return id;
}
