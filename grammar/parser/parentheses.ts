// Pairs up the parentheses of a line before the grammar sees them, so that every one it meets has a partner and holds a
// calculation. What does not becomes one wrong piece.
import type { FindingSort } from '#kit/finding';
import { Close, Comma, Equals, FunctionName, Joint, LiteralToken, Open, TextToken, Word, Wrong } from '../tokens.ts';
import { functionInputs, operatorAlone, parenthesesAround, parenthesisAlone } from './messages.ts';
import { saidToken, type Token, wrongToken } from './token.ts';

interface Group {
  /** The token that opens it: the parenthesis, or the calculation's name before it. */
  readonly start: number;
  readonly call: string | undefined;
  odd: boolean;
  commas: number;
  /** The last thing inside was a value, so another one directly behind it is odd. */
  value: boolean;
  problem: Token | undefined;
  /** The last sign, while no value stands behind it. */
  sign: Token | undefined;
}

/** The same tokens with lone parentheses, and those around anything but a calculation, made wrong. */
export function matchParentheses(text: string, tokens: readonly Token[]): readonly Token[] {
  const kept: Token[] = [];
  const groups: Group[] = [];
  for (const token of tokens) {
    const inside = groups[groups.length - 1];
    if (token.tokenType === Open) {
      const name = kept[kept.length - 1];
      const call = name?.tokenType === FunctionName && name.to === token.from ? name.said : undefined;
      if (inside !== undefined && call === undefined) noteValue(inside);
      groups.push({
        start: kept.length - (call === undefined ? 0 : 1),
        call,
        odd: false,
        commas: 0,
        value: false,
        problem: undefined,
        sign: undefined,
      });
      kept.push(token);
    } else if (token.tokenType === Close) {
      if (inside === undefined)
        kept.push(wrongToken(token.from, token.to, parenthesisAlone as unknown as FindingSort<never>, [')'], ''));
      else {
        groups.pop();
        closeGroup(text, kept, inside, token, groups[groups.length - 1]);
      }
    } else {
      if (inside !== undefined) note(text, inside, token);
      kept.push(token);
    }
  }
  for (const group of groups.reverse()) {
    const at = group.start + (group.call === undefined ? 0 : 1);
    const open = kept[at] as Token;
    // Without its parenthesis the name of a calculation is a word like any other.
    if (group.call !== undefined) kept[group.start] = saidToken(Word, group.call, (kept[group.start] as Token).from, open.from);
    kept[at] = wrongToken(open.from, open.to, parenthesisAlone as unknown as FindingSort<never>, ['('], '');
  }
  return kept;
}

function closeGroup(text: string, kept: Token[], group: Group, close: Token, outer: Group | undefined): void {
  const first = kept[group.start] as Token;
  if (group.sign !== undefined) lackValue(text, group, group.sign);
  const empty = kept.length - group.start === (group.call === undefined ? 1 : 2);
  const miscounted = group.call === undefined ? group.commas > 0 : empty || (group.call === 'roundup' && group.commas > 0);
  if (!group.odd && !miscounted && !empty && group.value) {
    kept.push(close);
    return;
  }
  const open = kept[group.start + (group.call === undefined ? 0 : 1)] as Token;
  kept.length = group.start;
  const whole =
    group.problem === undefined ? oddGroup(text, group, first, open, close) : { ...group.problem, ...spread(first, close) };
  kept.push(whole);
  if (outer !== undefined) note(text, outer, whole);
}

function oddGroup(text: string, group: Group, first: Token, open: Token, close: Token): Token {
  if (group.call !== undefined) {
    const inputs = group.call === 'roundup' ? 'one value' : 'values';
    return wrongToken(first.from, close.to, functionInputs as unknown as FindingSort<never>, [group.call, inputs]);
  }
  return wrongToken(
    open.from,
    close.to,
    parenthesesAround as unknown as FindingSort<never>,
    [],
    text.slice(open.to, close.from).trim(),
  );
}

/** A wrong piece inside makes the whole group wrong; its own problem stays where it is. */
function spread(first: Token, close: Token): Pick<Token, 'from' | 'to' | 'startOffset' | 'endOffset'> {
  return { from: first.from, to: close.to, startOffset: first.from, endOffset: close.to - 1 };
}

function note(text: string, group: Group, token: Token): void {
  switch (token.tokenType) {
    case Wrong:
      group.odd = true;
      group.problem ??= token;
      return;
    case Joint:
    case TextToken:
    case Equals:
      group.odd = true;
      return;
    case Comma:
      group.odd ||= !group.value;
      group.commas += 1;
      if (group.sign !== undefined) lackValue(text, group, group.sign);
      group.sign = undefined;
      group.value = false;
      return;
    case Word:
    case LiteralToken:
    case FunctionName:
      noteValue(group);
      return;
    default:
      if (!group.value) lackValue(text, group, token);
      group.value = false;
      group.sign = token;
  }
}

/** A sign with nothing on one side. */
function lackValue(text: string, group: Group, sign: Token): void {
  const { from, to } = sign;
  group.odd = true;
  group.problem ??= wrongToken(from, to, operatorAlone as unknown as FindingSort<never>, [text.slice(from, to)]);
}

function noteValue(group: Group): void {
  group.odd ||= group.value;
  group.value = true;
  group.sign = undefined;
}
