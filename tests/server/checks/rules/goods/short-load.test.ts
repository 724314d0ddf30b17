// Concrete whose last truck carries less than the plant's least load (4 cy of 10 in the library: see its row).
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

/** A slab 6 in deep: 50 sf are 1 cy with 8 %. */
const found = (length: number, more = '') =>
  checked(
    `plan p\nlevel floor\n  footprint ${length}' x 20'\nfoundation slab under floor\n  slab 6"\n${more}`,
  ).plan.findings.filter(({ code }) => code === 'goods/short-load');

test('a note while nobody says what it costs, a warning with its cost where the price does', () => {
  expect(found(28, 'price slab-concrete $150/cy\n').map(({ severity }) => severity)).toEqual(['note']);
  expect(found(28, 'price slab-concrete $150/cy, short-load $75/cy\n').map(({ severity }) => severity)).toEqual(['warning']);
});

// 20 x 20 x 0.5 = 200 cf = 7.41 cy, 8 with waste; 28 x 20: 11.2 cy, 11.25 ordered, 1.25 in the second truck.
test('enough in the last truck says nothing, nor does what an accepted bid brings', () => {
  expect(found(20, 'price slab-concrete $150/cy\n')).toEqual([]);
  // A plan that does not speak of money is not told of it.
  expect(found(28)).toEqual([]);
  expect(
    found(
      28,
      `trade concrete crew of 2 at $50/h
task slab does pour-slab by concrete
firm anders "Anders" does concrete
bid all by anders for concrete $8,000, accepted 2027-03-01, with materials
price slab-concrete $150/cy, short-load $75/cy
`,
    ),
  ).toEqual([]);
});
