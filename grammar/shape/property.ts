// Reads a clause or a property's line with its own clauses, and the lines below it: clauses again, or more of its list.
import { pathBelow } from '#kit/place';
import type { GivenLine, GivenProperties } from '../shape.ts';
import type { Item, Node } from '../tree.ts';
import type { Kind, Properties, Property } from '../vocabulary/types.ts';
import { type Clause, splitClauses } from './clauses.ts';
import { cursor, spotOf, spotOfValue } from './cursor.ts';
import { missesComma, notExpected, unfit } from './left-over.ts';
import * as problem from './problems.ts';
import { type Remark, remark } from './problems.ts';
import { readList, readValue } from './value.ts';

/** What is gathered while a declaration is read. */
export interface Reading {
  readonly kind: Kind;
  readonly remarks: Remark[];
  readonly asIs: Set<Item>;
}
export type GivenSoFar = Record<string, GivenLine | GivenLine[]>;

/** Reads one clause or property line, with its own clauses and deeper lines, into `given`. */
export function readClause(
  node: Node,
  clause: Clause,
  row: Property,
  path: readonly number[],
  given: GivenSoFar,
  reading: Reading,
): void {
  const { items, text } = node.line.statement;
  const key = clause.key ?? '';
  // An entry has no word of its own; what is said of it names the kind.
  const called = key === '' ? reading.kind.word : key;
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
  const below: GivenSoFar = {};
  let value: unknown;
  let spot = wordSpot;
  const at = cursor(items, text, path, key, main?.from ?? clause.from, main?.to ?? clause.from, reading.asIs);
  value = readValue(row.takes, at);
  if (value !== undefined) {
    if (at.index > at.stuck.index || main === undefined)
      spot = spotOf(at, main?.from ?? clause.keyFrom, Math.max(at.index, clause.keyTo));
    if (main !== undefined && at.index < main.to) notExpected(node, at.index, path, called, deeperRows, reading);
    if (main !== undefined && at.index > main.from) spot = spotOf(at, main.from, at.index);
  } else if (main === undefined || main.to <= main.from) {
    reading.remarks.push(remark(problem.valueMissing, wordSpot, [called, row.takes.form, row.example]));
  } else if (row.trailing === true && main.to - main.from > 1 && fitsAlone(node, main.to - 1, row, path, reading)) {
    missesComma(node, main.to - 1, clause.keyTo, path, reading.remarks);
  } else {
    unfit(node, at.stuck, main, path, called, row.example, reading);
  }
  for (const part of inner) {
    if (part.key !== undefined) readClause(node, part, deeperRows[part.key]!, path, below, reading);
    else if (part !== main) notExpected(node, part.from, path, called, deeperRows, reading);
  }
  // Deeper lines belong to a line's last property, which is this one when it runs to the line's end.
  if (clause.to >= items.length && path.length > 0) {
    node.children.forEach((child, index) => {
      value = readDeeper(child, pathBelow(path, index), row, value, below, key, reading);
    });
  }
  if (value === undefined) return;
  const line: GivenLine = { value, spot: spotOfValue(value, spot), deeper: kept(below), word: wordSpot };
  const before = given[key];
  if (row.repeats === true) {
    // Copied, not pushed to: an array that grows reserves room for sixteen more.
    given[key] = Array.isArray(before) ? before.concat(line) : [line];
  } else if (before === undefined) given[key] = line;
  else reading.remarks.push(remark(problem.givenTwice, wordSpot, [key]));
}

/** Whether the last piece before a trailing word is its value, and what stands before that belongs to something else. */
function fitsAlone(node: Node, index: number, row: Property, path: readonly number[], reading: Reading): boolean {
  const { items, text } = node.line.statement;
  const at = cursor(items, text, path, '', index, index + 1, reading.asIs);
  return readValue(row.takes, at) !== undefined && at.index === index + 1;
}

const NOTHING: GivenProperties = Object.freeze({});

/** Most lines give nothing more; all of them share one record that says so. */
function kept(given: GivenSoFar): GivenProperties {
  for (const _ in given) return given;
  return NOTHING;
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
  deeper: GivenSoFar,
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
