// What a file declares: its declarations with their lasting slots, each the same object while its lines and place are.
import { type Declaration, findingOf, readDeclaration } from '#grammar/shape';
import { unknownKind } from '#grammar/shape/problems';
import type { FileTree, Node, Problem } from '#grammar/tree';
import { kindOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import { nearest } from '#kit/did-you-mean';
import { type Finding, finding } from '#kit/finding';
import { type Slot, slotKey } from '#kit/place';
import type { Work } from '#kit/work';
import { problemFinding, syntaxFindings } from './syntax.ts';

export interface Declared {
  readonly slot: Slot;
  readonly node: Node;
  /** Line number in the file, from 0. */
  readonly line: number;
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
  readonly declared: readonly Declared[];
  /** Where the declarations of each node of the tree begin in `declared`; one more at the end. */
  readonly begins: Int32Array;
  readonly includes: readonly Declared[];
  /** Lines in the first column whose kind is unknown. */
  readonly strays: readonly Stray[];
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
  const strays: Stray[] = [];
  const counts = new Map<string, number>();
  const begins = new Int32Array(tree.nodes.length + 1);
  tree.nodes.forEach((node, index) => {
    let parent: Slot | undefined;
    for (const { node: each, line } of below(node, tree.nodeLines[index] ?? 0)) {
      const declaration = declarationOf(each, memory, work);
      if (declaration === undefined) {
        if (each === node) strays.push(stray(path, node, line, count(counts, ''), memory));
        continue;
      }
      const nth = count(counts, declaration.name === '' ? declaration.kind.word : declaration.key);
      const made = declaredAt(path, each, line, declaration, nth, each === node ? undefined : parent, memory);
      if (each === node) parent = made.slot;
      declared.push(made);
    }
    begins[index + 1] = declared.length;
  });
  for (const { line, problem } of tree.problems) strays.push(troubled(path, tree, line, problem, memory));
  return { path, tree, declared, begins, includes: declared.filter(({ slot }) => slot.kind === 'include'), strays };
}

/** A node and the declarations that stand below it, with their lines. */
function below(node: Node, line: number): readonly { readonly node: Node; readonly line: number }[] {
  const first = node.line.statement.items[0];
  const kinds = first?.kind === 'word' ? kindOf(first.word)?.declares : undefined;
  if (kinds === undefined) return [{ node, line }];
  const all = [{ node, line }];
  node.children.forEach((child, at) => {
    const word = child.line.statement.items[0];
    if (word?.kind === 'word' && kinds.includes(word.word)) all.push({ node: child, line: line + (node.offsets[at] ?? 0) });
  });
  return all;
}

/** Blocks that differ beyond this many are read as a new file would be. */
const FEW = 8;

/** A file in which some blocks say other things of the same names, on the same lines: all other declarations stay. */
function patched(known: FileNames, tree: FileTree, memory: NamesMemory, work: Work): FileNames | undefined {
  const { nodes, nodeLines } = tree;
  const before = known.tree;
  if (nodes.length !== before.nodes.length || known.strays.length > 0 || tree.problems.length > 0) return undefined;
  const changed: number[] = [];
  for (let at = 0; at < nodes.length; at++) {
    if (nodeLines[at] !== before.nodeLines[at]) return undefined;
    if (nodes[at] !== before.nodes[at] && changed.push(at) > FEW) return undefined;
  }
  const declared = known.declared.slice();
  for (const at of changed) {
    const from = known.begins[at]!;
    const all = below(nodes[at]!, nodeLines[at]!);
    if (all.length !== known.begins[at + 1]! - from) return undefined;
    for (let nth = 0; nth < all.length; nth++) {
      const { node, line } = all[nth]!;
      const old = known.declared[from + nth]!;
      const declaration = declarationOf(node, memory, work);
      if (declaration === undefined || declaration.key !== old.declaration.key || old.slot.kind === 'include') return undefined;
      const count = declaration.name === '' ? Number(old.slot.name) : old.slot.again + 1;
      declared[from + nth] = declaredAt(known.path, node, line, declaration, count, old.parent, memory);
    }
  }
  return { ...known, tree, declared };
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
  line: number,
  declaration: Declaration,
  nth: number,
  parent: Slot | undefined,
  memory: NamesMemory,
): Declared {
  const name = declaration.name === '' ? String(nth) : declaration.name;
  const again = declaration.name === '' ? 0 : nth - 1;
  const known = memory.declared.get(node);
  const same =
    known !== undefined &&
    known.slot.file === path &&
    known.slot.name === name &&
    known.slot.again === again &&
    known.parent === parent;
  if (same && known.line === line) return known;
  const slot = same ? known.slot : slotFor(path, declaration.kind.word, name, again, memory);
  const findings = same
    ? known.findings
    : [...syntaxFindings(slot, node, declaration), ...declaration.remarks.map((remark) => findingOf(slot, remark))];
  const base = { slot, node, line, declaration, findings };
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

/** What the lines of a file say against grammar and vocabulary. */
export function lineFindings(names: FileNames): readonly Finding[] {
  const findings: Finding[] = [];
  for (const declared of names.declared) if (declared.findings.length > 0) findings.push(...declared.findings);
  for (const each of names.strays) findings.push(...each.findings);
  return findings;
}
