// Lines put together by what they have in common, kept from look to look: where some parts of the plan have other lines than
// before, only the groups that lose or gain a line are made anew. The groups are those of a fresh look, in the same order.
import { sameList } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { Line } from './lines.ts';

/** The lines of one measured part of an element, in its order. */
export type PartLines = readonly Line[];

export interface Group {
  readonly key: string;
  /** In plan order. */
  readonly lines: readonly Line[];
  /** A number of each line, where the sort has one: sums need not look into the lines then. */
  readonly values: Float64Array;
  /** Numbers of the parts that the lines are of, and how many there are in each. */
  readonly parts: Int32Array;
  readonly sizes: Int32Array;
  /** Where the first line stands in its part. */
  readonly first: number;
}

export interface Grouping {
  readonly parts: readonly PartLines[];
  readonly sort: Sort;
  /** By key, in the order of their first lines. */
  readonly groups: ReadonlyMap<string, Group>;
}

/** What lines are grouped by. Two sorts that are not the same object may group differently. */
export interface Sort {
  /** Undefined for lines that are in no group. */
  readonly keyOf: (line: Line) => string | undefined;
  readonly amountOf?: (line: Line) => number;
}

/** Where more than this share of the parts changed, all is grouped afresh. */
const MOST = 0.5;

export function groupedBy(sort: Sort, parts: readonly PartLines[], before: Grouping | undefined): Grouping {
  if (before === undefined || before.sort !== sort || before.parts.length !== parts.length) return fresh(sort, parts);
  if (before.parts === parts) return before;
  const changed: number[] = [];
  for (let part = 0; part < parts.length; part++) if (parts[part] !== before.parts[part]) changed.push(part);
  if (changed.length > parts.length * MOST) return fresh(sort, parts);
  const edits = new Map<string, Edit[]>();
  for (const part of changed) noteEdits(part, before.parts[part]!, parts[part]!, sort, edits);
  if (edits.size === 0) return { ...before, parts };
  const groups = new Map(before.groups);
  let moved = false;
  for (const [key, list] of edits) {
    const old = before.groups.get(key);
    const group = (old === undefined ? undefined : patched(old, list, sort, parts)) ?? edited(key, old, list, sort, parts);
    if (group === undefined) groups.delete(key);
    else groups.set(key, group);
    if (old === undefined || group === undefined || old.first !== group.first || old.parts[0] !== group.parts[0]) moved = true;
  }
  return { parts, sort, groups: moved ? inOrder(groups) : groups };
}

/** What lines a group has in one part from now on. */
interface Edit {
  readonly part: number;
  readonly lines: Line[];
}

/** An edit for each group that the part's lines were in or are in, unless they are as before. */
function noteEdits(part: number, before: PartLines, now: PartLines, sort: Sort, edits: Map<string, Edit[]>): void {
  const was = apart(before, sort);
  const is = apart(now, sort);
  const note = (key: string, lines: Line[]): void => {
    addTo(edits, key, { part, lines });
  };
  // A group's lines may be the same and yet begin elsewhere in the part, which the order of the groups hangs on.
  for (const [key, lines] of is) {
    const old = was.get(key);
    if (old === undefined || !sameList(old, lines) || before.indexOf(old[0]!) !== now.indexOf(lines[0]!)) note(key, lines);
  }
  for (const key of was.keys()) if (!is.has(key)) note(key, []);
}

function apart(lines: PartLines, { keyOf }: Sort): ReadonlyMap<string, Line[]> {
  const byKey = new Map<string, Line[]>();
  for (const line of lines) {
    const key = keyOf(line);
    if (key === undefined) continue;
    addTo(byKey, key, line);
  }
  return byKey;
}

/** A group with as many lines as before in the same parts, some of them others; undefined where it is not so. */
function patched(old: Group, edits: readonly Edit[], sort: Sort, all: readonly PartLines[]): Group | undefined {
  const lines = old.lines.slice();
  const values = old.values.slice();
  let next = 0;
  let at = 0;
  for (const edit of edits) {
    for (; next < old.parts.length && old.parts[next]! < edit.part; next++) at += old.sizes[next]!;
    if (old.parts[next] !== edit.part || old.sizes[next] !== edit.lines.length) return undefined;
    for (let nth = 0; nth < edit.lines.length; nth++) {
      lines[at + nth] = edit.lines[nth]!;
      if (sort.amountOf !== undefined) values[at + nth] = sort.amountOf(edit.lines[nth]!);
    }
  }
  return { ...old, lines, values, first: all[old.parts[0]!]!.indexOf(lines[0]!) };
}

/** A group with other lines in some parts, which come in their order; undefined where none are left. */
function edited(
  key: string,
  old: Group | undefined,
  edits: readonly Edit[],
  sort: Sort,
  all: readonly PartLines[],
): Group | undefined {
  const lines: (readonly Line[])[] = [];
  const values: Float64Array[] = [];
  const parts: number[] = [];
  const sizes: number[] = [];
  let next = 0;
  let at = 0;
  const keepUntil = (part: number): void => {
    if (old === undefined) return;
    const from = at;
    for (; next < old.parts.length && old.parts[next]! < part; next++) {
      parts.push(old.parts[next]!);
      sizes.push(old.sizes[next]!);
      at += old.sizes[next]!;
    }
    if (at === from) return;
    lines.push(old.lines.slice(from, at));
    values.push(old.values.subarray(from, at));
  };
  for (const edit of edits) {
    keepUntil(edit.part);
    if (old?.parts[next] === edit.part) at += old.sizes[next++]!;
    if (edit.lines.length === 0) continue;
    parts.push(edit.part);
    sizes.push(edit.lines.length);
    lines.push(edit.lines);
    values.push(valuesOf(edit.lines, sort));
  }
  keepUntil(Number.POSITIVE_INFINITY);
  const [first, ...others] = lines;
  if (first === undefined) return undefined;
  return {
    key,
    lines: others.length === 0 ? first : first.concat(...others),
    values: joined(values),
    parts: new Int32Array(parts),
    sizes: new Int32Array(sizes),
    first: all[parts[0]!]!.indexOf(first[0]!),
  };
}

const NO_VALUES = new Float64Array(0);
function valuesOf(lines: readonly Line[], { amountOf }: Sort): Float64Array {
  if (amountOf === undefined) return NO_VALUES;
  const values = new Float64Array(lines.length);
  for (let at = 0; at < lines.length; at++) values[at] = amountOf(lines[at]!);
  return values;
}

function joined(lists: readonly Float64Array[]): Float64Array {
  let length = 0;
  for (const list of lists) length += list.length;
  if (length === 0) return NO_VALUES;
  const all = new Float64Array(length);
  let at = 0;
  for (const list of lists) {
    all.set(list, at);
    at += list.length;
  }
  return all;
}

function fresh(sort: Sort, parts: readonly PartLines[]): Grouping {
  const making = new Map<string, { lines: Line[]; parts: number[]; sizes: number[]; first: number }>();
  for (let part = 0; part < parts.length; part++) {
    const lines = parts[part]!;
    for (let at = 0; at < lines.length; at++) {
      const line = lines[at]!;
      const key = sort.keyOf(line);
      if (key === undefined) continue;
      let group = making.get(key);
      if (group === undefined) making.set(key, (group = { lines: [], parts: [], sizes: [], first: at }));
      group.lines.push(line);
      if (group.parts[group.parts.length - 1] === part) group.sizes[group.sizes.length - 1]! += 1;
      else {
        group.parts.push(part);
        group.sizes.push(1);
      }
    }
  }
  const groups = new Map<string, Group>();
  for (const [key, { lines, parts: numbers, sizes, first }] of making)
    groups.set(key, {
      key,
      // Grown lists have room to spare; these stay.
      lines: lines.slice(),
      values: valuesOf(lines, sort),
      parts: new Int32Array(numbers),
      sizes: new Int32Array(sizes),
      first,
    });
  return { parts, sort, groups };
}

function inOrder(groups: ReadonlyMap<string, Group>): ReadonlyMap<string, Group> {
  return new Map([...groups].sort(([, a], [, b]) => a.parts[0]! - b.parts[0]! || a.first - b.first));
}
