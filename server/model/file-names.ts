// What a file declares: its declarations with their lasting slots, each the same object while its lines say the same. Which
// line of the file each stands on is kept beside them, so that a line typed above leaves them all as they are.
import { type Declaration, findingOf, readDeclaration } from '#grammar/shape';
import { unknownKind } from '#grammar/shape/problems';
import type { FileTree, Node, Problem } from '#grammar/tree';
import { kindOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import { nearest } from '#kit/did-you-mean';
import { type Finding, finding } from '#kit/finding';
import { type Slot, slotKey } from '#kit/place';
import { sameList } from '#kit/same-list';
import type { Work } from '#kit/work';
import { problemFinding, syntaxFindings } from './syntax.ts';

export interface Declared {
  readonly slot: Slot;
  readonly node: Node;
  readonly declaration: Declaration;
  /** The phase it stands in. */
  readonly parent?: Slot;
  /** What its lines say against the grammar and the vocabulary. */
  readonly findings: readonly Finding[];
}

export interface Stray {
  readonly slot: Slot;
  readonly node: Node;
  readonly line: number;
  readonly findings: readonly Finding[];
}

export interface FileNames {
  readonly path: string;
  readonly tree: FileTree;
  /** In the order of the text; the same array while its members are. */
  readonly declared: readonly Declared[];
  /** The line of each, from 0. */
  readonly lines: Int32Array;
  /** Where the declarations of each node of the tree begin in `declared`; one more at the end. */
  readonly begins: Int32Array;
  readonly includes: readonly Declared[];
  /** Lines in the first column whose kind is unknown. */
  readonly strays: readonly Stray[];
  /** What the lines say against grammar and vocabulary. */
  readonly findings: readonly Finding[];
}

export interface NamesMemory {
  readonly slots: Map<string, Slot>;
  readonly declarations: WeakMap<Node, { readonly declaration: Declaration | undefined }>;
  readonly declared: WeakMap<Node, Declared>;
  readonly files: Map<string, FileNames>;
}

export function namesMemory(): NamesMemory {
  return { slots: new Map(), declarations: new WeakMap(), declared: new WeakMap(), files: new Map() };
}

/** The declarations of one file. The same object for the same tree; each declaration the same while it and its line are. */
export function fileNames(path: string, tree: FileTree, memory: NamesMemory, work: Work): FileNames {
  const known = memory.files.get(path);
  if (known?.tree === tree) return known;
  const names = (known === undefined ? undefined : patched(known, tree, memory, work)) ?? readAll(path, tree, memory, work);
  memory.files.set(path, names);
  return names;
}

function readAll(path: string, tree: FileTree, memory: NamesMemory, work: Work): FileNames {
  const declared: Declared[] = [];
  const lines: number[] = [];
  const strays: Stray[] = [];
  const counts = new Map<string, number>();
  const begins = new Int32Array(tree.nodes.length + 1);
  tree.nodes.forEach((node, index) => {
    let parent: Slot | undefined;
    const top = tree.nodeLines[index] ?? 0;
    for (const { node: each, below } of declaring(node)) {
      const declaration = declarationOf(each, memory, work);
      if (declaration === undefined) {
        if (each === node) strays.push(stray(path, node, top, count(counts, ''), memory));
        continue;
      }
      const made = declaredAt(path, each, declaration, count(counts, countedBy(declaration)), parent, memory);
      if (each === node) parent = made.slot;
      declared.push(made);
      lines.push(top + below);
    }
    begins[index + 1] = declared.length;
  });
  for (const { line, problem } of tree.problems) strays.push(troubled(path, tree, line, problem, memory));
  return {
    path,
    tree,
    declared,
    lines: new Int32Array(lines),
    begins,
    includes: declared.filter(({ slot }) => slot.kind === 'include'),
    strays,
    findings: lineFindings(declared, strays),
  };
}

/** What declarations of one name are counted by; those without a name are counted by their kind. */
function countedBy({ name, kind, key }: Declaration): string {
  return name === '' ? kind.word : key;
}

/** A node and the nodes below it that declare something, with how many lines below. */
function declaring(node: Node): readonly { readonly node: Node; readonly below: number }[] {
  const first = node.line.statement.items[0];
  const kinds = first?.kind === 'word' ? kindOf(first.word)?.declares : undefined;
  if (kinds === undefined) return [{ node, below: 0 }];
  const all = [{ node, below: 0 }];
  node.children.forEach((child, at) => {
    const word = child.line.statement.items[0];
    if (word?.kind === 'word' && kinds.includes(word.word)) all.push({ node: child, below: node.offsets[at] ?? 0 });
  });
  return all;
}

/** Blocks that differ beyond this many are read as a new file would be. */
const FEW = 16;

/**
 * A file of which a few blocks that follow one another are others than before, or more, or fewer: all declarations above and
 * below stay. Undefined where the change reaches further, as a second declaration of one name does.
 */
function patched(known: FileNames, tree: FileTree, memory: NamesMemory, work: Work): FileNames | undefined {
  if (known.strays.length > 0 || tree.problems.length > 0) return undefined;
  const { nodes, nodeLines } = tree;
  const before = known.tree.nodes;
  const shorter = Math.min(nodes.length, before.length);
  let top = 0;
  while (top < shorter && nodes[top] === before[top]) top += 1;
  let below = 0;
  while (below < shorter - top && nodes[nodes.length - 1 - below] === before[before.length - 1 - below]) below += 1;
  const end = nodes.length - below;
  const oldEnd = before.length - below;
  if (end - top > FEW || oldEnd - top > FEW) return undefined;
  const from = known.begins[top]!;
  const to = known.begins[oldEnd]!;
  const gone = known.declared.slice(from, to);
  const come = readBlocks(known, tree, top, end, from, memory, work);
  if (come === undefined || [...gone, ...come.declared].some(({ slot }) => slot.kind === 'include')) return undefined;
  if (renumbers(gone, come.declared, known.declared, to)) return undefined;
  const more = come.declared.length - gone.length;
  const begins = new Int32Array(nodes.length + 1);
  const lines = new Int32Array(known.declared.length + more);
  lines.set(come.lines, from);
  for (let at = 0; at < nodes.length; at++) {
    if (at >= top && at < end) {
      begins[at + 1] = from + come.ends[at - top]!;
      continue;
    }
    // Comments and empty lines move what stands below them without being part of it.
    const old = at < top ? at : at - end + oldEnd;
    const shift = nodeLines[at]! - known.tree.nodeLines[old]!;
    const moved = begins[at]! - known.begins[old]!;
    for (let nth = known.begins[old]!; nth < known.begins[old + 1]!; nth++) lines[nth + moved] = known.lines[nth]! + shift;
    begins[at + 1] = known.begins[old + 1]! + moved;
  }
  const same = sameList(gone, come.declared);
  const declared = same ? known.declared : [...known.declared.slice(0, from), ...come.declared, ...known.declared.slice(to)];
  const quiet = known.findings.length === 0 && come.declared.every(({ findings }) => findings.length === 0);
  return {
    ...known,
    tree,
    declared,
    lines,
    begins,
    findings: same || quiet ? known.findings : lineFindings(declared, known.strays),
  };
}

interface Blocks {
  readonly declared: readonly Declared[];
  readonly lines: readonly number[];
  /** How many declarations there are up to the end of each block. */
  readonly ends: readonly number[];
}

/** The declarations of some blocks that stand below the first `above` of the file; undefined where one declares nothing. */
function readBlocks(
  known: FileNames,
  { nodes, nodeLines }: FileTree,
  top: number,
  end: number,
  above: number,
  memory: NamesMemory,
  work: Work,
): Blocks | undefined {
  const declared: Declared[] = [];
  const lines: number[] = [];
  const ends: number[] = [];
  for (let at = top; at < end; at++) {
    let parent: Slot | undefined;
    for (const { node, below } of declaring(nodes[at]!)) {
      const declaration = declarationOf(node, memory, work);
      if (declaration === undefined) {
        if (node === nodes[at]) return undefined;
        continue;
      }
      const key = countedBy(declaration);
      const nth = 1 + countOf(key, known.declared, above) + countOf(key, declared, declared.length);
      const made = declaredAt(known.path, node, declaration, nth, parent, memory);
      if (node === nodes[at]) parent = made.slot;
      declared.push(made);
      lines.push(nodeLines[at]! + below);
    }
    ends.push(declared.length);
  }
  return { declared, lines, ends };
}

/** How many of the first so many declarations are counted by a key. */
function countOf(key: string, declared: readonly Declared[], upTo: number): number {
  let found = 0;
  for (let at = 0; at < upTo; at++) if (countedBy(declared[at]!.declaration) === key) found += 1;
  return found;
}

/** Whether what stands below a change would be counted otherwise: a name that it holds too came, or went. */
function renumbers(gone: readonly Declared[], come: readonly Declared[], declared: readonly Declared[], from: number): boolean {
  const more = new Map<string, number>();
  for (const { declaration } of gone) more.set(countedBy(declaration), (more.get(countedBy(declaration)) ?? 0) - 1);
  for (const { declaration } of come) more.set(countedBy(declaration), (more.get(countedBy(declaration)) ?? 0) + 1);
  for (const [key, count] of more) if (count === 0) more.delete(key);
  if (more.size === 0) return false;
  for (let at = from; at < declared.length; at++) if (more.has(countedBy(declared[at]!.declaration))) return true;
  return false;
}

function declarationOf(node: Node, memory: NamesMemory, work: Work): Declaration | undefined {
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
  memory: NamesMemory,
): Declared {
  const name = declaration.name === '' ? String(nth) : declaration.name;
  const again = declaration.name === '' ? 0 : nth - 1;
  const known = memory.declared.get(node);
  if (
    known !== undefined &&
    known.slot.file === path &&
    known.slot.name === name &&
    known.slot.again === again &&
    known.parent === parent
  )
    return known;
  const slot = slotFor(path, declaration.kind.word, name, again, memory);
  const findings = [...syntaxFindings(slot, node, declaration), ...declaration.remarks.map((remark) => findingOf(slot, remark))];
  const base = { slot, node, declaration, findings };
  const made = parent === undefined ? base : { ...base, parent };
  memory.declared.set(node, made);
  return made;
}

function count(counts: Map<string, number>, key: string): number {
  const next = (counts.get(key) ?? 0) + 1;
  counts.set(key, next);
  return next;
}

function slotFor(file: string, kind: string, name: string, again: number, memory: NamesMemory): Slot {
  const made = { file, kind, name, again };
  const key = slotKey(made);
  let slot = memory.slots.get(key);
  if (slot === undefined) memory.slots.set(key, (slot = made));
  return slot;
}

function stray(path: string, node: Node, line: number, nth: number, memory: NamesMemory): Stray {
  const slot = slotFor(path, '', String(nth), 0, memory);
  const findings = [...syntaxFindings(slot, node, undefined)];
  const [first] = node.line.statement.items;
  if (first !== undefined && first.kind !== 'wrong') {
    const word = first.kind === 'word' ? first.word : node.line.statement.text.slice(first.from, first.to);
    const near = first.kind === 'word' ? nearest(word, Object.keys(vocabulary))[0] : undefined;
    const place = { slot, spot: { path: [], from: first.from, to: first.to } };
    const found = finding(unknownKind, place, word, near);
    findings.push(
      near === undefined ? found : { ...found, fixes: [{ kind: 'replace', title: `Write "${near}"`, place, text: near }] },
    );
  }
  return { slot, node, line, findings };
}

/** A line whose trouble is its place in the file: it stands for itself, whatever declaration it may be in. */
function troubled(path: string, tree: FileTree, line: number, problem: Problem, memory: NamesMemory): Stray {
  const slot = slotFor(path, '', `line ${line + 1}`, 0, memory);
  const node = { line: tree.lines[line]!, children: [], offsets: [], height: 1 };
  return { slot, node, line, findings: [problemFinding(slot, [], problem)] };
}

function lineFindings(declared: readonly Declared[], strays: readonly Stray[]): readonly Finding[] {
  const findings: Finding[] = [];
  for (const each of declared) if (each.findings.length > 0) findings.push(...each.findings);
  for (const each of strays) findings.push(...each.findings);
  return findings;
}
