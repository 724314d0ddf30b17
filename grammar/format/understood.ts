// What the formatter knows of each line: how deep it stands, whether it was understood, where a column may begin in it, and
// which lines belong together. A line with anything to say about it, and what hangs on it, is not understood.
import type { Spot } from '#kit/place';
import { type Declaration, type GivenLine, type GivenProperties, readDeclaration } from '../shape.ts';
import type { FileTree, Item, Node, Statement } from '../tree.ts';
import type { Kind } from '../vocabulary/types.ts';
import { kindOf, propertiesOf, propertyOf } from '../vocabulary/vocabulary.ts';

/** A column where the next part of a line begins, and what it is: 'label', a property's words, 'value'. */
export interface Cut {
  readonly at: number;
  readonly key: string;
}

export interface Form {
  readonly depth: number;
  readonly node: Node;
  readonly understood: boolean;
  readonly asIs: ReadonlySet<Item>;
  /** Where its parts begin after the first, in order. */
  readonly cuts: readonly Cut[];
}

export interface Understanding {
  /** By line; undefined where no statement stands. */
  readonly forms: readonly (Form | undefined)[];
  /** Declarations of one kind that stand together; `below`: the lines below them all. */
  readonly runs: readonly { readonly lines: readonly number[]; readonly below: number }[];
  /** Lines of one repeated property that has clauses of its own, and stand together: sizes, layers. */
  readonly rows: readonly (readonly number[])[];
  /** Lines of one block whose values stand in one column, and whether names begin them rather than words. */
  readonly blocks: readonly { readonly lines: readonly number[]; readonly named: boolean }[];
}

/** Reads every block of a file against the vocabulary. */
export function understand(tree: FileTree): Understanding {
  const work: Work = {
    tree,
    troubled: new Set(tree.problems.map(({ line }) => line)),
    forms: [],
    runs: [],
    rows: [],
    blocks: [],
  };
  const siblings = tree.nodes.map((node, index) => ({ node, line: tree.nodeLines[index]! }));
  for (const { node, line } of siblings) declaration(work, node, line, 0);
  gatherRuns(work, siblings);
  return work;
}

interface Work {
  readonly tree: FileTree;
  /** Lines with a problem of the whole file. */
  readonly troubled: ReadonlySet<number>;
  readonly forms: (Form | undefined)[];
  readonly runs: { lines: readonly number[]; below: number }[];
  readonly rows: (readonly number[])[];
  readonly blocks: { lines: readonly number[]; named: boolean }[];
}

interface Standing {
  readonly node: Node;
  readonly line: number;
}

function declaration(work: Work, node: Node, line: number, depth: number): void {
  const read = readDeclaration(node);
  if (read === undefined) {
    foreign(work, node, line, depth);
    return;
  }
  const about = aboutLines(read);
  add(work, node, line, depth, read, about, [], headCuts(read, node.line.statement, about.get('') ?? []));
  const below = standing(node, line);
  const own: Standing[] = [];
  below.forEach((child, path) => {
    if (isDeclared(child.node, read.kind)) declaration(work, child.node, child.line, depth + 1);
    else {
      own.push(child);
      if (about.bad.has(String(path))) foreign(work, child.node, child.line, depth + 1);
      else property(work, child, depth + 1, read, about, [path]);
    }
  });
  gatherRuns(
    work,
    below.filter((child) => isDeclared(child.node, read.kind)),
  );
  gatherBlock(work, own, read);
}

/** A property's line and what is below it. */
function property(
  work: Work,
  { node, line }: Standing,
  depth: number,
  read: Declaration,
  about: About,
  path: readonly number[],
): void {
  const cuts = about.get(path.join('.')) ?? [];
  add(work, node, line, depth, read, about, path, cuts);
  for (const [index, child] of standing(node, line).entries()) {
    const deeper = [...path, index];
    if (about.bad.has(deeper.join('.'))) foreign(work, child.node, child.line, depth + 1);
    else property(work, child, depth + 1, read, about, deeper);
  }
}

/** A line that was not understood, with all that hangs on it. */
function foreign(work: Work, node: Node, line: number, depth: number): void {
  work.forms[line] = { depth, node, understood: false, asIs: NONE, cuts: [] };
  for (const child of standing(node, line)) foreign(work, child.node, child.line, depth + 1);
}

function add(
  work: Work,
  node: Node,
  line: number,
  depth: number,
  { asIs }: Declaration,
  about: About,
  path: readonly number[],
  cuts: readonly Cut[],
): void {
  const understood = !work.troubled.has(line) && !about.bad.has(path.join('.')) && isFine(node.line.statement, asIs);
  work.forms[line] = { depth, node, understood, asIs, cuts };
}

/** What a declaration says of its lines, by the path to each: the parts found there, and where something is to say. */
interface About {
  get(path: string): readonly Cut[] | undefined;
  readonly bad: ReadonlySet<string>;
}

function aboutLines(read: Declaration): About {
  const cuts = new Map<string, Cut[]>();
  gather(read.given, cuts);
  for (const entry of read.entries) gatherLine('', entry, cuts);
  for (const list of cuts.values()) list.sort((a, b) => a.at - b.at);
  return { get: (path) => cuts.get(path), bad: new Set(read.remarks.map(({ spot }) => spot.path.join('.'))) };
}

function gather(given: GivenProperties, cuts: Map<string, Cut[]>): void {
  for (const [key, lines] of Object.entries(given))
    for (const line of lines === undefined ? [] : isLine(lines) ? [lines] : lines) gatherLine(key, line, cuts);
}

function gatherLine(key: string, line: GivenLine, cuts: Map<string, Cut[]>): void {
  const { path, from, to } = line.word;
  const at = line.spot.path.length === path.length && line.spot.to <= from ? line.spot.from : from;
  const list = cuts.get(path.join('.')) ?? [];
  cuts.set(path.join('.'), list);
  list.push({ at, key });
  if (at === from && path.length > 0 && line.spot.from >= to) list.push({ at: line.spot.from, key: 'value' });
  gather(line.deeper, cuts);
}

function isLine(lines: GivenLine | readonly GivenLine[]): lines is GivenLine {
  return 'deeper' in lines;
}

/** The parts of a declaration's own line: label, what the kind takes (its first part by itself), clauses. */
function headCuts(read: Declaration, { items }: Statement, clauses: readonly Cut[]): readonly Cut[] {
  const cuts = [...clauses];
  if (read.label !== undefined) cuts.push({ at: read.label.spot.from, key: 'label' });
  if (read.takes !== undefined) {
    const { value, spot } = read.takes;
    cuts.push({ at: spot.from, key: 'takes' });
    const first = firstSpot(value);
    const next = first === undefined ? undefined : items.find(({ from }) => from >= first.to && from < spot.to);
    if (next !== undefined) cuts.push({ at: next.from, key: 'rest' });
  }
  return cuts.sort((a, b) => a.at - b.at);
}

/** Where the thing stands that a value of several parts begins with: the goods of a price, the payee of a payment. */
function firstSpot(value: unknown): Spot | undefined {
  const [first] = typeof value === 'object' && value !== null && !('kind' in value) ? Object.values(value) : [];
  return typeof first === 'object' && first !== null && 'spot' in first ? (first.spot as Spot) : undefined;
}

function gatherBlock(work: Work, own: readonly Standing[], { kind }: Declaration): void {
  const rows = propertiesOf(kind);
  let run: number[] = [];
  let word = '';
  const lines: number[] = [];
  for (const { line } of own) {
    const form = work.forms[line];
    const key = form?.understood === true && form.cuts[0]?.at === 0 ? form.cuts[0].key : undefined;
    const row = key === undefined ? undefined : propertyOf(rows, key);
    const listed = row?.repeats === true && row.deeper !== undefined;
    if (!listed || key !== word) {
      if (run.length > 1) work.rows.push(run);
      run = [];
      word = listed ? key! : '';
    }
    if (listed) run.push(line);
    else if (key !== undefined && form!.cuts[1] !== undefined) lines.push(line);
  }
  if (run.length > 1) work.rows.push(run);
  if (lines.length > 0) work.blocks.push({ lines, named: kind.entries !== undefined });
}

function gatherRuns(work: Work, siblings: readonly Standing[]): void {
  let open = new Map<string, { lines: number[]; below: number; adjacent: boolean }>();
  let end = -1;
  let before = '';
  const close = (): void => {
    for (const run of open.values()) if (run.adjacent) work.runs.push(run);
    open = new Map();
    before = '';
  };
  for (const { node, line } of siblings) {
    if (end >= 0 && hasBlankLine(work.tree, end, line)) close();
    end = line + node.height;
    const first = firstWord(node) ?? '';
    const word = kindOf(first)?.word ?? first;
    if (work.forms[line]?.understood === true) {
      const run = open.get(word) ?? { lines: [], below: 0, adjacent: false };
      open.set(word, run);
      run.lines.push(line);
      run.below += node.height - 1;
      // Two that touch make a table; single ones here and there do not.
      if (before === word) run.adjacent = true;
    }
    before = word;
  }
  close();
}

function hasBlankLine(tree: FileTree, from: number, to: number): boolean {
  for (let line = from; line < to; line += 1) if (tree.lines[line]!.statement.text === '') return true;
  return false;
}

function standing(node: Node, line: number): readonly Standing[] {
  return node.children.map((child, index) => ({ node: child, line: line + node.offsets[index]! }));
}

function isDeclared(node: Node, kind: Kind): boolean {
  const word = firstWord(node);
  return word !== undefined && kind.declares?.includes(word) === true;
}

function firstWord(node: Node): string | undefined {
  const first = node.line.statement.items[0];
  return first?.kind === 'word' ? first.word : undefined;
}

/** Whether the reader had nothing to say about a line; pieces taken as they are spelled do not count. */
function isFine({ items, problems }: Statement, asIs: ReadonlySet<Item>): boolean {
  return problems.length === 0 && items.every((item) => item.kind !== 'wrong' || asIs.has(item));
}

const NONE: ReadonlySet<Item> = new Set();
