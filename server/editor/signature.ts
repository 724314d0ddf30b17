// How the clause around the caret is written: its form, with the part that comes next.
import type { Position, SignatureHelp } from 'vscode-languageserver-types';
import { cursor } from '#grammar/shape/cursor';
import { readValue } from '#grammar/shape/value';
import type { Item } from '#grammar/tree';
import type { Shape } from '#grammar/vocabulary/types';
import { standingAt } from './at-position.ts';
import type { Feature } from './features.ts';
import { type ReadClause, readBelow } from './line-reading.ts';
import { lineLength } from './places.ts';
import type { View } from './view.ts';

export const signature: Feature = {
  method: 'textDocument/signatureHelp',
  offers: () => ({ signatureHelpProvider: { triggerCharacters: [' '], retriggerCharacters: [','] } }),
  answer: (view, { position }: { readonly position: Position }) => signatureAt(view, position),
};

function signatureAt({ file }: View, { line, character }: Position): SignatureHelp | undefined {
  const standing = standingAt(file, line);
  if (standing === undefined || standing.line !== line || character > lineLength(file.tree, line)) return undefined;
  const { declared, path, node } = standing;
  const column = character - node.line.indent;
  const { items, text, comment } = node.line.statement;
  if (comment !== undefined && column > comment.from) return undefined;
  const reading = readBelow(declared.node, path);
  const before = items.filter((item) => item.to < column || (item.to === column && item.kind === 'comma')).length;
  const clause = reading === undefined ? undefined : clauseBefore(reading.clauses, before);
  if (clause?.row === undefined || clause.key === undefined) return undefined;
  const { row, key } = clause;
  const form = row.takes.form === '' ? '' : row.trailing === true ? `${row.takes.form} ` : ` ${row.takes.form}`;
  const label = row.trailing === true ? `${form}${key}` : `${key}${form}`;
  const parts = partsOf(row.takes);
  const from = row.trailing === true ? clause.from : Math.max(clause.from, clause.keyTo);
  return {
    signatures: [{ label, documentation: `${row.help} For example: ${row.example}`, parameters: partRanges(label, parts) }],
    activeSignature: 0,
    activeParameter: Math.min(partsBefore(parts, items, text, from, before), Math.max(0, parts.length - 1)),
  };
}

/** The innermost clause whose words stand before the caret, and which has not ended before it. */
function clauseBefore(clauses: readonly ReadClause[], before: number): ReadClause | undefined {
  const open = clauses.filter(
    ({ key, keyTo, from, row }) => key !== undefined && (row?.trailing === true ? from : keyTo) <= before,
  );
  const last = open.at(-1);
  return last === undefined ? undefined : (clauseBefore(last.inner, before) ?? last);
}

/** The parts of a value that has several. */
function partsOf({ check }: Shape<unknown>): readonly Shape<unknown>[] {
  return check.kind === 'fields' ? Object.values(check.fields) : [];
}

/** Where each part stands in the label. */
function partRanges(label: string, parts: readonly Shape<unknown>[]): { label: [number, number] }[] {
  let at = 0;
  return parts.map(({ form }) => {
    const from = Math.max(label.indexOf(form, at), 0);
    at = from + form.length;
    return { label: [from, at] };
  });
}

/** How many parts are written before the caret. */
function partsBefore(
  parts: readonly Shape<unknown>[],
  items: readonly Item[],
  text: string,
  from: number,
  before: number,
): number {
  const at = cursor(items, text, [], '', from, before);
  let count = 0;
  for (const part of parts) {
    const value = readValue(part, at);
    if (value === undefined && part.check.kind !== 'optional') break;
    if (at.index >= before && value === undefined) break;
    count += 1;
  }
  return count;
}
