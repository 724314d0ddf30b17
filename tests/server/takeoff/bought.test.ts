// What purchases weigh, against published weights: of sheets, bars, wood by its density, goods by the bag and by the yard.
import { describe, expect, test } from 'vitest';
import { toBase } from '#kit/units';
import { boughtQuantity, weightOf } from '#takeoff/bought';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const pounds = (text: string, item: string) => amount(weightOf(planOf(text, { library: 'built-in' }).purchase(item)), 'lb');

describe('the library’s goods', () => {
  const house = `level main
  footprint 24' x 32'
  height 8'
  walls timber
assembly timber for wall
  layer stud 2x4 at 16" oc
  layer osb 7/16"
foundation under main
  footing 20" x 8", 2 #4
  slab 4"
`;
  const plan = planOf(house, { library: 'built-in' });

  // Soundproofing Company, Building Materials Weights Guide: 1.5 lb/sf, which is 48 lb a sheet.
  test('a sheet of OSB of 7/16 in weighs 48 lb', () =>
    expect(pounds(house, 'osb 7/16"')).toBeCloseTo(plan.purchase('osb 7/16"').bought.value * 48, 6));

  // ASTM A615, Table 1: 0.668 lb a foot of No. 4.
  test('bars of No. 4 by the foot', () =>
    expect(pounds(house, 'rebar #4')).toBeCloseTo(plan.purchase('rebar #4').bought.value * 20 * 0.668, 6));

  // From memory: ASCE 7, 150 lb a cubic foot, 4,050 lb a cubic yard.
  test('concrete by the cubic yard', () =>
    expect(pounds(house, 'slab-concrete')).toBeCloseTo(amount(plan.purchase('slab-concrete').bought, 'cy')! * 4050, 4));

  // Wood Handbook (USDA Forest Service, FPL-GTR-190), weight by specific gravity and moisture, as the row works it out:
  // 62.4 (0.42 / (1 + 0.009 x 0.42 x 15)) 1.15 = 28.5 lb/cf; a 2x4 is 5.25 sq in.
  test('a stud by the density of its wood', () => {
    const density = 62.4 * (0.42 / (1 + 0.009 * 0.42 * 15)) * 1.15;
    const each = (5.25 / 144) * (92.625 / 12) * density;
    expect(pounds(house, 'stud 2x4')! / plan.purchase('stud 2x4').bought.value).toBeCloseTo(each, 1);
    expect(each).toBeGreaterThan(7.5);
    expect(each).toBeLessThan(8.5);
  });
});

const own = (row: string, text = "room r\n  size 10' x 12'\n  floor plank\n") =>
  planOf(text, { library: [`material plank laid boards\n${row}work lay\n  installs plank by floor-finish-area\n`] }).purchase(
    'plank',
  );

test('goods sold by weight weigh what they are', () => {
  const bought = own('  sold by bag of 50 lb\n  covers 2 sf per lb\n');
  expect(amount(weightOf(bought), 'lb')).toBeCloseTo(100, 9);
});

test('by the area, by what one piece weighs, by density and thickness; unknown where no row says it', () => {
  expect(amount(weightOf(own('  sold by box of 20 sf\n  weighs 2 lb/sf\n')), 'lb')).toBeCloseTo(240, 9);
  expect(amount(weightOf(own('  sold by box of 20 sf\n  density 36 lb/cf\n  thick 1"\n')), 'lb')).toBeCloseTo(360, 9);
  expect(weightOf(own('  sold by box of 20 sf\n'))).toBeUndefined();
  expect(weightOf(own('  sold by box of 20 sf\n  weighs 2 lb/ft\n'))).toBeUndefined();
});

test('sticks of several lengths are measured together', () => {
  const sill = planOf(
    'level main\n  footprint 24\' x 31\'\n  walls timber\nassembly timber for wall\n  layer stud 2x6 at 16" oc\nfoundation under main\n  wall 8" x 32"\n',
    { library: 'built-in' },
  ).purchase('sill-plate 2x6');
  expect(sill.sticks).toHaveLength(2);
  expect(boughtQuantity(sill).value).toBeCloseTo(toBase(4 * 16 + 4 * 12, 'ft')!, 6);
});
