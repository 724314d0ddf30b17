// Shares that make more than a whole.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'work/done-twice';
const house = `
level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
trade framing crew of 3 at $52/h
task low does wrap-walls SHARE by framing
task high does wrap-walls OTHER by framing after low
`;
const plan = (share: string, other: string) => checked(house.replace('SHARE', share).replace('OTHER', other));

test('how much is counted twice, and by whom', () => {
  const over = plan('60%', '60%');
  expect(over.told).toContain('error work/done-twice high');
  // A fifth of 88 ft by 8 ft.
  expect(over.messages(CODE)[0]).toMatch(
    /^"low" and "high" together do more of "wrap-walls" than there is: 140\.8 sf of House wrap/,
  );
});

test('shares that make a whole are fine, thirds too', () => {
  expect(plan('60%', '40%').messages(CODE)).toEqual([]);
  expect(plan('on main', '').messages(CODE)).toEqual([]);
});

test('a place taken twice', () => {
  expect(plan('on main', 'of main').messages(CODE)).toHaveLength(1);
});
