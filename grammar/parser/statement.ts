// One line's text to its statement: tokens, items, and what holds between neighbouring items. Depends on the text alone.
import type { Item, Problem, Statement } from '../tree.ts';
import { readTokens } from './lexer.ts';
import { LineParser } from './line.ts';
import { lineTooLong, sizeTypo } from './messages.ts';
import { quantityIn, twiceInches, withUnitOf } from './ranges.ts';

/** Lines over so many characters are not read. */
export const LONGEST_LINE = 10_000;

/** Reads a line's text after its indent. Never throws; what cannot be read is in 'wrong' items and in `problems`. */
export function readStatement(text: string): Statement {
  if (text === '') return BLANK;
  if (text.length > LONGEST_LINE)
    return unread(text, { code: lineTooLong.code, from: 0, to: text.length, details: [text.length] });
  if (isConflictMarker(text)) return { ...BLANK, text };
  const { tokens, problems, rewrites, comment } = readTokens(text);
  if (tokens.length === 0) return comment === undefined ? { ...BLANK, text } : { ...BLANK, text, rewrites, comment };
  const line = parser().read(tokens);
  const items = neighbours(text, line.items).slice();
  const end = tokens[tokens.length - 1]?.to ?? 0;
  const all =
    problems.length === 0 ? line.problems : line.problems.length === 0 ? problems : [...problems, ...line.problems].sort(byPlace);
  const wrong = all.length === 0 ? NOTHING : all;
  const tidied = rewrites.length === 0 ? NOTHING : rewrites;
  return comment === undefined
    ? { text, items, end, problems: wrong, rewrites: tidied }
    : { text, items, end, comment, problems: wrong, rewrites: tidied };
}

/** What version control leaves where two versions could not be merged. */
export function isConflictMarker(text: string): boolean {
  return CONFLICT.test(text);
}

/** What only shows between neighbours: a unit spreads to the left over an x; inches given twice. */
function neighbours(text: string, items: readonly Item[]): readonly Item[] {
  if (!items.some((item) => item.kind === 'joint')) return items;
  const made = [...items];
  for (let at = made.length - 2; at > 0; at -= 1) {
    if (made[at]?.kind !== 'joint') continue;
    spreadUnit(made, at);
    joinInches(text, made, at);
  }
  return made;
}

function spreadUnit(items: Item[], joint: number): void {
  const [left, right] = [items[joint - 1], items[joint + 1]];
  if (left?.kind !== 'value' || right?.kind !== 'value') return;
  const [bare, other] = [quantityIn(left.expression), quantityIn(right.expression)];
  if (bare?.dimension === 'bare' && bare.unit === '' && other?.dimension === 'length') {
    items[joint - 1] = { ...left, expression: withUnitOf(left.expression, bare, other) };
  }
}

function joinInches(text: string, items: Item[], joint: number): void {
  const [first, second] = [items[joint - 2], items[joint - 1]];
  if (first?.kind !== 'value' || second?.kind !== 'value') return;
  const feet = twiceInches(first.expression, second.expression);
  if (feet === undefined) return;
  const { from } = first;
  const { to } = second;
  const problem: Problem = { code: sizeTypo.code, from, to, details: [text.slice(from, to), feet], rewrite: feet };
  items.splice(joint - 2, 2, { kind: 'wrong', problem, from, to });
}

function unread(text: string, problem: Problem): Statement {
  return {
    text,
    items: [{ kind: 'wrong', problem, from: problem.from, to: problem.to }],
    end: problem.to,
    problems: [],
    rewrites: [],
  };
}

function byPlace(a: Problem, b: Problem): number {
  return a.from - b.from;
}

// The parser is made when the first line is read: building its tables takes some milliseconds.
let made: LineParser | undefined;
function parser(): LineParser {
  made ??= new LineParser('trusted');
  return made;
}

const CONFLICT = /^(?:<{7}|={7}|>{7}|\|{7})(?: |$)/;
const NOTHING: readonly never[] = [];
const BLANK: Statement = { text: '', items: NOTHING, end: 0, problems: NOTHING, rewrites: NOTHING };
