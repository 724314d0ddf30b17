// What is dug and does not go back: pipes and beds of trenches, dry wells, window wells; as it lies, loose, and in loads.
import { expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const built = (text: string) => planOf(text, { library: 'built-in' });

test('learn8.cc, questions on a water main: 2,000 ft of trench 5 in wide and 4.5 ft deep, a 3-in pipe on 3 in of bedding', () => {
  const plan = built(`
trench main 2000' long, 4'-6" deep, 5" wide
  pipe poly-pipe 3"
  bed  3" sand
`);
  // Printed: 138.89 bank yards dug, 7.72 of bedding.
  expect(amount(plan.line('trench-volume').net, 'cy')).toBeCloseTo(138.89, 2);
  expect(amount(plan.line('trench-bed-volume').net, 'cy')).toBeCloseTo(7.716, 3);
  // By hand: the pipe takes 98.17 cf.
  const pipe = (Math.PI * 0.25 ** 2 * 2000) / 4 / 27;
  expect(amount(plan.line('trench-fill-volume', 'trench-fill').net, 'cy')).toBeCloseTo(138.889 - 7.716 - pipe, 2);
  const haul = plan.line('trench-haul-volume', 'haul');
  expect(amount(haul.net, 'cy')).toBeCloseTo(7.716 + pipe, 2);
  // 25% of swell (Dagostino & Peterson, fig. 9.1), in loads of 10 yards.
  expect(amount(haul.needed, 'cy')).toBeCloseTo((7.716 + pipe) * 1.25, 2);
  expect(plan.purchase('haul').bought.value).toBe(2);
});

test('a bed deeper than the pipe is laid round it: the pipe comes out of the bed', () => {
  const plan = built(`trench sewer 100' long, 4' deep, 2' wide\n  pipe sewer-pipe 4"\n  bed 12" sand\n`);
  const pipe = (Math.PI * (4 / 12) ** 2 * 100) / 4;
  expect(amount(plan.line('trench-bed-volume').net, 'cf')).toBeCloseTo(200 - pipe, 6);
  expect(amount(plan.line('trench-fill-volume', 'trench-fill').net, 'cf')).toBeCloseTo(800 - 200, 6);
  expect(amount(plan.line('trench-haul-volume', 'haul').net, 'cf')).toBeCloseTo(200, 6);
});

test('two conduits without a bed come out of the fill; an empty trench is filled as it was dug', () => {
  const wires = built(`trench wires 90' long, 24" deep, 12" wide\n  conduit pvc-conduit 2"\n  conduit pvc-conduit 1"\n`);
  const conduits = (Math.PI * ((2 / 12) ** 2 + (1 / 12) ** 2) * 90) / 4;
  expect(amount(wires.line('trench-fill-volume', 'trench-fill').net, 'cf')).toBeCloseTo(180 - conduits, 6);
  const empty = built(`trench swale 90' long, 24" deep, 12" wide\n`);
  expect(amount(empty.line('trench-fill-volume', 'trench-fill').net, 'cf')).toBeCloseTo(180, 6);
  expect(empty.lines('trench-haul-volume')).toEqual([]);
});

test('all that is dug for a dry well is hauled, since stone takes its place', () => {
  const plan = built(
    `roof shed-roof\n  size 20' x 30'\n  shape flat\ndry-well pit for roof shed-roof\n  storm 2"\n  voids 40%\n  size 8' x 8'\n`,
  );
  // 600 sf × 2 in ÷ 40% are 250 cf.
  expect(amount(plan.line('dry-well-volume', 'haul').net, 'cf')).toBeCloseTo(250, 6);
  expect(amount(plan.line('dry-well-volume', 'haul').needed, 'cy')).toBeCloseTo((250 / 27) * 1.25, 6);
});

test('a window well: itself, what is dug and hauled, and the stone that drains it', () => {
  const plan = built(
    `room bed\n  well 48" x 36", 44" deep, ladder\n    stone 12" washed-stone\n  well 48" x 36", 44" deep, half-round\n`,
  );
  expect(plan.lines('window-well-count', 'window-well').length).toBe(2);
  const [straight, round] = plan.lines('window-well-volume', 'haul').map(({ net }) => amount(net, 'cf'));
  // 4 by 3 ft, 56 in deep with its stone; a half-round holds π ÷ 4 of its box.
  expect(straight).toBeCloseTo((4 * 3 * 56) / 12, 6);
  expect(round).toBeCloseTo((Math.PI / 4) * ((4 * 3 * 44) / 12), 6);
  expect(amount(plan.line('window-well-stone-volume', 'washed-stone').net, 'cf')).toBeCloseTo(12, 6);
});
