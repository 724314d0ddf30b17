// The site: drive, entrance, fences and strips that are graded, each beside a published example or hand arithmetic.
import { expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const built = (text: string) => planOf(text, { library: 'built-in' });

test('braenstone.com, How much crushed stone for a driveway: 10 by 50 ft, 8 in deep, at 2,700 lb to the yard', () => {
  const plan = built(`material road-base\n  waste 5% added\nsite lot\n  drive 50' x 10'\n    base 8" road-base\n`);
  const stone = plan.line('drive-base-volume', 'road-base');
  // The page takes 8 in for 0.66 ft and prints 12.22 and 12.83 yards; 8 in are 12.35, with 5% 12.96.
  expect(amount(stone.net, 'cy')).toBeCloseTo((50 * 10 * 8) / 12 / 27, 6);
  expect(amount(stone.needed, 'cy')).toBeCloseTo(12.963, 3);
  // 13 yards are ordered: 17.55 short tons by its own weight of 2,700 lb.
  expect((amount(plan.purchase('road-base').bought, 'cy') * 2700) / 2000).toBeCloseTo(17.55, 9);
});

test('engineerfix.com, How much gravel for a 100-foot driveway: 100 by 10 ft, 6 in deep', () => {
  const plan = built(`site lot\n  drive 100' x 10'\ntask lay does gravel-drive takes 1d\n`);
  const usual = plan.lines('drive-usual-area', 'road-base');
  // Printed: 500 cubic feet, about 18.5 yards; the usual depth of the library is the same 6 in.
  expect(usual.map(({ net }) => amount(net, 'cy'))).toEqual([expect.closeTo(18.52, 2)]);
});

test('paving is bought by its weight: 480 sf, 3 in thick, at 145 lb to the cubic foot and 5% more', () => {
  const plan = built(`site lot\n  drive 48' x 10'\n    base 6" road-base\n    paving 3" asphalt\n`);
  const asphalt = plan.line('drive-paving-volume', 'asphalt');
  expect(amount(asphalt.net, 'cf')).toBeCloseTo(120, 9);
  expect(amount(asphalt.needed, 'lb')).toBeCloseTo(120 * 145 * 1.05, 6);
  expect(amount(plan.line('drive-paving-area').net, 'sf')).toBe(480);
  expect(plan.lines('drive-usual-area')).toEqual([]);
});

test('firm ground for trucks takes coarse stone, 6 in deep', () => {
  const plan = built(`site lot\n  drive 48' x 10'\ntask base does place-drive-base takes 1d\n`);
  const stone = plan.lines('drive-area', 'coarse-stone').map(({ net }) => amount(net, 'cy'));
  expect(stone).toEqual([expect.closeTo(480 / 54, 6)]);
});

test('an entrance has stone and fabric, wattles a stake to every 4 ft', () => {
  const plan = built(`site lot\n  entrance 50' x 12'\n  wattles 60'\n`);
  expect(amount(plan.line('entrance-area', 'coarse-stone').net, 'cy')).toBeCloseTo(600 / 54, 6);
  expect(amount(plan.line('entrance-area', 'filter-fabric').net, 'sf')).toBeCloseTo(600, 6);
  expect(amount(plan.line('wattle-length', 'wattle').net, 'ft')).toBe(60);
  expect(plan.line('wattle-length', 'wattle-stake').net.value).toBeCloseTo(15, 9);
});

test('graded strips are wedges; the cut goes into the fill, and only the rest is hauled or brought', () => {
  // 40 × 10 × 4 in are 133.3 cf cut; 60 × 10 × 3 in are 150 cf filled, for which 157.9 of bank earth are wanted at 95%.
  const short = built(`site lot\n  cut 40' x 10', 8" to 0"\n  fill 60' x 10', 6" to 0"\n`);
  expect(amount(short.line('cut-volume', 'graded-cut').net, 'cf')).toBeCloseTo(400 / 3, 6);
  expect(amount(short.line('fill-volume', 'graded-fill').net, 'cf')).toBeCloseTo(150, 6);
  expect(amount(short.line('grade-import-volume', 'earth-brought').net, 'cf')).toBeCloseTo(150 / 0.95 - 400 / 3, 6);
  expect(short.lines('grade-haul-volume')).toEqual([]);
  const over = built(`site lot\n  cut 60' x 10', 8" to 4"\n  fill 60' x 10', 6" to 0"\n`);
  expect(amount(over.line('grade-haul-volume', 'haul').net, 'cf')).toBeCloseTo(300 - 150 / 0.95, 6);
  expect(over.lines('grade-import-volume')).toEqual([]);
});
