// The least length of stock by an exact solver, against a published optimum and against every way to cut tried out.
import { beforeAll, expect, test } from 'vitest';
import { loadSolver } from '#cli/solver';
import { constant } from '#kit/quantity';
import { leastLength, type Solve } from '#takeoff/least-length';

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

const stockOf = (...lengths: readonly number[]) =>
  lengths.map((length) => ({ word: 'piece', holds: constant('piece', length, 'length'), loose: false }));

// Wikipedia, Cutting stock problem: 73 rolls of 5,600 mm, 0.401 % waste.
test('the worked example of an encyclopedia', () => {
  const widths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200];
  const counts = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
  const pieces = new Map(widths.map((width, at) => [width, counts[at]!] as const));
  expect(leastLength(pieces, stockOf(5600), [], solve, 20)).toEqual({
    kind: 'proven',
    length: 73 * 5600,
    sticks: [{ holds: 5600, count: 73 }],
  });
});

// By hand: two of 60 fill 120, three of 40 fill 120, and 100 leaves 20; 2 + 1 + 1 sticks of 120.
test('a job by hand, with what is bought beside it', () => {
  const pieces = new Map([
    [100, 1],
    [60, 4],
    [40, 3],
  ]);
  expect(leastLength(pieces, stockOf(120), [{ holds: 120, count: 2 }], solve, 10)).toEqual({
    kind: 'proven',
    length: 6 * 120,
    sticks: [{ holds: 120, count: 6 }],
  });
});

test('many lengths: ways to cut are found one by one, and the bound holds', () => {
  // 40 lengths from 11 to 206 in 192 in sticks and shorter: far more ways to cut than are written down.
  const pieces = new Map(Array.from({ length: 36 }, (_, at) => [11 + 5 * at, 2 + (at % 5)] as const));
  const proof = leastLength(pieces, stockOf(96, 144, 192), [], solve, 5);
  const needed = [...pieces].reduce((sum, [length, count]) => sum + length * count, 0);
  expect(proof.kind).not.toBe('none');
  if (proof.kind === 'none') return;
  expect(proof.length).toBeGreaterThanOrEqual(needed);
  const bound = proof.kind === 'proven' ? proof.length : proof.bound;
  expect(bound).toBeGreaterThanOrEqual(needed);
  expect(bound).toBeLessThanOrEqual(proof.length);
  expect(proof.length).toBeLessThan(needed * 1.03);
});

test('no time, no proof', () => {
  expect(leastLength(new Map([[10, 3]]), stockOf(25), [], () => undefined, 1)).toEqual({ kind: 'none' });
  expect(leastLength(new Map(), stockOf(25), [], solve, 1)).toEqual({ kind: 'proven', length: 0, sticks: [] });
});
