// How far each line is indented: two blanks a level. A block keeps the indentation it has where a line in it must not be
// touched and stands elsewhere: moving its neighbours alone would put lines below other lines.
import { DEEPEST } from '../nodes.ts';
import type { FileTree } from '../tree.ts';
import type { Form } from './understood.ts';

const LEVEL = '  ';

/** The blanks before each line that holds a statement; undefined where they stay as they are. */
export function indentsOf(tree: FileTree, forms: readonly (Form | undefined)[]): readonly (string | undefined)[] {
  const indents: (string | undefined)[] = new Array<string | undefined>(tree.lines.length).fill(undefined);
  const troubled = new Set(tree.problems.map(({ line }) => line));
  tree.nodes.forEach((node, index) => {
    const from = tree.nodeLines[index]!;
    const to = from + node.height;
    if (mustStay(tree, forms, troubled, from, to)) return;
    for (let line = from; line < to; line += 1) {
      const form = forms[line];
      if (form !== undefined) indents[line] = LEVEL.repeat(form.depth);
    }
  });
  return indents;
}

/**
 * The blanks before a line that holds only a comment: as before the line it speaks of, which is the next one, or else one
 * above; undefined where they stay. In the first column it stays there.
 */
export function commentIndent(tree: FileTree, indents: readonly (string | undefined)[], line: number): string | undefined {
  const indent = indentAt(tree, line).length;
  if (indent === 0) return '';
  const next = statementLine(tree, line, 1);
  if (next !== undefined && indentAt(tree, next).length === indent) return indents[next];
  for (let above = statementLine(tree, line, -1); above !== undefined; above = statementLine(tree, above, -1)) {
    const own = indentAt(tree, above).length;
    if (own > indent) continue;
    const made = indents[above];
    return made === undefined ? undefined : made + ' '.repeat(indent - own);
  }
  return undefined;
}

/** The blanks before a line's first letter, without a byte order mark. */
export function indentAt(tree: FileTree, line: number): string {
  const start = tree.starts[line]! + markLength(tree, line);
  return tree.text.slice(start, tree.starts[line]! + tree.lines[line]!.indent);
}

/** One for the first line of a text that begins with a byte order mark. */
export function markLength(tree: FileTree, line: number): number {
  return line === 0 && tree.text.charCodeAt(0) === 0xfeff ? 1 : 0;
}

function mustStay(
  tree: FileTree,
  forms: readonly (Form | undefined)[],
  troubled: ReadonlySet<number>,
  from: number,
  to: number,
): boolean {
  for (let line = from; line < to; line += 1) {
    const form = forms[line];
    // Where indentation is odd, the tree is a guess.
    if (troubled.has(line)) return true;
    if (form === undefined) continue;
    if (form.depth * LEVEL.length > DEEPEST) return true;
    if (!form.understood && indentAt(tree, line) !== LEVEL.repeat(form.depth)) return true;
  }
  return false;
}

function statementLine({ lines }: FileTree, from: number, step: 1 | -1): number | undefined {
  let line = from + step;
  while (line >= 0 && line < lines.length && lines[line]!.statement.items.length === 0) line += step;
  return line >= 0 && line < lines.length ? line : undefined;
}
