// Places of the model to lines and columns of the present text. Columns of a place count from its line's first letter.
import type { Range } from 'vscode-languageserver-types';
import type { Node } from '#grammar/tree';
import type { Place } from '#kit/place';
import type { FileNames } from '#model/file-names';
import type { Model } from '#model/resolve';
import { standingOf } from '#model/standing';

export function rangeOf(place: Place, model: Model): Range | undefined {
  const standing = standingOf(place, model);
  return standing === undefined ? undefined : stretchOf(standing, place.spot.from, place.spot.to);
}

/** A stretch of a line, kept inside it. */
export function stretchOf({ line, node }: { readonly line: number; readonly node: Node }, from: number, to: number): Range {
  const { indent, statement } = node.line;
  const inside = (column: number): number => Math.max(0, Math.min(indent + column, indent + statement.text.length));
  const start = inside(from);
  return { start: { line, character: start }, end: { line, character: Math.max(start, inside(to)) } };
}

/** From a node's first letter to the end of the last line that belongs to it. */
export function blockRange(node: Node, line: number, { tree }: FileNames): Range {
  const last = Math.min(line + node.height - 1, tree.lines.length - 1);
  return { start: { line, character: node.line.indent }, end: { line: last, character: lineLength(tree, last) } };
}

/** Characters of a line, its line end left out. */
export function lineLength(tree: FileNames['tree'], line: number): number {
  const found = tree.lines[line];
  return found === undefined ? 0 : found.indent + found.statement.text.length;
}
