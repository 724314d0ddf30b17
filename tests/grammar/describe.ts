// What the reader made of a line, as one line of text a person can compare with: used by the grammar's tests.
import { syntaxSorts } from '#grammar/parser/messages';
import { readStatement } from '#grammar/parser/statement';
import type { Expression, Item, Literal, Problem, Statement } from '#grammar/tree';
import { INCH } from '#kit/dimension';
import { fromBase } from '#kit/units';

/** 'footing 20in x 8in , 2 #4' for the items; wrong pieces as '!code'. */
export function describeItems(text: string): string {
  return readStatement(text).items.map(describeItem).join(' ');
}

function describeItem(item: Item): string {
  switch (item.kind) {
    case 'word':
      return item.word;
    case 'text':
      return `"${item.text}"`;
    case 'comma':
      return ',';
    case 'equals':
      return '=';
    case 'joint':
      return 'x';
    case 'value':
      return describeExpression(item.expression);
    case 'wrong':
      return `!${item.problem.code.replace('syntax/', '')}`;
  }
}

export function describeExpression(expression: Expression): string {
  switch (expression.kind) {
    case 'literal':
      return describeLiteral(expression.literal);
    case 'name':
      return expression.name;
    case 'operation':
      return `(${describeExpression(expression.left)} ${expression.operator} ${describeExpression(expression.right)})`;
    case 'call':
      return `${expression.name}(${expression.inputs.map(describeExpression).join(', ')})`;
    case 'range':
      return `${describeExpression(expression.low)}..${describeExpression(expression.high)}`;
  }
}

/** Feet and inches in inches, everything else in its own unit, without float noise. */
function describeLiteral(literal: Literal): string {
  switch (literal.kind) {
    case 'quantity':
      if (literal.unit === 'ft-in') return `${tidy(literal.value / INCH)}in`;
      if (literal.unit === 'deg') return `slope ${literal.value.toFixed(4)}`;
      return `${tidy(fromBase(literal.value, literal.unit) ?? Number.NaN)}${literal.unit}`;
    case 'nominal':
      return `size[${literal.across.join(',')}${literal.feet === undefined ? '' : `;${literal.feet}ft`}${literal.unit ?? ''}]`;
    case 'bar':
      return literal.metric ? `T${literal.number}` : `#${literal.number}`;
    case 'ratio':
      return `ratio[${literal.terms.join(':')}]`;
    case 'date':
      return new Date(literal.day * 86_400_000).toISOString().slice(0, 10);
    case 'clock':
      return `clock[${literal.minutes}]`;
    case 'weekdays':
      return `weekdays[${literal.days.join('')}]`;
    case 'door':
      return `door[${literal.width / INCH},${literal.height / INCH}]`;
  }
}

function tidy(value: number): string {
  return String(Number(value.toPrecision(8)));
}

/** All problems of a line, those of wrong pieces too, in order. */
export function problemsOf(statement: Statement): readonly Problem[] {
  const wrong = statement.items.flatMap((item) => (item.kind === 'wrong' ? [item.problem] : []));
  return [...statement.problems, ...wrong].sort((a, b) => a.from - b.from);
}

export function sentence(problem: Problem): string {
  const say = syntaxSorts.get(problem.code)?.say as unknown as (...details: readonly unknown[]) => string;
  return say(...problem.details);
}

/** The line with its accepted spellings rewritten, as the formatter would. */
export function rewritten(text: string): string {
  let made = text;
  for (const { from, to, text: usual } of [...readStatement(text).rewrites].reverse())
    made = made.slice(0, from) + usual + made.slice(to);
  return made;
}
