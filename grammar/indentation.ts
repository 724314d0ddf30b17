// What is wrong with the shape of a file rather than with any line: indentation that fits nothing or mixes tabs and blanks,
// and the marks that version control leaves in it.
import { CONFLICT, SPACED, TABBED } from './lines.ts';
import { DEEPEST } from './nodes.ts';
import { conflictMarker, indentedStart, mixedIndent, nestedTooDeep, oddOutdent } from './parser/messages.ts';
import type { FileTree, Line } from './tree.ts';

type TreeProblem = FileTree['problems'][number];

/** The problems of the whole, in the order of the lines. One pass that makes nothing where nothing is wrong. */
export function indentationProblems(lines: readonly Line[], marks: Uint8Array, firstIndent: number): readonly TreeProblem[] {
  const problems: TreeProblem[] = [];
  // The open levels: the indent of each, and of its first child (-1 before one came).
  const indents = new Int16Array(DEEPEST + 2);
  const childIndents = new Int16Array(DEEPEST + 2);
  let depth = 0;
  let style = 0;
  for (let index = 0; index < lines.length; index += 1) {
    const line = lines[index]!;
    const mark = marks[index]!;
    if ((mark & CONFLICT) !== 0) {
      const to = line.statement.text.length;
      problems.push({ line: index, problem: { code: conflictMarker.code, from: 0, to, details: [] } });
    }
    if (line.statement.items.length === 0) continue;
    const written = index === 0 ? firstIndent : line.indent;
    const indent = Math.min(written, DEEPEST);
    while (depth > 0 && indents[depth]! >= indent) depth -= 1;
    const expected = depth === 0 ? 0 : childIndents[depth]!;
    if (depth > 0 && expected < 0) childIndents[depth] = indent;
    if (indent === 0) style = 0;
    else {
      const own = mark & (SPACED | TABBED);
      if (style === 0) style = own;
      if (depth === 0) problems.push(indentProblem(index, line, indentedStart.code, [], ''));
      else if (own !== style || own === (SPACED | TABBED))
        problems.push(indentProblem(index, line, mixedIndent.code, [], '  '.repeat(depth)));
      else if (written > DEEPEST) problems.push(indentProblem(index, line, nestedTooDeep.code, [], undefined));
      else if (expected >= 0 && indent !== expected) {
        problems.push(indentProblem(index, line, oddOutdent.code, [indent, expected], ' '.repeat(expected)));
      }
    }
    depth += 1;
    indents[depth] = indent;
    childIndents[depth] = -1;
  }
  return problems;
}

/** A problem of the blanks before a line's first letter. */
function indentProblem(
  line: number,
  { indent }: Line,
  code: string,
  details: readonly unknown[],
  rewrite: string | undefined,
): TreeProblem {
  const made = { code, from: -indent, to: 0, details };
  return { line, problem: rewrite === undefined ? made : { ...made, rewrite } };
}
