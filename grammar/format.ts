// DOOR: a file's tree to its canonical text and the least edits that make it so. Blanks are moved and accepted spellings
// written the usual way, nothing else; a line with anything to say about it stays as it is, to the last blank.
import { lineEnd } from '#kit/text';
import { hasBareReturn, surplusLines, usualLineEnd } from './format/blank-lines.ts';
import { alignColumns, type Draft, lengthOf } from './format/columns.ts';
import { blanksBefore, commentColumns } from './format/comments.ts';
import { gapEdits, type LineEdit, withEdits } from './format/edits.ts';
import { indentAt, indentsOf, markLength } from './format/indents.ts';
import { lettersOf, piecesOf, rewritten, saysTheSame, trimmedEnd } from './format/pieces.ts';
import { type Form, understand } from './format/understood.ts';
import type { FileTree, Rewrite, Statement } from './tree.ts';
import { kindSpellings } from './vocabulary/vocabulary.ts';

export interface Formatted {
  /** In order, apart from each other; none where the text is canonical. */
  readonly edits: readonly LineEdit[];
  readonly text: string;
}

/**
 * The canonical text of a file. Formatting it again changes nothing, its tree is the same, and no letter that is not a
 * blank is lost.
 */
export function format(tree: FileTree): Formatted {
  const texts = canonicalLines(tree);
  const gone = surplusLines(tree);
  const last = tree.lines.length - 1;
  const edits: LineEdit[] = [];
  tree.lines.forEach((_, line) => {
    if (gone.has(line)) {
      edits.push({ line, from: markLength(tree, line), to: tree.starts[line + 1]! - tree.starts[line]!, text: '' });
      return;
    }
    const text = texts[line];
    if (text === undefined) return;
    const start = tree.starts[line]! + markLength(tree, line);
    const written = tree.text.slice(start, lineEnd(tree.text, tree.starts, line));
    edits.push(...gapEdits(line, markLength(tree, line), written, text));
    if (line === last && text !== '') {
      const to = start - tree.starts[line]! + written.length;
      edits.push({ line, from: to, to, text: usualLineEnd(tree.text) });
    }
  });
  return { edits, text: withEdits(tree, edits) };
}

/** Every line as it should be, without its line end; undefined where it stays as it is. */
function canonicalLines(tree: FileTree): readonly (string | undefined)[] {
  const understanding = understand(tree);
  const { forms } = understanding;
  const bareReturns = hasBareReturn(tree.text);
  const drafts = forms.map((form) => (form?.understood === true ? draftOf(form) : undefined));
  alignColumns(understanding, drafts);
  const indents = indentsOf(tree, forms);
  const shown = indents.map((indent, line) => indent ?? indentAt(tree, line));
  const columns = commentColumns(tree, drafts, shown);
  return tree.lines.map(({ statement }, line) => {
    if (statement.text === '') return bareReturns ? undefined : '';
    const draft = drafts[line];
    if (draft !== undefined) return shown[line]! + lineText(draft, shown[line]!, columns.get(line));
    if (forms[line] !== undefined || statement.comment === undefined) return undefined;
    return (blanksBefore(tree, indents, columns, line) ?? indentAt(tree, line)) + commentText(statement);
  });
}

function draftOf(form: Form): Draft {
  return { form, pieces: piecesOf(form.node.line.statement, form.asIs, kindRewrite(form)) };
}

/** A second word for a kind, written the usual way. */
function kindRewrite({ node, depth }: Form): Rewrite | undefined {
  const [first] = node.line.statement.items;
  if (depth > 0 || first?.kind !== 'word' || !Object.hasOwn(kindSpellings, first.word)) return undefined;
  return { from: first.from, to: first.to, text: kindSpellings[first.word]! };
}

/** The line from its first letter, or as it is where the text made would not say the same. */
function lineText({ form, pieces }: Draft, indent: string, column: number | undefined): string {
  const { statement } = form.node.line;
  const code = pieces.map(({ text, blanks }) => ' '.repeat(blanks) + text).join('');
  const made =
    column === undefined ? code : code.padEnd(column - indent.length + (code.length - lengthOf(code))) + commentText(statement);
  const rewrites = [kindRewrite(form), ...statement.rewrites].filter((rewrite) => rewrite !== undefined);
  const letters = lettersOf(rewritten(statement.text, 0, statement.text.length, rewrites));
  if (made === statement.text || (lettersOf(made) === letters && saysTheSame(made, statement))) return made;
  return statement.text;
}

function commentText({ text, comment, rewrites }: Statement): string {
  return trimmedEnd(rewritten(text, comment!.from, text.length, rewrites));
}
