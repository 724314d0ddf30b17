// Every place where a thing's name stands: at its declaration, and wherever it is used, in all files of a plan.
import type { Range } from 'vscode-languageserver-types';
import type { Slot } from '#kit/place';
import type { Declared } from '#model/declared';
import type { FileNames } from '#model/file-names';
import type { Plan } from '#server/pipeline';
import { stretchOf } from './places.ts';
import { meantBy, nodeAt, usesIn } from './uses.ts';

export interface Occurrence {
  readonly path: string;
  readonly range: Range;
  readonly isDeclaration: boolean;
  /** The name as it stands there: a second name differs from the first. */
  readonly text: string;
}

/** In plan order. Uses in the library itself count only where the thing is one of the library's. */
export function occurrencesOf(slot: Slot, plan: Plan): readonly Occurrence[] {
  const { model } = plan;
  const inLibrary = model.names.bySlot.get(slot) === undefined;
  const files = inLibrary ? [...model.files, ...model.library.files] : model.files;
  return files.flatMap((file) => occurrencesIn(slot, file, plan));
}

export function occurrencesIn(slot: Slot, file: FileNames, { model }: Plan): readonly Occurrence[] {
  const found: Occurrence[] = [];
  for (const [index, declared] of file.declared.entries()) {
    const line = file.lines[index]!;
    // The same name in a plan and in the library is one thing.
    if (isSame(declared.slot, slot)) found.push(own(declared, line, file.path));
    for (const use of usesIn(declared)) {
      // Most names are others: only those that could be it are looked up.
      if (!mayBe(use.name, slot.name) && use.space !== 'goods' && use.space !== 'priced' && use.space !== 'any') continue;
      const meant = meantBy(use, declared.slot, model);
      if (meant === undefined || !isSame(meant, slot)) continue;
      const placed = at(declared, line, use.spot.path);
      if (placed === undefined) continue;
      const { from, to } = use.spot;
      const text = placed.node.line.statement.text.slice(from, to);
      found.push({ path: file.path, range: stretchOf(placed, from, to), isDeclaration: false, text });
    }
  }
  return found;
}

function isSame(a: Slot, b: Slot): boolean {
  return a === b || (a.kind === b.kind && a.name === b.name && a.again === b.again && a.kind !== '');
}

function mayBe(used: string, name: string): boolean {
  return used === name || used.split('.').includes(name);
}

function own({ declaration, node }: Declared, line: number, path: string): Occurrence {
  const { from, to } = declaration.nameSpot;
  return {
    path,
    range: stretchOf({ line, node }, from, to),
    isDeclaration: true,
    text: node.line.statement.text.slice(from, to),
  };
}

function at(declared: Declared, first: number, path: readonly number[]): { node: Declared['node']; line: number } | undefined {
  const node = nodeAt(declared.node, path);
  if (node === undefined) return undefined;
  let line = first;
  let above = declared.node;
  for (const step of path) {
    line += above.offsets[step] ?? 0;
    above = above.children[step]!;
  }
  return { node, line };
}
