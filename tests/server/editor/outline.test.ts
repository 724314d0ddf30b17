// The shape of a file: its outline, folds, selections, links to included files, and finding things by name.
import { describe, expect, test } from 'vitest';
import type { DocumentLink, DocumentSymbol, FoldingRange, SelectionRange, SymbolInformation } from 'vscode-languageserver-types';
import { folding } from '#editor/folding';
import { links } from '#editor/links';
import { selection } from '#editor/selection';
import { symbols } from '#editor/symbols';
import { workspaceSymbols } from '#editor/workspace-symbols';
import { able, covered, editing } from './editing.ts';

const PLAN = `
plan a "House"
  start 2027-04-05

# one
# two
phase ground "Ground"
  task dig takes 1d
    note "Deep"

  task fill takes 1d
  note "All of it"
punch "Door rubs"
room bath
`;

describe('outline', () => {
  const shown = (symbol: DocumentSymbol): unknown => [symbol.name, ...(symbol.children ?? []).map(shown)];

  test('steps stand within their phase', () => {
    const found = editing(PLAN).ask<readonly DocumentSymbol[]>(symbols);
    expect(found.map(shown)).toEqual([['a'], ['ground', ['dig'], ['fill']], ['punch "Door rubs"'], ['bath']]);
    expect(found[1]!.detail).toBe('phase, Ground');
  });

  test('the name lies inside the range, the range inside the text', () => {
    const { ask, textOf } = editing(PLAN);
    for (const { range, selectionRange } of ask<readonly DocumentSymbol[]>(symbols)) {
      expect(selectionRange.start.line).toBe(range.start.line);
      expect(covered(textOf('plan.screed'), range)).toContain(covered(textOf('plan.screed'), selectionRange));
    }
  });

  test('flat for an editor that knows no tree', () => {
    const found = editing(PLAN, { ...able, symbolTree: false }).ask<readonly SymbolInformation[]>(symbols);
    expect(found.map(({ name, containerName }) => [name, containerName])).toContainEqual(['dig', 'ground']);
  });
});

test('folds end at the last line that holds something; comments fold together', () => {
  const found = editing(PLAN).ask<readonly FoldingRange[]>(folding);
  expect(found.map(({ startLine, endLine, kind }) => [startLine, endLine, kind])).toEqual([
    [0, 1, undefined],
    [5, 10, undefined],
    [6, 7, undefined],
    [3, 4, 'comment'],
  ]);
});

test('blank lines and lines of blanks end no fold', () => {
  const found = editing("room a\n  size 8' x 5'\n   \n\n  height 8'\n\n\nroom b\n").ask<readonly FoldingRange[]>(folding);
  expect(found).toEqual([{ startLine: 0, endLine: 4 }]);
});

describe('selections grow', () => {
  const grown = (source: string): readonly string[] => {
    const { ask, position, textOf } = editing(source);
    const [first] = ask<readonly SelectionRange[]>(selection, { positions: [position] });
    const shown: string[] = [];
    for (let at: SelectionRange | undefined = first; at !== undefined; at = at.parent)
      shown.push(covered(textOf('plan.screed'), at.range));
    return shown;
  };

  test('name, clause, line, block, phase, file', () => {
    const text = 'room bath\nphase p\n  task dig takes 1d after fi<|>ll by me\n    note "Deep"\n';
    expect(grown(text)).toEqual([
      'fill',
      'after fill',
      'task dig takes 1d after fill by me',
      'task dig takes 1d after fill by me\n    note "Deep"',
      'phase p\n  task dig takes 1d after fill by me\n    note "Deep"',
      'room bath\nphase p\n  task dig takes 1d after fill by me\n    note "Deep"\n',
    ]);
  });

  test('one answer a position, also where nothing stands', () => {
    const { ask } = editing('room a\n\n');
    const positions = [
      { line: 0, character: 1 },
      { line: 1, character: 0 },
      { line: 900, character: 9 },
    ];
    const found = ask<readonly SelectionRange[]>(selection, { positions });
    expect(found).toHaveLength(3);
    expect(found[2]!.range.start).toEqual({ line: 900, character: 9 });
  });
});

test('links lead to files that are there', () => {
  const { ask, textOf } = editing('#- plan.screed\nplan a\ninclude "b.screed"\ninclude "gone.screed"\n#- b.screed\nroom b\n');
  const found = ask<readonly DocumentLink[]>(links);
  expect(found.map(({ target, range }) => [target, covered(textOf('plan.screed'), range)])).toEqual([['b.screed', 'b.screed']]);
});

test('things are found by name, label and letters', () => {
  const { view } = editing(`${PLAN}room bathroom-2 "Guests"\n`);
  const find = (query: string) => {
    const answer = workspaceSymbols.answer({ plans: view.plans, client: able, addresses: view.addresses }, { query } as never);
    return (answer as readonly SymbolInformation[]).map(({ name }) => name);
  };
  expect(find('bath')).toEqual(['bath', 'bathroom-2']);
  expect(find('guest')).toEqual(['bathroom-2']);
  expect(find('br2')).toEqual(['bathroom-2']);
  expect(find('zzz')).toEqual([]);
  expect(find('').length).toBeGreaterThan(4);
});
