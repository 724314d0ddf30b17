// One line as the vocabulary sees it: which items are the kind, the name and the label, which words open which clause,
// and what may stand where. It is read from the line itself, so that it holds for lines with mistakes in them too.
import { type Clause, keyAt, splitClauses } from '#grammar/shape/clauses';
import { wordAt } from '#grammar/shape/cursor';
import { headerRows } from '#grammar/shape/left-over';
import type { Item, Node } from '#grammar/tree';
import type { Kind, Properties, Property, Shape } from '#grammar/vocabulary/types';
import { joiningWords, kindOf, propertiesOf } from '#grammar/vocabulary/vocabulary';

/** A clause with its row, and the clauses inside it; what stands before any clause has no row. */
export interface ReadClause extends Clause {
  readonly row: Property | undefined;
  readonly inner: readonly ReadClause[];
}

export interface LineReading {
  readonly node: Node;
  readonly kind: Kind | undefined;
  /** Item of the name and of the label, on a declaration's own line. */
  readonly nameItem: number | undefined;
  readonly labelItem: number | undefined;
  readonly clauses: readonly ReadClause[];
  /** What stands before any clause: the value after the name, or the next part of a list above. */
  readonly takes: Shape<unknown> | undefined;
  /** Words that may open a clause here. */
  readonly rows: Properties;
  /** Whether a line with such a word is a declaration of its own. */
  readonly declares: readonly string[];
  /** Lines that begin with a name, where the kind takes them. */
  readonly entries: Property | undefined;
  /** The row whose deeper lines stand below this line. */
  readonly below: Property | undefined;
}

/** A declaration's own line. */
export function readHeader(node: Node): LineReading | undefined {
  const { items } = node.line.statement;
  const kind = kindOf(wordAt(items, 0, items.length) ?? '');
  if (kind === undefined) return undefined;
  const rows = headerRows(kind);
  const end = items.length;
  let index = 1;
  let nameItem: number | undefined;
  const word = wordAt(items, 1, end);
  const clauseFollows = kind.name === 'optional' && keyAt(items, 1, end, rows, true) !== undefined;
  if (kind.name !== 'none' && word !== undefined && !joiningWords.has(word) && !clauseFollows) {
    nameItem = 1;
    index = 2;
  }
  const labelItem = items[index]?.kind === 'text' && kind.takes?.check.kind !== 'text' ? index : undefined;
  if (labelItem !== undefined) index += 1;
  if (items[index]?.kind === 'comma') index += 1;
  const clauses = withRows(items, splitClauses(items, index, end, rows), rows);
  return { ...nothing(node), kind, nameItem, labelItem, clauses, takes: kind.takes, rows, declares: kind.declares ?? [] };
}

/** A line below a declaration: `path` leads to it from the declaration's own line. */
export function readBelow(declaration: Node, path: readonly number[]): LineReading | undefined {
  let reading = readHeader(declaration);
  let node: Node | undefined = declaration;
  for (const step of path) {
    node = node?.children[step];
    reading = node === undefined || reading === undefined ? undefined : readUnder(reading, node);
  }
  return reading;
}

/** A line that stands directly below one that is read. */
export function readUnder(above: LineReading, node: Node): LineReading {
  return above.kind === undefined ? readDeeper(node, above.below) : readChild(node, above.kind);
}

function readChild(node: Node, kind: Kind): LineReading {
  const { items } = node.line.statement;
  const rows = propertiesOf(kind);
  const base = { ...nothing(node), rows, entries: kind.entries, declares: kind.declares ?? [] };
  const found = keyAt(items, 0, items.length, rows, true);
  if (found !== undefined) {
    const whole = { key: found.key, keyFrom: 0, keyTo: found.taken, from: found.taken, to: items.length };
    return { ...base, clauses: withRows(items, [whole], rows), below: rows[found.key] };
  }
  const [trailing] = splitClauses(items, 0, items.length, rows);
  if (trailing?.key !== undefined && rows[trailing.key]?.trailing === true)
    return { ...base, clauses: withRows(items, [trailing], rows), below: rows[trailing.key] };
  if (kind.entries === undefined) return { ...base, clauses: [] };
  const deeper = kind.entries.deeper ?? {};
  const name = { key: undefined, keyFrom: 0, keyTo: 0, from: 0, to: Math.min(1, items.length) };
  const clauses = [
    { ...name, row: undefined, inner: [] },
    ...withRows(items, splitClauses(items, name.to, items.length, deeper), deeper),
  ];
  return { ...base, clauses, takes: kind.entries.takes, rows: deeper, below: kind.entries };
}

function readDeeper(node: Node, owner: Property | undefined): LineReading {
  const { items } = node.line.statement;
  const rows = owner?.deeper ?? {};
  const clauses = withRows(items, splitClauses(items, 0, items.length, rows), rows);
  return { ...nothing(node), clauses, takes: owner?.takes, rows, below: clauses.at(-1)?.row };
}

function nothing(node: Node): LineReading {
  return {
    node,
    kind: undefined,
    nameItem: undefined,
    labelItem: undefined,
    clauses: [],
    takes: undefined,
    rows: {},
    declares: [],
    entries: undefined,
    below: undefined,
  };
}

function withRows(items: readonly Item[], clauses: readonly Clause[], rows: Properties): readonly ReadClause[] {
  return clauses.map((clause) => {
    const row = clause.key === undefined ? undefined : rows[clause.key];
    const inner =
      row?.deeper === undefined
        ? []
        : withRows(items, splitClauses(items, clause.from, clause.to, row.deeper), row.deeper).filter(
            ({ key }) => key !== undefined,
          );
    return { ...clause, row, inner };
  });
}
