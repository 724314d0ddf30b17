// Sticks of several lengths at one price a piece: told once for a price, silent for prices by the length.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const house = (prices: string) => `level main
  footprint 24' x 31'
  walls timber
assembly timber for wall
  layer stud 2x6 at 16" oc
foundation under main
  wall 8" x 32"
${prices}`;
const found = (prices: string) => checked(house(prices)).messages('money/one-price-for-lengths');

// Sides of 31 ft: two sticks of 16 ft each; between them 24 ft less two sills: two of 12 ft each.
test('names the lengths, and the price by the foot that the longest comes to', () =>
  expect(found('price sill-plate 2x6 $17.60 each\n')).toEqual([
    `Treated sill 2x6 is bought in 16'-0" and 12'-0", and one price counts for each, so the total is too low or too high: what is longer costs more. Price it by the measure (such as $1.10/lf), or give each length its own price.`,
  ]));

test('a price for each length, and one by the foot, say nothing', () => {
  expect(found('price sill-plate 2x6x16 $17.60 each\nprice sill-plate 2x6x12 $12.40 each\n')).toEqual([]);
  expect(found('price sill-plate 2x6 $1.10/lf\n')).toEqual([]);
});

test('each length costs what its own price says', () => {
  const { budget } = checked(house('price sill-plate 2x6x16 $17.60 each\nprice sill-plate 2x6x12 $12.40 each\n')).plan;
  const sill = budget.goods.find(({ purchase }) => purchase.item === 'sill-plate 2x6');
  expect(sill?.purchase.sticks?.map(({ bought }) => bought.value)).toEqual([4, 4]);
  expect(sill?.cost?.cents).toBe(4 * 1760 + 4 * 1240);
});

test('a length without a price of its own leaves the goods without one', () =>
  expect(checked(house('price sill-plate 2x6x16 $17.60 each\n')).messages('money/price-missing').join()).toContain(
    'Treated sill 2x6',
  ));

test('sheets that are laid out in several lengths are priced by the area, or by their own length', () => {
  const room = (prices: string) => `plan p
  counts drywall by laid-board
level main
  height 8'
  partitions inner
assembly inner for wall
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
  layer drywall 1/2"
room den on main
  size 12' x 20'
${prices}`;
  const told = (prices: string) => checked(room(prices)).messages('money/one-price-for-lengths');
  expect(told('price drywall 1/2" $14.40/sheet\n').join()).toContain('such as $0.30/sf');
  expect(told('price drywall 1/2" $0.45/sf\n')).toEqual([]);
  expect(told(`price drywall 1/2" 12' $22/sheet\nprice drywall 1/2" 8' $14/sheet\nprice drywall 1/2" 10' $18/sheet\n`)).toEqual(
    [],
  );
});
