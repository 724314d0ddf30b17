// Places of the model to lines and columns of the present text, both from 0. Columns of a place count from its line's first
// letter.
import type { Place } from '#kit/place';
import type { Position } from '#kit/text';
import type { FileNames } from '#model/file-names';
import type { Model } from '#model/resolve';
import { type Standing, standingOf } from '#model/standing';

/** Characters in UTF-16 units; the end is the one after the last letter. */
export interface Range {
  start: Position;
  end: Position;
}

export function rangeOf(place: Place, model: Model): Range | undefined {
  const standing = standingOf(place, model);
  return standing === undefined ? undefined : stretchOf(standing, place.spot.from, place.spot.to);
}

/** A stretch of a line, kept inside it. */
export function stretchOf({ line, node }: Pick<Standing, 'line' | 'node'>, from: number, to: number): Range {
  const { indent, statement } = node.line;
  const inside = (column: number): number => Math.max(0, Math.min(indent + column, indent + statement.text.length));
  const start = inside(from);
  return { start: { line, character: start }, end: { line, character: Math.max(start, inside(to)) } };
}

/** Characters of a line, its line end left out. */
export function lineLength(tree: FileNames['tree'], line: number): number {
  const found = tree.lines[line];
  return found === undefined ? 0 : found.indent + found.statement.text.length;
}
