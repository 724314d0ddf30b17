// Whatever begins with a letter: names and key words, and the few literals that do (R-21, T12, mon-fri, kr 450, Oct 15, 2026).
import { unitNamed } from '#kit/units';
import type { Unit } from '#kit/units/table';
import { gluedMinus, openingForm, resistanceForm, singleQuotes, unknownFunction } from './messages.ts';
import { moneyBegins, scanMoney } from './money.ts';
import { withRate } from './rates.ts';
import { endsHere, isDigit, isLetter, isWordPart, literalScan, matchAt, type Scan, wrongScan } from './reading.ts';
import { scanBar } from './sizes.ts';
import { scanNamedMonth, scanWeekdays } from './times.ts';

/** A word, or the name of a calculation whose parenthesis follows directly. */
export interface WordScan {
  readonly kind: 'word' | 'function';
  readonly word: string;
  readonly to: number;
  readonly tidy?: string;
}

/** What begins with the letter at `from`. */
export function scanWord(text: string, from: number): WordScan | Scan {
  return scanLettered(text, from) ?? scanPlain(text, from);
}

/** Where the word that begins at `from` ends: letters, digits, _, a - or . or / only inside. */
export function wordEnd(text: string, from: number): number {
  let at = from;
  for (;;) {
    const code = text.charCodeAt(at);
    if (isWordPart(code)) at += 1;
    else if (code === 45 && isWordPart(text.charCodeAt(at + 1))) at += 2;
    else if ((code === 46 || code === 47) && isLetter(text.charCodeAt(at + 1)) && at > from) at += 2;
    else return at;
  }
}

/** Literals that begin with a letter. The first letter decides quickly for the many words that are none. */
function scanLettered(text: string, from: number): Scan | undefined {
  switch (text.charAt(from)) {
    case 'R':
    case 'r':
      return scanResistance(text, from);
    case 'T':
      return scanBar(text, from) ?? scanWeekdays(text, from);
    case 'U':
    case 'u':
      return scanConductance(text, from) ?? currencyBefore(text, from);
    case 'K':
    case 'k':
    case 'E':
    case 'G':
    case 'C':
      return currencyBefore(text, from);
    case 'm':
    case 'M':
    case 't':
    case 'w':
    case 'W':
    case 'f':
    case 'F':
    case 's':
    case 'S':
      return scanWeekdays(text, from) ?? currencyBefore(text, from) ?? scanNamedMonth(text, from);
    case 'j':
    case 'J':
    case 'a':
    case 'A':
    case 'o':
    case 'O':
    case 'n':
    case 'N':
    case 'd':
    case 'D':
      return currencyBefore(text, from) ?? scanNamedMonth(text, from);
    default:
      return undefined;
  }
}

function scanPlain(text: string, from: number): WordScan | Scan {
  const short = text.charCodeAt(from + 1) === 46 ? matchAt(ABBREVIATION, text, from) : undefined;
  if (short !== undefined) {
    const word = short[0].replaceAll('.', '').toLowerCase();
    return { kind: 'word', word, to: from + short[0].length, tidy: word };
  }
  const to = wordEnd(text, from);
  const written = text.slice(from, to);
  const word = written.toLowerCase();
  const next = text.charAt(to);
  if (next === '(') return FUNCTIONS.has(word) ? { kind: 'function', word, to } : unknownCall(text, from, to, word);
  if (next !== '"' && next !== "'" && next !== '″' && next !== '′' && next !== '”' && next !== '’')
    return { kind: 'word', word, to };
  const glued = matchAt(GLUED_LENGTH, text, from);
  if (glued !== undefined) {
    const spaced = `${glued[1]} - ${text.slice(from + (glued[1] as string).length + 1, from + glued[0].length)}`;
    return wrongScan(gluedMinus, from + glued[0].length, spaced, glued[0], spaced);
  }
  const apostrophe = matchAt(APOSTROPHE, text, to);
  if (apostrophe === undefined) return { kind: 'word', word, to };
  const end = to + apostrophe[0].length;
  return wrongScan(singleQuotes, end, `"${text.slice(from, end)}"`, text.slice(from, end));
}

/** R-21 and R21 are US values, RSI 3.7 is metric. */
function scanResistance(text: string, from: number): Scan | undefined {
  const sum = matchAt(R_SUM, text, from);
  if (sum !== undefined) return wrongScan(resistanceForm, from + sum[0].length, undefined, sum[0]);
  const metric = matchAt(RSI, text, from);
  const found = metric ?? matchAt(R_VALUE, text, from);
  if (found === undefined) return undefined;
  const to = from + found[0].length;
  const amount = found[1] as string;
  const unit = metric === undefined ? 'R' : 'RSI';
  const tidy = metric === undefined ? `R-${amount}` : `RSI ${amount}`;
  const value = Number(amount) * (unitNamed(unit) as Unit).factor;
  const usual = metric === undefined && found[0] === `R${amount}` ? found[0] : tidy;
  const scan = literalScan(
    { kind: 'quantity', dimension: 'resistance', value, unit },
    to,
    usual === found[0] ? undefined : usual,
  );
  return withRate(text, from, scan);
}

/** U0.28 and U-0.28 would read as names. */
function scanConductance(text: string, from: number): Scan | undefined {
  const found = matchAt(U_GLUED, text, from);
  if (found === undefined) return undefined;
  const spaced = `U ${found[1]}`;
  return wrongScan(openingForm, from + found[0].length, spaced, found[0], spaced);
}

function currencyBefore(text: string, from: number): Scan | undefined {
  return moneyBegins(text, from) ? scanMoney(text, from) : undefined;
}

/** A name glued to a parenthesis: read up to its end as one wrong piece. */
function unknownCall(text: string, from: number, open: number, name: string): Scan {
  let depth = 0;
  for (let at = open; at < Math.min(text.length, open + LONGEST_CALL); at += 1) {
    const code = text.charCodeAt(at);
    // A text or a comment ends the search; behind a digit the quote is an inch mark.
    if (code === 35 || (code === 34 && !isDigit(text.charCodeAt(at - 1)))) break;
    if (code === 40) depth += 1;
    if (code === 41) depth -= 1;
    if (depth === 0) return wrongScan(unknownFunction, at + 1, undefined, text.slice(from, open));
  }
  return wrongScan(unknownFunction, open + 1, undefined, name);
}

/** Whether a lone x, or one glued to what follows a value, stands at `at`. */
export function jointBegins(text: string, at: number, afterValue: boolean): boolean {
  const mark = text.charAt(at);
  if (mark === '×') return true;
  if (mark !== 'x' && mark !== 'X') return false;
  return endsHere(text, at + 1) ? text.charAt(at + 1) !== '(' : afterValue && matchAt(BEFORE_NUMBER, text, at + 1) !== undefined;
}

// How far to look for the end of a call that is none.
const LONGEST_CALL = 120;
export const FUNCTIONS: ReadonlySet<string> = new Set(['min', 'max', 'roundup']);
const ABBREVIATION = /(?:[A-Za-z]\.){2,}(?![\p{L}\p{N}])/uy;
const GLUED_LENGTH = /(\p{L}[\p{L}\p{N}_.-]*)-(?:\d+['’′]-?)?\d+(?:[ -]\d+\/\d+|\.\d+)?(?:["″”]|['’′](?!\p{L}))/uy;
const APOSTROPHE = /['’′]\p{L}[\p{L}'’-]*/uy;
const BEFORE_NUMBER = /[\d.$½¼¾]/y;
const R_SUM = /R-?\d+(?:\.\d+)?\s?\+\s?\d+(?:\.\d+)?(?:ci)?(?![\p{L}\p{N}_])/iuy;
const R_VALUE = /R-?(\d+(?:\.\d+)?)(?![\p{L}\p{N}_]|[-/.][\p{L}\p{N}])/iuy;
const RSI = /RSI[ -]?(\d+(?:\.\d+)?)(?![\p{L}\p{N}_]|[-/.][\p{L}\p{N}])/iuy;
const U_GLUED = /U-?(\d?\.\d+)(?![\p{L}\p{N}_])/iuy;
