// Goods that no price stands for.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'money/price-missing';
const house = `
level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
`;

test('once there is a price, what has none is missing', () => {
  const plan = checked(`${house}price osb $14/sheet\n`);
  expect(plan.told).toContain('warning money/price-missing plain');
  expect(plan.messages(CODE)[0]).toMatch(/^No price stands for House wrap.*, so the total is short by/);
  expect(plan.marks(CODE)).toEqual(['line 6: housewrap']);
});

test('in a plan that has rates but no prices yet it is a note', () => {
  const plan = checked(`${house}trade framing crew of 3 at $52/h\ntask wrap does wrap-walls by framing\n`);
  expect(plan.told).toContain('note money/price-missing plain');
});

test('a plan that does not speak of money is not asked', () => {
  expect(checked(house).messages(CODE)).toEqual([]);
});

test('an accepted bid with materials, or an allowance, stands for goods', () => {
  const trade = 'trade framing crew of 3\nfirm ruiz does framing\ntask wrap does wrap-walls by framing\nprice osb $14/sheet\n';
  expect(checked(`${house}${trade}bid b by ruiz for framing $900, accepted 2027-01-04, with materials\n`).messages(CODE)).toEqual(
    [],
  );
  expect(checked(`${house}price osb $14/sheet\nallowance wrap $200 for housewrap\n`).messages(CODE)).toEqual([]);
});
