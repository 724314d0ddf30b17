// What to say of the pieces that nothing takes: which word was probably meant, where a word stands instead, what would fit.
import { nearest } from '#kit/did-you-mean';
import type { Item, Node } from '../tree.ts';
import type { Kind, Properties } from '../vocabulary/types.ts';
import { propertiesOf } from '../vocabulary/vocabulary.ts';
import { type Clause, keyAt } from './clauses.ts';
import { itemSpot, matchWords, wordAt } from './cursor.ts';
import * as problem from './problems.ts';
import { type Remark, remark } from './problems.ts';
import type { Reading } from './property.ts';

/** The properties that may stand in a declaration's own line. */
export function headerRows(kind: Kind): Properties {
  let rows = headers.get(kind);
  if (rows === undefined) {
    rows = Object.fromEntries(Object.entries(propertiesOf(kind)).filter(([, row]) => row.inHeader === true));
    headers.set(kind, rows);
  }
  return rows;
}
const headers = new WeakMap<Kind, Properties>();

/** Whether the word at `index` begins a clause of these rows, or very nearly, and so is no part of a name. */
export function clauseLike(items: readonly Item[], index: number, rows: Properties): boolean {
  const word = wordAt(items, index, items.length) ?? '';
  const first = Object.keys(rows).map((key) => key.toLowerCase().split(' ')[0]!);
  return first.includes(word) || nearest(word, first, 1).length > 0;
}

/** Remarks on the piece at `index`, which nothing took. */
export function notExpected(
  node: Node,
  index: number,
  path: readonly number[],
  after: string,
  rows: Properties,
  { kind, remarks }: Reading,
): void {
  const { items, text } = node.line.statement;
  // What follows a comma tells more than the comma.
  const next = items[index + 1];
  const at = items[index]?.kind === 'comma' && next !== undefined && next.kind !== 'comma' ? index + 1 : index;
  const item = items[at];
  if (item === undefined || item.kind === 'wrong') return; // its own problem says more
  const spot = itemSpot(item, path);
  const known = path.length === 0 ? { ...headerRows(kind), ...rows } : rows;
  const trailing = Object.keys(known).find(
    (key) => known[key]!.trailing === true && matchWords(items, at, items.length, key.split(' ')),
  );
  if (trailing !== undefined) {
    remarks.push(remark(problem.wordBehind, spot, [trailing, known[trailing]!.example]));
    return;
  }
  if (keyAt(items, at, items.length, known, true) !== undefined && at > 0 && items[at - 1]!.kind !== 'comma') {
    missesComma(node, at, at + 1, path, remarks);
    return;
  }
  const below = path.length === 0 ? keyAt(items, at, items.length, propertiesOf(kind), true) : undefined;
  if (below !== undefined && known[below.key] === undefined) {
    remarks.push(remark(problem.belowOnly, spot, [below.key, kind.word, propertiesOf(kind)[below.key]!.example]));
    return;
  }
  const { near, count } = nearWords(items, at, Object.keys(known));
  const to = items[at + count - 1]?.to ?? item.to;
  remarks.push(
    remark(problem.leftOver, { ...spot, to }, [count > 1 ? text.slice(item.from, to) : said(item, text), after, near], near),
  );
}

/** A remark that a comma belongs before the items from `at` up to `end`; it offers the comma. */
export function missesComma(node: Node, at: number, end: number, path: readonly number[], remarks: Remark[]): void {
  const { items, text } = node.line.statement;
  const [from, to] = [items[at]!.from, items[end - 1]!.to];
  const words = text.slice(from, to);
  remarks.push(remark(problem.commaMissing, { path, from: items[at - 1]!.to, to }, [words], `, ${words}`));
}

/** Remarks on a value that does not fit: on the piece where reading it came to an end. */
export function unfit(
  node: Node,
  stuck: { readonly index: number; readonly wanted: readonly string[] },
  clause: Clause,
  path: readonly number[],
  word: string,
  example: string,
  { remarks }: Reading,
): void {
  const { items, text } = node.line.statement;
  const item = items[stuck.index];
  if (item?.kind === 'wrong') return;
  const wanted = stuck.wanted.map((form) => form.replace(/^, /, 'a comma and '));
  if (item === undefined || stuck.index >= clause.to) {
    const last = items[clause.to - 1];
    remarks.push(remark(problem.valueMissing, itemSpot(last, path), [word, wanted.join(' or '), example]));
    return;
  }
  remarks.push(remark(problem.valueUnfit, itemSpot(item, path), [word, wanted, said(item, text), example]));
}

/** The known words that the next one or two are nearest to, and how many of them that takes. */
function nearWords(items: readonly Item[], at: number, keys: readonly string[]): { near: string | undefined; count: number } {
  const [first, second] = [wordAt(items, at, items.length), wordAt(items, at + 1, items.length)];
  if (first === undefined) return { near: undefined, count: 1 };
  const both =
    second === undefined
      ? []
      : nearest(
          `${first} ${second}`,
          keys.filter((key) => key.includes(' ')),
          1,
        );
  if (both[0] !== undefined) return { near: both[0], count: 2 };
  const one = nearest(first, keys, 1)[0] ?? keys.find((key) => key.startsWith(`${first} `));
  return { near: one, count: 1 };
}

function said(item: Item, text: string): string {
  return item.kind === 'text' ? item.text : text.slice(item.from, item.to);
}
