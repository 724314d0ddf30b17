// Open texts and the disk → one frozen Plan for each root, brought up to date when somebody asks. A root is a file with a
// `plan`, or an open file that none of those includes. Nothing is analysed here that no open file needs.
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type Files, folderOf, holdsPlans, isWithin, projectFolder } from '#host/files';
import { sameList } from '#kit/differing';
import { noWork } from '#kit/work';
import { libraryTexts } from '#library/library';
import {
  analyse,
  BASELINE_FILE,
  type Baseline,
  emptyMemory,
  type House,
  houseOf,
  type Library,
  type Memory,
  type Plan,
  readBaseline,
  readLibrary,
  type Texts,
} from './pipeline.ts';

export interface TextChange {
  /** Absent: the whole text. */
  readonly range?: { readonly start: Point; readonly end: Point };
  readonly text: string;
}
interface Point {
  readonly line: number;
  readonly character: number;
}

export interface Workspace {
  /** Reads the library, which the first plan needs, while nobody waits for it. */
  readonly prepare: () => void;
  /** Folders that includes stay inside and that are looked through for plans. */
  readonly setFolders: (folders: readonly string[]) => void;
  readonly open: (path: string, version: number, text: string) => void;
  /** Applies changes in order, each to what the one before left; false where the file is not open. */
  readonly change: (path: string, version: number, changes: readonly TextChange[]) => boolean;
  readonly close: (path: string) => void;
  /** Something on the disk may have changed. */
  readonly diskChanged: () => void;
  /** Paths of the open files, in the order in which they were opened. */
  readonly openPaths: () => readonly string[];
  readonly versionOf: (path: string) => number | undefined;
  /** The text of an open file, else of the file on disk. */
  readonly textOf: (path: string) => string | undefined;
  /** All plans that concern open files, up to date. */
  readonly plans: () => readonly Plan[];
  /** Those that hold a file, up to date. */
  readonly plansOf: (path: string) => readonly Plan[];
  readonly isInLibrary: (path: string) => boolean;
}

interface Root {
  readonly path: string;
  readonly folder: string;
  readonly memory: Memory;
  readonly reads: Map<string, string | undefined>;
  readonly texts: Texts;
  plan: Plan | undefined;
  /** As its neighbours see it, and how it saw them. */
  house: House | undefined;
  houses: readonly House[];
}

/** What of a text decides which files make a plan. */
interface Outline {
  readonly text: string;
  readonly hasPlan: boolean;
  readonly includes: readonly string[];
}

export interface Looking {
  /** The day on which every plan is seen, days since 1970-01-01; each plan's own where absent. */
  readonly asOf?: number | undefined;
  /** Called in the midst of long work. */
  readonly onLongWork?: (() => void) | undefined;
  /** The path of the one baseline, or none; where absent, each plan's own: beside it, else in its folder. */
  readonly baseline?: string | 'none' | undefined;
}

/** `libraryFolder`: where the library's files lie for an editor to open; definitions in it have paths below. */
export function workspace(files: Files, libraryFolder: string, { asOf, baseline: asked, onLongWork }: Looking = {}): Workspace {
  const documents = new Map<string, TextDocument>();
  const disk = new Map<string, string | undefined>();
  const outlines = new Map<string, Outline>();
  const scanned = new Map<string, readonly string[]>();
  const baselines = new Map<string, { readonly text: string; readonly baseline: Baseline }>();
  let folders: readonly string[] = [];
  let roots = new Map<string, Root>();
  let rootsKnown = false;

  const textOf = (path: string): string | undefined => {
    const document = documents.get(path);
    if (document !== undefined) return document.getText();
    if (!disk.has(path)) disk.set(path, files.read(path));
    return disk.get(path);
  };
  const folderFor = (path: string): string => {
    const holding = folders.filter((folder) => isWithin(path, folder)).sort((a, b) => b.length - a.length)[0];
    return holding ?? projectFolder(path, files);
  };

  // ---- which files are roots ----

  const outlineOf = (path: string): Outline | undefined => {
    const text = textOf(path);
    if (text === undefined) return undefined;
    let known = outlines.get(path);
    if (known?.text !== text) outlines.set(path, (known = outlineOfText(text, path)));
    return known;
  };
  const holds = (root: string, wanted: string, folder: string): boolean => {
    const seen = new Set([root]);
    for (const path of seen) {
      if (path === wanted) return true;
      for (const next of outlineOf(path)?.includes ?? []) if (isWithin(next, folder)) seen.add(next);
    }
    return false;
  };
  const findRoots = (): void => {
    const wanted = new Set<string>();
    const open = [...documents.keys()];
    for (const path of open) if (outlineOf(path)?.hasPlan === true) wanted.add(path);
    const alone: string[] = [];
    for (const path of open) {
      if (wanted.has(path)) continue;
      const folder = folderFor(path);
      const near = scan(files, folder, scanned);
      const holding = [...wanted, ...near.filter((each) => !wanted.has(each) && outlineOf(each)?.hasPlan === true)].filter(
        (root) => holds(root, path, folder),
      );
      if (holding.length === 0) alone.push(path);
      for (const root of holding) wanted.add(root);
    }
    for (const path of alone) wanted.add(path);
    roots = new Map([...wanted].map((path) => [path, roots.get(path) ?? newRoot(path)]));
    rootsKnown = true;
  };
  const newRoot = (path: string): Root => {
    const folder = folderFor(path);
    const reads = new Map<string, string | undefined>();
    const read = (asked: string): string | undefined => {
      // A link may lead out of the folder; what lies outside is not read.
      const text = asked === path || isWithin(files.real(asked), folder) ? textOf(asked) : undefined;
      reads.set(asked, text);
      return text;
    };
    return {
      path,
      folder,
      memory: emptyMemory(),
      reads,
      texts: readOnDemand(read),
      plan: undefined,
      house: undefined,
      houses: [],
    };
  };

  // ---- plans ----

  const isCurrent = ({ plan, reads }: Root): boolean =>
    plan !== undefined && [...reads].every(([path, text]) => textOf(path) === text);
  const planOf = (root: Root): Plan => {
    if (root.plan === undefined || !isCurrent(root)) {
      root.reads.clear();
      lookAt(root);
    }
    return root.plan!;
  };
  const lookAt = (root: Root): void => {
    const { path, texts, houses, memory } = root;
    const day = asOf === undefined ? {} : { asOf };
    const library = libraryAt(libraryFolder, onLongWork);
    root.plan = analyse({ root: path, texts, library, baseline: baselineOf(root), houses, ...day }, memory);
  };
  /** The plans of the last look, where there were several. */
  let met: readonly Plan[] = [];
  /** All plans, each with what the others ask of the trades that they share. */
  const plansTogether = (list: readonly Root[]): void => {
    if (list.length > 1 || met.length > 1) {
      if (sameList(list.map(planOf), met)) return;
      const files = list.map((root) => new Set(planOf(root).model.files.map(({ path }) => path)));
      list.forEach((root, at) => {
        const isShared = (file: string): boolean =>
          files[at]!.has(file) && files.some((each, other) => other !== at && each.has(file));
        root.house = houseOf(planOf(root), isShared, root.house);
      });
      for (const root of list) meet(root, neighboursOf(root, list));
    }
    met = list.length > 1 ? list.map(planOf) : [];
  };
  const neighboursOf = (root: Root, list: readonly Root[]): readonly House[] =>
    list
      .filter((other) => other !== root && [...other.house!.bookings.keys()].some((trade) => root.house!.bookings.has(trade)))
      .map((other) => other.house!)
      .sort((a, b) => (a.root < b.root ? -1 : 1));
  const meet = (root: Root, houses: readonly House[]): void => {
    if (sameList(houses, root.houses)) return;
    root.houses = houses;
    if (root.plan !== undefined && isCurrent(root)) lookAt(root);
  };
  /** The first that is there; it counts among what the plan has read. */
  const baselineOf = ({ path, folder, reads }: Root): Baseline | undefined => {
    if (asked === 'none') return undefined;
    for (const each of asked === undefined ? baselinesFor(path, folder) : [asked]) {
      const text = textOf(each);
      reads.set(each, text);
      if (text !== undefined) return baselineAt(each, text);
    }
    return undefined;
  };
  const baselineAt = (path: string, text: string): Baseline => {
    let known = baselines.get(path);
    if (known?.text !== text) baselines.set(path, (known = { text, baseline: readBaseline(text, path) }));
    return known.baseline;
  };
  const current = (): readonly Root[] => {
    if (!rootsKnown) findRoots();
    const list = [...roots.values()];
    plansTogether(list);
    return list;
  };

  return {
    prepare: () => {
      libraryAt(libraryFolder, onLongWork);
    },
    setFolders: (next) => {
      folders = next;
      scanned.clear();
      roots = new Map();
      rootsKnown = false;
    },
    open: (path, version, text) => {
      documents.set(path, TextDocument.create(path, 'screed', version, text));
      rootsKnown = false;
    },
    change: (path, version, changes) => {
      const document = documents.get(path);
      if (document === undefined) return false;
      for (const change of changes) {
        if (rootsKnown && !leavesOutline(document, change)) rootsKnown = false;
        TextDocument.update(document, [change as { text: string }], version);
        if (rootsKnown && !leavesOutline(document, change, change.text)) rootsKnown = false;
      }
      return true;
    },
    close: (path) => {
      documents.delete(path);
      disk.delete(path);
      rootsKnown = false;
    },
    diskChanged: () => {
      // Texts that did not change stay the same objects, so that nothing is done again for them.
      for (const [path, before] of disk) {
        const now = files.read(path);
        if (now !== before) disk.set(path, now);
      }
      scanned.clear();
      rootsKnown = false;
    },
    openPaths: () => [...documents.keys()],
    versionOf: (path) => documents.get(path)?.version,
    textOf,
    plans: () => current().map(planOf),
    plansOf: (path) =>
      current()
        .filter((root) => root.path === path || root.plan === undefined || root.reads.get(path) !== undefined)
        .map(planOf)
        .filter((plan) => plan.model.files.some((file) => file.path === path)),
    isInLibrary: (path) => isWithin(path, libraryFolder),
  };
}

/** Where a plan's baseline may lie: beside its root, or in the folder that its includes stay inside. */
export function baselinesFor(root: string, folder: string): readonly string[] {
  return [...new Set([folderOf(root), folder])].map(
    (each) => (each === '' || each.endsWith('/') ? each : `${each}/`) + BASELINE_FILE,
  );
}

const libraries = new Map<string, Library>();
/** Read once, when the first plan needs it. */
function libraryAt(folder: string, onLongWork?: () => void): Library {
  let library = libraries.get(folder);
  if (library === undefined) {
    library = readLibrary(
      libraryTexts.map(({ path, text }) => ({ path: `${folder}/${path}`, text })),
      noWork(),
      onLongWork,
    );
    libraries.set(folder, library);
  }
  return library;
}

/** Texts that are looked up when the pipeline asks for them: it alone knows what a plan includes. */
function readOnDemand(read: (path: string) => string | undefined): Texts {
  return new Proxy<Texts>(
    {},
    {
      get: (_, path) => (typeof path === 'string' ? read(path) : undefined),
      has: (_, path) => typeof path === 'string' && read(path) !== undefined,
      getOwnPropertyDescriptor: (_, path) => {
        const value = typeof path === 'string' ? read(path) : undefined;
        return value === undefined ? undefined : { value, configurable: true, enumerable: true, writable: false };
      },
    },
  );
}

const OUTLINE = /^\ufeff?(plan|include)(?![\w-])(?:[ \t]+"([^"\r\n]*)")?/gim;

function outlineOfText(text: string, path: string): Outline {
  const includes: string[] = [];
  let hasPlan = false;
  for (const [, word, said] of text.matchAll(OUTLINE)) {
    if (word!.toLowerCase() === 'plan') hasPlan = true;
    else if (said !== undefined) includes.push(joined(folderOf(path), said));
  }
  return { text, hasPlan, includes };
}

function joined(folder: string, said: string): string {
  const parts = folder.split('/');
  for (const part of said.replaceAll('\\', '/').split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '.' && part !== '') parts.push(part);
  }
  return parts.join('/');
}

/** Whether the lines a change touches say nothing of plans and includes: those before it, or (with its text) after it. */
function leavesOutline(document: TextDocument, { range }: TextChange, inserted?: string): boolean {
  if (range === undefined) return false;
  const { start, end } = range;
  const lineBreaks = inserted === undefined ? end.line - start.line : (inserted.match(/\r\n?|\n/g)?.length ?? 0);
  const touched = document.getText({
    start: { line: start.line, character: 0 },
    end: { line: start.line + Math.max(0, lineBreaks) + 1, character: 0 },
  });
  return touched.search(OUTLINE) < 0;
}

/** No more folders than this are looked through. */
const MOST_FOLDERS = 1000;

/** The plan files below a folder, nearest to it first. */
function scan(files: Files, folder: string, scanned: Map<string, readonly string[]>): readonly string[] {
  let found = scanned.get(folder);
  if (found === undefined) scanned.set(folder, (found = files.tooWide(folder) ? [] : plansBelow(files, folder)));
  return found;
}

function plansBelow(files: Files, folder: string): readonly string[] {
  const found: string[] = [];
  const seen = new Set<string>();
  const waiting = [folder];
  for (const each of waiting) {
    const real = files.real(each);
    if (seen.has(real)) continue;
    seen.add(real);
    for (const { name, kind } of files.list(each)) {
      const path = each === '' ? name : `${each.endsWith('/') ? each.slice(0, -1) : each}/${name}`;
      if (kind === 'file' && name.endsWith('.screed')) found.push(path);
      else if (kind === 'folder' && holdsPlans(name) && waiting.length < MOST_FOLDERS) waiting.push(path);
    }
  }
  return found;
}
