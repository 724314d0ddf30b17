// Two prices of one thing: the lowest counts, unless that says nothing.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const prices = (...list: readonly string[]) =>
  checked(list.map((each) => `price ${each}\n`).join('')).messages('money/two-prices');

test('nothing beside something is told, and other units too', () => {
  expect(prices('osb 7/16" $14/sheet', 'osb 7/16" $0/sheet')).toHaveLength(1);
  expect(prices('osb 7/16" $0.45/sf', 'osb 7/16" $14 each')).toHaveLength(1);
});

test('two suppliers, two sizes, two trades and a chosen one are ordinary', () => {
  expect(prices('osb 7/16" $14/sheet', 'osb 7/16" $13/sheet')).toEqual([]);
  expect(prices('osb 7/16" $14/sheet', 'osb 23/32" $0.45/sf')).toEqual([]);
  expect(prices('osb 7/16" $14 each', 'osb 7/16" $0.45/sf, chosen')).toEqual([]);
});
