// Completion: what is offered at the caret, and that taking it gives the right text.
import { describe, expect, test } from 'vitest';
import type { CompletionItem, CompletionList } from 'vscode-languageserver-types';
import { completion } from '#editor/completion';
import { able, edited, editing } from './editing.ts';

function offered(source: string, client = able, context: { readonly [name: string]: unknown } = {}): readonly CompletionItem[] {
  return editing(source, client).ask<CompletionList | undefined>(completion, { context })?.items ?? [];
}

const labels = (source: string): readonly string[] => offered(source).map(({ label }) => label);

/** The text once an offer is taken. */
function taken(source: string, label: string, client = able): string {
  const { ask, textOf, view } = editing(source, client);
  const item = ask<CompletionList>(completion).items.find((each) => each.label === label);
  if (item?.textEdit === undefined || !('range' in item.textEdit)) throw new Error(`${label} is not offered`);
  return edited(textOf(view.file.path), [item.textEdit, ...(item.additionalTextEdits ?? [])]);
}

describe('at the beginning of a line', () => {
  test('kinds in the first column', () => {
    expect(labels('<|>')).toEqual(expect.arrayContaining(['plan', 'room', 'task', 'price']));
    expect(labels('ro<|>\nroom a\n')).toContain('room');
    expect(taken('ro<|>', 'room')).toBe('room ');
    expect(labels('room a\n<|>\nroom b\n')).toContain('task');
  });

  test('properties below a declaration, those given already left out', () => {
    const found = labels("room bath\n  size 8' x 5'\n  <|>\n");
    expect(found).toEqual(expect.arrayContaining(['walls', 'floor', 'windows', 'note', 'accept']));
    expect(found).not.toContain('size');
    expect(found).not.toContain('footprint');
    expect(taken('room bath\n  wa<|>\n', 'walls')).toBe('room bath\n  walls \n');
  });

  test('steps and properties below a phase; a task’s own below the task', () => {
    expect(labels('phase p\n  <|>\n')).toEqual(expect.arrayContaining(['task', 'inspection', 'after', 'in order']));
    const below = labels('phase p\n  task a\n    <|>\n');
    expect(below).toContain('takes');
    expect(below).not.toContain('in order');
  });

  test('below a property its own words, and more of its list', () => {
    expect(labels('assembly w for wall\n  layer stud 2x6\n    <|>\n')).toEqual(expect.arrayContaining(['at', 'filled with']));
    expect(labels('task a\ntask b\n  after a,\n    <|>\n')).toContain('a');
  });

  test('steps in a diary', () => {
    expect(labels('task dig takes 1d\nprogress 2027-04-05\n  <|>\n')).toContain('dig');
    expect(labels('task dig takes 1d\nprogress 2027-04-05\n  dig <|>\n')).toEqual(
      expect.arrayContaining(['started', 'finished']),
    );
  });
});

describe('names', () => {
  test('levels for a room, not the rooms', () => {
    expect(labels('level main\nlevel attic\nroom bath on <|>\n')).toEqual(['attic', 'main']);
  });

  test('the nearest first, itself left out, then the library', () => {
    const found = labels('task a\ntask b\ntask c\ntask d after <|>\n');
    expect(found.slice(0, 3)).toEqual(['c', 'b', 'a']);
    expect(found).not.toContain('d');
    const works = labels('task a does set-t<|>\n');
    expect(works).toContain('set-tile');
  });

  test('in the middle of a list and of a word', () => {
    expect(labels('task a\ntask b\ntask c after a, <|>\n')).toContain('b');
    expect(taken('task dig\ntask pour after d<|>ug by me\n', 'dig')).toBe('task dig\ntask pour after dig by me\n');
  });

  test('goods, assemblies by the property', () => {
    expect(labels('assembly mine for wall\nlevel main\n  walls <|>\n')[0]).toBe('mine');
    expect(labels('room bath\n  walls moist<|>\n')).toContain('moisture-board');
    expect(labels("window w-1 3' x 4'\nroom bath\n  windows 2 <|>\n")).toContain('w-1');
  });

  test('rooms for a task', () => expect(labels('room bath\ntask a does set-tile in <|>\n')).toEqual(['bath']));

  test('figures after a dot, those of the wanted kind first', () => {
    const found = labels("room bath\n  size 8' x 5'\nlet a = bath.<|>\n");
    expect(found).toEqual(expect.arrayContaining(['bath.floor-area', 'bath.perimeter']));
    expect(taken("room bath\n  size 8' x 5'\nlet a = bath.fl<|>\n", 'bath.floor-area')).toContain('let a = bath.floor-area\n');
  });

  test('values that were named', () => {
    expect(labels("let wide = 8'\nlet area = 8 sf\nroom a\n  height <|>\n")).toEqual(['wide']);
  });

  test('codes that are found there', () => {
    const found = labels(
      'plan p\n  start 2027-04-05\ntrade t\ntask a takes 1d not before 2027-04-01\n  accept <|>\ntask b does nothing\n',
    );
    expect(found.every((code) => code.includes('/'))).toBe(true);
  });
});

describe('words and units', () => {
  test('words of a shape', () => {
    expect(labels('room a\n  use <|>\n')).toEqual(expect.arrayContaining(['sleeping', 'bathing']));
    expect(labels('level a\n  joists <|>\n')).toEqual(['run']);
    expect(labels('level a\n  joists run <|>\n')).toEqual(['north-south', 'east-west']);
  });

  test('units for a bare number', () => {
    expect(labels('room a\n  height 8<|>\n').slice(0, 3)).toEqual(expect.arrayContaining(["8'", '8"']));
    expect(taken('room a\n  height 8<|>\n', "8'")).toBe("room a\n  height 8'\n");
    expect(labels('task a takes 3<|>\n')).toContain('3d');
  });

  test('clauses after a whole value', () => {
    const found = labels('task a does set-tile <|>\n');
    expect(found).toEqual(expect.arrayContaining(['by', 'after', 'takes']));
    expect(found).not.toContain('does');
    expect(taken('trade t\ntask a by t cr<|>\n', 'crew of')).toBe('trade t\ntask a by t crew of \n');
  });

  test('nothing in texts and comments', () => {
    expect(offered('room a "ba<|>th"\n')).toEqual([]);
    expect(offered('room a # ba<|>th\n')).toEqual([]);
  });

  test('a blank after a whole value offers nothing by itself', () => {
    const context = { triggerKind: 2, triggerCharacter: ' ' };
    expect(offered("room a\n  size 8' x 5' <|>\n", able, context)).toEqual([]);
    expect(offered('room a\n  use <|>\n', able, context).length).toBeGreaterThan(3);
  });
});

describe('what is sent', () => {
  test('snippets only where the editor knows them', () => {
    expect(offered('room a\n  si<|>\n').every(({ insertTextFormat }) => insertTextFormat !== 2)).toBe(true);
    expect(taken('room a\n  si<|>\n', 'size', { ...able, snippets: true })).toBe(`room a\n  size \${1:8'-0" x 5'-0"}\n`);
  });

  test('help comes with it', () => {
    const size = offered('room a\n  si<|>\n').find(({ label }) => label === 'size');
    expect(size?.documentation).toContain('Clear size');
  });

  test('line ends of Windows stay', () => {
    expect(taken('room a\r\n  wa<|>\r\nroom b\r\n', 'walls')).toBe('room a\r\n  walls \r\nroom b\r\n');
  });

  test('never more than 200, and then as far as they fit', () => {
    const { ask } = editing('price <|>\n');
    const list = ask<CompletionList>(completion);
    expect(list.items.length).toBeLessThanOrEqual(200);
    expect(list.isIncomplete).toBe(true);
  });

  test('no throw anywhere in a text', () => {
    const text = 'plan a\n  start 2027-04-05\n\ntask b does set-tile in bath, hall after a + 2 days # c\n  takes 3\n😀 x\n';
    const { ask } = editing(text);
    for (let line = 0; line < 9; line++)
      for (let character = 0; character < 70; character++)
        expect(() => ask(completion, { position: { line, character } })).not.toThrow();
  });
});

describe('what is usual comes first', () => {
  test('goods that stand behind the word elsewhere; other kinds last', () => {
    const found = labels("window w-1 3' x 4'\nroom a\n  floor plank\nroom b\n  floor <|>\n");
    expect(found[0]).toBe('plank');
    expect(found.slice(0, 100)).not.toContain('w-1');
    expect(labels("door d-1 3' x 7'\nwindow w-1 3' x 4'\nroom a\n  windows 1 w-1\nroom b\n  windows 1 <|>\n")[0]).toBe('w-1');
  });

  test('assemblies for the place', () => {
    expect(labels('level a\n  floor <|>\n')[0]).toMatch(/^floor-/);
    expect(labels('level a\n  partitions <|>\n')[0]).toMatch(/^int-/);
  });

  test('work that the plan holds and nobody does', () => {
    const source = "level main\n  height 8'\nroom a on main\n  size 8' x 9'\n  walls tile\n  floor plank\ntask b does <|>\n";
    expect(labels(source).slice(0, 12)).toContain('lay-plank');
  });

  test('codes that the library knows', () => {
    expect(labels('plan a\n  holidays <|>\n')).toContain('US');
  });

  test('nothing behind what cannot be read', () => expect(labels('task a\ntask b after a + <|>\n')).toEqual([]));
});
