// What the hand-written reader's parts share: what a scan gives, what a line has shown so far, and tests of single letters.
import type { FindingSort } from '#kit/finding';
import type { Literal } from '../tree.ts';

/** What a scan found from its start up to `to`: a literal, or a piece it can say something about. */
export type Scan =
  | LiteralScan
  | {
      readonly kind: 'wrong';
      readonly sort: FindingSort<never>;
      readonly details: readonly unknown[];
      readonly to: number;
      readonly rewrite?: string;
    };

export interface LiteralScan {
  readonly kind: 'literal';
  readonly literal: Literal;
  readonly to: number;
  /** The usual spelling, where the one found is another. */
  readonly tidy: string | undefined;
}

/** What the line has shown so far; it decides readings such as 6/12 and 7:00. Lines never see each other. */
export interface Context {
  /** A roof word stood before: 6/12 is a pitch. */
  pitch: boolean;
  /** A door or window word stood before: 2/8 is a size. */
  opening: boolean;
  /** A day of the week stood before: 7:30 is a time of day. */
  calendar: boolean;
  /** The word directly before, lower case; '' after anything else. */
  word: string;
}

/** A piece that cannot be read; keeps the types of the details of its sort. */
export function wrongScan<A extends readonly unknown[]>(
  sort: FindingSort<A>,
  to: number,
  rewrite: string | undefined,
  ...details: A
): Scan {
  const made = { kind: 'wrong', sort: sort as unknown as FindingSort<never>, details, to } as const;
  return rewrite === undefined ? made : { ...made, rewrite };
}

export function literalScan(literal: Literal, to: number, tidy: string | undefined): LiteralScan {
  return { kind: 'literal', literal, to, tidy };
}

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

export function isLetter(code: number): boolean {
  if (code < 128) return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
  return LETTER.test(String.fromCharCode(code));
}

export function isWordPart(code: number): boolean {
  return isLetter(code) || isDigit(code) || code === 95;
}

/** Blanks between words: space, tab, and the blanks that copied text brings along. */
export function isBlank(code: number): boolean {
  return (
    code === 32 ||
    code === 9 ||
    code === 0xa0 ||
    (code > 0x167f && ODD_BLANK.test(String.fromCharCode(code))) ||
    code === 11 ||
    code === 12
  );
}

/** Hyphen, and the dashes and minus signs that word processors put in its place. */
export function isHyphen(code: number): boolean {
  return code === 45 || code === 0x2013 || code === 0x2014 || code === 0x2212 || code === 0x2010 || code === 0x2011;
}

/** Whether a unit or a number may end before the character at `at`: nothing of a word follows. */
export function endsHere(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (Number.isNaN(code)) return true;
  if (isWordPart(code)) return false;
  if (code === 45) return !isLetter(text.charCodeAt(at + 1));
  if (code === 46) return !isLetter(text.charCodeAt(at + 1));
  return true;
}

/** Matches a sticky pattern at a position. */
export function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text) ?? undefined;
}

const LETTER = /[\p{L}\p{M}]/u;
const ODD_BLANK = /[\u1680\u2000-\u200a\u202f\u205f\u3000]/;
