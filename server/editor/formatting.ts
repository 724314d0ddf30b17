// Canonical layout, as the least edits that make it so; for some lines, those edits that lie in them.
import type { Range, TextEdit } from 'vscode-languageserver-types';
import { format } from '#grammar/format';
import type { Feature } from './features.ts';
import type { View } from './view.ts';

export const formatting: Feature = {
  method: 'textDocument/formatting',
  offers: () => ({ documentFormattingProvider: true }),
  answer: ({ file }) => editsOf(file.tree),
};

export const rangeFormatting: Feature = {
  method: 'textDocument/rangeFormatting',
  offers: () => ({ documentRangeFormattingProvider: true }),
  answer: ({ file }, { range }: { readonly range: Range }) =>
    editsOf(file.tree).filter((edit) => edit.range.start.line >= range.start.line && edit.range.end.line <= range.end.line),
};

/** Columns count from the start of the line; an edit that takes a line end goes on to the next line. */
function editsOf(tree: View['file']['tree']): readonly TextEdit[] {
  return format(tree).edits.map(({ line, from, to, text }) => {
    const start = tree.starts[line] ?? 0;
    const length = (tree.starts[line + 1] ?? tree.text.length) - start;
    const visible = lineLetters(tree, line);
    const end =
      to > visible && to >= length && line + 1 < tree.starts.length ? { line: line + 1, character: 0 } : { line, character: to };
    return { range: { start: { line, character: from }, end }, newText: text };
  });
}

function lineLetters({ lines }: View['file']['tree'], line: number): number {
  const found = lines[line];
  return found === undefined ? 0 : found.indent + found.statement.text.length;
}
