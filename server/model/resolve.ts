// DOOR: the files of a plan and the library → the model: every declaration as an element with names followed and values
// evaluated, and what could not be.

import { parse, type StatementCache, statementCache } from '#grammar/parse';
import type { FileTree } from '#grammar/tree';
import type { KindWord } from '#grammar/vocabulary/vocabulary';
import { sameList } from '#kit/differing';
import { type Finding, finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Work } from '#kit/work';
import {
  type ElementsMemory,
  element,
  elementFindings,
  elementsMemory,
  mayDiffer,
  readsOf,
  type Snapshot,
  snapshot,
} from './elements.ts';
import { type FileNames, fileNames, lineFindings, type NamesMemory, namesMemory } from './file-names.ts';
import { includedFiles } from './includes.ts';
import type { Element, ElementOf, Plan } from './model.ts';
import { type NameTable, nameTable } from './names.ts';
import { declaredTwice } from './problems.ts';
import { type Settings, settingsOf } from './settings.ts';

/** Files by path, '/' between parts. */
export interface Texts {
  readonly [path: string]: string;
}

/** The library, read once and shared by every analysis. */
export interface Library {
  readonly table: NameTable;
  readonly findings: readonly Finding[];
}

export interface ModelMemory {
  readonly cache: StatementCache;
  readonly trees: Map<string, FileTree>;
  readonly names: NamesMemory;
  readonly elements: ElementsMemory;
  table: NameTable | undefined;
  settings: Settings | undefined;
  lists: ReadonlyMap<string, readonly Element[]>;
  /** The slots that each list was made from. */
  listed: ReadonlyMap<string, readonly Slot[]> | undefined;
  readonly rows: Map<string, Rows>;
}

/** Rows of a library kind as they were last asked for. */
interface Rows {
  readonly library: NameTable;
  /** The plan's own. */
  readonly slots: readonly Slot[];
  readonly list: readonly Element[];
  /** Some may be others by now. */
  doubtful: boolean;
}

export function modelMemory(): ModelMemory {
  return {
    cache: statementCache(),
    trees: new Map(),
    names: namesMemory(),
    elements: elementsMemory(),
    table: undefined,
    settings: undefined,
    lists: new Map(),
    listed: undefined,
    rows: new Map(),
  };
}

export interface Model {
  /** The plan's files, root first. */
  readonly files: readonly FileNames[];
  readonly names: NameTable;
  readonly library: NameTable;
  readonly settings: Settings;
  /** The plan declaration, if the root has one. */
  readonly plan: Plan | undefined;
  /** All declarations of a kind, in plan order; the same array while its members are the same. */
  readonly list: <K extends KindWord>(kind: K) => readonly ElementOf<K>[];
  /** Rows of a library kind: the library's in its order, each as the plan overrides it, then the plan's own; kept as lists are. */
  readonly rows: <K extends KindWord>(kind: K) => readonly ElementOf<K>[];
  readonly element: (slot: Slot) => Element | undefined;
  /** The declarations that a declaration's names and values lead to. */
  readonly reads: (slot: Slot) => readonly Slot[];
  readonly now: Snapshot;
}

/** One list for every kind that nothing declares, so that whoever keeps by it finds it again. */
const NONE: readonly Element[] = [];

export interface Resolved {
  readonly value: Model;
  readonly findings: readonly Finding[];
}

export function readLibrary(texts: readonly { readonly path: string; readonly text: string }[], work: Work): Library {
  const cache = statementCache();
  const memory = namesMemory();
  const files = texts.map(({ path, text }) => fileNames(path, parse(text, { cache, work }), memory, work));
  const findings = files.flatMap(lineFindings);
  return { table: nameTable(files), findings };
}

export function resolve(root: string, texts: Texts, library: Library, memory: ModelMemory, work: Work): Resolved {
  const read = (path: string): FileNames | undefined => {
    const text = Object.hasOwn(texts, path) ? texts[path] : undefined;
    if (text === undefined) return undefined;
    const before = memory.trees.get(path);
    const tree =
      before?.text === text
        ? before
        : parse(text, { cache: memory.cache, work, ...(before === undefined ? {} : { previous: before }) });
    memory.trees.set(path, tree);
    return fileNames(path, tree, memory.names, work);
  };
  const included = includedFiles(root, read);
  const names = nameTable(included.files, memory.table);
  memory.table = names;
  const planSlot = included.files[0]?.declared.find(({ slot }) => slot.kind === 'plan')?.slot;
  const settings = settingsOf(planSlot === undefined ? undefined : names.bySlot.get(planSlot)?.declaration, memory.settings);
  memory.settings = settings;
  const now = snapshot(names, library.table, settings, memory.elements, work);
  const lists = elementLists(names, now, memory);
  for (const kind of now.kinds) {
    const known = memory.rows.get(kind);
    if (known !== undefined) known.doubtful = true;
  }
  const model: Model = {
    files: included.files,
    names,
    library: library.table,
    settings,
    plan: planSlot === undefined ? undefined : (element(planSlot, now) as Plan | undefined),
    list: <K extends KindWord>(kind: K) => (lists.get(kind) ?? NONE) as readonly ElementOf<K>[],
    rows: <K extends KindWord>(kind: K) => keptRows(kind, now, memory) as readonly ElementOf<K>[],
    element: (slot) => element(slot, now),
    reads: (slot) => readsOf(slot, now),
    now,
  };
  const findings = [
    ...included.findings,
    ...included.files.flatMap(lineFindings),
    ...twice(names),
    ...elementFindings(names, now),
  ];
  return { value: model, findings };
}

/** Every element of the plan by kind, in plan order; arrays stay the same objects while their members do. */
function elementLists(names: NameTable, now: Snapshot, memory: ModelMemory): ReadonlyMap<string, readonly Element[]> {
  const lists = new Map<string, readonly Element[]>();
  for (const [kind, slots] of names.byKind) {
    const before = memory.lists.get(kind);
    const listed = memory.listed?.get(kind);
    if (before !== undefined && listed !== undefined && sameList(listed, slots) && !mayDiffer(kind, now)) {
      lists.set(kind, before);
      continue;
    }
    const list: Element[] = [];
    for (const slot of slots) {
      const made = element(slot, now);
      if (made !== undefined) list.push(made);
    }
    lists.set(kind, before !== undefined && sameList(before, list) ? before : list);
  }
  // What a repeated name declares is still read, for its findings.
  for (const slot of names.repeated.keys()) element(slot, now);
  memory.lists = lists;
  memory.listed = names.byKind;
  return lists;
}

/** The same list while its members are. */
function keptRows(kind: string, now: Snapshot, memory: ModelMemory): readonly Element[] {
  const slots = now.plan.byKind.get(kind) ?? NO_SLOTS;
  const known = memory.rows.get(kind);
  if (known !== undefined && !known.doubtful && known.library === now.library && sameList(known.slots, slots)) return known.list;
  const made = rowsOf(kind, now);
  const list = known !== undefined && sameList(known.list, made) ? known.list : made;
  memory.rows.set(kind, { library: now.library, slots, list, doubtful: false });
  return list;
}

const NO_SLOTS: readonly Slot[] = [];

function rowsOf(kind: string, now: Snapshot): readonly Element[] {
  const rows: Element[] = [];
  const add = (slot: Slot): void => {
    const row = element(slot, now);
    if (row !== undefined) rows.push(row);
  };
  for (const slot of now.library.byKind.get(kind) ?? []) add(now.plan.first.get(`${kind}/${slot.name}`) ?? slot);
  for (const slot of now.plan.byKind.get(kind) ?? []) if (!now.library.first.has(`${kind}/${slot.name}`)) add(slot);
  return rows;
}

function twice(names: NameTable): readonly Finding[] {
  return [...names.repeated].map(([slot, firstSlot]) => {
    const [declared, first] = [names.bySlot.get(slot)!, names.bySlot.get(firstSlot)!];
    const place = { slot: declared.slot, spot: declared.declaration.nameSpot };
    const where = first.slot.kind === declared.slot.kind ? `another ${first.slot.kind}` : `a ${first.slot.kind}`;
    const made = finding(declaredTwice, place, declared.slot.name, declared.slot.kind, where);
    return {
      ...made,
      related: [{ place: { slot: first.slot, spot: first.declaration.nameSpot }, note: `${where}, declared first` }],
    };
  });
}
