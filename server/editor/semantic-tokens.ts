// Colours from meaning: kinds, names where they are declared and where they are used, property words, numbers, texts. A
// line's colours depend on the line alone (and on what it stands below), so they are kept with it.
import type { Range } from 'vscode-languageserver-types';
import type { Item } from '#grammar/tree';
import type { Declared } from '#model/declared';
import type { FileNames } from '#model/file-names';
import type { Feature } from './features.ts';
import { type LineReading, type ReadClause, readHeader, readUnder } from './line-reading.ts';
import { usesIn } from './uses.ts';
import type { View } from './view.ts';

const TYPES = ['keyword', 'property', 'variable', 'function', 'string', 'number', 'comment', 'operator'] as const;
const MODIFIERS = ['declaration'] as const;
type TokenType = (typeof TYPES)[number];

const legend = { tokenTypes: [...TYPES], tokenModifiers: [...MODIFIERS] };

export const semanticTokens: Feature = {
  method: 'textDocument/semanticTokens/full',
  offers: () => ({ semanticTokensProvider: { legend, full: { delta: true }, range: true } }),
  answer: ({ file, coloursSent }) => {
    const data = tokensOf(file, 0, file.tree.lines.length - 1);
    return { resultId: remember(file.path, data, coloursSent), data };
  },
};

export const semanticTokensRange: Feature = {
  method: 'textDocument/semanticTokens/range',
  offers: () => ({}),
  answer: ({ file }, { range }: { readonly range: Range }) => ({ data: tokensOf(file, range.start.line, range.end.line) }),
};

export const semanticTokensDelta: Feature = {
  method: 'textDocument/semanticTokens/full/delta',
  offers: () => ({}),
  answer: ({ file, coloursSent }, { previousResultId }: { readonly previousResultId: string }) => {
    const before = coloursSent.get(file.path);
    const data = tokensOf(file, 0, file.tree.lines.length - 1);
    const resultId = remember(file.path, data, coloursSent);
    return before?.id === previousResultId ? { resultId, edits: difference(before.data, data) } : { resultId, data };
  },
};

/** Names the list anew: each name stands for one list that was sent. */
function remember(path: string, data: readonly number[], coloursSent: View['coloursSent']): string {
  const id = String(Number(coloursSent.get(path)?.id ?? 0) + 1);
  coloursSent.set(path, { id, data });
  return id;
}

/** One stretch that differs, in whole tokens. */
function difference(before: readonly number[], now: readonly number[]) {
  const most = Math.min(before.length, now.length);
  let start = 0;
  while (start < most && before[start] === now[start]) start += 1;
  start -= start % 5;
  let end = 0;
  while (end < most - start && before[before.length - 1 - end] === now[now.length - 1 - end]) end += 1;
  end -= end % 5;
  if (start === before.length && start === now.length) return [];
  return [{ start, deleteCount: before.length - start - end, data: now.slice(start, now.length - end) }];
}

interface Token {
  /** From the line's first letter. */
  readonly from: number;
  readonly to: number;
  readonly type: TokenType;
  readonly isDeclaration?: true;
}

/** Five numbers a token, as the protocol has them: lines and columns from the token before, length, type, modifiers. */
function tokensOf(file: FileNames, first: number, last: number): readonly number[] {
  const { tree } = file;
  const colours = coloursByLine(file, first, last);
  const data: number[] = [];
  let lineBefore = 0;
  let columnBefore = 0;
  for (let line = Math.max(0, first); line <= Math.min(last, tree.lines.length - 1); line++) {
    const { indent, statement } = tree.lines[line]!;
    const tokens = colours.get(line) ?? [];
    const { comment } = statement;
    const all: readonly Token[] =
      comment === undefined ? tokens : [...tokens, { from: comment.from, to: comment.to, type: 'comment' }];
    for (const { from, to, type, isDeclaration } of all) {
      if (to <= from) continue;
      const column = indent + from;
      data.push(
        line - lineBefore,
        line === lineBefore ? column - columnBefore : column,
        to - from,
        TYPES.indexOf(type),
        isDeclaration === true ? 1 : 0,
      );
      lineBefore = line;
      columnBefore = column;
    }
  }
  return data;
}

function coloursByLine(
  { declared, lines, strays }: FileNames,
  first: number,
  last: number,
): ReadonlyMap<number, readonly Token[]> {
  const colours = new Map<number, readonly Token[]>();
  for (const [at, each] of declared.entries()) {
    const line = lines[at]!;
    if (line > last) break;
    if (line + each.node.height <= first) continue;
    for (const { offset, tokens } of blockTokens(each)) colours.set(line + offset, tokens);
  }
  for (const { node, line } of strays) colours.set(line, plainTokens(node.line.statement.items));
  return colours;
}

interface LineTokens {
  readonly offset: number;
  readonly tokens: readonly Token[];
}
const NONE: readonly Token[] = [];
const kept = new WeakMap<Declared['declaration'], readonly LineTokens[]>();

/** The lines of a declaration; those of declarations below it are their own. */
function blockTokens(declared: Declared): readonly LineTokens[] {
  let lines = kept.get(declared.declaration);
  if (lines === undefined) {
    const found: LineTokens[] = [];
    const names = namesByLine(declared);
    const kinds = declared.declaration.kind.declares ?? [];
    const visit = (reading: LineReading, path: readonly number[], offset: number): void => {
      const { node } = reading;
      found.push({ offset, tokens: lineTokens(reading, names.get(path.join('.')) ?? NONE) });
      node.children.forEach((child, at) => {
        const [word] = child.line.statement.items;
        if (path.length === 0 && word?.kind === 'word' && kinds.includes(word.word)) return;
        visit(readUnder(reading, child), [...path, at], offset + (node.offsets[at] ?? 0));
      });
    };
    const header = readHeader(declared.node);
    if (header !== undefined) visit(header, [], 0);
    kept.set(declared.declaration, (lines = found));
  }
  return lines;
}

function namesByLine(declared: Declared): ReadonlyMap<string, readonly Token[]> {
  const names = new Map<string, Token[]>();
  for (const { spot, fact } of usesIn(declared)) {
    const key = spot.path.join('.');
    const tokens: Token[] = [{ from: spot.from, to: spot.to, type: 'variable' }];
    if (fact !== undefined) tokens.push({ from: spot.to + 1, to: spot.to + 1 + fact.length, type: 'property' });
    names.set(key, [...(names.get(key) ?? []), ...tokens]);
  }
  return names;
}

function lineTokens(reading: LineReading, names: readonly Token[]): readonly Token[] {
  const { items } = reading.node.line.statement;
  const tokens: Token[] = [];
  const add = (item: Item | undefined, type: TokenType, more: { readonly isDeclaration?: true } = {}): void => {
    if (item !== undefined) tokens.push({ from: item.from, to: item.to, type, ...more });
  };
  if (reading.kind !== undefined) add(items[0], 'keyword');
  if (reading.nameItem !== undefined) add(items[reading.nameItem], 'function', { isDeclaration: true });
  const clauseWords = (clauses: readonly ReadClause[]): void => {
    for (const clause of clauses) {
      if (clause.key !== undefined)
        for (let at = clause.keyFrom; at < clause.keyTo; at++)
          add(items[at], reading.kind === undefined ? 'property' : 'keyword');
      clauseWords(clause.inner);
    }
  };
  clauseWords(reading.clauses);
  const taken = [...tokens, ...names];
  const free = (item: Item): boolean => !taken.some(({ from, to }) => item.from < to && from < item.to);
  const rest = items.flatMap((item) => (free(item) ? itemTokens(item) : []));
  // Numbers around a name in a sum.
  const around = items.flatMap((item) =>
    item.kind === 'value' && !free(item)
      ? itemTokens(item).filter(({ from, to }) => !names.some((name) => from < name.to && name.from < to))
      : [],
  );
  return [...taken, ...rest, ...around].sort((a, b) => a.from - b.from);
}

function plainTokens(items: readonly Item[]): readonly Token[] {
  return items.flatMap(itemTokens);
}

function itemTokens(item: Item): readonly Token[] {
  const { from, to } = item;
  switch (item.kind) {
    case 'text':
      return [{ from, to, type: 'string' }];
    case 'value':
      return item.expression.kind === 'literal' ? [{ from, to, type: 'number' }] : numbersIn(item.expression);
    case 'joint':
    case 'equals':
      return [{ from, to, type: 'operator' }];
    case 'word':
    case 'comma':
    case 'wrong':
      return [];
  }
}

type Expression = Extract<Item, { kind: 'value' }>['expression'];

function numbersIn(expression: Expression): readonly Token[] {
  const { from, to } = expression;
  switch (expression.kind) {
    case 'literal':
      return [{ from, to, type: 'number' }];
    case 'name':
      return [];
    case 'operation':
      return [...numbersIn(expression.left), ...numbersIn(expression.right)];
    case 'call':
      return expression.inputs.flatMap(numbersIn);
    case 'range':
      return [...numbersIn(expression.low), ...numbersIn(expression.high)];
  }
}
