// Places of the model to lines and columns of the present text, and whole blocks.
import type { Range } from 'vscode-languageserver-types';
import { lineLength } from '#answers/ranges';
import type { Node } from '#grammar/tree';
import type { FileNames } from '#model/file-names';

export { lineLength, rangeOf, stretchOf } from '#answers/ranges';

/** From a node's first letter to the end of the last line that belongs to it. */
export function blockRange(node: Node, line: number, { tree }: FileNames): Range {
  const last = Math.min(line + node.height - 1, tree.lines.length - 1);
  return { start: { line, character: node.line.indent }, end: { line: last, character: lineLength(tree, last) } };
}
