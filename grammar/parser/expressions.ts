// The grammar of a line, first half: calculations. Every rule can always go on, so no line is ever "a syntax error": what is
// missing becomes a problem and the rest is read. Recovery of Chevrotain's own is not needed and stays off.
//
//   sum       = product { ("+" | "-") [product] }
//   product   = range { ("*" | "/") [range] }
//   range     = atom { ".." [atom] }
//   atom      = LITERAL | WORD | "(" sum ")" | FUNCTION "(" sum { "," sum } ")"
import { EmbeddedActionsParser, type IToken, type TokenType } from 'chevrotain';
import {
  Close,
  Comma,
  FunctionName,
  LiteralToken,
  Minus,
  Open,
  Over,
  Plus,
  Range,
  Times,
  TOKEN_TYPES,
  Word,
  Wrong,
} from '../tokens.ts';
import type { FunctionName as Calculation, Expression, Operator, Problem } from '../tree.ts';
import { feetMinusInches, nameSlash, operatorAlone, rangeKinds } from './messages.ts';
import { joinedSpellings, rangeOf } from './ranges.ts';
import type { Token } from './token.ts';

export class ExpressionParser extends EmbeddedActionsParser {
  /** What the calculations of the present line lack. */
  protected problems: Problem[] = [];
  #atoms: Alternatives = undefined;
  #additive: Alternatives = undefined;
  #multiplicative: Alternatives = undefined;

  /** `checked`: the grammar itself is validated, which only tests need. */
  constructor(checked: 'checked' | 'trusted') {
    super([...TOKEN_TYPES], { maxLookahead: 1, recoveryEnabled: false, skipValidations: checked === 'trusted' });
  }

  sum = this.RULE('sum', (): Expression => {
    let left = this.SUBRULE(this.product);
    this.MANY(() => {
      const sign = this.OR((this.#additive ??= [{ ALT: () => this.CONSUME(Plus) }, { ALT: () => this.CONSUME(Minus) }])) as Token;
      const right = this.OPTION(() => this.SUBRULE2(this.product)) as Expression | undefined;
      this.ACTION(() => (left = this.#operation(left, sign, right)));
    });
    return left;
  });

  product = this.RULE('product', (): Expression => {
    let left = this.SUBRULE(this.range);
    this.MANY(() => {
      const sign = this.OR(
        (this.#multiplicative ??= [{ ALT: () => this.CONSUME(Times) }, { ALT: () => this.CONSUME(Over) }]),
      ) as Token;
      const right = this.OPTION(() => this.SUBRULE2(this.range)) as Expression | undefined;
      this.ACTION(() => (left = this.#operation(left, sign, right)));
    });
    return left;
  });

  range = this.RULE('range', (): Expression => {
    const low = this.SUBRULE(this.atom);
    let made = low;
    this.MANY(() => {
      const mark = this.CONSUME(Range) as Token;
      const high = this.OPTION(() => this.SUBRULE2(this.atom)) as Expression | undefined;
      this.ACTION(() => {
        // A range has two ends: what follows a second pair of points is left out.
        if (made !== low) this.problems.push({ code: operatorAlone.code, from: mark.from, to: mark.to, details: ['..'] });
        else made = this.#range(low, mark, high);
      });
    });
    return made;
  });

  atom = this.RULE(
    'atom',
    (): Expression =>
      this.OR(
        (this.#atoms ??= [
          { ALT: () => literalOf(this.CONSUME(LiteralToken)) },
          { ALT: () => nameOf(this.CONSUME(Word)) },
          { ALT: () => this.SUBRULE(this.group) },
          { ALT: () => this.SUBRULE(this.call) },
        ]),
      ) as Expression,
  );

  group = this.RULE('group', (): Expression => {
    const open = this.CONSUME(Open) as Token;
    const inside = this.SUBRULE(this.sum);
    const close = this.CONSUME(Close) as Token;
    return this.ACTION(() => ({ ...inside, from: open.from, to: close.to }));
  });

  call = this.RULE('call', (): Expression => {
    const name = this.CONSUME(FunctionName) as Token;
    this.CONSUME(Open);
    const inputs: Expression[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: Comma, DEF: () => void inputs.push(this.SUBRULE(this.sum)) });
    const close = this.CONSUME(Close) as Token;
    return { kind: 'call', name: name.said as Calculation, inputs, from: name.from, to: close.to };
  });

  #operation(left: Expression, sign: Token, right: Expression | undefined): Expression {
    const operator = SIGNS.get(sign.tokenType) as Operator;
    if (right === undefined) {
      this.#lacks(sign, operator);
      return left;
    }
    const joined = operator === '-' ? joinedSpellings(left, right) : undefined;
    if (joined !== undefined) this.problems.push({ code: feetMinusInches.code, from: left.from, to: right.to, details: joined });
    this.#noSlash(left);
    this.#noSlash(right);
    return { kind: 'operation', operator, left, right, from: left.from, to: right.to };
  }

  #range(low: Expression, mark: Token, high: Expression | undefined): Expression {
    if (high === undefined) {
      this.#lacks(mark, '..');
      return low;
    }
    const made = rangeOf(low, high);
    if (!made.fits) this.problems.push({ code: rangeKinds.code, from: low.from, to: high.to, details: [] });
    return made.range;
  }

  /** A sign with nothing behind it; where a wrong piece stands there, that has been said already. */
  #lacks(sign: Token, operator: string): void {
    if (this.LA(1).tokenType === Wrong) return;
    this.problems.push({ code: operatorAlone.code, from: sign.from, to: sign.to, details: [operator] });
  }

  #noSlash(side: Expression): void {
    if (side.kind !== 'name' || !side.name.includes('/')) return;
    this.problems.push({
      code: nameSlash.code,
      from: side.from,
      to: side.to,
      details: [side.name],
      rewrite: side.name.replaceAll('/', ' / '),
    });
  }
}

type Alternatives = { ALT: () => unknown }[] | undefined;

const SIGNS: ReadonlyMap<TokenType, Operator> = new Map([
  [Plus, '+'],
  [Minus, '-'],
  [Times, '*'],
  [Over, '/'],
]);

function literalOf(token: IToken): Expression {
  const { literal, from, to } = token as Token;
  return { kind: 'literal', literal, from, to } as Expression;
}

function nameOf(token: IToken): Expression {
  const { said, from, to } = token as Token;
  return { kind: 'name', name: said, from, to } as Expression;
}
