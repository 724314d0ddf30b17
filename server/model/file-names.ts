// What a file declares: its declarations with their lasting slots, each the same object while its own lines are. Between two
// texts of a file only the blocks that differ are read; where a block stands is no part of what is kept of it.
import type { FileTree } from '#grammar/tree';
import { type Differing, differing, NONE, spliced } from '#kit/differing';
import type { Finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Work } from '#kit/work';
import { type Declared, type DeclaredMemory, declaredOf, type Read, readBlocks, slotOf } from './declared.ts';
import { type Stray, straysOf } from './strays.ts';

export interface FileNames {
  readonly path: string;
  readonly tree: FileTree;
  readonly declared: readonly Declared[];
  /** The slot of each declaration; the same array while they are the same. */
  readonly slots: readonly Slot[];
  /** 'kind/name' of each declaration, '' of those without a name; the same array while they are the same. */
  readonly keys: readonly string[];
  /** Line number of each declaration, from 0. */
  readonly lines: Int32Array;
  /** Where the declarations of each node of the tree begin in `declared`; one more at the end. */
  readonly begins: Int32Array;
  readonly includes: readonly Declared[];
  /** Rows with second names. */
  readonly seconds: readonly Declared[];
  /** Declarations that have findings. */
  readonly faulty: readonly Declared[];
  /** Lines that belong to no declaration. */
  readonly strays: readonly Stray[];
}

export interface NamesMemory extends DeclaredMemory {
  readonly files: Map<string, FileNames>;
}

export function namesMemory(): NamesMemory {
  return { slots: new Map(), declarations: new WeakMap(), declared: new WeakMap(), tallies: new Map(), files: new Map() };
}

/** The declarations of one file; the same object for the same tree. */
export function fileNames(path: string, tree: FileTree, memory: NamesMemory, work: Work): FileNames {
  const known = memory.files.get(path) ?? nothingIn(path);
  if (known.tree === tree) return known;
  const names = reread(known, tree, memory, work);
  memory.files.set(path, names);
  return names;
}

/** What the lines of a file say against grammar and vocabulary. */
export function lineFindings({ faulty, strays }: FileNames): readonly Finding[] {
  const findings: Finding[] = [];
  for (const each of faulty) findings.push(...each.findings);
  for (const each of strays) findings.push(...each.findings);
  return findings;
}

function nothingIn(path: string): FileNames {
  const tree = { text: '', starts: new Int32Array(), lines: NONE, nodes: NONE, nodeLines: new Int32Array(), problems: NONE };
  const lists = { declared: NONE, slots: NONE, keys: NONE, includes: NONE, seconds: NONE, faulty: NONE, strays: NONE };
  return { path, tree, lines: new Int32Array(), begins: new Int32Array(1), ...lists };
}

function reread(known: FileNames, tree: FileTree, memory: NamesMemory, work: Work): FileNames {
  const { path } = known;
  const blocks = differing(known.tree.nodes, tree.nodes);
  const read = readBlocks(tree.nodes, blocks, memory, work);
  const from = known.begins[blocks.from]!;
  const to = known.begins[blocks.before]!;
  const begins = beginsOf(known.begins, blocks, read);
  const lines = linesOf(known, tree, blocks, begins, read);
  const declared = declaredOf(path, known.declared, from, to, read, memory);
  const changed = differing(known.declared, declared);
  const slotFor = (name: string): Slot => slotOf(path, '', name, 0, memory);
  return {
    path,
    tree,
    declared,
    ...slotsOf(known, declared, changed),
    lines,
    begins,
    includes: those(isInclude, known.includes, known.declared, declared, changed),
    seconds: those(hasSeconds, known.seconds, known.declared, declared, changed),
    faulty: those(hasFindings, known.faulty, known.declared, declared, changed),
    strays: straysOf(tree, begins, slotFor),
  };
}

function beginsOf(known: Int32Array, { from, before, now }: Differing, read: readonly Read[]): Int32Array {
  const begins = new Int32Array(known.length - before + now);
  begins.set(known.subarray(0, from + 1));
  const first = begins[from]!;
  let next = 0;
  for (let block = from; block < now; block += 1) {
    while (next < read.length && read[next]!.block === block) next += 1;
    begins[block + 1] = first + next;
  }
  const shift = begins[now]! - known[before]!;
  for (let at = before + 1; at < known.length; at += 1) begins[at - before + now] = known[at]! + shift;
  return begins;
}

/** Declarations of a block that stayed are as far below its first line as before. */
function linesOf(known: FileNames, tree: FileTree, blocks: Differing, begins: Int32Array, read: readonly Read[]): Int32Array {
  const lines = new Int32Array(begins[tree.nodes.length]!);
  const first = begins[blocks.from]!;
  for (let at = 0; at < read.length; at += 1) lines[first + at] = tree.nodeLines[read[at]!.block]! + read[at]!.below;
  for (let block = 0; block < tree.nodes.length; block += 1) {
    if (block >= blocks.from && block < blocks.now) continue;
    const old = block < blocks.from ? block : block - blocks.now + blocks.before;
    const shift = tree.nodeLines[block]! - known.tree.nodeLines[old]!;
    const moved = begins[block]! - known.begins[old]!;
    for (let at = begins[block]!; at < begins[block + 1]!; at += 1) lines[at] = known.lines[at - moved]! + shift;
  }
  return lines;
}

function slotsOf(known: FileNames, declared: readonly Declared[], changed: Differing): Pick<FileNames, 'slots' | 'keys'> {
  const { from, before, now } = changed;
  let same = before === now;
  for (let at = from; same && at < now; at += 1) same = known.slots[at] === declared[at]!.slot;
  if (same) return { slots: known.slots, keys: known.keys };
  const others = declared.slice(from, now);
  const slots = others.map(({ slot }) => slot);
  const keys = others.map(({ declaration }) => (declaration.name === '' ? '' : declaration.key));
  return { slots: spliced(known.slots, from, before, slots), keys: spliced(known.keys, from, before, keys) };
}

/** The declarations of a sort, in order; the same array while none of that sort is among those that differ. */
function those(
  isOne: (each: Declared) => boolean,
  known: readonly Declared[],
  before: readonly Declared[],
  now: readonly Declared[],
  changed: Differing,
): readonly Declared[] {
  for (let at = changed.from; at < changed.before; at += 1) if (isOne(before[at]!)) return now.filter(isOne);
  for (let at = changed.from; at < changed.now; at += 1) if (isOne(now[at]!)) return now.filter(isOne);
  return known;
}

function isInclude({ slot }: Declared): boolean {
  return slot.kind === 'include';
}

function hasSeconds({ declaration }: Declared): boolean {
  return declaration.given.also !== undefined;
}

function hasFindings({ findings }: Declared): boolean {
  return findings.length > 0;
}
