// What of a storey loses heat and what does not, and how `explain` tells it: what is not in the sum is named, and the caution
// stands with every answer. The sums themselves are tested against published ones in published/heat-loss.
import { describe, expect, test } from 'vitest';
import { explain, explanationText } from '#answers/explain';
import { heatReasons, heatText } from '#answers/explain-heat';
import { viewText } from './plans.ts';

const HOUSE = `plan p
  units feet
level main
  footprint 20' x 30'
  height 8'
  walls ext-2x6
  floor floor-2x10
  ceiling flat-lid
`;

/** Which parts of a level are in its UA, and what is not. */
function parts(text: string, name = 'main'): { readonly in: readonly string[]; readonly without: string } {
  const view = viewText(text);
  const level = view.plan.model.list('level').find((each) => each.name === name)!;
  const reasons = heatReasons(level, view);
  return {
    in: (reasons.find(({ label }) => label === 'ua')?.inputs ?? []).map(({ label }) => label),
    without: reasons.find(({ label }) => label === 'not in it')?.text ?? '',
  };
}

describe('what loses heat', () => {
  test('walls, floor and ceiling of a house of one storey', () => {
    expect(parts(HOUSE).in).toEqual(['outside wall', 'ceiling', 'floor']);
  });
  test('of two storeys the floor below and the ceiling above', () => {
    const two = `${HOUSE}level upper
  footprint 20' x 30'
  height 8'
  walls ext-2x6
  floor floor-2x10-inner
  ceiling flat-lid
`;
    expect(parts(two).in).toEqual(['outside wall', 'floor']);
    // The edge of the floor between them is a wall's; that of a floor that keeps its own heat is not.
    expect(parts(two, 'upper').in).toEqual(['outside wall', 'ceiling', 'rim of the floor']);
    expect(parts(`${two}roof r over main\n  shape gable 6:12\n`).in).toEqual(['outside wall', 'ceiling', 'floor']);
  });
  test('a slab loses along its edge, a closed crawl space through its walls', () => {
    expect(parts(`${HOUSE}foundation under main\n  slab 4"\n`).in).toEqual(['outside wall', 'ceiling', 'edge of the slab']);
    const crawl = `${HOUSE}foundation under main\n  footing 16" x 8"\n  wall 8" x 32"\ncrawl under main\n  insulated R-15\n`;
    expect(parts(crawl).in).toEqual(['outside wall', 'ceiling', 'wall of the crawl space', 'rim of the floor']);
    expect(parts(crawl.replace('insulated R-15', 'vents 1/150')).in).toEqual(['outside wall', 'ceiling', 'floor']);
  });
  test('over a basement no floor; its own walls and floor lose heat through the earth', () => {
    const cellar = `level cellar basement
  footprint 20' x 30'
  height 8'
foundation under cellar
  footing 16" x 8"
  wall 8" x 96"
  insulated R-13 between framing, R-5
`;
    expect(parts(HOUSE + cellar).in).toEqual(['outside wall', 'rim of the floor']);
    const below = parts(HOUSE + cellar, 'cellar');
    expect(below.in).toEqual(['basement wall in the earth', 'basement floor']);
    expect(below.without).toContain('warmth of the earth (taken as cold as the air)');
  });
  test('a skylight lies in the ceiling, a door inside the house in nothing', () => {
    const lit = `${HOUSE}window sky 2' x 4', skylight, U 0.5
door d-in 3' x 7'
room r on main
  size 19' x 29'
  windows 1 sky
  doors 1 d-in
`;
    expect(parts(lit).in).toEqual(['outside wall', 'sky', 'ceiling', 'floor']);
    expect(explanationText(explain('main.ua', viewText(lit)).found[0]!)).toContain('ceiling net of skylights  592 sf');
  });
  test('a ceiling along the rafters is larger than the floor under it', () => {
    const vault = `${HOUSE.replace('flat-lid', 'vault-lid')}roof r over main\n  shape gable 6:12\n`;
    // 600 × √1.25
    expect(explanationText(explain('main.ua', viewText(vault)).found[0]!)).toContain('ceiling along the slope  670.8 sf');
  });
});

test('a room with a slope of its own has more ceiling: 10 by 12 feet from 8 to 13 are 10 × 13 of it', () => {
  const sloped = `${HOUSE}room r on main
  size 10' x 12'
  sloped 8' in south, 13' in north
`;
  // 600 − 120 + 130 square feet.
  expect(explanationText(explain('main.ua', viewText(sloped)).found[0]!)).toContain('ceiling along the slopes  610 sf');
});

test('what tells no U is named and not in the sum', () => {
  const windows = `${HOUSE}window glass 3' x 5'
room r on main
  size 19' x 29'
  windows 2 glass
`;
  expect(parts(windows)).toEqual({
    in: ['outside wall', 'ceiling', 'floor'],
    without: 'glass (no U) and air through cracks',
  });
  expect(parts(HOUSE.replace('  walls ext-2x6\n', '')).without).toContain('walls (made of nothing yet)');
  expect(parts(HOUSE.replace("  height 8'\n", '')).without).toContain('walls (no height)');
  expect(parts(`${HOUSE.replace('ext-2x6', 'bare')}assembly bare for wall\n  layer stud 2x4 at 16" oc\n`).without).toContain(
    'outside wall (air space tells no R)',
  );
});

test('a bare shed of which nothing tells a U has no heat loss', () => {
  const shed =
    "plan p\nlevel main\n  footprint 12' x 16'\n  height 8'\n  walls bare\nassembly bare for wall\n  layer stud 2x4 at 16\" oc\n";
  expect(parts(shed).in).toEqual([]);
  expect(explain('main.ua', viewText(shed)).found).toEqual([]);
});

test('explain answers for a level and for the plan, with its caution; a hint only where temperatures are given', () => {
  const cold = HOUSE.replace('  units feet\n', '  units feet\n  indoors 70 F\n  outdoors -5 F\n  infiltration 0.4\n');
  const view = viewText(cold);
  const [found] = explain('main.heat-loss', view).found;
  expect(found?.why).toMatch(/^It is [\d,.]+ Btu\/h\.$/);
  expect(explanationText(found!)).toContain('indoors over outdoors  75 degrees F');
  expect(explanationText(found!)).toContain('The licensed heating designer sizes equipment');
  expect(explain('plan.heat-loss', view).found[0]?.why).toBe(found?.why);
  expect(explain('p.ua', view).found).toHaveLength(1);
  const main = view.plan.model.list('level')[0]!;
  expect(heatText(main, view)).toMatch(/ Btu\/h lost$/);
  expect(heatText(viewText(HOUSE).plan.model.list('level')[0]!, viewText(HOUSE))).toBeUndefined();
});

test('in metres it is watts', () => {
  const metric = `plan p
  units metric
  indoors 20 C
  outdoors -15 C
level main
  footprint 8 m x 10 m
  height 2600 mm
  walls ext-48x198
`;
  const text = explanationText(explain('main.heat-loss', viewText(metric)).found[0]!);
  expect(text).toMatch(/heat loss {2}[\d.,]+ (k?W) /);
  expect(text).toContain('indoors over outdoors  35 K');
  expect(text).toMatch(/UA {2}[\d.]+ W\/K/);
  // Boards that tell no R are left out, which makes the loss a little greater than it is, and named.
  expect(text).toContain('R of wind-board, R of wood-cladding, ceiling');
});

describe('air that fans bring in', () => {
  const told = (line: string) =>
    explanationText(
      explain('p.heat-loss', viewText(HOUSE.replace('units feet\n', `units feet\n  indoors 70 F\n  outdoors 5 F\n${line}`)))
        .found[0]!,
    );
  // 40 cfm × 1.08 × 65 F = 2,808 Btu/h; running half of the time with three quarters recovered 40 × 50 % × 1.08 × 25 % × 65 = 351.
  const loss = (line: string) => Number(/It is ([\d,]+)/.exec(told(line))![1]!.replace(',', ''));
  test('is in the sum of the house, less what is recovered', () => {
    expect(Math.abs(loss('  fresh-air 40 cfm\n') - loss('') - 2808)).toBeLessThanOrEqual(1);
    expect(Math.abs(loss('  fresh-air 40 cfm, running 50%, recovers 75%\n') - loss('') - 351)).toBeLessThanOrEqual(1);
  });
  test('the answer says which air is in', () => {
    expect(told('')).toContain('air through cracks and air by fans (no fresh-air in the plan)');
    const both = told('  infiltration 0.35\n  fresh-air 40 cfm, recovers 75%\n');
    expect(both).toContain('(UA + air through cracks + air by fans) × difference');
    expect(both).toContain('heat of the air × (1 − share recovered)');
    // 20 × 30 × 8
    expect(both).toContain('4,800 cf');
    expect(both).not.toContain('not in it');
  });
});
