// How a clause is written, and which part of it comes next.
import { expect, test } from 'vitest';
import type { SignatureHelp } from 'vscode-languageserver-types';
import { signature } from '#editor/signature';
import { editing } from './editing.ts';

/** The label with the part that comes next in brackets. */
function shown(source: string): string | undefined {
  const found = editing(source).ask<SignatureHelp | undefined>(signature);
  const [only] = found?.signatures ?? [];
  const range = only?.parameters?.[found?.activeParameter ?? 0]?.label;
  if (only === undefined || range === undefined || typeof range === 'string') return only?.label;
  const [from, to] = range;
  return `${only.label.slice(0, from)}[${only.label.slice(from, to)}]${only.label.slice(to)}`;
}

test.each([
  ['room a\n  size <|>\n', 'size [length] x length'],
  ["room a\n  size 8' <|>\n", 'size length [x length]'],
  ['task a does dig <|>\n', 'does work name [number or area or length or volume], …'],
  ['task a by <|>\n', 'by trade name'],
  ['task a takes 3d after <|>\n', 'after step [+ wait], …'],
])('%s', (source, expected) => {
  expect(shown(source)?.replace(/\[\[/g, '[').replace(/\]\]/g, ']')).toBe(expected);
});

test('with help and an example', () => {
  const found = editing('room a\n  size <|>\n').ask<SignatureHelp>(signature);
  expect(found.signatures[0]!.documentation).toBe(`Clear size: east, then north. For example: size 8'-0" x 5'-0"`);
});

test('nothing outside a clause, in a comment, on a blank line', () => {
  for (const source of ['room <|>\n', 'room a # size <|>\n', 'room a\n<|>\n', '<|>']) expect(shown(source)).toBeUndefined();
});
