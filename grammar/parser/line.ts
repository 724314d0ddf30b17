// The grammar of a line, second half: its items, one after another. It knows no kind of thing.
//
//   line      = { item }
//   item      = WRONG | TEXT | "," | "=" | "x" | lone sign | sum
import type { IToken, TokenType } from 'chevrotain';
import { Comma, Equals, Joint, Minus, Over, Plus, Range, TextToken, Times, Wrong } from '../tokens.ts';
import type { Expression, Item, Problem } from '../tree.ts';
import { ExpressionParser } from './expressions.ts';
import { operatorAlone } from './messages.ts';
import type { Token } from './token.ts';

export class LineParser extends ExpressionParser {
  #items: { ALT: () => unknown }[] | undefined = undefined;
  #signs: { ALT: () => unknown }[] | undefined = undefined;

  constructor(checked: 'checked' | 'trusted') {
    super(checked);
    this.performSelfAnalysis();
  }

  /** The items of a line, with the problems of its calculations. */
  read(tokens: readonly Token[]): { readonly items: readonly Item[]; readonly problems: readonly Problem[] } {
    this.problems = [];
    this.input = tokens as Token[];
    const items = this.line();
    return { items, problems: this.problems };
  }

  line = this.RULE('line', (): readonly Item[] => {
    const items: Item[] = [];
    this.MANY(() => {
      const item = this.SUBRULE(this.item);
      this.ACTION(() => {
        const last = items[items.length - 1];
        // A sign behind a piece that cannot be read has lost its left side by that; it is part of the piece.
        if (last?.kind === 'wrong' && item.kind === 'wrong' && SIGN.has(tokenTypeAt(item, this.LA(0)))) {
          items[items.length - 1] = { ...last, to: item.to };
        } else items.push(item);
      });
    });
    return items;
  });

  item = this.RULE(
    'item',
    (): Item =>
      this.OR(
        (this.#items ??= [
          { ALT: () => itemOf(this.SUBRULE(this.sum)) },
          { ALT: () => wrongOf(this.CONSUME(Wrong) as Token) },
          { ALT: () => textOf(this.CONSUME(TextToken) as Token) },
          { ALT: () => plain('comma', this.CONSUME(Comma) as Token) },
          { ALT: () => plain('equals', this.CONSUME(Equals) as Token) },
          { ALT: () => jointOf(this.CONSUME(Joint) as Token) },
          { ALT: () => this.SUBRULE(this.loneSign) },
        ]),
      ) as Item,
  );

  /** A sign with nothing to its left. */
  loneSign = this.RULE('loneSign', (): Item => {
    const sign = this.OR(
      (this.#signs ??= [Plus, Minus, Times, Over, Range].map((type, index) => ({ ALT: () => this.consume(index, type) }))),
    ) as Token;
    return this.ACTION(() => {
      const { from, to } = sign;
      return {
        kind: 'wrong',
        problem: { code: operatorAlone.code, from, to, details: [SIGN.get(sign.tokenType) ?? ''] },
        from,
        to,
      };
    });
  });
}

const SIGN: ReadonlyMap<unknown, string> = new Map([
  [Plus, '+'],
  [Minus, '-'],
  [Times, '*'],
  [Over, '/'],
  [Range, '..'],
]);

function tokenTypeAt(item: Item, last: IToken): TokenType | undefined {
  return (last as Token).to === item.to ? last.tokenType : undefined;
}

function itemOf(expression: Expression): Item {
  const { from, to } = expression;
  return expression.kind === 'name' ? { kind: 'word', word: expression.name, from, to } : { kind: 'value', expression, from, to };
}

function wrongOf({ problem, from, to }: Token): Item {
  return { kind: 'wrong', problem, from, to } as Item;
}

function textOf({ said, from, to }: Token): Item {
  return { kind: 'text', text: said, from, to } as Item;
}

function jointOf({ from, to }: Token): Item {
  return { kind: 'joint', joint: 'x', from, to };
}

function plain(kind: 'comma' | 'equals', { from, to }: Token): Item {
  return { kind, from, to } as Item;
}
