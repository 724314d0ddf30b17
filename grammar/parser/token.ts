// A token as the grammar takes it, with what the reader already knows about it.
import type { IToken, TokenType } from 'chevrotain';
import type { FindingSort } from '#kit/finding';
import { Close, LiteralToken, Wrong } from '../tokens.ts';
import type { Literal, Problem } from '../tree.ts';

export interface Token extends IToken {
  readonly from: number;
  readonly to: number;
  readonly literal: Literal | undefined;
  readonly problem: Problem | undefined;
  /** The word in lower case, or the letters between the quotes. */
  readonly said: string | undefined;
}

export function plainToken(type: TokenType, from: number, to: number): Token {
  return token(type, from, to, undefined, undefined, undefined);
}

export function literalToken(literal: Literal, from: number, to: number): Token {
  return token(LiteralToken, from, to, literal, undefined, undefined);
}

export function saidToken(type: TokenType, said: string, from: number, to: number): Token {
  return token(type, from, to, undefined, undefined, said);
}

/** All tokens are of one shape, with every field in one order: that makes reading them much faster. */
function token(
  tokenType: TokenType,
  from: number,
  to: number,
  literal: Literal | undefined,
  problem: Problem | undefined,
  said: string | undefined,
): Token {
  const tokenTypeIdx = tokenType.tokenTypeIdx as number;
  return { from, to, startOffset: from, endOffset: to - 1, image: '', tokenType, tokenTypeIdx, literal, problem, said };
}

/** A piece that cannot be read, with what is wrong about it. */
export function wrongToken(
  from: number,
  to: number,
  sort: FindingSort<never>,
  details: readonly unknown[],
  rewrite?: string,
): Token {
  return token(Wrong, from, to, undefined, problemOf(sort, from, to, details, rewrite), undefined);
}

export function problemOf(
  sort: FindingSort<never>,
  from: number,
  to: number,
  details: readonly unknown[],
  rewrite?: string,
): Problem {
  const made = { code: sort.code, from, to, details };
  return rewrite === undefined ? made : { ...made, rewrite };
}

/** Whether a token can be the left side of a difference or a size. */
export function afterValue(last: Token | undefined): boolean {
  const type = last?.tokenType;
  return type === LiteralToken || type === Close || type === Wrong;
}

/** Words and names as they were read, each string once: a plan says the same few thousand over and over. */
const words = new Map<string, string>();
const MOST_WORDS = 20_000;

export function once(word: string): string {
  const known = words.get(word);
  if (known !== undefined) return known;
  if (words.size >= MOST_WORDS) words.clear();
  words.set(word, word);
  return word;
}
