// One line to tokens, by hand: one pass over its letters, each thing read where it begins, in the sense the line has shown
// so far. Whatever cannot be read becomes a token that carries its own problem; nothing is left out but blanks.
import type { TokenType } from 'chevrotain';
import { Close, FunctionName, Joint, LiteralToken, Minus, Open, Over, Plus, TextToken, Times, Word, Wrong } from '../tokens.ts';
import type { Problem, Rewrite } from '../tree.ts';
import { blanksAround, tooDeep } from './messages.ts';
import { matchParentheses } from './parentheses.ts';
import { type Operator, type Piece, scanPiece } from './pieces.ts';
import { type Context, isBlank, isLetter, wrongScan } from './reading.ts';
import { literalToken, once, plainToken, saidToken, type Token, wrongToken } from './token.ts';
import type { WordScan } from './words.ts';

export interface Reading {
  readonly tokens: readonly Token[];
  readonly problems: readonly Problem[];
  readonly rewrites: readonly Rewrite[];
  readonly comment?: { readonly from: number; readonly to: number };
}

/** Reads the letters of a line. A line nested deeper than 64 parentheses is one wrong token. */
export function readTokens(text: string): Reading {
  const line: Line = { text, tokens: [], problems: [], rewrites: [], context: newContext() };
  let at = 0;
  let depth = 0;
  let deepest = 0;
  let parentheses = false;
  while (at < text.length) {
    if (isBlank(text.charCodeAt(at))) {
      at += 1;
      continue;
    }
    const piece = scanPiece(text, at, line.tokens[line.tokens.length - 1], line.context);
    if (piece.kind === 'comment') return finish(line, parentheses, deepest, { from: at, to: piece.to });
    if (piece.kind === 'mark' && (piece.type === Open || piece.type === Close)) {
      parentheses = true;
      depth += piece.type === Open ? 1 : -1;
      deepest = Math.max(deepest, depth);
    }
    take(line, at, piece);
    at = piece.to;
  }
  return finish(line, parentheses, deepest, undefined);
}

interface Line {
  readonly text: string;
  readonly tokens: Token[];
  readonly problems: Problem[];
  readonly rewrites: Rewrite[];
  readonly context: Context;
}

function finish(line: Line, parentheses: boolean, deepest: number, comment: { from: number; to: number } | undefined): Reading {
  const { text, problems, rewrites } = line;
  if (deepest > 64) {
    const { sort, details } = wrongScan(tooDeep, text.length, undefined) as Piece & { kind: 'wrong' };
    return { tokens: [wrongToken(0, text.trimEnd().length, sort, details)], problems: [], rewrites: [] };
  }
  const tokens = parentheses ? matchParentheses(text, line.tokens) : line.tokens;
  if (comment === undefined) return { tokens, problems, rewrites };
  if (isLetter(text.charCodeAt(comment.from + 1))) rewrites.push({ from: comment.from, to: comment.from + 1, text: '# ' });
  return { tokens, problems, rewrites, comment };
}

function take(line: Line, at: number, piece: Exclude<Piece, { kind: 'comment' }>): void {
  const { tokens, rewrites, context } = line;
  if ('tidy' in piece && piece.tidy !== undefined) rewrites.push({ from: at, to: piece.to, text: piece.tidy });
  context.word = '';
  switch (piece.kind) {
    case 'literal':
      if (piece.literal.kind === 'weekdays') context.calendar = true;
      tokens.push(literalToken(piece.literal, at, piece.to));
      break;
    case 'wrong':
      tokens.push(wrongToken(at, piece.to, piece.sort, piece.details, piece.rewrite));
      break;
    case 'text':
      tokens.push(saidToken(TextToken, piece.text, at, piece.to));
      break;
    case 'mark':
      tokens.push(plainToken(piece.type, at, piece.to));
      break;
    case 'joint':
      takeJoint(line, at);
      break;
    case 'operator':
      takeOperator(line, at, piece.operator);
      break;
    case 'word':
    case 'function':
      takeWord(line, at, piece);
      break;
  }
}

function takeWord(line: Line, at: number, piece: WordScan): void {
  const { tokens, rewrites, context } = line;
  const last = tokens[tokens.length - 1];
  // 24"oc is written 24" oc.
  if (last !== undefined && last.to === at && last.tokenType === LiteralToken) rewrites.push({ from: at, to: at, text: ' ' });
  if (ROOF_WORDS.has(piece.word)) context.pitch = true;
  else if (OPENING_WORDS.has(piece.word)) context.opening = true;
  context.word = piece.word;
  tokens.push(saidToken(piece.kind === 'word' ? Word : FunctionName, once(piece.word), at, piece.to));
}

/** The x between two sizes. */
function takeJoint(line: Line, at: number): void {
  const { text, tokens, rewrites } = line;
  const before = at === 0 || isBlank(text.charCodeAt(at - 1)) ? '' : ' ';
  const after = at + 1 >= text.length || isBlank(text.charCodeAt(at + 1)) ? '' : ' ';
  const usual = `${before}x${after}`;
  if (usual !== text.charAt(at)) rewrites.push({ from: at, to: at + 1, text: usual });
  tokens.push(plainToken(Joint, at, at + 1));
}

/** A sign between values; without blanks on both sides it is read all the same, and said. */
function takeOperator(line: Line, at: number, sign: Operator): void {
  const { text, tokens, problems, rewrites } = line;
  const last = tokens[tokens.length - 1];
  const touches = last?.to === at;
  const glued = touches && last?.tokenType !== Open && last?.tokenType !== Wrong;
  const next = text.charAt(at + 1);
  const ahead = next !== '' && !isBlank(next.charCodeAt(0)) && next !== ')' && next !== ',';
  if (glued || (ahead && last !== undefined)) {
    const rewrite = `${touches ? ' ' : ''}${sign}${ahead ? ' ' : ''}`;
    problems.push({ code: blanksAround.code, from: at, to: at + 1, details: [sign], rewrite });
  } else if (text.charAt(at) !== sign) rewrites.push({ from: at, to: at + 1, text: sign });
  tokens.push(plainToken(OPERATORS[sign], at, at + 1));
}

function newContext(): Context {
  return { pitch: false, opening: false, calendar: false, word: '' };
}

const OPERATORS: Readonly<Record<Operator, TokenType>> = { '+': Plus, '-': Minus, '*': Times, '/': Over };
const ROOF_WORDS: ReadonlySet<string> = new Set(['gable', 'hip', 'shed', 'pitch', 'vaulted']);
const OPENING_WORDS: ReadonlySet<string> = new Set(['door', 'doors', 'window', 'windows', 'cased', 'rough']);
