// Who declares what: the declarations of each file, their lasting slots, and one table of names over a plan and the library.
import { type Declaration, findingOf, readDeclaration } from '#grammar/shape';
import { unknownKind } from '#grammar/shape/problems';
import type { FileTree, Node } from '#grammar/tree';
import { kindsOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import { nearest } from '#kit/did-you-mean';
import { type Finding, finding } from '#kit/finding';
import { type Slot, slotKey } from '#kit/place';
import type { Work } from '#kit/work';
import { syntaxFindings } from './syntax.ts';

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
  const declared: Declared[] = [];
  const strays: Stray[] = [];
  const counts = new Map<string, number>();
  const add = (node: Node, line: number, parent?: Slot): Declared | undefined => {
    const declaration = declarationOf(node, memory, work);
    if (declaration === undefined) {
      if (parent === undefined) strays.push(stray(path, node, line, count(counts, ''), memory));
      return undefined;
    }
    const nth = count(counts, declaration.name === '' ? declaration.kind.word : declaration.key);
    const made = declaredAt(path, node, line, declaration, nth, parent, memory);
    declared.push(made);
    return made;
  };
  tree.nodes.forEach((node, index) => {
    const line = tree.nodeLines[index] ?? 0;
    const made = add(node, line);
    const kinds = made?.declaration.kind.declares;
    if (made === undefined || kinds === undefined) return;
    node.children.forEach((child, at) => {
      const first = child.line.statement.items[0];
      if (first?.kind === 'word' && kinds.includes(first.word)) add(child, line + (node.offsets[at] ?? 0), made.slot);
    });
  });
  const includes = declared.filter(({ slot }) => slot.kind === 'include');
  const names = { path, tree, declared, includes, strays };
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

/** What the lines of a file say against grammar and vocabulary. */
export function lineFindings(names: FileNames): readonly Finding[] {
  const findings: Finding[] = [];
  for (const declared of names.declared) if (declared.findings.length > 0) findings.push(...declared.findings);
  for (const each of names.strays) findings.push(...each.findings);
  return findings;
}

/** Which names there are: the same object while no declaration comes, goes or is renamed. */
export interface Names {
  readonly slots: readonly Slot[];
  /** 'kind/name' → the first that declares it. */
  readonly first: ReadonlyMap<string, Slot>;
  /** Second names of goods ('plasterboard'). */
  readonly also: ReadonlyMap<string, Slot>;
  /** Place in the plan, for anything that must go in plan order. */
  readonly order: ReadonlyMap<Slot, number>;
  /** By kind, repeated names left out. */
  readonly byKind: ReadonlyMap<string, readonly Slot[]>;
  /** Later declarations of a name that is taken, with the first. */
  readonly repeated: ReadonlyMap<Slot, Slot>;
}

/** One table over several files: the plan's, or the library's. */
export interface NameTable extends Names {
  readonly names: Names;
  readonly files: readonly FileNames[];
  readonly declared: readonly Declared[];
  readonly bySlot: { readonly get: (slot: Slot) => Declared | undefined; readonly has: (slot: Slot) => boolean };
}

export function nameTable(files: readonly FileNames[], before?: NameTable): NameTable {
  if (before !== undefined && before.files.length === files.length && before.files.every((file, index) => file === files[index]))
    return before;
  const declared = files.length === 1 ? files[0]!.declared : files.flatMap((file) => file.declared);
  const same = before !== undefined && sameNames(before, declared);
  const names = same ? before.names : namesOf(declared);
  const { order } = names;
  return {
    ...names,
    names,
    files,
    declared,
    bySlot: {
      get: (slot) => {
        const at = order.get(slot);
        return at === undefined ? undefined : declared[at];
      },
      has: (slot) => order.has(slot),
    },
  };
}

/** Second names stand in the rows themselves, so a row that has any must be the same row. */
function sameNames(before: NameTable, declared: readonly Declared[]): boolean {
  if (before.slots.length !== declared.length) return false;
  for (let at = 0; at < declared.length; at++) {
    const now = declared[at]!;
    if (before.slots[at] !== now.slot) return false;
    if (
      now.declaration !== before.declared[at]!.declaration &&
      (now.declaration.given.also !== undefined || before.declared[at]!.declaration.given.also !== undefined)
    )
      return false;
  }
  return true;
}

function namesOf(declared: readonly Declared[]): Names {
  const first = new Map<string, Slot>();
  const also = new Map<string, Slot>();
  const order = new Map<Slot, number>();
  const byKind = new Map<string, Slot[]>();
  const repeated = new Map<Slot, Slot>();
  for (const { slot, declaration } of declared) {
    order.set(slot, order.size);
    const taken = declaration.name === '' ? undefined : spaceHolder(first, slot);
    if (taken !== undefined) {
      repeated.set(slot, taken);
      continue;
    }
    if (declaration.name !== '') first.set(declaration.key, slot);
    const list = byKind.get(slot.kind);
    if (list === undefined) byKind.set(slot.kind, [slot]);
    else list.push(slot);
    for (const line of listOfGiven(declaration.given.also)) {
      for (const each of line.value as readonly { value: { name: string } }[]) also.set(each.value.name, slot);
    }
  }
  return { slots: declared.map(({ slot }) => slot), first, also, order, byKind, repeated };
}

function listOfGiven(given: unknown): readonly { readonly value: unknown }[] {
  return Array.isArray(given) ? given : [];
}

/** Steps and goods share a space of names: who in it has this name already. A state is no step of the plan. */
function spaceHolder(first: ReadonlyMap<string, Slot>, slot: Slot): Slot | undefined {
  for (const kind of rivals(slot.kind)) {
    const taken = first.get(`${kind}/${slot.name}`);
    if (taken !== undefined) return taken;
  }
  return undefined;
}

const rivalKinds = new Map<string, readonly string[]>();
function rivals(kind: string): readonly string[] {
  let kinds = rivalKinds.get(kind);
  if (kinds === undefined) {
    const { space } = vocabulary[kind as keyof typeof vocabulary] as { space?: string };
    const all = space === undefined ? [kind] : kindsOf(space);
    kinds = all.filter((each) => each === kind || (each !== 'state' && each !== 'item' && kind !== 'state' && kind !== 'item'));
    rivalKinds.set(kind, kinds);
  }
  return kinds;
}

/** The declaration that a name of this kind or space means: the plan's, else the library's. */
export function lookUp(space: string, name: string, plan: Names, library: Names): Slot | undefined {
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
export function namesIn(space: string, plan: Names, library: Names): readonly string[] {
  const kinds = kindsOf(space);
  const names: string[] = [];
  for (const table of [plan, library])
    for (const slot of table.first.values()) if (kinds.includes(slot.kind)) names.push(slot.name);
  return names;
}
