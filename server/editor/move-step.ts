// A step's own lines taken from where they stand and put below another step of the same file.
import type { FileEdit } from '#answers/fix-edit';
import { lineEndOf } from '#answers/line-end';
import type { Slot } from '#kit/place';
import { firstLineOf } from '#model/standing';
import type { Plan } from '#server/pipeline';
import { lineLength } from './places.ts';
import { fileIn } from './view.ts';

/** Empty where the two are not in one file, or one stands within the other. */
export function moveBelow(step: Slot, below: Slot, plan: Plan): readonly FileEdit[] {
  const { names } = plan.model;
  const [moving, resting] = [names.bySlot.get(step), names.bySlot.get(below)];
  const file = fileIn(plan, step.file);
  if (moving === undefined || resting === undefined || file === undefined || step.file !== below.file) return [];
  const { tree } = file;
  const first = firstLineOf(step, plan.model);
  const last = first + moving.node.height - 1;
  const target = firstLineOf(below, plan.model) + resting.node.height - 1;
  if (target >= first && target <= last) return [];
  const lineEnd = lineEndOf(tree.text);
  const end = tree.starts[last + 1] ?? tree.text.length;
  const lines = tree.text.slice(tree.starts[first]!, end).replace(/\r?\n$/, '');
  // The last line of a file has no line after it, so it takes the line end before it along.
  const isLast = tree.starts[last + 1] === undefined;
  const range = isLast
    ? { start: endOf(first - 1), end: endOf(last) }
    : { start: { line: first, character: 0 }, end: { line: last + 1, character: 0 } };
  const at = endOf(target);
  return [
    { path: step.file, edit: { range, newText: '' } },
    { path: step.file, edit: { range: { start: at, end: at }, newText: `${lineEnd}${lines}` } },
  ];

  function endOf(line: number) {
    return { line, character: lineLength(tree, line) };
  }
}
