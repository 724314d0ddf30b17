// DOOR: a declaration's lines against its row of the vocabulary: a typed record of what is given, and remarks on what does
// not fit. Nothing is looked up or evaluated; the record depends on the lines alone, so it is kept for as long as they are.
import { nearest } from '#kit/did-you-mean';
import type { Spot } from '#kit/place';
import { type Clause, keyAt, splitClauses } from './shape/clauses.ts';
import { cursor, spotOf, wordAt } from './shape/cursor.ts';
import * as problem from './shape/problems.ts';
import { type Remark, remark } from './shape/problems.ts';
import { readList, readValue } from './shape/value.ts';
import type { Item, Node } from './tree.ts';
import type { Given, Kind, Properties, Property } from './vocabulary/types.ts';
import { joiningWords, kindOf, propertiesOf, propertyOf } from './vocabulary/vocabulary.ts';

export type { Remark } from './shape/problems.ts';
export { findingOf } from './shape/problems.ts';

/** A value given in the text; `deeper` holds its clauses. */
export interface GivenLine extends Given<unknown> {
  readonly deeper: GivenProperties;
  /** The property's own word. */
  readonly word: Spot;
}
export interface GivenProperties {
  readonly [word: string]: GivenLine | readonly GivenLine[] | undefined;
}

export interface Declaration {
  readonly kind: Kind;
  /** Lower case; empty where the kind takes none or it is missing. */
  readonly name: string;
  readonly nameSpot: Spot;
  /** 'kind/name'. */
  readonly key: string;
  readonly label?: Given<string>;
  /** The value between name and clauses. */
  readonly takes?: Given<unknown>;
  readonly given: GivenProperties;
  readonly entries: readonly GivenLine[];
  readonly remarks: readonly Remark[];
  /** Items taken as they are spelled: what the lexer says of them does not count. */
  readonly asIs: ReadonlySet<Item>;
}

interface Reading {
  readonly remarks: Remark[];
  readonly asIs: Set<Item>;
}

/** Reads a declaration whose first word is a kind; undefined where it is not (the caller says so). */
export function readDeclaration(node: Node): Declaration | undefined {
  const { items } = node.line.statement;
  const kind = kindOf(wordAt(items, 0, items.length) ?? '');
  if (kind === undefined) return undefined;
  const reading: Reading = { remarks: [], asIs: new Set() };
  const rows = propertiesOf(kind);
  const end = items.length;
  let index = 1;
  let name = '';
  let nameSpot = itemSpot(items[0], []);
  const word = wordAt(items, index, end);
  const header = headerRows(kind);
  if (
    kind.name !== 'none' &&
    word !== undefined &&
    !(kind.name === 'optional' && (joiningWords.has(word) || keyAt(items, index, end, header, true)))
  ) {
    if (joiningWords.has(word)) {
      reading.remarks.push(remark(problem.nameIsJoining, itemSpot(items[index], []), [word]));
    } else {
      name = word;
      nameSpot = itemSpot(items[index], []);
      index += 1;
      index = joinedName(node, index, kind, header, reading);
    }
  } else if (kind.name === 'required') {
    reading.remarks.push(remark(problem.nameMissing, nameSpot, [kind.word, kind.example]));
  }
  let label: Given<string> | undefined;
  const labelItem = items[index];
  if (labelItem?.kind === 'text' && kind.takes?.check.kind !== 'text') {
    label = { value: labelItem.text, spot: itemSpot(labelItem, []) };
    index += 1;
  }
  if (items[index]?.kind === 'comma') index += 1;
  const given: Record<string, GivenLine | GivenLine[]> = {};
  let takes: Given<unknown> | undefined;
  for (const clause of splitClauses(items, index, end, header)) {
    if (clause.key !== undefined) {
      readClause(node, clause, header[clause.key]!, [], given, reading);
      continue;
    }
    if (kind.takes === undefined) notExpected(node, clause.from, [], name === '' ? kind.word : name, header, reading);
    else if (takes === undefined) takes = readMain(node, clause, kind, header, reading);
    else notExpected(node, clause.from, [], kind.word, header, reading);
  }
  if (kind.takes !== undefined && takes === undefined && index >= end)
    reading.remarks.push(remark(problem.valueMissing, nameSpot, [kind.word, kind.takes.form, kind.example]));
  const entries: GivenLine[] = [];
  node.children.forEach((child, at) => {
    readChild(child, [at], kind, rows, given, entries, reading);
  });
  return {
    kind,
    name,
    nameSpot,
    key: `${kind.word}/${name}`,
    given,
    entries,
    remarks: reading.remarks,
    asIs: reading.asIs,
    ...(label === undefined ? {} : { label }),
    ...(takes === undefined ? {} : { takes }),
  };
}

const headers = new WeakMap<Kind, Properties>();
function headerRows(kind: Kind): Properties {
  let rows = headers.get(kind);
  if (rows === undefined) {
    rows = Object.fromEntries(Object.entries(propertiesOf(kind)).filter(([, row]) => row.inHeader === true));
    headers.set(kind, rows);
  }
  return rows;
}

/** Several words where a name is wanted: offered as one. */
function joinedName(node: Node, index: number, kind: Kind, header: Properties, reading: Reading): number {
  const { items } = node.line.statement;
  if (kind.takes !== undefined) return index;
  let to = index;
  for (;;) {
    const word = wordAt(items, to, items.length);
    if (word === undefined || joiningWords.has(word) || keyAt(items, to, items.length, header, true) !== undefined) break;
    to += 1;
  }
  if (to > index) {
    const words = items.slice(index - 1, to).map((item) => (item.kind === 'word' ? item.word : ''));
    const spot = { path: [], from: items[index - 1]!.from, to: items[to - 1]!.to };
    reading.remarks.push(remark(problem.nameInWords, spot, [words.join(' '), words.join('-')], words.join('-')));
  }
  return to;
}

function readMain(node: Node, clause: Clause, kind: Kind, header: Properties, reading: Reading): Given<unknown> | undefined {
  const { items, text } = node.line.statement;
  const at = cursor(items, text, [], kind.word, clause.from, clause.to, reading.asIs);
  const value = readValue(kind.takes!, at);
  if (value === undefined) {
    unfit(at.stuck, items, clause, [], kind.word, kind.example, reading);
    return undefined;
  }
  if (at.index < clause.to) notExpected(node, at.index, [], kind.word, header, reading);
  return { value, spot: spotOf(at, clause.from, at.index) };
}

function readChild(
  child: Node,
  path: readonly number[],
  kind: Kind,
  rows: Properties,
  given: Record<string, GivenLine | GivenLine[]>,
  entries: GivenLine[],
  reading: Reading,
): void {
  const { items } = child.line.statement;
  const first = wordAt(items, 0, items.length);
  if (first !== undefined && kind.declares?.includes(first)) return;
  const found = keyAt(items, 0, items.length, rows, true);
  if (found !== undefined) {
    const clause = { key: found.key, keyFrom: 0, keyTo: found.taken, from: found.taken, to: items.length };
    readClause(child, clause, rows[found.key]!, path, given, reading);
    return;
  }
  // A trailing word stands after its value: 318' long.
  const [trailing] = splitClauses(items, 0, items.length, rows);
  if (trailing?.key !== undefined && rows[trailing.key]!.trailing === true) {
    readClause(child, trailing, rows[trailing.key]!, path, given, reading);
    return;
  }
  if (kind.entries !== undefined) {
    const taken: Record<string, GivenLine | GivenLine[]> = {};
    readClause(child, { key: '', keyFrom: 0, keyTo: 0, from: 0, to: items.length }, kind.entries, path, taken, reading);
    const entry = taken[''];
    if (entry !== undefined && !Array.isArray(entry)) entries.push(entry as GivenLine);
    return;
  }
  const spot = itemSpot(items[0], path);
  if (first !== undefined && kindOf(first) !== undefined)
    reading.remarks.push(remark(problem.misplacedKind, spot, [first, kind.word]));
  else {
    const word = first ?? child.line.statement.text.slice(spot.from, spot.to);
    const near = first === undefined ? undefined : nearest(first, [...Object.keys(rows), ...(kind.declares ?? [])])[0];
    reading.remarks.push(remark(problem.unknownProperty, spot, [word, kind.word, near], near));
  }
}

/** Reads one clause or property line, with its own clauses and deeper lines, into `given`. */
function readClause(
  node: Node,
  clause: Clause,
  row: Property,
  path: readonly number[],
  given: Record<string, GivenLine | GivenLine[]>,
  reading: Reading,
): void {
  const { items, text } = node.line.statement;
  const key = clause.key ?? '';
  const wordSpot = {
    path,
    from: items[clause.keyFrom]?.from ?? 0,
    to: items[Math.max(clause.keyTo - 1, clause.keyFrom)]?.to ?? 0,
  };
  const deeperRows = row.deeper ?? {};
  // A list that goes on below may end with a comma.
  const goesOn = clause.to >= items.length && path.length > 0 && node.children.length > 0;
  const to = goesOn && items[clause.to - 1]?.kind === 'comma' ? clause.to - 1 : clause.to;
  const inner =
    row.deeper === undefined
      ? [{ ...clause, key: undefined, to }]
      : key === ''
        ? entryClauses(items, clause, deeperRows)
        : splitClauses(items, clause.from, clause.to, deeperRows);
  const main = inner.find((part) => part.key === undefined);
  const deeper: Record<string, GivenLine | GivenLine[]> = {};
  let value: unknown;
  let spot = wordSpot;
  const at = cursor(items, text, path, key, main?.from ?? clause.from, main?.to ?? clause.from, reading.asIs);
  value = readValue(row.takes, at);
  if (value !== undefined) {
    if (at.index > at.stuck.index || main === undefined)
      spot = spotOf(at, main?.from ?? clause.keyFrom, Math.max(at.index, clause.keyTo));
    if (main !== undefined && at.index < main.to) notExpected(node, at.index, path, key, deeperRows, reading);
    if (main !== undefined && at.index > main.from) spot = spotOf(at, main.from, at.index);
  } else if (main === undefined || main.to <= main.from) {
    reading.remarks.push(remark(problem.valueMissing, wordSpot, [key, row.takes.form, row.example]));
  } else {
    unfit(at.stuck, items, main, path, key, row.example, reading);
  }
  for (const part of inner) {
    if (part.key !== undefined) readClause(node, part, deeperRows[part.key]!, path, deeper, reading);
    else if (part !== main) notExpected(node, part.from, path, key, deeperRows, reading);
  }
  // Deeper lines belong to a line's last property, which is this one when it runs to the line's end.
  if (clause.to >= items.length && path.length > 0) {
    node.children.forEach((child, index) => {
      value = readDeeper(child, [...path, index], row, value, deeper, key, reading);
    });
  }
  if (value === undefined) return;
  const line: GivenLine = { value, spot, deeper, word: wordSpot };
  const before = given[key];
  if (row.repeats === true) {
    if (Array.isArray(before)) before.push(line);
    else given[key] = [line];
  } else if (before === undefined) given[key] = line;
  else reading.remarks.push(remark(problem.givenTwice, wordSpot, [key]));
}

/** An entry begins with a name, and its clauses straight after it. */
function entryClauses(items: readonly Item[], clause: Clause, rows: Properties): readonly Clause[] {
  const name = {
    key: undefined,
    keyFrom: clause.from,
    keyTo: clause.from,
    from: clause.from,
    to: Math.min(clause.from + 1, clause.to),
  };
  return [name, ...splitClauses(items, name.to, clause.to, rows)];
}

/** A line below a property: a clause of it, or more of its list. Gives the property's value, longer if the list went on. */
function readDeeper(
  child: Node,
  path: readonly number[],
  row: Property,
  value: unknown,
  deeper: Record<string, GivenLine | GivenLine[]>,
  key: string,
  reading: Reading,
): unknown {
  const { items, text } = child.line.statement;
  const rows = row.deeper ?? {};
  const clauses = splitClauses(items, 0, items.length, rows);
  if (clauses.length > 0 && clauses.every((clause) => clause.key !== undefined)) {
    for (const clause of clauses) readClause(child, clause, rows[clause.key!]!, path, deeper, reading);
    return value;
  }
  const { check } = row.takes;
  if (check.kind === 'list') {
    const at = cursor(items, text, path, key, 0, items.length, reading.asIs);
    const more = readList(check.item, check.separator, at);
    if (at.index < items.length && items[at.index]?.kind === 'comma') at.index += 1;
    if (more !== undefined) {
      if (at.index < items.length) notExpected(child, at.index, path, key, rows, reading);
      return [...((value as readonly unknown[] | undefined) ?? []), ...more];
    }
  }
  notExpected(child, 0, path, key, rows, reading);
  return value;
}

function notExpected(
  node: Node,
  index: number,
  path: readonly number[],
  after: string,
  rows: Properties,
  reading: Reading,
): void {
  const item = node.line.statement.items[index];
  if (item === undefined || item.kind === 'wrong') return; // its own problem says more
  const got = node.line.statement.text.slice(item.from, item.to);
  const near = item.kind === 'word' ? nearest(item.word, Object.keys(rows))[0] : undefined;
  reading.remarks.push(remark(problem.leftOver, itemSpot(item, path), [got, after, near], near));
}

function unfit(
  stuck: { index: number; wanted: readonly string[] },
  items: readonly Item[],
  clause: Clause,
  path: readonly number[],
  word: string,
  example: string,
  reading: Reading,
): void {
  const item = items[stuck.index];
  if (item?.kind === 'wrong') return;
  if (item === undefined || stuck.index >= clause.to) {
    const last = items[clause.to - 1];
    reading.remarks.push(remark(problem.valueMissing, itemSpot(last, path), [word, stuck.wanted.join(' or '), example]));
    return;
  }
  reading.remarks.push(remark(problem.valueUnfit, itemSpot(item, path), [word, stuck.wanted, said(item), example]));
}

function said(item: Item): string {
  switch (item.kind) {
    case 'word':
      return item.word;
    case 'text':
      return `"${item.text}"`;
    case 'comma':
      return ',';
    case 'equals':
      return '=';
    case 'joint':
      return 'x';
    case 'value':
      return 'this value';
    case 'wrong':
      return 'this';
  }
}

function itemSpot(item: Item | undefined, path: readonly number[]): Spot {
  return { path, from: item?.from ?? 0, to: item?.to ?? 0 };
}

export { propertyOf };
