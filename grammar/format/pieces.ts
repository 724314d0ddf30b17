// A line's items as pieces of text in their usual spelling, with one blank between them; and the test that a line written
// anew still says the same.
import { readStatement } from '../parser/statement.ts';
import type { Expression, Item, Rewrite, Statement } from '../tree.ts';
import { kindSpellings } from '../vocabulary/vocabulary.ts';

export interface Piece {
  readonly text: string;
  /** Columns of the items it stands for, in the line as it is. */
  readonly from: number;
  readonly to: number;
  /** Blanks before it; columns that are aligned ask for more. */
  blanks: number;
}

/** The pieces of an understood line. Items taken as they are spelled stay so, with whatever touches them. */
export function piecesOf(statement: Statement, asIs: ReadonlySet<Item>, kindSpelling: Rewrite | undefined): Piece[] {
  const { text, items } = statement;
  const rewrites = kindSpelling === undefined ? statement.rewrites : [kindSpelling, ...statement.rewrites];
  const pieces: Piece[] = [];
  for (const item of items) {
    const { from, to } = item;
    const last = pieces[pieces.length - 1];
    if (last !== undefined && last.to === from && asIs.has(item) && item.kind !== 'comma') {
      pieces[pieces.length - 1] = { ...last, text: last.text + text.slice(from, to), to };
      continue;
    }
    const blanks = last === undefined || item.kind === 'comma' ? 0 : 1;
    pieces.push({ text: asIs.has(item) ? text.slice(from, to) : spelling(item, text, rewrites), from, to, blanks });
  }
  return pieces;
}

/** A stretch of a line with the rewrites that lie in it. */
export function rewritten(text: string, from: number, to: number, rewrites: readonly Rewrite[]): string {
  let made = '';
  let at = from;
  for (const rewrite of rewrites) {
    // A blank between two pieces that touch is set anyway.
    const between = rewrite.from === rewrite.to && (rewrite.from === from || rewrite.to === to);
    if (rewrite.from < at || rewrite.to > to || between) continue;
    made += text.slice(at, rewrite.from) + rewrite.text;
    at = rewrite.to;
  }
  return made + text.slice(at, to);
}

/** Whether the text of a line reads as the statement does: the same items, nothing to say about them, nothing to rewrite. */
export function saysTheSame(text: string, statement: Statement): boolean {
  const made = readStatement(text);
  return (
    made.items.length === statement.items.length &&
    made.rewrites.length === 0 &&
    made.problems.length === statement.problems.length &&
    (made.comment === undefined) === (statement.comment === undefined) &&
    made.items.every((item, index) => sameItem(item, statement.items[index]!))
  );
}

/** The letters of a text, blanks left out. */
export function lettersOf(text: string): string {
  return text.replace(BLANKS, '');
}

/** A text without the blanks at its end. */
export function trimmedEnd(text: string): string {
  return text.replace(BLANKS_AT_END, '');
}

function spelling(item: Item, text: string, rewrites: readonly Rewrite[]): string {
  if (item.kind === 'joint') return item.joint;
  const written = rewritten(text, item.from, item.to, rewrites);
  return item.kind === 'value' ? tidyExpression(written) : written;
}

/** One blank where there are some; none inside parentheses' edges or before commas. */
function tidyExpression(written: string): string {
  return written
    .replace(BLANKS, ' ')
    .replace(/\( /g, '(')
    .replace(/ (?=[),])/g, '')
    .replace(/(?<=\D),(?=\S)/g, ', ');
}

function sameItem(a: Item, b: Item): boolean {
  if (a.kind === 'value' && b.kind === 'value') return sameExpression(a.expression, b.expression);
  if (a.kind === 'word' && b.kind === 'word') return usualKind(a.word) === usualKind(b.word);
  if (a.kind === 'text' && b.kind === 'text') return a.text === b.text;
  if (a.kind === 'wrong' && b.kind === 'wrong') return a.problem.code === b.problem.code;
  return a.kind === b.kind;
}

/** `figure` is read as `let`. */
function usualKind(word: string): string {
  return Object.hasOwn(kindSpellings, word) ? kindSpellings[word]! : word;
}

function sameExpression(a: Expression, b: Expression): boolean {
  const bare = (key: string, value: unknown): unknown => (key === 'from' || key === 'to' ? undefined : value);
  return JSON.stringify(a, bare) === JSON.stringify(b, bare);
}

// What the reader takes for a blank.
const BLANKS = /[ \t\v\f\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]+/g;
const BLANKS_AT_END = /[ \t\v\f\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]+$/;
