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
  const declared = declaredOrStray(slot, model);
  if (declared === undefined) return undefined;
  let { node, line } = declared;
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

function declaredOrStray(slot: Slot, model: Model): { readonly node: Node; readonly line: number } | undefined {
  const declared = model.names.bySlot.get(slot) ?? model.library.bySlot.get(slot);
  // Lines outside every declaration have no kind.
  if (declared !== undefined || slot.kind !== '') return declared;
  return model.files.find(({ path }) => path === slot.file)?.strays.find((stray) => stray.slot === slot);
}
