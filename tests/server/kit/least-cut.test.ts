// Least cuts: the textbook network of Cormen, Leiserson, Rivest & Stein, Introduction to Algorithms, figure 26.1 (third edition;
// from memory), whose least cut is 23; and what lower bounds earn.
import { expect, test } from 'vitest';
import { type Arc, leastCut, UNLIMITED } from '#kit/least-cut';

const arc = (from: number, to: number, most: number, least = 0): Arc => ({ from, to, most, least });

test('the textbook network: {s, v1, v2, v4} against {v3, t}', () => {
  const arcs = [
    arc(0, 1, 16),
    arc(0, 2, 13),
    arc(1, 3, 12),
    arc(2, 1, 4),
    arc(2, 4, 14),
    arc(3, 2, 9),
    arc(3, 5, 20),
    arc(4, 3, 7),
    arc(4, 5, 4),
  ];
  const side = leastCut(6, 0, 5, arcs)!;
  expect([...side]).toEqual([1, 1, 1, 0, 1, 0]);
  expect(arcs.filter(({ from, to }) => side[from] === 1 && side[to] === 0).reduce((sum, { most }) => sum + most, 0)).toBe(23);
});

test('an arc that crosses back earns its least', () => {
  // Cutting 0-1 (6) and 2-3 (6) lets 1-2 come back for 5: 7 in all; 0-1 and 0-2 cost 6 + 8.
  const arcs = [arc(0, 1, 8), arc(0, 2, 6), arc(2, 1, 5, 5), arc(1, 3, 6), arc(2, 3, 8)];
  expect([...leastCut(4, 0, 3, arcs)!]).toEqual([1, 1, 0, 0]);
});

test('none where a way cannot be cut', () => {
  expect(leastCut(3, 0, 2, [arc(0, 1, UNLIMITED), arc(1, 2, UNLIMITED)])).toBeUndefined();
  expect([...leastCut(3, 0, 2, [arc(0, 1, 5)])!]).toEqual([1, 1, 0]);
});
