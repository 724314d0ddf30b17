// What can be done about a finding: the text after it is taken is the text a person would have written.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { CodeAction } from 'vscode-languageserver-types';
import { codeActions } from '#editor/code-actions';
import { readMarks } from '#tests/support/fixture';
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
  const title = 'Accept schedule/no-duration here, with a reason';

  test('adds a line below what belongs to the declaration, and the finding is answered', () => {
    const source = 'phase p\n  task d<|>ig\n    note "Deep"\n  task fill takes 1d\n';
    const { take } = actions(source);
    expect(take(title)).toBe(
      'phase p\n  task dig\n    note "Deep"\n    accept schedule/no-duration "say why"\n  task fill takes 1d\n',
    );
    const { view } = editing(take(title));
    expect(view.plan.findings.map(({ code }) => code)).not.toContain('schedule/no-duration');
    expect(view.plan.findings.map(({ code }) => code)).not.toContain('accept/unused');
  });

  test('takes the line ends and the blanks of the file', () => {
    expect(actions('task d<|>ig\r\n\tnote "x"\r\ntask b takes 1d\r\n').take(title)).toBe(
      'task dig\r\n\tnote "x"\r\n\taccept schedule/no-duration "say why"\r\ntask b takes 1d\r\n',
    );
    expect(actions('task d<|>ig').take(title)).toBe('task dig\n  accept schedule/no-duration "say why"');
  });

  test('what cannot be read is not accepted', () => {
    expect(actions("room bath\n  si<|>ez 8' x 5'\n").titles.some((each) => each.startsWith('Accept'))).toBe(false);
  });
});

test('the missing links are added at once, at the end of the line, before the comment', () => {
  const sample = readFileSync(join(import.meta.dirname, '../../../samples/broken/right-by-luck.screed'), 'utf8');
  const [mark] = readMarks('plan.screed', sample);
  const { line, code } = mark!;
  const marked = sample
    .split('\n')
    .map((each, at) => (at === line ? `${each.replace('board', 'bo<|>ard')} # as agreed` : each))
    .join('\n');
  const { found, take } = actions(marked);
  expect(found[0]).toMatchObject({
    title: 'Let "board" wait for "windows" and "doors": adds no days',
    isPreferred: true,
  });
  const text = take(found[0]!.title);
  expect(text.split('\n')[line]).toMatch(/, to the end also after windows, doors # as agreed$/);
  expect(editing(text).view.plan.findings.map((each) => each.code)).not.toContain(code);
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
