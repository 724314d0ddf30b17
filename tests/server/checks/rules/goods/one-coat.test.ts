// reference.com, "Estimate amount of paint": 415 sf of new wall by 350 to the gallon is one coat; new board takes a primer and two.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const room = (material: string, finishes = '  walls paint\n') =>
  checked(`${material}room den
  size 10' x 15'
  height 9'
${finishes}`).messages('goods/one-coat');

// 2 × (10 + 15) ft, 9 ft high, are 450 sf.
test('one coat on the walls, over primer or over nothing', () => {
  expect(room('material paint\n  coats 1\n')).toEqual([
    'Wall and ceiling paint is counted for one coat on 450 sf of new board, over Drywall primer: bare board and its joints drink differently, and one coat shows every tape. Count two ("coats 2"), or the painter comes back at your cost.',
  ]);
  const own = 'material house-paint "House paint" laid coats\n  sold by gal\n  covers 350 sf per gal\n  coats 1\n';
  expect(room(own, '  walls house-paint\n').join()).toContain('Count two ("coats 2") over a primer ("under it primer")');
});

test('a ceiling takes one flat coat over its primer, and none over nothing', () => {
  expect(room('', '  ceiling ceiling-paint\n')).toEqual([]);
  const own = 'material flat-white "Flat white" laid coats\n  sold by gal\n  covers 350 sf per gal\n  coats 1\n';
  expect(room(own, '  ceiling flat-white\n').join()).toContain('150 sf of new board, with nothing under it');
});

test('what the library counts is enough', () => {
  expect(room('')).toEqual([]);
  expect(room('', '  walls washable-paint\n')).toEqual([]);
});
