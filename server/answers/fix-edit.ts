// Fixes that findings carry, as edits of the present text: replace, add after, add at the line's end, add a line below.
import type { Fix } from '#kit/finding';
import type { Slot } from '#kit/place';
import { firstLineOf, type Standing, standingOf } from '#model/standing';
import type { Plan } from '#server/pipeline';
import { lineEndOf } from './line-end.ts';
import { lineLength, type Range, rangeOf, stretchOf } from './ranges.ts';

export interface FileEdit {
  readonly path: string;
  readonly edit: { range: Range; newText: string };
}

/** Undefined where the place of the fix is gone, or lies in the library. */
export function editOf(fix: Fix, plan: Plan): FileEdit | undefined {
  const { slot, spot } = fix.place;
  const { model } = plan;
  if (!model.files.some(({ path }) => path === slot.file)) return undefined;
  switch (fix.kind) {
    case 'replace': {
      const range = rangeOf(fix.place, model);
      return range === undefined ? undefined : { path: slot.file, edit: { range, newText: fix.text } };
    }
    case 'insert-after': {
      const range = rangeOf({ slot, spot: { ...spot, from: spot.to } }, model);
      return range === undefined ? undefined : { path: slot.file, edit: { range, newText: fix.text } };
    }
    case 'append': {
      const standing = standingOf({ slot, spot: { ...spot, path: [] } }, model);
      if (standing === undefined) return undefined;
      const { end } = standing.node.line.statement;
      return { path: slot.file, edit: { range: stretchOf(standing, end, end), newText: fix.text } };
    }
    case 'insert-below':
      return lineBelow(slot, fix.text, plan, 'first');
  }
}

/** A line below a declaration's own line, or below all that belongs to it; indented as its other lines are. */
export function lineBelow(slot: Slot, text: string, plan: Plan, where: 'first' | 'last'): FileEdit | undefined {
  const declared = plan.model.names.bySlot.get(slot);
  const file = plan.model.files.find(({ path }) => path === slot.file);
  if (declared === undefined || file === undefined) return undefined;
  const { tree } = file;
  const first = firstLineOf(slot, plan.model);
  const line = where === 'first' ? first : Math.min(first + declared.node.height, tree.lines.length) - 1;
  const position = { line, character: lineLength(tree, line) };
  const newText = `${lineEndOf(tree.text)}${indentBelow(declared.node, first, tree.text, tree.starts)}${text}`;
  return { path: slot.file, edit: { range: { start: position, end: position }, newText } };
}

/** The blanks that its first line below begins with; else its own and two more. */
function indentBelow(node: Standing['node'], line: number, text: string, starts: Int32Array): string {
  const [child] = node.children;
  const from = starts[child === undefined ? line : line + node.offsets[0]!] ?? 0;
  const blanks = text.slice(from, from + (child ?? node).line.indent).replace('\ufeff', '');
  return child === undefined ? `${blanks}  ` : blanks;
}
