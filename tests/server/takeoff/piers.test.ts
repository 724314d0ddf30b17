// Posts, beams and piers: under a floor, and under the roof of a carport.
import { expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

test('a carport of 20 by 22 ft: roof, six posts on piers, two beams side by side of 22 ft each', () => {
  const plan = planOf(
    `roof carport
  size 20' x 22'
  shape shed 2:12, high west
  overhang 12"
  deck plywood 1/2"
  roofing roll-roofing
  posts 6 6x6
  beam 2-ply 2x10, 22' long
  piers 6, 12" x 36"
`,
    { library: 'built-in' },
  );
  expect(plan.line('post-count', 'post').net.value).toBe(6);
  expect(plan.line('beam-length', 'beam').pieces?.map(({ count, length }) => [count.value, amount(length, 'ft')])).toEqual([
    [2, 22],
  ]);
  expect(plan.line('pier-count', 'tube-form').net.value).toBe(6);
  expect(amount(plan.line('pier-volume').net, 'cf')).toBeCloseTo(6 * (Math.PI / 4) * 3, 6);
  expect(amount(plan.line('roof-cover-area', 'roll-roofing').net, 'sf')).toBeCloseTo(24 * 22 * Math.sqrt(1 + 1 / 36), 6);
});
