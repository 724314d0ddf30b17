// Formatting over the protocol: the edits lie in the text, apart, and give what the grammar's formatter gives.
import { expect, test } from 'vitest';
import type { TextEdit } from 'vscode-languageserver-types';
import { formatting, rangeFormatting } from '#editor/formatting';
import { format } from '#grammar/format';
import { parse } from '#grammar/parse';
import { edited, editing } from './editing.ts';

const ROUGH = "room   bath  on   main\n      size 8' x   5'\n\n\n\n\nroom hall   on main\n   walls paint   \n";

test.each([
  ['blanks', ROUGH],
  ['line ends of Windows', ROUGH.replaceAll('\n', '\r\n')],
  ['a mark of byte order', `\ufeff${ROUGH}`],
  ['no line end at the end', 'room   bath'],
  ['blank lines at the end', 'room bath\n\n\n\n'],
  ['lines that are not right', "room   bath\n  siez   8'\n"],
  ['nothing', ''],
])('%s', (_, text) => {
  const { places } = editing('room a\n');
  places.open('rough.screed', 1, text);
  const { ask } = editing(text.replaceAll('<|>', ''));
  const edits = ask<readonly TextEdit[]>(formatting);
  expect(edited(text, edits)).toBe(format(parse(text)).text);
});

test('formatted text has no edits', () => {
  const { text } = format(parse(ROUGH));
  expect(editing(text).ask<readonly TextEdit[]>(formatting)).toEqual([]);
});

test('only the lines that are asked for', () => {
  const { ask, textOf } = editing(ROUGH);
  const edits = ask<readonly TextEdit[]>(rangeFormatting, {
    range: { start: { line: 1, character: 0 }, end: { line: 1, character: 5 } },
  });
  const lines = edited(textOf('plan.screed'), edits).split('\n');
  expect(lines[0]).toBe('room   bath  on   main');
  expect(lines[1]).not.toBe(ROUGH.split('\n')[1]);
});
