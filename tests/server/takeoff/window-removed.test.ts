// One window less in the cottage: every layer of the wall, its board, trim and paint change by the window, by hand. The
// window is 3 by 5 ft (15 sf, 16 ft round) in a room with painted walls; its rough opening is 3 ft 1/2 in wide.
import { describe, expect, test } from 'vitest';
import type { Measure } from '#takeoff/lines';
import { amount } from '#tests/support/amounts';
import { sampleTexts } from '#tests/support/built-in';
import { planOf } from '#tests/support/plan';

const HOUSE = 'samples/cottage/house.screed';
const texts = sampleTexts('cottage');
const two = 'windows    2 w-3050 in east at 2\'-6", 8\'-6"';
const { 'samples/cottage/plan.screed': root, ...others } = texts;
const cottage = (house: string) =>
  planOf({ 'samples/cottage/plan.screed': root!, ...others, [HOUSE]: house }, { library: 'built-in' });
const before = cottage(texts[HOUSE]!);
const after = cottage(texts[HOUSE]!.replace(two, 'windows    1 w-3050 in east at 2\'-6"'));

/** By how much the lines of an item by a measure differ, net and needed. */
function change(measure: Measure, item: string, unit: string): { readonly net: number; readonly needed: number } {
  const sum = (plan: typeof before, of: 'net' | 'needed') =>
    plan.lines(measure, item).reduce((so, line) => so + (line[of]?.value ?? 0), 0);
  const differ = (of: 'net' | 'needed', in_: string) => {
    const value = sum(after, of) - sum(before, of);
    const { dimension } = before.lines(measure, item)[0]![of]!;
    return amount({ value, dimension, form: { label: '', compute: () => value }, inputs: [] }, in_);
  };
  return { net: differ('net', unit), needed: differ('needed', unit) };
}

test('the plan was changed', () => {
  expect(texts[HOUSE]).toContain(two);
  expect(before.lines('window-count', 'w-3050').length).toBeGreaterThan(0);
});

describe('the wall closes where the window was: 15 sf more of each layer', () => {
  test.each([
    ['siding', 'wall-cladding-area', 'lap-siding 8 1/4"'],
    ['barrier', 'wall-barrier-area', 'housewrap'],
    ['sheathing', 'wall-sheathing-area', 'osb 7/16"'],
    ['foam', 'wall-foam-area', 'xps-board 1"'],
    ['insulation', 'wall-insulation-area', 'r21-batt'],
    ['board', 'board-area', 'drywall 1/2"'],
    ['paint', 'painted-wall-area', 'paint'],
    ['outside paint', 'outside-paint-area', 'outside-paint'],
  ] as const)('%s', (_, measure, item) => {
    expect(change(measure, item, 'sf').net).toBeCloseTo(15, 6);
  });
});

describe('what has to be ordered changes by the convention of each', () => {
  test('with waste: siding in courses of 7 in, wrap, foam, batts', () => {
    expect(change('wall-cladding-area', 'lap-siding 8 1/4"', 'ft').needed).toBeCloseTo((15 / (7 / 12)) * 1.1, 6);
    expect(change('wall-barrier-area', 'housewrap', 'sf').needed).toBeCloseTo(15 * 1.1, 6);
    expect(change('wall-foam-area', 'xps-board 1"', 'sf').needed).toBeCloseTo(15 * 1.05, 6);
    expect(change('wall-insulation-area', 'r21-batt', 'sf').needed).toBeCloseTo(15 * 1.02, 6);
  });

  test('openings that small were never taken off sheathing (30 sf), board (32 sf) and outside paint (15 sf)', () => {
    expect(change('wall-sheathing-area', 'osb 7/16"', 'sf').needed).toBeCloseTo(0, 6);
    expect(change('board-area', 'drywall 1/2"', 'sf').needed).toBeCloseTo(0, 6);
    expect(change('outside-paint-area', 'outside-paint', 'gal').needed).toBeCloseTo(0, 6);
  });
});

test('trim and flashing: 16 ft less round the window', () => {
  expect(change('opening-trim-length', 'casing', 'ft').net).toBeCloseTo(-16, 6);
  expect(change('flashing-length', 'flashing-tape', 'ft').net).toBeCloseTo(-16, 6);
});

test('common practice: trim outside, the same 16 ft of board less, 17.6 with waste', () => {
  expect(change('outside-trim-length', 'outside-trim', 'ft').net).toBeCloseTo(-16, 6);
  expect(change('outside-trim-length', 'outside-trim', 'ft').needed).toBeCloseTo(-17.6, 6);
});

test('Modern Carpentry, Goodheart-Willcox, 2022 ed., p. 269: two studs less; and two pieces of header, rough opening and 3 in long', () => {
  expect(change('wall-stud-count', 'stud 2x6', '').net).toBe(-2);
  expect(change('wall-header-length', 'header', 'in').net).toBeCloseTo(-2 * (36.5 + 3), 6);
  expect(change('window-count', 'w-3050', '').net).toBe(-1);
});
