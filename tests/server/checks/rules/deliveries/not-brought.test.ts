// One note for all that no delivery brings; silent in a plan that has no deliveries.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'deliveries/not-brought';
const found = (delivery: string) =>
  checked(`level main
  footprint 24' x 32'
  height 8'
  walls timber
assembly timber for wall
  layer housewrap
  layer lap-siding, 7" to the weather
supplier yard
trade siding crew of 2
${delivery}task lap does wrap-walls, side-walls by siding
price housewrap $165/roll from yard
price lap-siding $13/piece from yard
price outside-trim $2 each from yard
`).messages(CODE);

test('says how many of how many, the dearest first', () => {
  const [message, ...others] = found('delivery boards brings clapboard from yard\n');
  expect(others).toEqual([]);
  expect(message).toContain('No delivery brings 3 of the 4 things to buy, such as House wrap, ');
});

test('a second name of goods is as good', () =>
  expect(found('delivery boards brings clapboard from yard\n').join()).not.toContain('Lap siding'));

test('no deliveries, no note', () => expect(found('')).toEqual([]));
