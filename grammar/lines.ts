// Text to lines: where each begins, how far it is indented, its statement. Between two texts of one file the lines before
// and after the change stay the same objects.
import { spliced } from '#kit/differing';
import { lineStarts } from '#kit/text';
import type { LineCount, StatementCache } from './parse.ts';
import { isBlank } from './parser/reading.ts';
import { isConflictMarker, LONGEST_LINE, readStatement } from './parser/statement.ts';
import type { Line, Statement } from './tree.ts';

/** What a line shows that its statement does not: how it is indented, and marks that version control left. */
export const SPACED = 1;
export const TABBED = 2;
export const CONFLICT = 4;

export interface Lines {
  readonly starts: Int32Array;
  readonly lines: readonly Line[];
  /** SPACED, TABBED and CONFLICT of each line. */
  readonly marks: Uint8Array;
  /** Lines at the beginning and at the end that are the same objects as before. */
  readonly sameBefore: number;
  readonly sameAfter: number;
  /** No line was added, and none is indented, filled or marked otherwise than before. */
  readonly sameShape: boolean;
}

export interface KnownLines {
  readonly text: string;
  readonly starts: Int32Array;
  readonly lines: readonly Line[];
  readonly marks: Uint8Array;
}

/** All lines of a text, read afresh or from the cache. */
export function readLines(text: string, cache: StatementCache, work: LineCount): Lines {
  const starts = lineStarts(text);
  const marks = new Uint8Array(starts.length);
  const lines = Array.from(starts, (_, index) => readLine({ text, from: 0, cache, work }, starts, index, marks));
  return { starts, lines, marks, sameBefore: 0, sameAfter: 0, sameShape: false };
}

/** The lines of a text that differs from a known one in one stretch. */
export function rereadLines(text: string, known: KnownLines, cache: StatementCache, work: LineCount): Lines {
  const before = commonStart(known.text, text);
  const after = commonEnd(known.text, text, before);
  const keptBefore = linesBefore(known.starts, before);
  const firstAfter = lineBeyond(known.starts, known.text.length - after);
  const keptAfter = known.starts.length - firstAfter;
  const shift = text.length - known.text.length;
  const from = known.starts[keptBefore] ?? 0;
  const to = keptAfter === 0 ? text.length : known.starts[firstAfter]! + shift;
  const stretch = ownLetters(text.slice(from, to));
  const fresh = lineStarts(stretch);
  // Where lines follow, the stretch ends with a line end, and what lineStarts sees behind that is the first of those.
  const freshCount = keptAfter === 0 ? fresh.length : fresh.length - 1;
  const firstSame = keptBefore + freshCount;
  const starts = new Int32Array(firstSame + keptAfter);
  const marks = new Uint8Array(firstSame + keptAfter);
  starts.set(known.starts.subarray(0, keptBefore));
  marks.set(known.marks.subarray(0, keptBefore));
  for (let index = 0; index < freshCount; index += 1) starts[keptBefore + index] = fresh[index]! + from;
  for (let index = 0; index < keptAfter; index += 1) starts[firstSame + index] = known.starts[firstAfter + index]! + shift;
  marks.set(known.marks.subarray(firstAfter), firstSame);
  const middle: Line[] = [];
  const source = { text: stretch, from, cache, work };
  for (let index = keptBefore; index < firstSame; index += 1) middle.push(readLine(source, starts, index, marks));
  const replaced = known.lines.slice(keptBefore, firstAfter);
  const same = keepSame(middle, replaced);
  const sameShape = isSameShape(
    middle,
    replaced,
    marks.subarray(keptBefore, firstSame),
    known.marks.subarray(keptBefore, firstAfter),
  );
  const lines = spliced(known.lines, keptBefore, firstAfter, middle);
  return { starts, lines, marks, sameBefore: keptBefore + same.before, sameAfter: keptAfter + same.after, sameShape };
}

interface Source {
  /** A stretch of the text that begins at `from` and holds the line. */
  readonly text: string;
  readonly from: number;
  readonly cache: StatementCache;
  readonly work: LineCount;
}

function readLine(source: Source, starts: Int32Array, index: number, marks: Uint8Array): Line {
  const { text } = source;
  const start = starts[index]! - source.from;
  const end = lineEnd(text, start, Math.min(text.length, (starts[index + 1] || source.from + text.length) - source.from));
  let at = start;
  // A byte order mark is part of the first line's indent and means nothing.
  if (index === 0 && text.charCodeAt(0) === 0xfeff) at += 1;
  let mark = 0;
  for (; at < end; at += 1) {
    const code = text.charCodeAt(at);
    if (!isBlank(code)) break;
    mark |= code === 32 ? SPACED : TABBED;
  }
  const written = text.slice(at, end);
  if (isConflictMarker(written)) mark |= CONFLICT;
  marks[index] = mark;
  return { indent: at - start, statement: statementOf(written, source.cache, source.work) };
}

function statementOf(text: string, cache: StatementCache, work: LineCount): Statement {
  const known = cache.recent.get(text);
  if (known !== undefined) return known;
  let statement = cache.older.get(text);
  if (statement === undefined) {
    work.linesParsed += 1;
    statement = readStatement(text);
    if (text.length > LONGEST_LINE) return statement;
  }
  if (cache.recent.size >= cache.room) {
    cache.older = cache.recent;
    cache.recent = new Map();
  }
  cache.recent.set(statement.text, statement);
  return statement;
}

/** Puts the known objects in place of equal new ones at both ends, and says how many. */
function keepSame(middle: Line[], known: readonly Line[]): { readonly before: number; readonly after: number } {
  const most = Math.min(middle.length, known.length);
  let before = 0;
  while (before < most && sameLine(middle[before]!, known[before]!)) {
    middle[before] = known[before]!;
    before += 1;
  }
  let after = 0;
  while (after < most - before && sameLine(middle[middle.length - 1 - after]!, known[known.length - 1 - after]!)) {
    middle[middle.length - 1 - after] = known[known.length - 1 - after]!;
    after += 1;
  }
  return { before, after };
}

function isSameShape(middle: readonly Line[], known: readonly Line[], marks: Uint8Array, knownMarks: Uint8Array): boolean {
  return (
    middle.length === known.length &&
    middle.every((line, index) => {
      const other = known[index]!;
      const filled = line.statement.items.length > 0 === other.statement.items.length > 0;
      return filled && line.indent === other.indent && marks[index] === knownMarks[index] && (marks[index]! & CONFLICT) === 0;
    })
  );
}

function sameLine(a: Line, b: Line): boolean {
  return a.indent === b.indent && a.statement.text === b.statement.text;
}

/** Where the letters of a line end, its line end not counted. */
function lineEnd(text: string, start: number, next: number): number {
  let at = next;
  if (at > start && text.charCodeAt(at - 1) === 10) at -= 1;
  if (at > start && text.charCodeAt(at - 1) === 13) at -= 1;
  return at;
}

/**
 * How many lines certainly stay: they end, with their line end, at least one letter before the change, since a CR directly
 * before it may have become half of a CR LF.
 */
function linesBefore(starts: Int32Array, change: number): number {
  return Math.max(0, firstAtLeast(starts, change) - 1);
}

/** The first line that begins beyond the change, with its line break unchanged before it. */
function lineBeyond(starts: Int32Array, change: number): number {
  return firstAtLeast(starts, change + 1);
}

/** The first index whose value is at least `offset`, in rising values. */
export function firstAtLeast(starts: Int32Array | readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (starts[middle]! < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}

// Two texts are compared by long stretches first: a comparison of equal stretches costs next to nothing a letter.
const STRETCHES: readonly number[] = [65_536, 2_048, 64, 1];

/** Letters that two texts have in common at the start. */
function commonStart(a: string, b: string): number {
  const most = Math.min(a.length, b.length);
  let at = 0;
  for (const step of STRETCHES) while (at + step <= most && a.slice(at, at + step) === b.slice(at, at + step)) at += step;
  return at;
}

/** Letters in common at the end, not counting the first `start`. */
function commonEnd(a: string, b: string, start: number): number {
  const most = Math.min(a.length, b.length) - start;
  let at = 0;
  for (const step of STRETCHES) {
    while (at + step <= most && a.slice(a.length - at - step, a.length - at) === b.slice(b.length - at - step, b.length - at))
      at += step;
  }
  return at;
}

/** The same letters in a string of their own: a slice would keep the whole text in memory for as long as it lives. */
function ownLetters(slice: string): string {
  return ` ${slice}`.slice(1);
}
