// Near misses: what is offered for a mistyped word, and what is not.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { editDistance, nearest } from '#kit/did-you-mean';

test.each([
  ['raom', ['roof', 'room', 'door'], ['room']],
  ['romo', ['room', 'roof'], ['room']],
  ['foundtaion', ['foundation', 'footing'], ['foundation']],
  ['batt-r21', ['batt-r13', 'r21-batt', 'felt'], ['r21-batt', 'batt-r13']],
  ['Kitchn', ['kitchen'], ['kitchen']],
  ['KITCHEN', ['kitchen'], ['kitchen']],
  ['kitchen', ['kitchen'], []],
  ['x', ['y', 'z'], []],
  ['', ['a', ''], []],
  ['plumbing', ['electric', 'painting'], []],
])('%s among %j', (word, candidates, expected) => {
  expect(nearest(word, candidates)).toEqual(expected);
});

test('candidates at one distance keep their order, the limit holds, none comes twice', () => {
  expect(nearest('bed-3', ['bed-2', 'bed-1', 'bed-2', 'bed-4', 'bed-5'])).toEqual(['bed-2', 'bed-1', 'bed-4']);
  expect(nearest('bed-3', ['bed-2', 'bed-1'], 1)).toEqual(['bed-2']);
});

test('a distance is the same both ways, zero only for the same word, and the limit only cuts it off', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 8 });
  fc.assert(
    fc.property(word, word, fc.nat(4), (a, b, limit) => {
      const distance = editDistance(a, b);
      expect(editDistance(b, a)).toBe(distance);
      expect(distance === 0).toBe(a === b);
      expect(editDistance(a, b, limit)).toBe(Math.min(distance, limit + 1));
    }),
  );
});

test.each([
  ['', 'abc', 3],
  ['ab', 'ba', 1],
  ['ca', 'abc', 3],
  ['kitten', 'sitting', 3],
])('%s to %s takes %i', (a, b, distance) => {
  expect(editDistance(a, b)).toBe(distance);
});
