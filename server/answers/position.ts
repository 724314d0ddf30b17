// Where a place stands in the present texts: file, line and columns as a person counts them, from 1.
import type { Place } from '#kit/place';
import { standingOf } from '#model/standing';
import type { View } from './view.ts';

/** Lines and columns count from 1, columns in UTF-16 units; the end column is the one after the last letter. */
export interface Position {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
}

export function positionOf(place: Place, view: View): Position {
  const standing = standingOf(place, view.plan.model);
  const line = standing?.line ?? 0;
  const before = (standing?.node.line.indent ?? 0) + 1;
  const { from, to } = place.spot;
  return { file: view.fileName(place.slot.file), line: line + 1, column: before + from, endColumn: before + Math.max(from, to) };
}

/** 'house.screed:12'. */
export function lineText(place: Place, view: View): string {
  const { file, line } = positionOf(place, view);
  return `${file}:${line}`;
}
