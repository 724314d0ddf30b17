// What can be folded: a line with what is indented below it, and comments that stand together. A fold ends at the last
// line that holds something.
import type { FoldingRange } from 'vscode-languageserver-types';
import type { Node } from '#grammar/tree';
import type { Feature } from './features.ts';
import type { View } from './view.ts';

export const folding: Feature = {
  method: 'textDocument/foldingRange',
  offers: () => ({ foldingRangeProvider: true }),
  answer: ({ file }) => [...blocks(file.tree), ...comments(file.tree)],
};

type Tree = View['file']['tree'];

function blocks(tree: Tree): readonly FoldingRange[] {
  const folds: FoldingRange[] = [];
  const visit = (node: Node, line: number): void => {
    if (node.height > 1) folds.push({ startLine: line, endLine: line + node.height - 1 });
    node.children.forEach((child, at) => {
      visit(child, line + (node.offsets[at] ?? 0));
    });
  };
  tree.nodes.forEach((node, at) => {
    visit(node, tree.nodeLines[at] ?? 0);
  });
  return folds;
}

function comments(tree: Tree): readonly FoldingRange[] {
  const folds: FoldingRange[] = [];
  let start = -1;
  for (let line = 0; line <= tree.lines.length; line++) {
    const statement = tree.lines[line]?.statement;
    const isComment = statement !== undefined && statement.items.length === 0 && statement.comment !== undefined;
    if (isComment && start < 0) start = line;
    if (isComment || start < 0) continue;
    if (line - start > 1) folds.push({ startLine: start, endLine: line - 1, kind: 'comment' });
    start = -1;
  }
  return folds;
}
