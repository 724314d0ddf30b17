// Colours from meaning, whole, in part and as what differs.
import { expect, test } from 'vitest';
import type { SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver-types';
import { clientOf } from '#editor/client';
import { semanticTokens, semanticTokensDelta, semanticTokensRange } from '#editor/semantic-tokens';
import { editing, viewOf } from './editing.ts';

const { semanticTokensProvider } = semanticTokens.offers(clientOf({})) as {
  semanticTokensProvider: { legend: { tokenTypes: readonly string[] } };
};
const { tokenTypes } = semanticTokensProvider.legend;

/** 'letters:type' in the order of the text. */
function named(text: string, data: readonly number[]): readonly string[] {
  const lines = text.split(/\r\n|\r|\n/);
  let [line, column] = [0, 0];
  const found: string[] = [];
  for (let at = 0; at < data.length; at += 5) {
    column = data[at] === 0 ? column + data[at + 1]! : data[at + 1]!;
    line += data[at]!;
    found.push(
      `${lines[line]!.slice(column, column + data[at + 2]!)}:${tokenTypes[data[at + 3]!]}${data[at + 4] === 1 ? '!' : ''}`,
    );
  }
  return found;
}

const PLAN = `room bath "Bath" on main # a bath
  size 8' x 5' + wide
  windows 2 w-3050 in south
task tile does set-tile in bath takes 2d after dig + 1d
`;

function whole(source: string): readonly string[] {
  const { ask, textOf } = editing(source);
  return named(textOf('plan.screed'), ask<SemanticTokens>(semanticTokens).data);
}

test('kinds, names, words, values', () => {
  expect(whole(PLAN)).toEqual([
    'room:keyword',
    'bath:function!',
    '"Bath":string',
    'on:keyword',
    'main:variable',
    '# a bath:comment',
    'size:property',
    "8':number",
    'x:operator',
    "5':number",
    'wide:variable',
    'windows:property',
    '2:number',
    'w-3050:variable',
    'task:keyword',
    'tile:function!',
    'does:keyword',
    'set-tile:variable',
    'in:keyword',
    'bath:variable',
    'takes:keyword',
    '2d:number',
    'after:keyword',
    'dig:variable',
    '1d:number',
  ]);
});

test('a figure of a thing is its name and a word', () => {
  expect(whole('let a = kitchen.floor-area * 2\n')).toEqual([
    'let:keyword',
    'a:function!',
    '=:operator',
    'kitchen:variable',
    'floor-area:property',
    '2:number',
  ]);
});

test('lines that are not right still have colours; letters of two units count twice', () => {
  expect(whole('rooom a "😀" 3\'\nroom b "😀" on main\n')).toEqual([
    '"😀":string',
    "3':number",
    'room:keyword',
    'b:function!',
    '"😀":string',
    'on:keyword',
    'main:variable',
  ]);
});

test('a part is what the whole says of its lines', () => {
  const { ask, textOf } = editing(PLAN);
  const { data } = ask<SemanticTokens>(semanticTokensRange, {
    range: { start: { line: 2, character: 0 }, end: { line: 2, character: 9 } },
  });
  expect(named(textOf('plan.screed'), data)).toEqual(['windows:property', '2:number', 'w-3050:variable']);
});

test('what differs, applied to what was sent, is the whole', () => {
  const { ask, places, view } = editing(PLAN);
  const first = ask<SemanticTokens>(semanticTokens);
  places.change('plan.screed', 2, [
    { range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, text: '  use bathing\n' },
  ]);
  const now = { ...viewOf(places, 'plan.screed'), coloursSent: view.coloursSent };
  const delta = semanticTokensDelta.answer(now, { previousResultId: first.resultId } as never) as SemanticTokensDelta;
  const data = [...first.data];
  for (const { start, deleteCount, data: inserted = [] } of delta.edits) data.splice(start, deleteCount, ...inserted);
  expect(data).toEqual((semanticTokens.answer(now, {} as never) as SemanticTokens).data);
  const again = semanticTokensDelta.answer(now, { previousResultId: 'something else' } as never) as SemanticTokens;
  expect(again.data).toEqual(data);
});
