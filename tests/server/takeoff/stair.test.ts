// Stairs and the steps of a deck: stringers, treads, risers and rails from rise, risers, tread and width.
import { describe, expect, test } from 'vitest';
import { factsOf } from '#model/facts';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const built = (text: string) => planOf(text, { library: 'built-in' });

describe('US Army correspondence subcourse EN5156, Carpentry, fig. 2-38: 13 risers of 7 1/4 in, 12 treads of 10 1/2 in', () => {
  const plan = built(`stair up
  rise     94 1/4"
  risers   13
  tread    10 1/2"
  width    36"
  handrail 36"
`);
  const slope = Math.sqrt(94.25 ** 2 + 126 ** 2);

  test('the run is 10 ft 6 in, and the stringer is the hypotenuse, with a tread more for its ends', () => {
    expect(amount(factsOf(plan.model.list('stair')[0]!).run, 'in')).toBeCloseTo(126, 6);
    expect(amount(factsOf(plan.model.list('stair')[0]!).riser, 'in')).toBeCloseTo(7.25, 6);
    const stringers = plan.line('stair-stringer-length', 'stair-stringer');
    // From memory, AWC DCA 6: 18 in apart at most, so three for 36 in.
    expect(stringers.pieces?.map(({ count, length }) => [count.value, amount(length, 'in')])).toEqual([
      [3, expect.closeTo(slope + 10.5, 6)],
    ]);
    expect(plan.purchase('stair-stringer').bought.value).toBe(3);
    expect(amount(plan.purchase('stair-stringer').holds, 'ft')).toBeCloseTo(14, 6);
  });

  test('one tread fewer than risers, a board behind each step, a rail along the slope', () => {
    expect(plan.line('stair-tread-count', 'stair-tread').net.value).toBe(12);
    expect(amount(plan.line('stair-riser-length', 'stair-riser').net, 'ft')).toBeCloseTo(39, 6);
    expect(amount(plan.line('stair-rail-length', 'handrail').net, 'in')).toBeCloseTo(slope, 6);
  });
});

test('what the plan says goes before: stringers, treads, open risers', () => {
  const plan = built(`stair up
  rise     112"
  risers   15
  tread    10"
  width    42"
  stringers 2 stair-stringer
  riser-boards none
`);
  expect(plan.line('stair-stringer-length', 'stair-stringer').pieces?.[0]?.count.value).toBe(2);
  expect(plan.lines('stair-riser-length')).toEqual([]);
});

test('outdoors it is built with the deck: treated stringers, deck boards as treads', () => {
  const plan = built(`stair down outside
  rise   22"
  risers 3
  tread  11"
  width  48"
  treads deck-board 5/4x6
`);
  expect(plan.line('step-stringer-length', 'deck-stringer').pieces?.[0]?.count.value).toBe(4);
  expect(amount(plan.line('step-tread-area', 'deck-board').net, 'sf')).toBeCloseTo((2 * 4 * 11) / 12, 6);
});

test('the steps of a deck, where no stair tells of them', () => {
  const deck = (steps: string) => built(`deck porch\n  size 8' x 6'\n  high 22"\n  boards deck-board 5/4x6\n  steps ${steps}\n`);
  const plan = deck("3, 4' wide");
  const slope = Math.sqrt(22 ** 2 + 22 ** 2);
  expect(amount(plan.line('step-stringer-length', 'deck-stringer').net, 'in')).toBeCloseTo(4 * (slope + 11), 6);
  expect(amount(plan.line('step-tread-area', 'deck-board').net, 'sf')).toBeCloseTo((2 * 4 * 11) / 12, 6);
  expect(deck('3').messages.map((message) => message.split(':')[0])).toContain('takeoff/size-missing');
});

test('a stair without its width says so', () => {
  const plan = built('stair up\n  rise 112"\n  risers 15\n  tread 10"\n');
  expect(plan.messages).toEqual(['takeoff/size-missing: "up" lacks its width, so it is not counted.']);
});
