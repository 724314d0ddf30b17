// The patterns of the tokens agree with what the reader makes of the same letters.
import { expect, test } from 'vitest';
import { readStatement } from '#grammar/parser/statement';
import { TOKEN_ROWS } from '#grammar/tokens';

const EXAMPLES = TOKEN_ROWS.flatMap((row) => row.examples.map((example) => ({ row, name: row.name, example })));

test.each(EXAMPLES)('$name: $example is matched whole, and by no earlier pattern', ({ row, example }) => {
  const first = TOKEN_ROWS.find(({ pattern }) => new RegExp(`^(?:${pattern})`, 'u').test(example));
  expect(first?.name).toBe(row.name);
  expect(new RegExp(`^(?:${row.pattern})$`, 'u').test(example)).toBe(true);
});

test.each(EXAMPLES)('$name: the reader makes one thing of $example', ({ name, example }) => {
  const { items, comment, problems } = readStatement(name === 'operator' ? `3d ${example} 4d` : example);
  expect(problems).toEqual([]);
  if (name === 'comment') expect(comment).toEqual({ from: 0, to: example.length });
  else expect(items.filter(({ kind }) => kind !== 'wrong')).toHaveLength(1);
});
