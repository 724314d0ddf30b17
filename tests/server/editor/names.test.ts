// Names: where they are declared, where they are used, giving them others.
import { describe, expect, test } from 'vitest';
import type { DocumentHighlight, Location, LocationLink, Range, WorkspaceEdit } from 'vscode-languageserver-types';
import { clientOf } from '#editor/client';
import { definition } from '#editor/definition';
import { highlights } from '#editor/highlights';
import { references } from '#editor/references';
import { prepareRename, rename } from '#editor/rename';
import { able, covered, edited, editing } from './editing.ts';

const PLAN = `
#- plan.screed
plan street
include "house.screed"
let wide = 8'
task tile does set-tile in bath takes 1d
task paint takes 1d after tile
  accept sequence/board-before-dry "why"
measure main.north 5' = 5'
#- house.screed
level main
  footprint 28' x 32'
room bath on main
  size wide x 5'
let half = bath.floor-area / 2
`;

/** The word is looked for in the first file that holds the marked line. */
function at(line: string) {
  return editing(PLAN.replace(line.replace('<|>', ''), line));
}

describe('definition', () => {
  const target = (line: string) => {
    const { ask, textOf } = at(line);
    const [found] = ask<readonly Location[] | undefined>(definition) ?? [];
    return found === undefined
      ? undefined
      : `${found.uri}:${found.range.start.line + 1} ${covered(textOf(found.uri), found.range)}`;
  };

  test.each([
    ['in ba<|>th takes', 'house.screed:3 bath'],
    ['after ti<|>le', 'plan.screed:4 tile'],
    ['size wi<|>de', 'plan.screed:3 wide'],
    ['room bath on ma<|>in', 'house.screed:1 main'],
    ['let half = bath.flo<|>or-area', 'house.screed:3 bath'],
    ['measure ma<|>in.north', 'house.screed:1 main'],
    ['include "hou<|>se.screed"', 'house.screed:1 '],
  ])('%s', (line, expected) => {
    expect(target(line)).toBe(expected);
  });

  test('into the library: a kind of work, the rule behind an accepted code', () => {
    const work = at('does set-<|>tile').ask<readonly Location[]>(definition);
    expect(work[0]!.uri).toMatch(/^library\/work\//);
    const rule = at('accept sequence/board-<|>before-dry').ask<readonly Location[]>(definition);
    expect(rule[0]!.uri).toMatch(/^library\/sequence\//);
  });

  test('as a link, where the editor takes links', () => {
    const client = clientOf({ textDocument: { definition: { linkSupport: true } } });
    const { ask, textOf } = editing(PLAN.replace('in bath', 'in ba<|>th'), client);
    const [link] = ask<readonly LocationLink[]>(definition);
    expect(covered(textOf('plan.screed'), link!.originSelectionRange!)).toBe('bath');
    expect(covered(textOf('house.screed'), link!.targetSelectionRange)).toBe('bath');
    expect(covered(textOf('house.screed'), link!.targetRange)).toBe("room bath on main\n  size wide x 5'");
  });

  test('nothing on a word of the language, a text, a blank', () => {
    expect(target('ro<|>om bath')).toBeUndefined();
    expect(target('"w<|>hy"')).toBeUndefined();
  });
});

test('references, over all files', () => {
  const { ask } = at('room ba<|>th');
  const found = (includeDeclaration: boolean) =>
    ask<readonly Location[]>(references, { context: { includeDeclaration } }).map(
      ({ uri, range }) => `${uri}:${range.start.line + 1}`,
    );
  expect(found(true)).toEqual(['plan.screed:4', 'house.screed:3', 'house.screed:5']);
  expect(found(false)).toEqual(['plan.screed:4', 'house.screed:5']);
});

test('highlights, in one file, written and read', () => {
  const found = at('room ba<|>th').ask<readonly DocumentHighlight[]>(highlights);
  expect(found.map(({ range, kind }) => [range.start.line, kind])).toEqual([
    [2, 3],
    [4, 2],
  ]);
});

describe('rename', () => {
  const renamed = (line: string, newName: string) => {
    const { ask, textOf } = at(line);
    const answer = ask<WorkspaceEdit & { refused?: string }>(rename, { newName });
    if (answer.refused !== undefined) return answer.refused;
    return Object.fromEntries(Object.entries(answer.changes ?? {}).map(([path, edits]) => [path, edited(textOf(path), edits)]));
  };

  test('the declaration and every use, figures too', () => {
    const texts = renamed('room ba<|>th', 'Wash-Room') as { [path: string]: string };
    expect(texts['plan.screed']).toContain('in wash-room takes');
    expect(texts['house.screed']).toContain('room wash-room on main');
    expect(texts['house.screed']).toContain('wash-room.floor-area / 2');
  });

  test('a level, and the dimension strings of its sides', () => {
    const texts = renamed('on ma<|>in', 'ground') as { [path: string]: string };
    expect(texts['plan.screed']).toContain('measure ground.north');
    expect(texts['house.screed']).toContain('level ground');
  });

  test('there and back is nothing', () => {
    const { ask, textOf } = at('room ba<|>th');
    const first = ask<WorkspaceEdit>(rename, { newName: 'spa' });
    const texts = ['plan.screed', 'house.screed'].map((path) => edited(textOf(path), first.changes?.[path] ?? []));
    const again = editing(`#- plan.screed\n${texts[0]}\n#- house.screed\n${texts[1]}`.replace('room spa', 'room s<|>pa'));
    const back = again.ask<WorkspaceEdit>(rename, { newName: 'bath' });
    for (const path of ['plan.screed', 'house.screed'])
      expect(edited(again.textOf(path), back.changes?.[path] ?? []).trim()).toBe(textOf(path).trim());
  });

  test('to the same name: no edits', () => expect(renamed('room ba<|>th', 'bath')).toEqual({}));

  test.each([
    ['two words', 'is no name'],
    ['9lives', 'is no name'],
    ['', 'is no name'],
    ['after', 'opens a clause'],
  ])('not to "%s"', (newName, why) => expect(renamed('room ba<|>th', newName)).toContain(why));

  test('not to a name that is taken in its space', () => {
    expect(renamed('task ti<|>le', 'paint')).toBe('"paint" is already the name of a task of this plan.');
    expect(renamed('room ba<|>th', 'tile')).not.toBeTypeOf('string');
  });

  test('not a row of the library, not a word of the language', () => {
    expect(renamed('does set-<|>tile', 'lay-tile')).toContain('library');
    expect(at('does set-<|>tile').ask(prepareRename)).toBeUndefined();
    expect(at('ro<|>om bath').ask(prepareRename)).toBeUndefined();
    expect(renamed('ro<|>om bath', 'x')).toBe('No name stands here.');
  });

  test('what is renamed is told beforehand', () => {
    const { ask, textOf } = at('bath.floor<|>-area');
    const found = ask<{ range: Range; placeholder: string }>(prepareRename);
    expect(found.placeholder).toBe('bath');
    expect(covered(textOf('house.screed'), found.range)).toBe('bath');
  });

  test('with versions, where the editor takes them', () => {
    const { ask } = editing(PLAN.replace('room bath', 'room ba<|>th'), { ...able, versionedEdits: true });
    const { documentChanges } = ask<WorkspaceEdit>(rename, { newName: 'spa' });
    expect(documentChanges?.map((each) => 'textDocument' in each && each.textDocument)).toEqual([
      { uri: 'plan.screed', version: 1 },
      { uri: 'house.screed', version: 1 },
    ]);
  });

  test('on lines with letters of two units', () => {
    const { ask, textOf } = editing('room ba<|>th\ntask tile "😀" takes 1d in bath note "é😀"\n');
    const edits = ask<WorkspaceEdit>(rename, { newName: 'spa' }).changes!['plan.screed']!;
    expect(edited(textOf('plan.screed'), edits)).toBe('room spa\ntask tile "😀" takes 1d in spa note "é😀"\n');
  });
});
