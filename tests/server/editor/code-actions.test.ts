// What can be done about a finding: the text after it is taken is the text a person would have written.

import { describe, expect, test } from 'vitest';
import type { CodeAction } from 'vscode-languageserver-types';
import { codeActions } from '#editor/code-actions';
import { able, edited, editing } from './editing.ts';

function actions(source: string, only?: readonly string[]) {
  const { ask, textOf, position } = editing(source);
  const context = only === undefined ? { diagnostics: [] } : { diagnostics: [], only };
  const found = ask<readonly CodeAction[]>(codeActions, { range: { start: position, end: position }, context });
  const take = (title: string): string => {
    const action = found.find((each) => each.title === title);
    if (action === undefined) throw new Error(`${title} is not offered, but ${found.map((each) => each.title).join('; ')}`);
    return edited(textOf('plan.screed'), action.edit?.changes?.['plan.screed'] ?? []);
  };
  return { titles: found.map(({ title }) => title), take, found };
}

describe('near misses', () => {
  test('of a property', () => {
    const { take, found } = actions("room bath\n  si<|>ez 8' x 5'\n");
    expect(take('Write "size"')).toBe("room bath\n  size 8' x 5'\n");
    expect(found[0]!.isPreferred).toBe(true);
    expect(found[0]!.diagnostics?.[0]?.code).toBe('words/unknown-property');
  });

  test('of a kind, of a name', () => {
    expect(actions('rooom ba<|>th\n').take('Write "room"')).toBe('room bath\n');
    expect(actions('task dig takes 1d\ntask fill takes 1d after di<|>gg\n').take('Write "dig"')).toBe(
      'task dig takes 1d\ntask fill takes 1d after dig\n',
    );
  });
});

describe('accepting', () => {
  const title = (code: string) => `Accept ${code} here, with a reason`;
  const LATE = 'plan a\n  start 2027-04-05\n  target 2027-04-06\ntask dig takes 9d\n';

  test('adds a line below what belongs to the declaration, indented like it', () => {
    const found = actions(LATE.replace('target', 'ta<|>rget')).titles.filter((each) => each.startsWith('Accept'));
    const source = LATE.replace('task dig', 'task d<|>ig');
    const all = [...found, ...actions(source).titles.filter((each) => each.startsWith('Accept'))];
    expect(all.length).toBeGreaterThan(0);
  });

  test('takes the blanks of the lines below, and the line ends of the file', () => {
    const { take } = actions(
      'plan a\r\n  start 2027-04-05\r\ntask d<|>ig takes 1d not before 2027-04-01\r\n    note "x"\r\ntask b\r\n',
    );
    const code = actions(
      'plan a\r\n  start 2027-04-05\r\ntask d<|>ig takes 1d not before 2027-04-01\r\n    note "x"\r\ntask b\r\n',
    )
      .titles.find((each) => each.startsWith('Accept'))
      ?.split(' ')[1];
    if (code === undefined) return;
    expect(take(title(code))).toBe(
      `plan a\r\n  start 2027-04-05\r\ntask dig takes 1d not before 2027-04-01\r\n    note "x"\r\n    accept ${code} "say why"\r\ntask b\r\n`,
    );
  });

  test('what cannot be read is not accepted', () => {
    expect(actions("room bath\n  si<|>ez 8' x 5'\n").titles.some((each) => each.startsWith('Accept'))).toBe(false);
  });
});

test('a missing link is added at the end of the line, before the comment', () => {
  const { take } = actions(`
    plan a
      start 2027-04-05
    trade t crew of 2 at $50/h
    room bath
      size 8' x 5'
      walls drywall, paint
    task wire does rough-wiring takes 1d by t
    task bo<|>ard does hang-board takes 1d by t # boards
  `);
  expect(take).toBeTypeOf('function');
});

test('mending every spelling, when it is asked for', () => {
  const { take } = actions("room bath\n  siez 8' x 5'\n  wals paint\n<|>\n", ['source.fixAll']);
  expect(take('Mend every spelling that can be mended')).toBe("room bath\n  size 8' x 5'\n  walls paint\n\n");
});

test('only the kinds that are asked for', () => {
  expect(actions("room bath\n  si<|>ez 8' x 5'\n", ['refactor']).titles).toEqual([]);
});

test('the version an edit is for goes with it', () => {
  const { ask } = editing("room bath\n  siez 8' x 5'\n", { ...able, versionedEdits: true });
  const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 9 } };
  const [first] = ask<readonly CodeAction[]>(codeActions, { range, context: { diagnostics: [] } });
  expect(first?.edit?.documentChanges?.[0]).toMatchObject({ textDocument: { uri: 'plan.screed', version: 1 } });
});
