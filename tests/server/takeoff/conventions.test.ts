// Books that a plan chooses by name: each number is that of its own source, and a change of book is a change of numbers.
import { describe, expect, test } from 'vitest';
import { airFilms } from '#takeoff/conventions';
import { envelopeOf } from '#takeoff/heat/envelope';
import { amount } from '#tests/support/amounts';
import { checked } from '#tests/support/checked';
import { emptyPlanMemory, planOf } from '#tests/support/plan';

const house = (...counts: readonly string[]) => `
plan p
${counts.map((each) => `  counts ${each}\n`).join('')}level main
  footprint 24' x 50'
  height    8'
  walls     frame
assembly frame for wall
  layer stud 2x6 at 16" oc
foundation slab under main
  slab 4"
room all on main
  size    24' x 50'
  walls   drywall 1/2"
  ceiling bare
`;
const counted = (...counts: readonly string[]) => {
  const plan = planOf(house(...counts), { library: 'built-in' });
  return {
    studs: plan.lines('wall-stud-count', 'stud')[0]?.net.value,
    concrete: [amount(plan.purchase('slab-concrete').needed, 'cy'), amount(plan.purchase('slab-concrete').bought, 'cy')],
    board: plan.purchase('drywall 1/2"').bought.value,
  };
};

describe('published conventions that disagree', () => {
  test('studs: Dagostino & Peterson, 7th ed., p. 157, two more at a corner of 2x4 and one of 2x6; spaces alone in Modern Carpentry, 2022, p. 269', () => {
    // 146'-2" between the corners: 109.6, so 110 spaces.
    expect(counted().studs).toBe(110 + 1 + 4 * 2);
    expect(counted('studs by estimating-2x6').studs).toBe(110 + 1 + 4);
    expect(counted('studs by modern-carpentry').studs).toBe(110 + 4 * 2);
    expect(counted('studs by simple-studs').studs).toBe(110 + 1);
    // Two walls of 50 ft and two of 24: 39 and 19 each.
    expect(counted('studs by each-wall').studs).toBe(2 * 39 + 2 * 19 + 4 * 2);
  });

  test('concrete: 8% by quarter yards (Dagostino & Peterson, ch. 10), 10% (NAVEDTRA 14070), whole yards (Peterson)', () => {
    const net = 1200 / 3 / 27;
    expect(counted().concrete).toEqual([expect.closeTo(net * 1.08, 6), 16]);
    // 16.3: the manual prints the nearest, an order goes up.
    expect(counted('slab-concrete by navy-concrete').concrete).toEqual([expect.closeTo(net * 1.1, 6), 16]);
    expect(counted('slab-concrete by tenth-more-concrete').concrete).toEqual([expect.closeTo(net * 1.1, 6), 17]);
    expect(counted('slab-concrete by textbook-concrete').concrete).toEqual([expect.closeTo(net * 1.08, 6), 16]);
  });

  test('board: rounded once, or in each part and again (Dagostino & Peterson, example 16-3)', () => {
    // 1,184 sf are 37 sheets.
    expect(counted().board).toBe(39);
    expect(counted('drywall by sheets-by-part').board).toBe(39);
  });

  test('laps of bars: a tenth of the length (course take-off CVE-367-08), or 18 in at each end of 20 ft (questions to Peterson)', () => {
    const bars = (choice: string) => {
      const plan = planOf(`plan p\n${choice}foundation strip\n  318' long\n  footing 2' x 1', 4 #5\n`, { library: 'built-in' });
      return amount(plan.line('footing-bar-length', 'rebar').needed, 'ft');
    };
    expect(bars('')).toBeCloseTo(1272 * 1.1, 6);
    expect(bars('  counts rebar by bars-by-lap\n')).toBeCloseTo((1272 * 20) / 18.5, 6);
  });

  test('a least order is bought whole, and the plan may say its own', () => {
    const plan = planOf(
      `plan p\n  counts slab-concrete by short-load\nconvention short-load of slab-concrete\n  least 2 cy\nfoundation base\n  slab 4", 81 sf\n`,
      { library: 'built-in' },
    );
    expect(amount(plan.purchase('slab-concrete').needed, 'cy')).toBeCloseTo(1.08, 6);
    expect(amount(plan.purchase('slab-concrete').bought, 'cy')).toBe(2);
  });
});

test('another book in the same memory gives what a fresh look gives', () => {
  const memory = emptyPlanMemory();
  const lines = (text: string, kept = memory) =>
    planOf(text, { library: 'built-in', memory: kept }).takeOff.lines.map(
      ({ id, net, needed }) => `${id} ${net.value} ${needed?.value}`,
    );
  for (const counts of [[], ['studs by simple-studs'], ['slab-concrete by navy-concrete'], []]) {
    const text = house(...counts);
    expect(lines(text)).toEqual(lines(text, emptyPlanMemory()));
  }
});

test('a book that does not count the thing is told, and one that is not there', () => {
  expect(checked(house('studs by navy-concrete')).messages('goods/counts-nothing')).toEqual([
    '"Engineering Aid: concrete" says nothing of studs, so nothing is counted otherwise. It counts concrete, slab-concrete; choose a convention that counts studs, or override the row.',
  ]);
  expect(checked(house('studs by old-book')).told).toContain('error names/unknown p');
});

test('stringers, air films, slab edges and vents of attics are rows, too: a plan may choose its own', () => {
  const text = (chosen: string) => `plan p
  units feet
${chosen}convention mine of stairs, air-films, slab-edges, attic-vents
  stringer-spacing 12"
  film outside R-0
  film level R-1
  edge bare as 0.5 Btu/hF/ft
  high-vents 0%
assembly wall-a for wall
  layer osb 7/16"
level main
  footprint 30' x 40'
  height 8'
foundation slab under main
  slab 4"
roof top over main
  shape gable 6:12
  vents 1/300
deck porch
  size 8' x 6'
  high 22"
  boards deck-board 5/4x6
  steps 3, 4' wide
`;
  const chosen = `  counts stairs by mine\n  counts air-films by mine\n  counts slab-edges by mine\n  counts attic-vents by mine\n`;
  const [usual, mine] = [planOf(text(''), { library: 'built-in' }), planOf(text(chosen), { library: 'built-in' })];
  const stringers = (plan: typeof usual) => plan.line('step-stringer-length').pieces![0]!.count.value;
  expect([stringers(usual), stringers(mine)]).toEqual([4, 5]);
  const films = (plan: typeof usual) => amount(airFilms(plan.model).level, 'R');
  expect(films(usual)).toBeCloseTo(0.68, 9);
  expect(films(mine)).toBeCloseTo(1, 9);
  const edge = (plan: typeof usual) =>
    amount(
      envelopeOf(plan.model.list('level')[0]!, plan.model)!.parts.find(({ form }) => form.label === 'edge of the slab')!,
      'Btu/hF',
    );
  expect(edge(usual)).toBeCloseTo(0.73 * 140, 9);
  expect(edge(mine)).toBeCloseTo(0.5 * 140, 9);
  expect(usual.lines('high-vent-area').length).toBeGreaterThan(0);
  expect(mine.lines('high-vent-area')).toEqual([]);
});
