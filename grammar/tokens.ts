// Every token once: the type the grammar knows it by, what it looks like, what it is for, and how editors colour it.
// The reader (parser/lexer.ts) is written by hand; the patterns here serve the colouring file and are held to the reader's
// readings by tests.
import { createToken, Lexer, type TokenType } from 'chevrotain';
import { UNITS } from '#kit/units/table';

export const Word = createToken({ name: 'Word', pattern: Lexer.NA });
export const FunctionName = createToken({ name: 'FunctionName', pattern: Lexer.NA });
export const LiteralToken = createToken({ name: 'Literal', pattern: Lexer.NA });
export const TextToken = createToken({ name: 'Text', pattern: Lexer.NA });
export const Wrong = createToken({ name: 'Wrong', pattern: Lexer.NA });
export const Comma = createToken({ name: 'Comma', pattern: Lexer.NA });
export const Equals = createToken({ name: 'Equals', pattern: Lexer.NA });
export const Joint = createToken({ name: 'Joint', pattern: Lexer.NA });
export const Range = createToken({ name: 'Range', pattern: Lexer.NA });
export const Plus = createToken({ name: 'Plus', pattern: Lexer.NA });
export const Minus = createToken({ name: 'Minus', pattern: Lexer.NA });
export const Times = createToken({ name: 'Times', pattern: Lexer.NA });
export const Over = createToken({ name: 'Over', pattern: Lexer.NA });
export const Open = createToken({ name: 'Open', pattern: Lexer.NA });
export const Close = createToken({ name: 'Close', pattern: Lexer.NA });

/** What the grammar is built of. */
export const TOKEN_TYPES: readonly TokenType[] = [
  Word,
  FunctionName,
  LiteralToken,
  TextToken,
  Wrong,
  Comma,
  Equals,
  Joint,
  Range,
  Plus,
  Minus,
  Times,
  Over,
  Open,
  Close,
];

/** A sort of token as editors see it: its looks, its purpose, its colour. */
export interface TokenRow {
  readonly name: string;
  /** One line for the language reference. */
  readonly doc: string;
  /** In what both JavaScript (with the flag u) and Oniguruma read; no groups but those named in `parts`. */
  readonly pattern: string;
  /** TextMate scope, without the ending '.screed'. */
  readonly scope: string;
  /** Scopes of the pattern's groups, from the first. */
  readonly parts?: readonly string[];
  readonly examples: readonly string[];
}

const NUMBER = '(?:\\d+(?:,\\d{3})*(?:\\.\\d+)?(?:[ -]\\d+/\\d+|[½¼¾⅛⅜⅝⅞⅓⅔])?|\\d+/\\d+|\\.\\d+|[½¼¾⅛⅜⅝⅞⅓⅔])';
const ENDS = '(?![\\p{L}\\p{N}_]|-[\\p{L}\\p{N}])';
// Not inside a word or a number; behind the two points of a range a new one begins.
const BEGINS = '(?<![\\p{L}\\p{N}_-])(?<![^.]\\.)';
const DAY = '(?:[Mm]on|[Tt]ue|[Ww]ed|[Tt]hu|[Ff]ri|[Ss]at|[Ss]un)';
const UNIT = spellings(UNITS.flatMap((unit) => [...unit.words, ...(unit.also ?? [])]).filter((word) => word !== '%'));
// An "in" with a blank before it means inside; other single letters are too easily words.
const SPACED_UNIT = spellings(
  UNITS.flatMap((unit) => [...unit.words, ...(unit.also ?? [])]).filter((word) => word !== 'in' && word !== '%' && word !== 'g'),
);
const RATE = '(?:(?:/| per )[\\p{L}²³][\\p{L}\\p{N}²³-]*)?';

/** In the order in which they are tried. */
export const TOKEN_ROWS: readonly TokenRow[] = [
  {
    name: 'comment',
    doc: 'From a # at the start of a line or after a blank to the end, unless a digit follows.',
    pattern: '(?:^|(?<=\\s))#(?!\\d).*$',
    scope: 'comment.line.number-sign',
    examples: ['# our own cottage', '#Larkspur'],
  },
  {
    name: 'text',
    doc: 'Between quotes; a doubled quote stands for the mark itself.',
    pattern: '"(?:[^"]|"")*(?:"|$)|“[^”"]*(?:[”"]|$)',
    scope: 'string.quoted.double',
    examples: ['"Living and kitchen"', '"sill 24"" up"'],
  },
  {
    name: 'date',
    doc: 'Year, month, day.',
    pattern: `${BEGINS}\\d{4}-\\d{2}-\\d{2}${ENDS}`,
    scope: 'constant.numeric.date',
    examples: ['2027-04-05'],
  },
  {
    name: 'weekdays',
    doc: 'A day of the week, or several in a row.',
    pattern: `${BEGINS}${DAY}(?:-${DAY})?${ENDS}`,
    scope: 'constant.language.weekday',
    examples: ['mon', 'mon-fri'],
  },
  {
    name: 'ratio',
    doc: 'Rise to run, a mix, or a time of day.',
    pattern: `(?:${BEGINS}|(?<=:\\d\\d-))\\d+(?:\\.\\d+)?(?::\\d+(?:\\.\\d+)?){1,3}`,
    scope: 'constant.numeric.ratio',
    examples: ['6:12', '1:50', '1.5:1', '1:2:3', '7:00'],
  },
  {
    name: 'insulation',
    doc: 'US resistance with R, metric with RSI.',
    pattern: `${BEGINS}(?:R-?|RSI[ -]?)\\d+(?:\\.\\d+)?${ENDS}`,
    scope: 'constant.numeric.resistance',
    examples: ['R-21', 'R21', 'RSI 3.7'],
  },
  {
    name: 'money',
    doc: 'A sign or code before or behind the number; a price is per something.',
    pattern: `(?:[$€£] ?|${BEGINS}(?:kr|USD|EUR|GBP|CAD|AUD|NZD|CHF|NOK|SEK|DKK) )(?:\\d+(?:,\\d{3})*(?:\\.\\d+)?|\\.\\d+)[kK]?${RATE}|${BEGINS}\\d+(?:,\\d{3})*(?:\\.\\d+)? ?(?:[€£$]|(?:kr|USD|EUR|GBP|CAD|AUD|NZD|CHF|NOK|SEK|DKK)${ENDS})${RATE}`,
    scope: 'constant.numeric.money',
    examples: ['$4.20/sf', '$.20', '185,000 €', 'kr 450/h', '46 €/h', '$310/week'],
  },
  {
    name: 'size',
    doc: 'Lumber, sheets and bars by their names.',
    pattern: `${BEGINS}\\d+(?:/4)?[x×]\\d+(?:[x×]\\d+)?(?:mm|cm)?${ENDS}|(?<![\\p{L}\\p{N}])#\\d+|${BEGINS}T(?:6|8|10|12|16|20|25|32|40)${ENDS}`,
    scope: 'constant.numeric.size',
    examples: ['2x6', '5/4x6', '2x10x14', '2400x1200x10mm', '#4', 'T12'],
  },
  {
    name: 'length',
    doc: 'Feet and inches.',
    pattern: `${BEGINS}${NUMBER}(?:['′’](?:[- ]?${NUMBER}(?:["″”]|''))?|["″”])${RATE}`,
    scope: 'constant.numeric.length',
    examples: ["12'", `12'-6"`, `12' 6 1/2"`, '7/16"', '2 1/2"', '1/4" per foot'],
  },
  {
    name: 'quantity',
    doc: 'A number with its unit, glued on or one blank behind.',
    pattern: `${BEGINS}(${NUMBER})( ?%| ?°| ?deg\\b|(?:${UNIT})${ENDS}| (?:${SPACED_UNIT})${ENDS})(${RATE})`,
    scope: 'constant.numeric.quantity',
    parts: ['constant.numeric', 'keyword.other.unit', 'keyword.other.unit'],
    examples: [
      '3.6 m',
      '2400 mm',
      '120 sf',
      '4 cy',
      '80 cfm',
      '10%',
      '3d',
      '7 days',
      '2w',
      '7 deg',
      '0.033 h/sf',
      '12 sf per gal',
    ],
  },
  {
    name: 'number',
    doc: 'A number alone counts what follows it.',
    pattern: `${BEGINS}${NUMBER}${ENDS}`,
    scope: 'constant.numeric',
    examples: ['3', '185,000', '0.28', '1/150'],
  },
  {
    name: 'calculation',
    doc: 'The smallest, the largest, the next whole number.',
    pattern: `${BEGINS}(?:min|max|roundup)(?=\\()`,
    scope: 'support.function',
    examples: [],
  },
  {
    name: 'operator',
    doc: 'Between values, with blanks around; .. is a range and x stands between the sides of a size.',
    pattern: '\\.\\.|(?<=\\s)(?:[-+*/=]|[x×](?=\\s))',
    scope: 'keyword.operator',
    examples: ['..'],
  },
  {
    name: 'comma',
    doc: 'Separates; between digits it groups thousands.',
    pattern: ',',
    scope: 'punctuation.separator',
    examples: [','],
  },
];

/** Letters of names and key words. */
export const WORD_PATTERN = '\\p{L}[\\p{L}\\p{M}\\p{N}_]*(?:[-./][\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}_]*)*';

function spellings(words: readonly string[]): string {
  return [...new Set(words)]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((word) => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'))
    .join('|');
}
