// DOOR: a declaration's lines against its row of the vocabulary: a typed record of what is given, and remarks on what does
// not fit. Nothing is looked up or evaluated; the record depends on the lines alone, so it is kept for as long as they are.
import { nearest } from '#kit/did-you-mean';
import { NONE } from '#kit/differing';
import { pathBelow, type Spot } from '#kit/place';
import { type Clause, keyAt, splitClauses } from './shape/clauses.ts';
import { cursor, itemSpot, spotOf, wordAt } from './shape/cursor.ts';
import { clauseLike, headerRows, notExpected, unfit } from './shape/left-over.ts';
import * as problem from './shape/problems.ts';
import { type Remark, remark } from './shape/problems.ts';
import { type GivenSoFar, type Reading, readClause } from './shape/property.ts';
import { readValue } from './shape/value.ts';
import type { Item, Node } from './tree.ts';
import type { Given, Kind, Properties } from './vocabulary/types.ts';
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

const NO_ITEMS: ReadonlySet<Item> = new Set();
const NAME_LIKE = /^[a-z][a-z0-9-]*$/i;

/** Reads a declaration whose first word is a kind; undefined where it is not (the caller says so). */
export function readDeclaration(node: Node): Declaration | undefined {
  const { items } = node.line.statement;
  const kind = kindOf(wordAt(items, 0, items.length) ?? '');
  if (kind === undefined) return undefined;
  const reading: Reading = { kind, remarks: [], asIs: new Set() };
  const rows = propertiesOf(kind);
  const end = items.length;
  let index = 1;
  let name = '';
  let nameSpot = itemSpot(items[0], NONE);
  const word = wordAt(items, index, end);
  const header = headerRows(kind);
  if (
    kind.name !== 'none' &&
    word !== undefined &&
    !(kind.name === 'optional' && (joiningWords.has(word) || keyAt(items, index, end, header, true)))
  ) {
    if (joiningWords.has(word)) {
      reading.remarks.push(remark(problem.nameIsJoining, itemSpot(items[index], NONE), [word]));
      // Where it opens no clause of this kind, nothing more is to be said of it.
      if (keyAt(items, index, end, header, true) === undefined) index += 1;
    } else {
      name = word;
      nameSpot = itemSpot(items[index], NONE);
      index += 1;
      index = joinedName(node, index, kind, header, reading);
    }
  } else if (kind.name === 'required') {
    const other = items[index];
    const spelled = other === undefined || other.kind === 'text' ? '' : node.line.statement.text.slice(other.from, other.to);
    if (other !== undefined && NAME_LIKE.test(spelled)) {
      reading.remarks.push(remark(problem.nameIsTaken, itemSpot(other, NONE), [spelled, kind.word]));
      index += 1;
    } else reading.remarks.push(remark(problem.nameMissing, nameSpot, [kind.word, kind.example]));
  }
  let label: Given<string> | undefined;
  const labelItem = items[index];
  if (labelItem?.kind === 'text' && kind.takes?.check.kind !== 'text') {
    label = { value: labelItem.text, spot: itemSpot(labelItem, NONE) };
    index += 1;
  }
  if (items[index]?.kind === 'comma') index += 1;
  const given: GivenSoFar = {};
  let takes: Given<unknown> | undefined;
  for (const clause of splitClauses(items, index, end, header)) {
    if (clause.key !== undefined) {
      readClause(node, clause, header[clause.key]!, NONE, given, reading);
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
    readChild(child, pathBelow(NONE, at), kind, rows, given, entries, reading);
  });
  return {
    kind,
    name,
    nameSpot,
    key: `${kind.word}/${name}`,
    given,
    entries: entries.length === 0 ? NONE : entries.slice(),
    remarks: reading.remarks.length === 0 ? NONE : reading.remarks,
    asIs: reading.asIs.size === 0 ? NO_ITEMS : reading.asIs,
    ...(label === undefined ? {} : { label }),
    ...(takes === undefined ? {} : { takes }),
  };
}

/** Several words where a name is wanted: offered as one. */
function joinedName(node: Node, index: number, kind: Kind, header: Properties, reading: Reading): number {
  const { items } = node.line.statement;
  if (kind.takes !== undefined) return index;
  let to = index;
  for (;;) {
    const word = wordAt(items, to, items.length);
    if (word === undefined || joiningWords.has(word) || clauseLike(items, to, header)) break;
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
  const at = cursor(items, text, NONE, kind.word, clause.from, clause.to, reading.asIs);
  const value = readValue(kind.takes!, at);
  if (value === undefined) {
    unfit(node, at.stuck, clause, [], kind.word, kind.example, reading);
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
  given: GivenSoFar,
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
    const taken: GivenSoFar = {};
    readClause(child, { key: '', keyFrom: 0, keyTo: 0, from: 0, to: items.length }, kind.entries, path, taken, reading);
    const entry = taken[''];
    if (entry !== undefined && !Array.isArray(entry)) entries.push(entry as GivenLine);
    return;
  }
  const spot = itemSpot(items[0], path);
  const behind = first === undefined ? undefined : propertyOf(rows, first);
  if (behind?.trailing === true) reading.remarks.push(remark(problem.wordBehind, spot, [first!, behind.example]));
  else if (first !== undefined && kindOf(first) !== undefined)
    reading.remarks.push(remark(problem.misplacedKind, spot, [first, kind.word]));
  else {
    const word = first ?? child.line.statement.text.slice(spot.from, spot.to);
    const near = first === undefined ? undefined : nearest(first, [...Object.keys(rows), ...(kind.declares ?? [])])[0];
    reading.remarks.push(remark(problem.unknownProperty, spot, [word, kind.word, near], near));
  }
}
