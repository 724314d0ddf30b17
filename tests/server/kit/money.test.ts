// Cents: rounded once, shared without loss, written plainly.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatMoney, formatWholeMoney, groupThousands, roundCents, shareCents } from '#kit/money';

test.each([
  [1.005 * 100, 101],
  [2.675 * 100, 268],
  [100.49, 100],
  [0.5, 1],
  [-0.5, -1],
  [-0.4, 0],
  [0, 0],
  [1234567890.5, 1234567891],
])('%d cents are %i', (cents, whole) => {
  expect(Object.is(roundCents(cents), whole)).toBe(true);
});

test.each([
  [100, [1, 1, 1], [34, 33, 33]],
  [100, [], []],
  [100, [0, 0], [50, 50]],
  [101, [0, 0], [51, 50]],
  [5, [0, 1, 0], [0, 5, 0]],
  [-100, [1, 1, 1], [-34, -33, -33]],
  [0, [1, 2], [0, 0]],
  [1000, [0.1, 0.2, 0.7], [100, 200, 700]],
  [100, [-1, Number.NaN, 1], [0, 0, 100]],
  [Number.NaN, [1, 2], [0, 0]],
  [1e300, [1], [0]],
])('%i cents by %j', (total, weights, shares) => {
  expect(shareCents(total, weights)).toEqual(shares);
});

test('shares close exactly and lie within a cent of the exact share', () => {
  const weights = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 20 });
  fc.assert(
    fc.property(fc.integer({ min: -1e11, max: 1e11 }), weights, (total, parts) => {
      const shares = shareCents(total, parts);
      expect(shares.reduce((a, b) => a + b, 0)).toBe(total);
      const sum = parts.reduce((a, b) => a + b, 0);
      const away = shares.map((share, index) => Math.abs(share - (sum > 0 ? (total * parts[index]!) / sum : share)));
      expect(Math.max(...away)).toBeLessThan(1.001);
    }),
  );
});

test.each([
  [123456, '$', '$1,234.56'],
  [123456, 'USD', '$1,234.56'],
  [-40000, '$', '-$400.00'],
  [5, '€', '€0.05'],
  [640000, 'EUR', '€6,400.00'],
  [45000, 'kr', 'kr 450.00'],
  [1800, 'CAD', 'CAD 18.00'],
  [100000000000, '$', '$1,000,000,000.00'],
])('%i cents in %s read %s', (cents, currency, text) => {
  expect(formatMoney(cents, currency)).toBe(text);
});

test('whole money rounds, thousands are grouped', () => {
  expect(formatWholeMoney(123450, '$')).toBe('$1,235');
  expect(formatWholeMoney(-49, '$')).toBe('$0');
  expect(['1', '12', '123', '1234', '123456', '1234567'].map(groupThousands)).toEqual([
    '1',
    '12',
    '123',
    '1,234',
    '123,456',
    '1,234,567',
  ]);
});
