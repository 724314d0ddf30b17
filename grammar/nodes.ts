// Lines to the tree that their indentation makes. A line belongs to the nearest line above it that is indented less.
// A node whose line and children are the same objects as before is the same object; untouched blocks cost one step each.
import { NONE } from '#kit/differing';
import { firstAtLeast } from './lines.ts';
import type { Line, Node } from './tree.ts';

/** Lines indented by more than this are taken to be indented by this, so that nesting has an end. */
export const DEEPEST = 128;

export interface Nodes {
  readonly nodes: readonly Node[];
  readonly nodeLines: Int32Array;
}

/** How the lines follow from those of a known tree: so many the same at the start and at the end. */
export interface KnownNodes {
  readonly tree: Nodes & { readonly lines: readonly Line[] };
  readonly sameBefore: number;
  readonly sameAfter: number;
}

/** `firstIndent`: what the first line's indent is with a byte order mark left out. */
export function buildNodes(lines: readonly Line[], firstIndent: number, known: KnownNodes | undefined): Nodes {
  const builder: Builder = { lines, firstIndent, known, at: 0 };
  const kept = known === undefined ? 0 : keptBlocks(known);
  const nodes = known === undefined ? [] : known.tree.nodes.slice(0, kept);
  const nodeLines = known === undefined ? [] : Array.from(known.tree.nodeLines.subarray(0, kept));
  const start = kept === 0 ? 0 : known!.tree.nodeLines[kept]!;
  for (let at = nextStatement(builder, start); at < lines.length; at = nextStatement(builder, builder.at)) {
    const rest = knownBlock(builder, at);
    if (rest !== undefined) return withRest(nodes, nodeLines, builder, rest);
    nodeLines.push(at);
    nodes.push(build(builder, at));
  }
  return { nodes, nodeLines: Int32Array.from(nodeLines) };
}

/** Blocks that stand, with the first line of the next, before the change. */
function keptBlocks({ tree, sameBefore }: KnownNodes): number {
  return Math.max(0, firstAtLeast(tree.nodeLines, sameBefore) - 1);
}

/** Which known block begins at a line behind the change, if one does: all that follow it are known too. */
function knownBlock({ lines, known }: Builder, index: number): number | undefined {
  if (known === undefined || index < lines.length - known.sameAfter) return undefined;
  const line = index - lines.length + known.tree.lines.length;
  const block = firstAtLeast(known.tree.nodeLines, line);
  return known.tree.nodeLines[block] === line ? block : undefined;
}

function withRest(nodes: readonly Node[], nodeLines: readonly number[], builder: Builder, rest: number): Nodes {
  const { tree } = builder.known!;
  const shift = builder.lines.length - tree.lines.length;
  const all = new Int32Array(nodeLines.length + tree.nodeLines.length - rest);
  all.set(nodeLines);
  for (let at = rest; at < tree.nodeLines.length; at += 1) all[nodeLines.length + at - rest] = tree.nodeLines[at]! + shift;
  return { nodes: nodes.concat(tree.nodes.slice(rest)), nodeLines: all };
}

interface Builder {
  readonly lines: readonly Line[];
  readonly firstIndent: number;
  readonly known: KnownNodes | undefined;
  /** The line after the node built last. */
  at: number;
}

/** The node at line `index`, which holds a statement. */
function build(builder: Builder, index: number): Node {
  const { lines } = builder;
  const line = lines[index]!;
  const indent = indentOf(builder, index);
  const before = knownNode(builder, index);
  if (before !== undefined && untouched(builder, index, before, indent)) {
    builder.at = index + before.height;
    return before;
  }
  let children: Node[] | undefined;
  let offsets: number[] | undefined;
  let count = 0;
  let end = index + 1;
  for (
    let at = nextStatement(builder, end);
    at < lines.length && indentOf(builder, at) > indent;
    at = nextStatement(builder, end)
  ) {
    const child = build(builder, at);
    end = builder.at;
    if (
      children === undefined &&
      before !== undefined &&
      before.children[count] === child &&
      before.offsets[count] === at - index
    ) {
      count += 1;
      continue;
    }
    // From here on the node differs from the one known.
    if (children === undefined || offsets === undefined) {
      children = before === undefined ? [] : before.children.slice(0, count);
      offsets = before === undefined ? [] : before.offsets.slice(0, count);
    }
    children.push(child);
    offsets.push(at - index);
    count += 1;
  }
  builder.at = end;
  const unchanged = before !== undefined && children === undefined && before.children.length === count && before.line === line;
  if (unchanged) return before;
  if (count === 0) return { line, children: NONE, offsets: NONE, height: end - index };
  // Arrays that grew have room to spare; those kept have none.
  const from = before !== undefined && children === undefined ? before : { children: children!, offsets: offsets! };
  return { line, children: from.children.slice(0, count), offsets: from.offsets.slice(0, count), height: end - index };
}

/** Whether a known node and the first statement below it lie wholly among lines that are the same. */
function untouched(builder: Builder, index: number, node: Node, indent: number): boolean {
  const { lines, known } = builder;
  if (known === undefined || node.line !== lines[index]) return false;
  const end = index + node.height;
  const firstSame = lines.length - known.sameAfter;
  if (end > known.sameBefore && index < firstSame) return false;
  // What follows may now be indented more and belong to it.
  const next = nextStatement(builder, end);
  return next >= lines.length || indentOf(builder, next) <= indent;
}

/** The node known for a line that is now at `index`. */
function knownNode({ lines, known }: Builder, index: number): Node | undefined {
  if (known === undefined) return undefined;
  const { tree, sameBefore, sameAfter } = known;
  if (index < sameBefore) return nodeAt(tree, index);
  if (index >= lines.length - sameAfter) return nodeAt(tree, index - lines.length + tree.lines.length);
  // A changed line that stands where another stood: its children may be the same.
  return index < tree.lines.length - sameAfter ? nodeAt(tree, index) : undefined;
}

/** The node that begins at a line, if one does. */
function nodeAt({ nodes, nodeLines }: Nodes, line: number): Node | undefined {
  const block = firstAtLeast(nodeLines, line + 1) - 1;
  let node = nodes[block];
  for (let left = node === undefined ? 0 : line - nodeLines[block]!; node !== undefined && left > 0; ) {
    const child: number = firstAtLeast(node.offsets, left + 1) - 1;
    left -= node.offsets[child] ?? 0;
    node = node.children[child];
  }
  return node;
}

function nextStatement({ lines }: Builder, from: number): number {
  let at = from;
  while (at < lines.length && lines[at]!.statement.items.length === 0) at += 1;
  return at;
}

function indentOf({ lines, firstIndent }: Builder, index: number): number {
  return index === 0 ? firstIndent : Math.min(lines[index]!.indent, DEEPEST);
}
