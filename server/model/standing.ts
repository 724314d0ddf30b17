// Which line of the present text a place stands on. Places hold no lines, so that a line typed above moves none of them;
// whoever shows one asks here.
import type { Node } from '#grammar/tree';
import type { Place, Slot } from '#kit/place';
import type { Model } from './resolve.ts';

export interface Standing {
  readonly path: string;
  /** From 0. */
  readonly line: number;
  /** The line itself, with its indent and text. */
  readonly node: Node;
}

/** The line that a place is on; undefined where what it stood in is gone. A line lost from below its declaration: the one above. */
export function standingOf({ slot, spot }: Place, model: Model): Standing | undefined {
  const top = declaredOrStray(slot, model);
  if (top === undefined) return undefined;
  let { node, line } = top;
  for (const step of spot.path) {
    const child = node.children[step];
    if (child === undefined) break;
    line += node.offsets[step] ?? 0;
    node = child;
  }
  return { path: slot.file, line, node };
}

/** The line alone, from 0; the first where what it stood in is gone. */
export function lineOf(place: Place, model: Model): number {
  return standingOf(place, model)?.line ?? 0;
}

/** The line on which a declaration of the plan or the library begins, from 0; the first where it is gone. */
export function firstLineOf(slot: Slot, model: Model): number {
  return model.names.lineOf(slot) ?? model.library.lineOf(slot) ?? 0;
}

function declaredOrStray(slot: Slot, model: Model): { readonly node: Node; readonly line: number } | undefined {
  const declared = model.names.bySlot.get(slot) ?? model.library.bySlot.get(slot);
  if (declared !== undefined) return { node: declared.node, line: firstLineOf(slot, model) };
  // Lines outside every declaration have no kind.
  if (slot.kind !== '') return undefined;
  return model.files.find(({ path }) => path === slot.file)?.strays.find((stray) => stray.slot === slot);
}
