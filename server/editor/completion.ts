// What could be written at the caret: it asks the files in completion/ in turn, and says where the text goes.
import type { CompletionItem, CompletionItemKind, CompletionList, Position, Range } from 'vscode-languageserver-types';
import { headerRows } from '#grammar/shape/left-over';
import type { ValueCheck } from '#grammar/vocabulary/types';
import { propertiesOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import type { Slot } from '#kit/place';
import type { Declared } from '#model/declared';
import { standingAt } from './at-position.ts';
import { expectedAt } from './completion/expected.ts';
import { anyNameSuggestions, codeSuggestions, knownCodes, nameSuggestions, valueSuggestions } from './completion/names.ts';
import type { Suggestion } from './completion/suggestion.ts';
import { unitSuggestions } from './completion/units.ts';
import { allKinds, kindSuggestions, propertySuggestions, wordSuggestions } from './completion/words.ts';
import type { Feature } from './features.ts';
import { type LineReading, type ReadClause, readBelow } from './line-reading.ts';
import { markup } from './prose.ts';
import type { View } from './view.ts';

export const completion: Feature = {
  method: 'textDocument/completion',
  offers: () => ({ completionProvider: { triggerCharacters: [' ', '.'], resolveProvider: false } }),
  answer: (
    view,
    { position, context }: { readonly position: Position; readonly context?: { readonly triggerCharacter?: string } },
  ) => completionAt(view, position, context?.triggerCharacter === ' '),
};

/** More than this are sent only as far as they fit what is typed. */
const MOST = 200;

function completionAt(view: View, position: Position, afterBlank: boolean): CompletionList | undefined {
  const caret = caretAt(view, position);
  if (caret === undefined) return undefined;
  const all = suggestionsAt(caret, view, afterBlank);
  const typed = caret.typed.toLowerCase();
  const fitting = all.length > MOST ? all.filter(({ label }) => label.toLowerCase().includes(typed)) : all;
  const sorted = [...fitting].sort((a, b) => a.rank - b.rank || (a.label < b.label ? -1 : 1)).slice(0, MOST);
  const isIncomplete = sorted.length < all.length;
  return { isIncomplete, items: sorted.map((each, at) => itemOf(each, at, caret, view)) };
}

// ---- where the caret is ----

interface Caret {
  /** The declaration it is in; absent at the beginning of one. */
  readonly declared: Declared | undefined;
  /** Way from the declaration to the line above that the caret's line belongs to; absent at the beginning of one. */
  readonly above: readonly number[] | undefined;
  /** The line as read, where the caret stands behind its first word. */
  readonly reading: LineReading | undefined;
  /** Items that end before the caret. */
  readonly before: number;
  readonly typed: string;
  readonly range: Range;
}

function caretAt({ file }: View, position: Position): Caret | undefined {
  const { tree } = file;
  const line = tree.lines[position.line];
  if (line === undefined) return undefined;
  const { items, comment, text } = line.statement;
  const column = position.character - line.indent;
  if (column > text.length) return undefined;
  if (comment !== undefined && column > comment.from) return undefined;
  if (items.length === 0 || column <= 0) {
    return startOfLine(file, position.line, Math.min(position.character, line.indent), '', {
      start: position,
      end: position,
    });
  }
  const under = items.find((item) => column > item.from && column <= item.to && item.kind !== 'comma' && item.kind !== 'equals');
  if (under?.kind === 'text' && column < under.to) return undefined;
  const run = /[\p{L}\d_./-]*$/u.exec(text.slice(0, column))?.[0] ?? '';
  // A name with a dot and nothing behind it yet is no item, but it is what is typed.
  const typed = /^\p{L}/u.test(run) ? run : under?.kind === 'value' ? text.slice(under.from, column) : '';
  const from = column - typed.length;
  const start = { line: position.line, character: line.indent + from };
  // The rest of the word under the caret is written over.
  const end = { line: position.line, character: under?.kind === 'word' ? line.indent + under.to : position.character };
  const range = { start, end };
  const before = items.filter((item) => item.to <= from && item.from < from).length;
  if (before === 0) return startOfLine(file, position.line, line.indent, typed, range);
  const standing = standingAt(file, position.line);
  if (standing === undefined || standing.line !== position.line) return undefined;
  const { declared, path } = standing;
  return { declared, above: undefined, reading: readBelow(declared.node, path), before, typed, range };
}

/** A line that begins: what it belongs to is the nearest line above that is indented less. */
function startOfLine(file: View['file'], line: number, indent: number, typed: string, range: Range): Caret {
  const base = { reading: undefined, before: 0, typed, range };
  for (let above = line - 1; above >= 0 && indent > 0; above--) {
    const { indent: other, statement } = file.tree.lines[above]!;
    if (statement.items.length === 0 || other >= indent) continue;
    const standing = standingAt(file, above);
    if (standing === undefined || standing.line !== above) break;
    return { ...base, declared: standing.declared, above: standing.path };
  }
  return { ...base, declared: undefined, above: undefined };
}

// ---- what fits there ----

function suggestionsAt(caret: Caret, view: View, afterBlank: boolean): readonly Suggestion[] {
  const { declared, above, reading } = caret;
  if (reading !== undefined && declared !== undefined) return withinLine(caret, reading, declared, view, afterBlank);
  if (afterBlank) return [];
  if (declared === undefined || above === undefined) return allKinds();
  const { kind, given } = declared.declaration;
  if (above.length === 0) {
    const entries = kind.entries === undefined ? [] : namesFor(kind.entries.takes.check, '', caret, declared.slot, view);
    return [
      ...entries,
      ...propertySuggestions(propertiesOf(kind), new Set(Object.keys(given)), 'line'),
      ...kindSuggestions(kind.declares ?? []),
    ];
  }
  const owner = readBelow(declared.node, above)?.below;
  if (owner === undefined) return [];
  const { check } = owner.takes;
  const more = check.kind === 'list' ? namesFor(check.item.check, '', caret, declared.slot, view) : [];
  return [...propertySuggestions(owner.deeper ?? {}, new Set(), 'line'), ...more];
}

function withinLine(
  caret: Caret,
  reading: LineReading,
  declared: Declared,
  view: View,
  afterBlank: boolean,
): readonly Suggestion[] {
  const { before } = caret;
  const { items, text } = reading.node.line.statement;
  const { kind, nameItem } = reading;
  const near = declared.slot;
  // Straight after a kind its name is written: a name of the library, where the plan changes or uses its row.
  if (kind !== undefined && before === 1 && kind.name !== 'none')
    return nameItem === undefined || caret.typed !== '' ? libraryRows(kind.word, view) : [];
  const clause = lastClause(reading.clauses, before);
  const property = clause?.key ?? kind?.word ?? '';
  const shape = clause?.row?.takes ?? (clause?.row === undefined ? reading.takes : undefined);
  const from = clause?.row !== undefined ? Math.max(clause.from, clause.keyTo) : (clause?.from ?? startOfMain(reading));
  const main = clause?.row === undefined && kind !== undefined && reading.takes === undefined ? undefined : shape;
  const expected =
    main === undefined ? { checks: [], complete: true } : expectedAt(main, items, text, Math.min(from, before), before);
  const values = expected.checks.flatMap((check) => checkSuggestions(check, property, caret, near, view));
  if (afterBlank && expected.complete) return values.length > 0 && !expected.checks.every(isOptionalWord) ? values : [];
  const previous = items[before - 1];
  // Behind what cannot be read, nothing is known of what fits.
  if (previous?.kind === 'wrong' || unreadBefore(caret, reading)) return [];
  const groupStart = previous?.kind === 'comma' || previous?.kind === 'value' || previous?.kind === 'text';
  const rows = clause?.row?.deeper ?? {};
  const outer = kind === undefined ? reading.rows : headerRows(kind);
  const clauses =
    expected.complete || main === undefined || previous?.kind === 'comma'
      ? [
          ...propertySuggestions(rows, new Set(), groupStart ? 'clause' : 'after-word'),
          ...(kind === undefined && reading.takes === undefined
            ? []
            : propertySuggestions(outer, new Set(Object.keys(declared.declaration.given)), groupStart ? 'clause' : 'after-word')),
        ]
      : [];
  return [...values, ...clauses];
}

function unreadBefore({ before, range }: Caret, { node }: LineReading): boolean {
  const { items, problems } = node.line.statement;
  const from = items[before - 1]?.from ?? 0;
  return problems.some((problem) => problem.to > from && problem.from <= range.start.character - node.line.indent);
}

function isOptionalWord(check: ValueCheck): boolean {
  return check.kind === 'word';
}

/** The innermost clause that the caret stands in or right behind. */
function lastClause(clauses: readonly ReadClause[], before: number): ReadClause | undefined {
  let found: ReadClause | undefined;
  for (const clause of clauses) if (Math.min(clause.from, clause.keyFrom) < before && clause.keyTo <= before) found = clause;
  return found === undefined ? undefined : (lastClause(found.inner, before) ?? found);
}

function startOfMain({ nameItem, labelItem }: LineReading): number {
  return (labelItem ?? nameItem ?? 0) + 1;
}

function libraryRows(kind: string, view: View): readonly Suggestion[] {
  return nameSuggestions(kind, undefined, view).filter((each) => each.kind === 'library-name');
}

function checkSuggestions(check: ValueCheck, property: string, caret: Caret, near: Slot, view: View): readonly Suggestion[] {
  switch (check.kind) {
    case 'word':
      return wordSuggestions(check.words);
    case 'quantity':
      return quantitySuggestions(check.dimension, caret, near, view);
    case 'any-quantity':
      return quantitySuggestions(undefined, caret, near, view);
    default:
      return namesFor(check, property, caret, near, view);
  }
}

function namesFor(check: ValueCheck, property: string, caret: Caret, near: Slot, view: View): readonly Suggestion[] {
  switch (check.kind) {
    case 'name':
    case 'pointer':
      return nameSuggestions(check.of, near, view, property);
    case 'step':
      return nameSuggestions('step', near, view);
    case 'goods':
      return nameSuggestions(check.space, near, view, property);
    case 'any-name':
      return anyNameSuggestions(property, near, view);
    case 'code':
      return property === 'accept' ? codeSuggestions(near, view) : knownCodes(property, view);
    case 'condition':
      return [...wordSuggestions(['any', 'every', 'no']), ...wordSuggestions(Object.keys(vocabulary))];
    case 'fields':
      return Object.values(check.fields)
        .slice(0, 1)
        .flatMap((field) => namesFor(field.check, property, caret, near, view));
    default:
      return [];
  }
}

function quantitySuggestions(
  dimension: Parameters<typeof valueSuggestions>[0],
  caret: Caret,
  near: Slot,
  view: View,
): readonly Suggestion[] {
  if (/^\d[\d.,]*$/.test(caret.typed)) return unitSuggestions(caret.typed, dimension, view);
  return valueSuggestions(dimension, caret.typed, near, view);
}

// ---- in an editor's terms ----

const ITEM_KINDS = {
  kind: 7,
  property: 10,
  word: 12,
  name: 6,
  'library-name': 21,
  unit: 11,
  fact: 5,
} as const satisfies { readonly [K in Suggestion['kind']]: CompletionItemKind };

function itemOf(suggestion: Suggestion, at: number, caret: Caret, { client }: View): CompletionItem {
  const { label, insert = label, snippet, detail, help, kind, afterComma } = suggestion;
  const asSnippet = client.snippets && snippet !== undefined;
  const previous = caret.reading?.node.line.statement.items[caret.before - 1];
  const { indent } = caret.reading?.node.line ?? { indent: 0 };
  const end = previous === undefined ? undefined : { line: caret.range.start.line, character: indent + previous.to };
  return {
    label,
    kind: ITEM_KINDS[kind],
    ...(detail === undefined ? {} : { detail }),
    documentation: client.markdownCompletion ? markup(help, true) : markup(help, false).value,
    sortText: String(at).padStart(5, '0'),
    filterText: label,
    insertTextFormat: asSnippet ? 2 : 1,
    textEdit: { range: caret.range, newText: asSnippet ? snippet : insert },
    ...(afterComma === true && end !== undefined && previous?.kind !== 'comma'
      ? { additionalTextEdits: [{ range: { start: end, end }, newText: ',' }] }
      : {}),
  };
}
