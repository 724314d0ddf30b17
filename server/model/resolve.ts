// DOOR: the files of a plan and the library → the model: every declaration as an element with names followed and values
// evaluated, and what could not be.
import { parse, type StatementCache, statementCache } from '#grammar/parse';
import type { FileTree } from '#grammar/tree';
import type { KindWord } from '#grammar/vocabulary/vocabulary';
import { NONE } from '#kit/differing';
import { type Finding, finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Work } from '#kit/work';
import { type ElementsMemory, element, elementFindings, elementsMemory, readsOf, type Snapshot, snapshot } from './elements.ts';
import { type FileNames, fileNames, lineFindings, type NamesMemory, namesMemory } from './file-names.ts';
import { includedFiles } from './includes.ts';
import { type ElementLists, elementLists, listsNow } from './lists.ts';
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
  readonly lists: ElementLists;
}

export function modelMemory(): ModelMemory {
  return {
    cache: statementCache(),
    trees: new Map(),
    names: namesMemory(),
    elements: elementsMemory(),
    table: undefined,
    settings: undefined,
    lists: elementLists(),
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
  /** Rows of a library kind: the library's in its order, each as the plan overrides it, then the plan's own. */
  readonly rows: <K extends KindWord>(kind: K) => readonly ElementOf<K>[];
  readonly element: (slot: Slot) => Element | undefined;
  /** The declarations that a declaration's names and values lead to. */
  readonly reads: (slot: Slot) => readonly Slot[];
  readonly now: Snapshot;
}

export interface Resolved {
  readonly value: Model;
  readonly findings: readonly Finding[];
}

/** `onFile` is called after each file: it is long work without a pause. */
export function readLibrary(
  texts: readonly { readonly path: string; readonly text: string }[],
  work: Work,
  onFile: () => void = () => undefined,
): Library {
  const cache = statementCache();
  const memory = namesMemory();
  const files = texts.map(({ path, text }) => {
    const file = fileNames(path, parse(text, { cache, work }), memory, work);
    onFile();
    return file;
  });
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
  const { lists, rows } = listsNow(now, memory.lists);
  const model: Model = {
    files: included.files,
    names,
    library: library.table,
    settings,
    plan: planSlot === undefined ? undefined : (element(planSlot, now) as Plan | undefined),
    list: <K extends KindWord>(kind: K) => (lists.get(kind)?.elements ?? NONE) as readonly ElementOf<K>[],
    rows: <K extends KindWord>(kind: K) => rows(kind) as readonly ElementOf<K>[],
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
