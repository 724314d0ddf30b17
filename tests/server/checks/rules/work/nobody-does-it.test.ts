// Quantities without an owner.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'work/nobody-does-it';
const house = `
level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
  layer lap-siding, 7" to the weather
trade framing crew of 3 at $52/h
`;

test('one finding a kind of work, with how much, where the goods are named', () => {
  const plan = checked(`${house}task wrap does wrap-walls by framing\n`);
  expect(plan.told.filter((line) => line.includes(CODE))).toEqual(['warning work/nobody-does-it plain']);
  // 88 ft round, 8 ft high.
  expect(plan.messages(CODE)[0]).toMatch(/^No task does "side-walls", and the plan holds 704(?:\.0)? sf of Lap siding/);
  expect(plan.marks(CODE)).toEqual(['line 7: lap-siding']);
});

test('a part that is left over is told with those who do the rest', () => {
  const plan = checked(
    `${house}task wrap does wrap-walls, side-walls by framing\n  accept rooms/gap "not this"\n`.replace(
      'side-walls',
      'side-walls 75%',
    ),
  );
  expect(plan.messages(CODE).join()).toMatch(/"wrap" does only a part of "side-walls" and leaves 176(?:\.0)? sf of Lap siding/);
});

test('a plan without tasks, or whose tasks do not say what they do, is not asked', () => {
  expect(checked(house).messages(CODE)).toEqual([]);
  expect(checked(`${house}task wrap takes 2d by framing\n`).messages(CODE)).toEqual([]);
});

test('work that nothing in the plan asks for is nobody’s', () => {
  const plan = checked(`${house}task all does wrap-walls, side-walls by framing\n`);
  expect(plan.messages(CODE)).toEqual([]);
});
