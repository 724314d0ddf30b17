// The declarations of a file, read from its blocks and numbered. Only blocks that differ are read; of the others only those are
// touched whose number changes: repeated names, and nameless declarations behind one that came or went.
import { type Declaration, findingOf, readDeclaration } from '#grammar/shape';
import type { Node } from '#grammar/tree';
import { type Differing, NONE, spliced } from '#kit/differing';
import type { Finding } from '#kit/finding';
import { type Slot, slotKey } from '#kit/place';
import type { Work } from '#kit/work';
import { syntaxFindings } from './syntax.ts';

export interface Declared {
  readonly slot: Slot;
  readonly node: Node;
  readonly declaration: Declaration;
  /** The phase it stands in. */
  readonly parent?: Slot;
  /** What its lines say against the grammar and the vocabulary. */
  readonly findings: readonly Finding[];
}

export interface DeclaredMemory {
  readonly slots: Map<string, Slot>;
  readonly declarations: WeakMap<Node, { readonly declaration: Declaration | undefined }>;
  readonly declared: WeakMap<Node, Declared>;
  /** How often each name is declared in each file as read last; nameless declarations count by their kind. */
  readonly tallies: Map<string, Map<string, number>>;
}

/** A declaration as it stands in its block. */
export interface Read {
  readonly node: Node;
  readonly declaration: Declaration;
  /** The block, and how many lines below its first one. */
  readonly block: number;
  readonly below: number;
}

export function readBlocks(
  nodes: readonly Node[],
  { from, now }: Differing,
  memory: DeclaredMemory,
  work: Work,
): readonly Read[] {
  const read: Read[] = [];
  const add = (node: Node, block: number, below: number): Declaration | undefined => {
    const declaration = declarationOf(node, memory, work);
    if (declaration !== undefined) read.push({ node, declaration, block, below });
    return declaration;
  };
  for (let block = from; block < now; block += 1) {
    const node = nodes[block]!;
    const kinds = add(node, block, 0)?.kind.declares;
    if (kinds === undefined) continue;
    for (let at = 0; at < node.children.length; at += 1) {
      const child = node.children[at]!;
      const word = child.line.statement.items[0];
      if (word?.kind === 'word' && kinds.includes(word.word)) add(child, block, node.offsets[at]!);
    }
  }
  return read;
}

/** All declarations of the file at `path`: what was read stands in place of those from `from` to `to`. */
export function declaredOf(
  path: string,
  before: readonly Declared[],
  from: number,
  to: number,
  read: readonly Read[],
  memory: DeclaredMemory,
): readonly Declared[] {
  // Where the same names stand in the same order, each keeps its number and so do all behind.
  const same = hasSameKeys(before, from, to, read);
  const { counts, elsewhere } = same ? KEPT : countsBefore(path, before, from, to, read, memory);
  const made: Declared[] = [];
  let block: Slot | undefined;
  for (let at = 0; at < read.length; at += 1) {
    const { node, declaration, below } = read[at]!;
    const nth = same ? numberOf(before[from + at]!) : count(counts, declaration.key);
    const declared = declaredAt(path, node, declaration, nth, below > 0 ? block : undefined, memory);
    if (below === 0) block = declared.slot;
    made.push(declared);
  }
  const all = spliced(before, from, to, made);
  if (!elsewhere) return all;
  const moved = new Map<Slot, Slot>();
  for (let at = from + made.length; at < all.length; at += 1) all[at] = renumbered(path, all[at]!, counts, moved, memory);
  return all;
}

/** A declaration behind those that changed. `moved`: what those before it that changed their slot have now. */
function renumbered(
  path: string,
  old: Declared,
  counts: Map<string, number>,
  moved: Map<Slot, Slot>,
  memory: DeclaredMemory,
): Declared {
  const { node, declaration, slot } = old;
  const parent = old.parent === undefined ? undefined : (moved.get(old.parent) ?? old.parent);
  const counted = counts.has(declaration.key);
  if (!counted && parent === old.parent) return old;
  const nth = counted ? count(counts, declaration.key) : numberOf(old);
  const made = declaredAt(path, node, declaration, nth, parent, memory);
  if (made.slot !== slot) moved.set(slot, made.slot);
  return made;
}

interface Counts {
  /** How often the names that come or go stand before them; nameless declarations count by their kind. */
  readonly counts: Map<string, number>;
  /** Whether any of those names stands elsewhere in the file too. */
  readonly elsewhere: boolean;
}
const KEPT: Counts = { counts: new Map(), elsewhere: false };

function countsBefore(
  path: string,
  before: readonly Declared[],
  from: number,
  to: number,
  read: readonly Read[],
  memory: DeclaredMemory,
): Counts {
  let tally = memory.tallies.get(path);
  if (tally === undefined) memory.tallies.set(path, (tally = new Map()));
  const counts = new Map<string, number>();
  for (let at = from; at < to; at += 1) {
    const { key } = before[at]!.declaration;
    counts.set(key, 0);
    tally.set(key, tally.get(key)! - 1);
  }
  for (const { declaration } of read) counts.set(declaration.key, 0);
  let elsewhere = false;
  for (const key of counts.keys()) elsewhere ||= (tally.get(key) ?? 0) > 0;
  for (const { declaration } of read) count(tally, declaration.key);
  for (let at = 0; elsewhere && at < from; at += 1) {
    const { key } = before[at]!.declaration;
    if (counts.has(key)) count(counts, key);
  }
  return { counts, elsewhere };
}

function hasSameKeys(before: readonly Declared[], from: number, to: number, read: readonly Read[]): boolean {
  if (to - from !== read.length) return false;
  for (let at = 0; at < read.length; at += 1) if (before[from + at]!.declaration.key !== read[at]!.declaration.key) return false;
  return true;
}

function count(counts: Map<string, number>, key: string): number {
  const next = (counts.get(key) ?? 0) + 1;
  counts.set(key, next);
  return next;
}

/** Its number among the declarations of that name (or, nameless, of that kind), from 1. */
function numberOf({ declaration, slot }: Declared): number {
  return declaration.name === '' ? Number(slot.name) : slot.again + 1;
}

function declarationOf(node: Node, memory: DeclaredMemory, work: Work): Declaration | undefined {
  let known = memory.declarations.get(node);
  if (known === undefined) {
    known = { declaration: readDeclaration(node) };
    memory.declarations.set(node, known);
    work.recordsChecked += 1;
  }
  return known.declaration;
}

/** `nth` counts the declarations of that name (or, nameless, of that kind) in the file, from 1. */
function declaredAt(
  path: string,
  node: Node,
  declaration: Declaration,
  nth: number,
  parent: Slot | undefined,
  memory: DeclaredMemory,
): Declared {
  const name = declaration.name === '' ? String(nth) : declaration.name;
  const again = declaration.name === '' ? 0 : nth - 1;
  const known = memory.declared.get(node);
  if (known?.slot.file === path && known.slot.name === name && known.slot.again === again && known.parent === parent)
    return known;
  const slot = slotOf(path, declaration.kind.word, name, again, memory);
  const remarks = declaration.remarks.map((remark) => findingOf(slot, remark));
  const findings = [...syntaxFindings(slot, node, declaration), ...remarks];
  const told = findings.length === 0 ? NONE : findings;
  const made =
    parent === undefined ? { slot, node, declaration, findings: told } : { slot, node, declaration, parent, findings: told };
  memory.declared.set(node, made);
  return made;
}

export function slotOf(file: string, kind: string, name: string, again: number, memory: DeclaredMemory): Slot {
  const made = { file, kind, name, again };
  const key = slotKey(made);
  let slot = memory.slots.get(key);
  if (slot === undefined) memory.slots.set(key, (slot = made));
  return slot;
}
