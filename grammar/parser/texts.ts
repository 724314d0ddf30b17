// Text between quotes, straight or curly, and the characters that mean nothing in a line.
import { comparison, hiddenCharacter, oddCharacter, oddQuote, singleQuotes } from './messages.ts';
import { matchAt, type Scan, wrongScan } from './reading.ts';

export interface TextScan {
  readonly kind: 'text';
  readonly text: string;
  readonly to: number;
  readonly tidy?: string;
}

/** The text that opens at `from`. Inside, the next quote ends it and a doubled one stands for itself. */
export function scanText(text: string, from: number): TextScan | Scan {
  const opening = text.charAt(from);
  const straight = opening === '"' || opening === '″';
  const end = straight ? straightEnd(text, from + 1) : curlyEnd(text, from + 1);
  if (end === undefined) return wrongScan(oddQuote, text.length, undefined);
  const content = text.slice(from + 1, end);
  const said = straight ? content.replaceAll('""', '"') : content;
  const tidy = `"${said.replaceAll('"', '""')}"`;
  const to = end + 1;
  return text.slice(from, to) === tidy ? { kind: 'text', text: said, to } : { kind: 'text', text: said, to, tidy };
}

/** A character that begins nothing: says what it is and what to write. */
export function scanOdd(text: string, from: number): Scan {
  const signs = matchAt(COMPARISON, text, from)?.[0];
  if (signs !== undefined)
    return wrongScan(comparison, from + signs.length, undefined, signs, COMPARISONS.get(signs.charAt(0)) as string);
  const quoted = matchAt(SINGLE_QUOTED, text, from);
  if (quoted !== undefined) return wrongScan(singleQuotes, from + quoted[0].length, `"${quoted[1]}"`, quoted[1] as string);
  const code = text.codePointAt(from) as number;
  const to = from + (code > 0xffff ? 2 : 1);
  if (isHidden(code)) {
    const last = (matchAt(HIDDEN_RUN, text, from)?.[0].length ?? 1) + from;
    return wrongScan(hiddenCharacter, Math.max(last, to), '', `U+${code.toString(16).toUpperCase().padStart(4, '0')}`);
  }
  const letter = text.slice(from, to);
  const [advice, rewrite] = ADVICE.get(letter) ?? ['Delete it, or put the words it belongs to between quotes.', undefined];
  return wrongScan(oddCharacter, to, rewrite, `"${letter}"`, advice);
}

function straightEnd(text: string, from: number): number | undefined {
  let at = from;
  for (;;) {
    const end = text.indexOf('"', at);
    if (end < 0) {
      const curly = text.indexOf('”', from);
      return curly < 0 ? undefined : curly;
    }
    if (text.charAt(end + 1) !== '"') return end;
    at = end + 2;
  }
}

function curlyEnd(text: string, from: number): number | undefined {
  for (let at = from; at < text.length; at += 1) if (text.charAt(at) === '”' || text.charAt(at) === '"') return at;
  return undefined;
}

function isHidden(code: number): boolean {
  return code < 32 || (code > 126 && code < 160) || (code >= 0xd800 && code <= 0xdfff) || HIDDEN.test(String.fromCodePoint(code));
}

const HIDDEN = /[\p{Cf}\p{Co}\p{Cn}\u2028\u2029]/u;
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to find
const HIDDEN_RUN = /[\u0000-\u0008\u000e-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u2064\ufeff]+/y;
const COMPARISON = /[<>]=?|[≤≥]|!=/y;
const COMPARISONS: ReadonlyMap<string, string> = new Map([
  ['<', 'at most'],
  ['>', 'at least'],
  ['≤', 'at most'],
  ['≥', 'at least'],
  ['!', 'not'],
]);
const SINGLE_QUOTED = /['‘]([^'‘’"]*\p{L}[^'‘’"]*)['’]/uy;
const ADVICE: ReadonlyMap<string, readonly [string, string | undefined]> = new Map([
  ['.', ['A line needs no full stop.', '']],
  ['…', ['Write .. for a range.', '..']],
  [';', ['A comma separates.', ',']],
  [':', ['A word and its values need only a blank between them.', '']],
  ['&', ['Write a comma.', ',']],
  ['$', ['A number follows a money sign.', undefined]],
  ['€', ['A number stands beside a money sign.', undefined]],
  ['£', ['A number follows a money sign.', undefined]],
  ['%', ['A number stands before it.', undefined]],
  ['°', ['A number stands before it.', undefined]],
  ["'", ['A foot mark stands directly behind a number.', undefined]],
  ['’', ['A foot mark stands directly behind a number.', undefined]],
  ['′', ['A foot mark stands directly behind a number.', undefined]],
  ['[', ['Only round parentheses are used, in calculations.', undefined]],
  [']', ['Only round parentheses are used, in calculations.', undefined]],
  ['{', ['A block is made by indenting the lines below.', undefined]],
  ['}', ['A block is made by indenting the lines below.', undefined]],
  ['#', ['A comment has a blank before its #.', ' #']],
  ['_', ['A name begins with a letter.', undefined]],
  ['÷', ['Write / with blanks around it.', '/']],
  ['·', ['Write * with blanks around it.', '*']],
]);
