// Two tasks that each take the rest.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'work/two-take-all';
const house = `
level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
trade framing crew of 3 at $52/h
`;

test('the second is told, with the first', () => {
  const plan = checked(`${house}task a does wrap-walls by framing\ntask b does wrap-walls by framing after a\n`);
  expect(plan.told).toContain('error work/two-take-all b');
  expect(plan.messages(CODE)[0]).toMatch(/^"a" and "b" both take all of "wrap-walls" that is left/);
});

test('one that takes a part and one that takes the rest are fine', () => {
  expect(
    checked(`${house}task a does wrap-walls 20% by framing\ntask b does wrap-walls by framing after a\n`).messages(CODE),
  ).toEqual([]);
});

test('work that is not measured may be done in several steps', () => {
  expect(
    checked(
      `${house}task a does wrap-walls, heat-house takes 1d by framing\ntask b does heat-house takes 2d by framing after a\n`,
    ).messages(CODE),
  ).toEqual([]);
});
