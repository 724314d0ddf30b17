// DOOR: text → tree. Never throws. With the tree of an earlier text of the same file, everything the change did not touch
// stays the same object; the result is the same as without.
import { indentationProblems } from './indentation.ts';
import { type Lines, readLines, rereadLines } from './lines.ts';
import { buildNodes } from './nodes.ts';
import type { FileTree, Statement } from './tree.ts';

/** Statements by their text, so that no text is read twice; what was not asked for lately is forgotten. */
export interface StatementCache {
  recent: Map<string, Statement>;
  older: Map<string, Statement>;
  /** How many may be recent before the older ones go. */
  readonly room: number;
}

export function statementCache(room = 50_000): StatementCache {
  return { recent: new Map(), older: new Map(), room };
}

/** Counts the lines that had to be read. */
export interface LineCount {
  linesParsed: number;
}

export interface ParseOptions {
  /** The tree of an earlier text of the file. */
  readonly previous?: FileTree;
  /** Statements already read, of any file. */
  readonly cache?: StatementCache;
  readonly work?: LineCount;
}

/** Reads a text. */
export function parse(text: string, options: ParseOptions = {}): FileTree {
  const { cache = statementCache(), work = { linesParsed: 0 } } = options;
  const previous = options.previous as GrownTree | undefined;
  const read = previous === undefined ? readLines(text, cache, work) : rereadLines(text, previous, cache, work);
  return grow(text, read, previous);
}

/** A tree with what the next parse needs of it. */
interface GrownTree extends FileTree {
  readonly marks: Uint8Array;
}

function grow(text: string, read: Lines, previous: GrownTree | undefined): GrownTree {
  const { starts, lines, marks, sameBefore, sameAfter, sameShape } = read;
  const mark = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const firstIndent = (lines[0]?.indent ?? 0) - mark;
  const known = previous === undefined ? undefined : { tree: previous, sameBefore, sameAfter };
  const { nodes, nodeLines } = buildNodes(lines, firstIndent, known);
  const problems = sameShape && previous !== undefined ? previous.problems : indentationProblems(lines, marks, firstIndent);
  return { text, starts, lines, nodes, nodeLines, problems, marks };
}
