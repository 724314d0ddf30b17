// Comments: those at the ends of lines stand in one column with their neighbours'; those alone on a line are indented as
// what they speak of. Their words stay as they are.
import type { FileTree } from '../tree.ts';
import { type Draft, lengthOf } from './columns.ts';
import { commentIndent, indentAt } from './indents.ts';

/** A line that reaches further than this asks for no column; its comment comes after two blanks. */
const FURTHEST = 72;

/** Column of the comment at the end of each line, counted from the line's start. */
export function commentColumns(
  tree: FileTree,
  drafts: readonly (Draft | undefined)[],
  indents: readonly string[],
): Map<number, number> {
  const columns = new Map<number, number>();
  let run: { line: number; end: number }[] = [];
  const close = (): void => {
    const column = Math.max(0, ...run.map(({ end }) => (end <= FURTHEST ? end : 0))) + 2;
    for (const { line, end } of run) columns.set(line, Math.max(column, end + 2));
    run = [];
  };
  tree.lines.forEach(({ statement }, line) => {
    if (statement.text === '') close();
    const draft = drafts[line];
    if (draft === undefined || statement.comment === undefined) return;
    const width = draft.pieces.reduce((sum, { text, blanks }) => sum + blanks + lengthOf(text), 0);
    run.push({ line, end: indents[line]!.length + width });
  });
  close();
  return columns;
}

/** The blanks before a comment alone on its line; undefined where they stay. */
export function blanksBefore(
  tree: FileTree,
  indents: readonly (string | undefined)[],
  columns: ReadonlyMap<number, number>,
  line: number,
): string | undefined {
  const indent = indentAt(tree, line).length;
  const above = commentGoingOn(tree, line, indent);
  if (above === undefined) return commentIndent(tree, indents, line);
  const column = columns.get(above);
  return column === undefined ? undefined : ' '.repeat(column);
}

/** The line above whose comment at its end goes on here, right below it. */
function commentGoingOn(tree: FileTree, from: number, indent: number): number | undefined {
  for (let line = from - 1; line >= 0; line -= 1) {
    const { statement } = tree.lines[line]!;
    if (statement.comment === undefined) return undefined;
    const column = indentAt(tree, line).length + statement.comment.from;
    if (column !== indent) return undefined;
    if (statement.items.length > 0) return line;
  }
  return undefined;
}
