// Bagged concrete by the yield printed on hunker.com (0.6 cubic feet from 80 lb): a pier is fine, a slab is not.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const piers = (count: number) =>
  checked(`plan p\nfoundation posts\n  piers ${count}, 12" x 30"\n  concrete bag-concrete\n`).messages('goods/too-much-so');

test('a few piers are mixed from bags; thirty are not', () => {
  expect(piers(4)).toEqual([]);
  expect(piers(30)).toEqual([
    'Concrete mixed from bags of 80 lb: 2.29 cy are needed, 104 bags. That is bought so up to about 2 cy; beyond it the handling costs more than the goods, and the work cannot keep up with itself. Buy ready-mixed concrete by the truck.',
  ]);
});
