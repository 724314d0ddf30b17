// Every row of order, every need and every least value has an example: it is found in the wrong plan and not in the right one, in which
// nothing else is an error either.
import { describe, expect, test } from 'vitest';
import { type Example, hazardExample, minimumExample, type NoExample, needExample, ruleExample } from '#checks/row-examples';
import { checked } from '#tests/support/checked';

/** Rows whose fact nothing computes yet, so that they never speak up. */
const SILENT: ReadonlySet<string> = new Set();

const { model } = checked('').plan;
const examples: readonly (readonly [code: string, example: Example | NoExample])[] = [
  ...model.rows('rule').map((rule) => [`sequence/${rule.name}`, ruleExample(rule, model)] as const),
  ...model.rows('need').map((need) => [`missing/${need.name}`, needExample(need, model)] as const),
  ...model.rows('hazard').map((row) => [`safety/${row.name}`, hazardExample(row, model)] as const),
  ...model.rows('minimum').map((row) => [`minimum/${row.name}`, minimumExample(row)] as const),
];

describe.each(examples)('%s', (code, example) => {
  test('has an example that it is found in, and one that it is not', () => {
    if ('lacks' in example) throw new Error(`The row of ${code} has no example: ${example.lacks}.`);
    const [wrong, right] = [checked(example.wrong), checked(example.right)];
    expect(wrong.messages(code), `the wrong plan of ${code}:\n${example.wrong}`).toHaveLength(SILENT.has(code) ? 0 : 1);
    expect(right.messages(code), `the right plan of ${code}:\n${example.right}`).toEqual([]);
    expect(
      right.told.filter((line) => line.startsWith('error ')),
      `the right plan of ${code} has more to mend:\n${example.right}`,
    ).toEqual([]);
    expect(example.right.split('\n').length, example.right).toBeLessThanOrEqual(20);
  });
});
