// Every token once: the type the grammar knows it by, what it looks like, what it is for, and how editors colour it.
// The reader (parser/lexer.ts) is written by hand; the patterns here serve the colouring file and are held to the reader's
// readings by tests.
import { createToken, Lexer, type TokenType } from 'chevrotain';

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
