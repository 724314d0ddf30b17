// What begins at a place in a line: a literal, a word, a text, a mark, an operator, a comment, or a piece nobody can read.
import type { TokenType } from 'chevrotain';
import { Close, Comma, Equals, FunctionName, Open, Range, Word } from '../tokens.ts';
import type { Literal } from '../tree.ts';
import { negativeMoney } from './messages.ts';
import { numberBegins, scanNumber } from './numbers.ts';
import {
  type Context,
  isBlank,
  isDigit,
  isHyphen,
  isLetter,
  type LiteralScan,
  literalScan,
  matchAt,
  type Scan,
  wrongScan,
} from './reading.ts';
import { scanBar } from './sizes.ts';
import { scanOdd, scanText, type TextScan } from './texts.ts';
import { clockRange } from './times.ts';
import { afterValue, type Token } from './token.ts';
import { jointBegins, scanWord, type WordScan } from './words.ts';

export type Operator = '+' | '-' | '*' | '/';

export type Piece =
  | Scan
  | WordScan
  | TextScan
  | { readonly kind: 'mark'; readonly type: TokenType; readonly to: number }
  | { readonly kind: 'joint'; readonly to: number }
  | { readonly kind: 'operator'; readonly operator: Operator; readonly to: number }
  | { readonly kind: 'comment'; readonly to: number };

/** The piece that begins at `at`, which is no blank. `last` is the token before it. */
export function scanPiece(text: string, at: number, last: Token | undefined, context: Context): Piece {
  const code = text.charCodeAt(at);
  if (isLetter(code)) return jointBegins(text, at, afterValue(last)) ? { kind: 'joint', to: at + 1 } : scanWord(text, at);
  if (isDigit(code)) return scanNumber(text, at, context) ?? scanOdd(text, at);
  if (isHyphen(code)) return scanHyphen(text, at, last, context);
  // A parenthesis that belongs to a calculation's name holds its inputs, never a count.
  if (code === 40 && last?.tokenType === FunctionName && last.to === at) return { kind: 'mark', type: Open, to: at + 1 };
  return scanMark(text, at, context);
}

function scanMark(text: string, at: number, context: Context): Piece {
  const mark = text.charAt(at);
  switch (mark) {
    case ',':
      return { kind: 'mark', type: Comma, to: at + 1 };
    case '=':
      return { kind: 'mark', type: Equals, to: at + 1 };
    case '(':
      return scanOpen(text, at);
    case ')':
      return { kind: 'mark', type: Close, to: at + 1 };
    case '"':
    case '“':
    case '”':
    case '„':
    case '″':
      return scanText(text, at);
    case '#':
      return scanHash(text, at);
    case '+':
    case '*':
    case '/':
      return { kind: 'operator', operator: mark, to: at + 1 };
    case '×':
      return { kind: 'joint', to: at + 1 };
    case '@':
      return { kind: 'word', word: 'at', to: at + 1, tidy: 'at' };
    default:
      if (mark === '.' && text.charAt(at + 1) === '.' && text.charAt(at + 2) !== '.')
        return { kind: 'mark', type: Range, to: at + 2 };
      return (numberBegins(text, at) ? scanNumber(text, at, context) : undefined) ?? scanOdd(text, at);
  }
}

/** A comment, a bar size, or a # that stands wrong. */
function scanHash(text: string, at: number): Piece {
  const bar = scanBar(text, at);
  if (bar !== undefined) return bar;
  const free = at === 0 || isBlank(text.charCodeAt(at - 1));
  return free && !isDigit(text.charCodeAt(at + 1)) ? { kind: 'comment', to: text.trimEnd().length } : scanOdd(text, at);
}

/** A parenthesis, or the count of "(2) 2x10". */
function scanOpen(text: string, at: number): Piece {
  const count = matchAt(COUNT, text, at);
  if (count === undefined) return { kind: 'mark', type: Open, to: at + 1 };
  const literal: Literal = { kind: 'quantity', dimension: 'bare', value: Number(count[1]), unit: '' };
  return literalScan(literal, at + count[0].length, undefined);
}

/** A minus between values, the hyphen of 7:00-15:30, or the sign of a number that follows directly. */
function scanHyphen(text: string, at: number, last: Token | undefined, context: Context): Piece {
  if (last?.literal?.kind === 'clock' && clockRange(text, last.to)?.from === at) return { kind: 'mark', type: Range, to: at + 1 };
  const glued = last !== undefined && last.to === at && last.tokenType === Word;
  const scan = !glued && !afterValue(last) && numberBegins(text, at + 1) ? scanNumber(text, at + 1, context) : undefined;
  if (scan?.kind === 'wrong') return scan;
  return (scan === undefined ? undefined : negative(text, at, scan)) ?? { kind: 'operator', operator: '-', to: at + 1 };
}

/** The number with its sign. Credits are said in words. */
function negative(text: string, at: number, scan: LiteralScan): Scan | undefined {
  const { literal } = scan;
  if (literal.kind !== 'quantity') return undefined;
  const written = text.slice(at + 1, scan.to);
  if (literal.dimension.startsWith('money')) return wrongScan(negativeMoney, scan.to, `less ${written}`, written);
  // Degrees Fahrenheit do not begin at zero: -10 F lies as far below 0 F as 10 F lies above.
  const twiceZero = literal.unit === 'F' ? (-2 * 32 * 5) / 9 : 0;
  const tidy = scan.tidy === undefined && text.charAt(at) === '-' ? undefined : `-${scan.tidy ?? written}`;
  return literalScan({ ...literal, value: twiceZero - literal.value }, scan.to, tidy);
}

const COUNT = /\(\s*(\d{1,4})\s*\)(?=\s*(?:\d{1,5}(?:\/4)?[x×X]\d|#\d|T\d))/y;
