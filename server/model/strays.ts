// Lines that belong to no declaration: those in the first column whose kind is unknown, and those whose trouble is their
// place in the file. Each has a slot of its own, for findings to stand at. A good file has none.
import { unknownKind } from '#grammar/shape/problems';
import type { FileTree, Node, Problem } from '#grammar/tree';
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import { nearest } from '#kit/did-you-mean';
import { NONE } from '#kit/differing';
import { type Finding, finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import { problemFinding, syntaxFindings } from './syntax.ts';

export interface Stray {
  readonly slot: Slot;
  readonly node: Node;
  readonly line: number;
  readonly findings: readonly Finding[];
}

/** `begins`: where the declarations of each node begin; a node without any is a stray. `slotFor` gives the slot of a name. */
export function straysOf(tree: FileTree, begins: Int32Array, slotFor: (name: string) => Slot): readonly Stray[] {
  const strays: Stray[] = [];
  for (let at = 0; at < tree.nodes.length; at += 1) {
    if (begins[at] !== begins[at + 1]) continue;
    strays.push(stray(tree.nodes[at]!, tree.nodeLines[at]!, slotFor(String(strays.length + 1))));
  }
  for (const { line, problem } of tree.problems) strays.push(troubled(tree, line, problem, slotFor(`line ${line + 1}`)));
  return strays.length === 0 ? NONE : strays;
}

function stray(node: Node, line: number, slot: Slot): Stray {
  const findings = [...syntaxFindings(slot, node, undefined)];
  const [first] = node.line.statement.items;
  if (first !== undefined && first.kind !== 'wrong') {
    const word = first.kind === 'word' ? first.word : node.line.statement.text.slice(first.from, first.to);
    const near = first.kind === 'word' ? nearest(word, Object.keys(vocabulary))[0] : undefined;
    const place = { slot, spot: { path: NONE, from: first.from, to: first.to } };
    const found = finding(unknownKind, place, word, near);
    findings.push(
      near === undefined ? found : { ...found, fixes: [{ kind: 'replace', title: `Write "${near}"`, place, text: near }] },
    );
  }
  return { slot, node, line, findings };
}

/** A line whose trouble is its place in the file: it stands for itself, whatever declaration it may be in. */
function troubled(tree: FileTree, line: number, problem: Problem, slot: Slot): Stray {
  const node = { line: tree.lines[line]!, children: NONE, offsets: NONE, height: 1 };
  return { slot, node, line, findings: [problemFinding(slot, NONE, problem)] };
}
