// Ever wider stretches around a position: the item, its clause, the line, the line with what is below it, the block.
import type { Position, Range, SelectionRange } from 'vscode-languageserver-types';
import { firstLineOf } from '#model/standing';
import { thereAt } from './at-position.ts';
import type { Feature } from './features.ts';
import { blockRange, lineLength, stretchOf } from './places.ts';
import type { View } from './view.ts';

export const selection: Feature = {
  method: 'textDocument/selectionRange',
  offers: () => ({ selectionRangeProvider: true }),
  answer: (view, { positions }: { readonly positions: readonly Position[] }) =>
    positions.map((position) => selectionAt(view, position)),
};

function selectionAt(view: View, position: Position): SelectionRange {
  const ranges = rangesAround(view, position);
  // Each must hold the one inside it; what does not is left out.
  let outer: SelectionRange | undefined;
  for (const range of [...ranges].reverse()) {
    if (outer !== undefined && (!holds(outer.range, range) || same(outer.range, range))) continue;
    outer = outer === undefined ? { range } : { range, parent: outer };
  }
  return outer ?? { range: { start: position, end: position } };
}

/** From the narrowest to the widest. */
function rangesAround({ file, plan }: View, position: Position): readonly Range[] {
  const { tree } = file;
  if (position.line >= tree.lines.length || position.character > lineLength(tree, position.line)) return [];
  const last = tree.lines.length - 1;
  const whole: Range = { start: { line: 0, character: 0 }, end: { line: last, character: lineLength(tree, last) } };
  const there = thereAt(file, plan.model, position);
  if (there === undefined) {
    const { line } = position;
    return [{ start: { line, character: 0 }, end: { line, character: lineLength(tree, line) } }, whole];
  }
  const { declared, node, line, item, clause, naming, path } = there;
  const { items, end } = node.line.statement;
  const around: Range[] = [];
  if (naming !== undefined) around.push(stretchOf(there, naming.spot.from, naming.spot.to));
  if (item !== undefined) around.push(stretchOf(there, item.from, item.to));
  if (clause !== undefined) {
    const first = items[clause.key === undefined ? clause.from : Math.min(clause.keyFrom, clause.from)];
    const lastItem = items[Math.max(clause.to, clause.keyTo) - 1];
    if (first !== undefined && lastItem !== undefined) around.push(stretchOf(there, first.from, lastItem.to));
  }
  around.push(stretchOf(there, 0, end));
  // The line with what is below it, then each line above that it belongs to.
  const lines: Range[] = [];
  let above = declared.node;
  let at = firstLineOf(declared.slot, plan.model);
  lines.push(blockRange(above, at, file));
  for (const step of path) {
    at += above.offsets[step] ?? 0;
    above = above.children[step]!;
    lines.push(blockRange(above, at, file));
  }
  const phase = declared.parent === undefined ? undefined : plan.model.names.bySlot.get(declared.parent);
  const phases = phase === undefined ? [] : [blockRange(phase.node, firstLineOf(phase.slot, plan.model), file)];
  return [...around, ...lines.reverse(), ...phases, whole].filter((range) => range.start.line <= line);
}

function holds(outer: Range, inner: Range): boolean {
  return !before(inner.start, outer.start) && !before(outer.end, inner.end);
}

function before(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}

function same(a: Range, b: Range): boolean {
  return holds(a, b) && holds(b, a);
}
