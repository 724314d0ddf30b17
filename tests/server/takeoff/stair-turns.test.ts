// Stairs that turn: an L and a U with a landing, winders; by hand for a stair of 15 risers in 109 1/4 in (7 17/60 in each, the
// division as in the 2018 International Residential Code, R311.7.5.1, risers of at most 7 3/4 in) with treads of 10 in.
import { describe, expect, test } from 'vitest';
import { replay } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Measure } from '#takeoff/lines';
import { amount } from '#tests/support/amounts';
import { checked } from '#tests/support/checked';
import { planOf } from '#tests/support/plan';

const stair = (more: string) => `stair up "Stair"
  rise     109 1/4"
  risers   15
  tread    10"
  width    36"
  handrail 36"
${more}`;
const coded = (text: string) => checked(`plan house\n  code irc-2021\n${text}`);
const built = (more: string) => planOf(stair(more), { library: 'built-in' });
const RISER = 109.25 / 15;
const slope = (risers: number) => Math.sqrt((risers * RISER) ** 2 + ((risers - 1) * 10) ** 2);
const facts = (plan: ReturnType<typeof built>) => factsOf(plan.model.list('stair')[0]!);
const sum = (plan: ReturnType<typeof built>, measure: Measure, item: string, unit: string) =>
  plan.lines(measure, item).reduce((so, { net }) => so + amount(net, unit), 0);
const each = (plan: ReturnType<typeof built>, measure: Measure, item: string) =>
  plan
    .lines(measure, item)
    .flatMap(({ pieces }) => pieces?.map(({ count, length }) => [count.value, amount(length, 'in')]) ?? []);

describe('an L: 7 risers, a landing of 36 by 36 in, 8 risers', () => {
  const plan = built('  turn after 7, landing 36" x 36"\n');

  test('two flights; the landing is the tread between: 6 + 7 treads, and the level run of those', () => {
    const found = facts(plan);
    expect(found.flights?.value).toBe(2);
    expect(amount(found.run, 'in')).toBeCloseTo(130, 6);
    expect(amount(found['flight-rise'], 'in')).toBeCloseTo(8 * RISER, 3);
    expect(amount(found['turn-landing'], 'in')).toBe(36);
    expect(plan.lines('stair-tread-count', 'stair-tread').reduce((so, { net }) => so + net.value, 0)).toBe(13);
  });

  test('stringers of each flight by its own hypotenuse and a tread, three wide', () => {
    expect(each(plan, 'stair-stringer-length', 'stair-stringer')).toEqual([
      [3, expect.closeTo(slope(7) + 10, 3)],
      [3, expect.closeTo(slope(8) + 10, 3)],
    ]);
  });

  test('15 riser boards all the same, rails along both slopes', () => {
    expect(sum(plan, 'stair-riser-length', 'stair-riser', 'in')).toBeCloseTo(15 * 36, 6);
    expect(sum(plan, 'stair-rail-length', 'handrail', 'in')).toBeCloseTo(slope(7) + slope(8), 3);
  });

  test('the landing: joists 36 in long at 16 in, so 4, two rims, and 9 sf of deck', () => {
    expect(each(plan, 'stair-landing-frame-length', 'landing-joist')).toEqual([
      [4, 36],
      [2, 36],
    ]);
    expect(sum(plan, 'stair-landing-area', 'landing-deck', 'sf')).toBeCloseTo(9, 6);
    expect(plan.messages).toEqual([]);
  });
});

test('a U: its landing lies across both flights, 36 by 76 in', () => {
  const plan = built('  turn after 7, landing 36" x 76", half\n');
  // 76 / 16 = 4.75, so six joists.
  expect(each(plan, 'stair-landing-frame-length', 'landing-joist')).toEqual([
    [6, 36],
    [2, 76],
  ]);
  expect(sum(plan, 'stair-landing-area', 'landing-deck', 'sf')).toBeCloseTo((36 * 76) / 144, 6);
});

describe('three winders in a quarter turn after 6 risers, 6 in at the narrow end', () => {
  const plan = built('  narrow 6"\n  turn after 6, 3 winders\n');

  test('6 risers with 5 treads, 2 between the winders, 7 with 6 treads: 14 in all, as in one flight', () => {
    const treads = plan.lines('stair-tread-count', 'stair-tread').reduce((so, { net }) => so + net.value, 0);
    expect(treads).toBe(5 + 6);
    expect(plan.line('stair-winder-count', 'stair-winder').net.value).toBe(3);
    expect(facts(plan).flights?.value).toBe(1);
    expect(amount(facts(plan)['flight-rise'], 'in')).toBeCloseTo(109.25, 3);
    expect(amount(facts(plan).run, 'in')).toBeCloseTo(110, 6);
  });

  test('at the walk line, 12 in out, 30 degrees are 12 x π / 6 = 6.283 in more than at the narrow end', () => {
    const depth = facts(plan)['winder-tread']!;
    expect(amount(depth, 'in')).toBeCloseTo(6 + 2 * Math.PI, 4);
    expect(replay(depth)).toBe(depth.value);
  });

  test('four edges of 36 x √2 in carry them, two riser boards as long stand between', () => {
    expect(each(plan, 'stair-landing-frame-length', 'landing-joist')).toEqual([[4, expect.closeTo(36 * Math.SQRT2, 3)]]);
    expect(sum(plan, 'stair-riser-length', 'stair-riser', 'in')).toBeCloseTo(13 * 36 + 2 * 36 * Math.SQRT2, 3);
  });

  test('the rail goes on along the walk line', () => {
    const over = Math.sqrt((3 * (6 + 2 * Math.PI)) ** 2 + (2 * RISER) ** 2);
    expect(sum(plan, 'stair-rail-length', 'handrail', 'in')).toBeCloseTo(slope(6) + slope(7) + over, 2);
  });
});

test('outdoors: treated joists and boards on the landing', () => {
  const plan = planOf(
    'stair down outside\n  rise 60"\n  risers 8\n  tread 11"\n  width 48"\n  treads deck-board 5/4x6\n  turn after 4, landing 48" x 48"\n',
    { library: 'built-in' },
  );
  expect(sum(plan, 'step-landing-frame-length', 'deck-joist', 'in')).toBeCloseTo(4 * 48 + 2 * 48, 6);
  expect(plan.lines('step-stringer-length', 'deck-stringer')).toHaveLength(2);
  expect(sum(plan, 'step-tread-area', 'deck-board', 'sf')).toBeCloseTo((6 * 48 * 11) / 144 + 16, 4);
});

test('headroom under the edge of the opening: 10 ft from the top riser at 7.283 over 10 in, less the floor', () => {
  const headroom = facts(built(`  opening 10', 11 7/8" floor\n`)).headroom!;
  expect(amount(headroom, 'in')).toBeCloseTo((120 * RISER) / 10 - 11.875, 3);
  expect(coded(stair(`  opening 10', 11 7/8" floor\n`)).messages('minimum/stair-headroom')).toHaveLength(1);
  expect(coded(stair(`  opening 11', 11 7/8" floor\n`)).messages('minimum/stair-headroom')).toEqual([]);
});

describe('turns that do not fit are told, and the stair is not counted', () => {
  test.each([
    'turn after 15, landing 36" x 36"',
    'turn after 14, 3 winders',
    'turn after 7',
    'turn after 7, landing 36" x 36", 3 winders',
    'turn after 7, landing 36" x 36"\n  turn after 7, 3 winders',
  ])('%s', (turn) => {
    const plan = built(`  ${turn}\n`);
    expect(plan.messages.map((message) => message.split(':')[0])).toEqual(['takeoff/turn-misfit']);
    expect(plan.lines('stair-stringer-length')).toEqual([]);
  });
});

test('a stair of more than 12 ft 7 in is high in one flight, and not with a landing', () => {
  const high = (more: string) =>
    coded(`stair up\n  rise 155"\n  risers 21\n  tread 10"\n  width 36"\n${more}`).messages('minimum/flight-rise');
  expect(high('')).toHaveLength(1);
  expect(high('  turn after 10, landing 36" x 36"\n')).toEqual([]);
});
