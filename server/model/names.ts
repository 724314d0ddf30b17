// Who declares what: the declarations of each file, their lasting slots, and one table of names over a plan and the library.
import { type Declaration, findingOf, readDeclaration } from '#grammar/shape';
import { unknownKind } from '#grammar/shape/problems';
import type { FileTree, Node } from '#grammar/tree';
import { kindsOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import { nearest } from '#kit/did-you-mean';
import { type Finding, finding } from '#kit/finding';
import { type Slot, slotKey } from '#kit/place';
import type { Work } from '#kit/work';

export interface Declared {
  readonly slot: Slot;
  readonly node: Node;
  /** Line number in the file, from 0. */
  readonly line: number;
  readonly declaration: Declaration;
  /** The phase it stands in. */
  readonly parent?: Slot;
}

export interface FileNames {
  readonly path: string;
  readonly tree: FileTree;
  readonly declared: readonly Declared[];
  /** Lines in the first column whose kind is unknown. */
  readonly strays: readonly { readonly slot: Slot; readonly node: Node; readonly line: number }[];
}

export interface NamesMemory {
  readonly slots: Map<string, Slot>;
  readonly declarations: WeakMap<Node, { readonly declaration: Declaration | undefined }>;
  readonly files: Map<string, FileNames>;
  readonly findings: WeakMap<Declaration, { readonly slot: Slot; readonly findings: readonly Finding[] }>;
}

export function namesMemory(): NamesMemory {
  return { slots: new Map(), declarations: new WeakMap(), files: new Map(), findings: new WeakMap() };
}

/** The declarations of one file. The same object for the same tree. */
export function fileNames(path: string, tree: FileTree, memory: NamesMemory, work: Work): FileNames {
  const known = memory.files.get(path);
  if (known?.tree === tree) return known;
  const declared: Declared[] = [];
  const strays: { slot: Slot; node: Node; line: number }[] = [];
  const counts = new Map<string, number>();
  const add = (node: Node, line: number, parent?: Slot): Slot | undefined => {
    const declaration = declarationOf(node, memory, work);
    if (declaration === undefined) {
      if (parent === undefined) strays.push({ slot: slotFor(path, '', String(count(counts, '')), 0, memory), node, line });
      return undefined;
    }
    const { word } = declaration.kind;
    const named = declaration.name !== '';
    const name = named ? declaration.name : String(count(counts, word));
    const again = named ? count(counts, `${word}/${name}`) - 1 : 0;
    const slot = slotFor(path, word, name, again, memory);
    declared.push(parent === undefined ? { slot, node, line, declaration } : { slot, node, line, declaration, parent });
    return slot;
  };
  tree.nodes.forEach((node, index) => {
    const line = tree.nodeLines[index] ?? 0;
    const slot = add(node, line);
    const kinds = slot === undefined ? undefined : declared[declared.length - 1]?.declaration.kind.declares;
    if (kinds === undefined) return;
    node.children.forEach((child, at) => {
      const first = child.line.statement.items[0];
      if (first?.kind === 'word' && kinds.includes(first.word)) add(child, line + (node.offsets[at] ?? 0), slot);
    });
  });
  const names = { path, tree, declared, strays };
  memory.files.set(path, names);
  return names;
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

/** What a file's lines say against the vocabulary. */
export function shapeFindings(names: FileNames, memory: NamesMemory): readonly Finding[] {
  const findings: Finding[] = [];
  for (const { slot, declaration } of names.declared) {
    if (declaration.remarks.length === 0) continue;
    let made = memory.findings.get(declaration);
    if (made?.slot !== slot) {
      made = { slot, findings: declaration.remarks.map((remark) => findingOf(slot, remark)) };
      memory.findings.set(declaration, made);
    }
    findings.push(...made.findings);
  }
  for (const { slot, node } of names.strays) {
    const [first] = node.line.statement.items;
    if (first === undefined || first.kind === 'wrong') continue;
    const word = first.kind === 'word' ? first.word : node.line.statement.text.slice(first.from, first.to);
    const near = first.kind === 'word' ? nearest(word, Object.keys(vocabulary))[0] : undefined;
    const place = { slot, spot: { path: [], from: first.from, to: first.to } };
    const found = finding(unknownKind, place, word, near);
    findings.push(
      near === undefined ? found : { ...found, fixes: [{ kind: 'replace', title: `Write "${near}"`, place, text: near }] },
    );
  }
  return findings;
}

/** One table over several files: the plan's, or the library's. */
export interface NameTable {
  readonly files: readonly FileNames[];
  /** 'kind/name' → the first that declares it. */
  readonly first: ReadonlyMap<string, Slot>;
  /** Second names of goods ('plasterboard'). */
  readonly also: ReadonlyMap<string, Slot>;
  readonly bySlot: ReadonlyMap<Slot, Declared>;
  /** Place in the plan, for anything that must go in plan order. */
  readonly order: ReadonlyMap<Slot, number>;
  /** Later declarations of a name that is taken, with the first. */
  readonly repeated: readonly { readonly declared: Declared; readonly first: Declared }[];
}

export function nameTable(files: readonly FileNames[], before?: NameTable): NameTable {
  if (before !== undefined && before.files.length === files.length && before.files.every((file, index) => file === files[index]))
    return before;
  const first = new Map<string, Slot>();
  const also = new Map<string, Slot>();
  const bySlot = new Map<Slot, Declared>();
  const order = new Map<Slot, number>();
  const repeated: { declared: Declared; first: Declared }[] = [];
  for (const file of files) {
    for (const declared of file.declared) {
      const { slot, declaration } = declared;
      bySlot.set(slot, declared);
      order.set(slot, order.size);
      if (declaration.name === '') continue;
      const key = `${slot.kind}/${slot.name}`;
      const taken = spaceHolder(first, slot);
      if (taken === undefined) first.set(key, slot);
      else repeated.push({ declared, first: bySlot.get(taken)! });
      for (const line of listOfGiven(declaration.given.also)) {
        for (const each of line.value as readonly { value: { name: string } }[]) also.set(each.value.name, slot);
      }
    }
  }
  return { files, first, also, bySlot, order, repeated };
}

function listOfGiven(given: unknown): readonly { readonly value: unknown }[] {
  return Array.isArray(given) ? given : [];
}

/** Steps and goods share a space of names: who in it has this name already. A state is no step of the plan. */
function spaceHolder(first: ReadonlyMap<string, Slot>, slot: Slot): Slot | undefined {
  const space = vocabulary[slot.kind as keyof typeof vocabulary] as { space?: string };
  for (const kind of space.space === undefined ? [slot.kind] : kindsOf(space.space)) {
    if (kind === 'state' || (kind === 'item') !== (slot.kind === 'item')) continue;
    const taken = first.get(`${kind}/${slot.name}`);
    if (taken !== undefined) return taken;
  }
  return undefined;
}

/** The declaration that a name of this kind or space means: the plan's, else the library's. */
export function lookUp(space: string, name: string, plan: NameTable, library: NameTable): Slot | undefined {
  // The library has inspections too, but only what the plan declares is a step of it.
  for (const table of space === 'step' ? [plan] : [plan, library]) {
    for (const kind of kindsOf(space)) {
      const slot = table.first.get(`${kind}/${name}`);
      if (slot !== undefined) return slot;
    }
    const second = table.also.get(name);
    if (second !== undefined && kindsOf(space).includes(second.kind)) return second;
  }
  return undefined;
}

/** Every name of this kind or space, the plan's first: for near misses and completion. */
export function namesIn(space: string, plan: NameTable, library: NameTable): readonly string[] {
  const kinds = kindsOf(space);
  const names: string[] = [];
  for (const table of [plan, library])
    for (const slot of table.first.values()) if (kinds.includes(slot.kind)) names.push(slot.name);
  return names;
}
