// What stands at a position of the text: the declaration and its line, the item, the clause, and the name it is part of.
import type { Position } from 'vscode-languageserver-types';
import { firstAtLeast } from '#grammar/lines';
import type { Item, Node } from '#grammar/tree';
import { sameList } from '#kit/differing';
import type { Slot, Spot } from '#kit/place';
import type { Declared } from '#model/declared';
import type { FileNames } from '#model/file-names';
import type { Model } from '#model/resolve';
import { type LineReading, type ReadClause, readBelow } from './line-reading.ts';
import { meantBy, type Use, usesIn } from './uses.ts';

export interface Standing {
  readonly declared: Declared;
  /** From the declaration's own line to this one. */
  readonly path: readonly number[];
  readonly node: Node;
  readonly line: number;
}

/** A name at the position: that of a declaration, or a use of one. */
export interface NameThere {
  readonly name: string;
  readonly spot: Spot;
  /** What it means; undefined where nothing has that name. */
  readonly slot: Slot | undefined;
  /** Absent at the declaration itself. */
  readonly use?: Use;
}

export interface There extends Standing {
  /** From the line's first letter. */
  readonly column: number;
  readonly reading: LineReading | undefined;
  readonly item: Item | undefined;
  /** Number of the item, or how many items end before the position. */
  readonly itemIndex: number;
  /** The innermost clause around it, and whether its own words are meant. */
  readonly clause: ReadClause | undefined;
  readonly onWords: boolean;
  readonly naming: NameThere | undefined;
}

/** The declaration whose lines hold a line, and the way to it; undefined on lines between declarations. */
export function standingAt(file: FileNames, line: number): Standing | undefined {
  const { declared, lines } = file;
  for (let at = firstAtLeast(lines, line + 1) - 1; at >= 0; at--) {
    const found = declared[at]!;
    if (line < lines[at]! + found.node.height) return walkDown(found, lines[at]!, line);
    // A line of a phase may follow the steps in it.
    if (found.parent === undefined) return undefined;
  }
  return undefined;
}

function walkDown(declared: Declared, first: number, line: number): Standing {
  let { node } = declared;
  let at = first;
  const path: number[] = [];
  while (at !== line) {
    const start = at;
    const next = node.children.findIndex((child, index) => {
      const from = start + (node.offsets[index] ?? 0);
      return line >= from && line < from + child.height;
    });
    if (next < 0) break;
    path.push(next);
    at += node.offsets[next] ?? 0;
    node = node.children[next]!;
  }
  return { declared, path, node, line: at };
}

/** What stands at a position; undefined where no declaration's line does. */
export function thereAt(file: FileNames, model: Model, position: Position): There | undefined {
  const standing = standingAt(file, position.line);
  if (standing === undefined || standing.line !== position.line) return undefined;
  const { declared, path, node } = standing;
  const column = position.character - node.line.indent;
  if (column < 0 || column > node.line.statement.text.length) return undefined;
  const { items } = node.line.statement;
  const within = (item: Item): boolean => column >= item.from && column <= item.to;
  // Between two items that touch, the one that begins there.
  const holding = items.flatMap((item, index) => (within(item) ? [index] : []));
  const itemIndex = holding.at(-1) ?? items.filter((item) => item.to < column).length;
  const item = holding.length === 0 ? undefined : items[itemIndex];
  const reading = readBelow(declared.node, path);
  const clause = item === undefined || reading === undefined ? undefined : clauseAround(reading.clauses, itemIndex);
  return {
    ...standing,
    column,
    reading,
    item,
    itemIndex,
    clause,
    onWords: clause?.key !== undefined && itemIndex >= clause.keyFrom && itemIndex < clause.keyTo,
    naming: nameAt(declared, path, column, model),
  };
}

/** The innermost clause that an item belongs to, its words included. */
export function clauseAround(clauses: readonly ReadClause[], itemIndex: number): ReadClause | undefined {
  for (const clause of clauses) {
    const from = Math.min(clause.from, clause.key === undefined ? clause.from : clause.keyFrom);
    const to = Math.max(clause.to, clause.key === undefined ? clause.to : clause.keyTo);
    if (itemIndex >= from && itemIndex < to) return clauseAround(clause.inner, itemIndex) ?? clause;
  }
  return undefined;
}

function nameAt(declared: Declared, path: readonly number[], column: number, model: Model): NameThere | undefined {
  const { declaration, slot } = declared;
  const covers = (spot: Spot): boolean => column >= spot.from && column <= spot.to && sameList(spot.path, path);
  if (declaration.name !== '' && covers(declaration.nameSpot)) {
    const { names, library } = model;
    // A name said twice means the first.
    const first = names.first.get(declaration.key) ?? library.first.get(declaration.key) ?? slot;
    return { name: declaration.name, spot: declaration.nameSpot, slot: names.repeated.get(slot) ?? first };
  }
  // Of a fact, the fact's own word belongs to the name too.
  const use =
    usesIn(declared).find(({ spot }) => covers(spot)) ??
    usesIn(declared).find(({ spot, fact }) => fact !== undefined && covers({ ...spot, to: spot.to + 1 + fact.length }));
  if (use === undefined) return undefined;
  return { name: use.name, spot: use.spot, slot: meantBy(use, slot, model), use };
}
