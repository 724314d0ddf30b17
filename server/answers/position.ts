// Where a place stands in the present texts: file, line and columns as a person counts them, from 1.
import { lineOf } from '#checks/accept';
import type { Place } from '#kit/place';
import type { View } from './view.ts';

/** Lines and columns count from 1, columns in UTF-16 units; the end column is the one after the last letter. */
export interface Position {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
}

export function positionOf(place: Place, view: View): Position {
  const line = lineOf(place, view.plan.model);
  const before = indentOf(place, view) + 1;
  const { from, to } = place.spot;
  return { file: view.fileName(place.slot.file), line: line + 1, column: before + from, endColumn: before + Math.max(from, to) };
}

/** 'house.screed:12'. */
export function lineText(place: Place, view: View): string {
  const { file, line } = positionOf(place, view);
  return `${file}:${line}`;
}

/** Characters before the first letter of the line that a place stands on. */
function indentOf({ slot, spot }: Place, { plan: { model } }: View): number {
  const declared =
    model.names.bySlot.get(slot) ??
    model.library.bySlot.get(slot) ??
    model.files.find(({ path }) => path === slot.file)?.strays.find((stray) => stray.slot === slot);
  let node = declared?.node;
  for (const step of spot.path) node = node?.children[step] ?? node;
  return node?.line.indent ?? 0;
}
