// Orders against what the plan needs. The margins are those of published stories: nine yards that carried 2.3% ran out
// (finehomebuilding.com, Patrick's barn: rookie mistake).
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const slab = (amounts: string, brings = 'slab-concrete') =>
  checked(`plan barn
foundation base
  slab 4", 712.8 sf
supplier plant
trade concrete crew of 3
delivery truck brings ${brings} from plant
${amounts}task pour does pour-slab by concrete after truck
`);

test('short of the usual waste is a warning that says what margin the order has, and what to order', () => {
  const { messages } = slab('  amount 9 cy\n');
  expect(messages('deliveries/too-little')).toEqual([
    '"truck" brings 9 cy of Concrete for slabs; the plan holds 8.8 cy and needs 9.5 cy with what is usually wasted. The order has 2.3% over, where 8% are usual, and the rest is fetched at the price of a second trip while the work stands. Order 9.75 cy.',
  ]);
});

test('short of the drawing is an error; several trucks count together; enough is silent', () => {
  expect(slab('  amount 4 cy\n  amount 4 cy\n').told).toContain('error deliveries/too-little truck');
  expect(slab('  amount 5 cy\n  amount 4.75 cy\n').messages('deliveries/too-little')).toEqual([]);
});

test('of several goods the amount names its own; what the plan does not hold is not judged', () => {
  expect(slab('  amount slab-concrete 9 cy\n', 'rebar, slab-concrete').loud).toContain('warning deliveries/too-little truck');
  expect(slab('  amount rebar 2 each\n', 'rebar, slab-concrete').messages('deliveries/too-little')).toEqual([]);
});

const twice = (second: string) =>
  checked(`plan barns
foundation base
  slab 4", 712.8 sf
supplier plant
trade concrete crew of 3
delivery morning brings slab-concrete from plant
  amount 5 cy
delivery noon brings slab-concrete from plant
${second}task pour does pour-slab by concrete after morning, noon
`).messages('deliveries/too-little');

test('what several deliveries bring counts together; one that does not say how much may bring the rest', () => {
  expect(twice('  amount 4.75 cy\n')).toEqual([]);
  expect(twice('')).toEqual([]);
  expect(twice('  amount 4 cy\n').join()).toMatch(/^"morning" and "noon" bring 9 cy of Concrete for slabs;/);
});

// hometips.gregvan.com: two yards short were 120 bags of 60 lb; hunker.com: a bag of 80 lb yields 0.6 cubic feet, so two yards are 90.
test('what lacks of a pour is told in bags, too', () => {
  const { messages } = slab('  amount 6.8 cy\n');
  expect(messages('deliveries/too-little').join()).toContain(
    '2 cy are not there, which are 90 bags (Concrete mixed from bags of 80 lb).',
  );
});
