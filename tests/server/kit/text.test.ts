// Offsets to positions and back, in all three encodings, against the protocol's own document library and Buffer.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type Encoding, lineAt, lineEnd, lineStarts, offsetAt, positionAt } from '#kit/text';

const ENCODINGS: readonly Encoding[] = ['utf-8', 'utf-16', 'utf-32'];
/** Texts rich in what goes wrong: every line end, pairs, halves of pairs, a byte order mark. */
const awkwardText = fc
  .array(
    fc.constantFrom(
      'a',
      'room',
      ' ',
      '\n',
      '\r',
      '\r\n',
      'é',
      '½',
      '″',
      '😀',
      '\ud83d',
      '\ude00',
      '\ufeff',
      '\u2028',
      '\u0085',
      '\0',
    ),
    {
      maxLength: 40,
    },
  )
  .map((parts) => parts.join(''));

describe('lines', () => {
  test('LF, CR and CRLF end a line; other separators do not', () => {
    expect([...lineStarts('a\nb\rc\r\nd\u2028e\u0085f')]).toEqual([0, 2, 4, 7]);
    expect([...lineStarts('')]).toEqual([0]);
    expect([...lineStarts('\n')]).toEqual([0, 1]);
    expect([...lineStarts('\r\r\n\n')]).toEqual([0, 1, 3, 4]);
  });

  test('more lines than the first guess', () => {
    expect(lineStarts('\n'.repeat(1000)).length).toBe(1001);
  });

  test('a line ends before its line end', () => {
    const text = 'ab\r\nc\rd\n\r\n';
    const starts = lineStarts(text);
    expect([...starts].map((_, line) => lineEnd(text, starts, line))).toEqual([2, 5, 7, 8, 10]);
  });

  test('the line of an offset', () => {
    const starts = lineStarts('ab\ncd\n');
    expect([0, 1, 2, 3, 5, 6, 99].map((offset) => lineAt(starts, offset))).toEqual([0, 0, 0, 1, 1, 2, 2]);
  });
});

describe('positions', () => {
  const text = 'é😀 room x\r\nsize';
  const starts = lineStarts(text);

  test('a character counts as bytes, UTF-16 units or whole characters', () => {
    const at = text.indexOf('room');
    expect(positionAt(text, starts, at, 'utf-8')).toEqual({ line: 0, character: 7 });
    expect(positionAt(text, starts, at, 'utf-16')).toEqual({ line: 0, character: 4 });
    expect(positionAt(text, starts, at, 'utf-32')).toEqual({ line: 0, character: 3 });
  });

  test('never inside a pair', () => {
    expect(positionAt(text, starts, 2)).toEqual({ line: 0, character: 1 });
    expect(offsetAt(text, starts, { line: 0, character: 2 })).toBe(1);
    expect(offsetAt(text, starts, { line: 0, character: 3 }, 'utf-8')).toBe(1);
    expect(offsetAt(text, starts, { line: 0, character: 5 }, 'utf-8')).toBe(1);
    expect(offsetAt(text, starts, { line: 0, character: 6 }, 'utf-8')).toBe(3);
  });

  test('never inside or behind a line end', () => {
    expect(positionAt(text, starts, text.indexOf('\n'))).toEqual({ line: 0, character: 10 });
    for (const encoding of ENCODINGS) expect(offsetAt(text, starts, { line: 0, character: 1000 }, encoding)).toBe(10);
  });

  test('outside the text is moved inside', () => {
    expect(positionAt(text, starts, -5)).toEqual({ line: 0, character: 0 });
    expect(positionAt(text, starts, Number.NaN)).toEqual({ line: 0, character: 0 });
    expect(positionAt(text, starts, 9999)).toEqual({ line: 1, character: 4 });
    expect(offsetAt(text, starts, { line: 1000, character: 1000 })).toBe(text.length);
    expect(offsetAt(text, starts, { line: -1, character: 3 })).toBe(0);
    expect(offsetAt(text, starts, { line: 1, character: -3 })).toBe(12);
    expect(offsetAt(text, starts, { line: Number.NaN, character: Number.NaN })).toBe(0);
  });
});

describe('any text', () => {
  test('there and back again', () => {
    fc.assert(
      fc.property(awkwardText, fc.nat(60), fc.constantFrom(...ENCODINGS), (text, wanted, encoding) => {
        const starts = lineStarts(text);
        const position = positionAt(text, starts, wanted, encoding);
        const offset = offsetAt(text, starts, position, encoding);
        expect(positionAt(text, starts, offset, encoding)).toEqual(position);
        expect(offset).toBeLessThanOrEqual(Math.min(wanted, text.length));
      }),
    );
  });

  test('UTF-16 positions are those of vscode-languageserver-textdocument, apart from pairs cut in two', () => {
    fc.assert(
      fc.property(awkwardText, fc.nat(60), (text, offset) => {
        const starts = lineStarts(text);
        const referee = TextDocument.create('file:///a', 'screed', 1, text);
        expect(starts.length).toBe(referee.lineCount);
        const cut =
          offset < text.length && /[\udc00-\udfff]/.test(text[offset]!) && /[\ud800-\udbff]/.test(text[offset - 1] ?? '');
        if (!cut) expect(positionAt(text, starts, offset)).toEqual(referee.positionAt(offset));
      }),
    );
  });

  test('UTF-8 characters are the bytes that Node writes, UTF-32 those that a string walks through', () => {
    fc.assert(
      fc.property(awkwardText, fc.nat(60), (text, wanted) => {
        const starts = lineStarts(text);
        const { line, character } = positionAt(text, starts, wanted);
        const before = text.slice(starts[line]!, starts[line]! + character);
        expect(positionAt(text, starts, wanted, 'utf-8').character).toBe(Buffer.byteLength(before));
        expect(positionAt(text, starts, wanted, 'utf-32').character).toBe([...before].length);
      }),
    );
  });
});
