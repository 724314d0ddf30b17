// Published R-values of whole walls by parallel paths. Layers and air films as published by continuousinsulation.org:
// outside film 0.17, siding 0.62, 7/16 in sheathing 0.62, 2x6 stud 6.875; inside film 0.68 and board 0.45 from memory:
// ASHRAE Handbook of Fundamentals.
import { expect, test } from 'vitest';
import { assemblyFigures } from '#takeoff/assembly';
import { airFilms } from '#takeoff/conventions';
import { envelopeOf } from '#takeoff/heat/envelope';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const figures = (text: string, name: string) => {
  const plan = planOf(text, { library: 'built-in' });
  const assembly = plan.model.rows('assembly').find((each) => each.name === name);
  return assemblyFigures(assembly!, airFilms(plan.model));
};

const wall = (name: string, framed: string, outside = '') => `
assembly ${name} for wall
  layer drywall 1/2"
  layer ${framed}
  layer osb 7/16"
${outside}  layer housewrap
  layer lap-siding, 7" to the weather
  framing 25%
`;

test('Journal of Light Construction, To improve the energy performance of walls, look at total R-value: 2x6, R-23, 23% framing is R-18', () => {
  const { between, through, resistance } = figures('', 'ext-2x6-wool');
  expect(amount(between, 'R')).toBeCloseTo(25.54, 2);
  expect(amount(through, 'R')).toBeCloseTo(9.415, 3);
  expect(Math.round(amount(resistance, 'R'))).toBe(18);
  // With 15% of windows of U 0.30 it is R-11: 150 of 1,000 sf.
  const { model } = planOf(
    `
level main
  footprint 30' x 20'
  height    10'
  walls     ext-2x6-wool
window w-35 3' x 5', U 0.30
room all on main
  size    29' x 19'
  windows 10 w-35
`,
    { library: 'built-in' },
  );
  const parts = envelopeOf(model.list('level')[0]!, model)!.parts;
  const passing = ['outside wall', 'w-35'].map((label) =>
    amount(
      parts.find(({ form }) => form.label === label),
      'Btu/hF',
    ),
  );
  expect(passing[1]).toBeCloseTo(150 * 0.3, 4);
  expect(Math.round(1000 / (passing[0]! + passing[1]!))).toBe(11);
});

test('continuousinsulation.org: R-20.5 between studs only is about 16% worse than R-13 with 7.5 outside', () => {
  const text = `
material r20-half "R-20.5 batt" laid batts
  insulates R-20.5
material r7-half "R-7.5 board" laid sheets
  insulates R-7.5
${wall('inside-only', 'stud 2x6 at 16" oc, filled with r20-half')}
${wall('with-outside', 'stud 2x4 at 16" oc, filled with r13-batt', '  layer r7-half\n')}`;
  const only = amount(figures(text, 'inside-only').resistance, 'R');
  const outside = amount(figures(text, 'with-outside').resistance, 'R');
  expect(only).toBeCloseTo(16.9, 1);
  expect(outside).toBeCloseTo(20.0, 1);
  expect(Math.round((1 - only / outside) * 100)).toBe(16);
});

test('continuousinsulation.org: between steel studs the same is about 40% worse', () => {
  // What a filling is worth between steel is from memory: ANSI/ASHRAE/IES Standard 90.1, Table A9.2-2.
  const text = `
material r20-half "R-20.5 batt" laid batts
  insulates R-20.5
material r7-half "R-7.5 board" laid sheets
  insulates R-7.5
${wall('inside-only', 'steel-stud 2x6 at 16" oc, filled with r20-half')}
${wall('with-outside', 'steel-stud 2x4 at 16" oc, filled with r13-batt', '  layer r7-half\n')}`;
  const only = amount(figures(text, 'inside-only').resistance, 'R');
  const outside = amount(figures(text, 'with-outside').resistance, 'R');
  expect(only).toBeCloseTo(2.54 + 7.325, 2);
  expect(outside).toBeCloseTo(2.54 + 6 + 7.5, 2);
  // 38.5%: "about 40".
  expect(Math.abs((1 - only / outside) * 100 - 40)).toBeLessThan(2);
});

test('continuousinsulation.org, R-25 between studs against R-20 and 5 outside: layers as published, totals plain arithmetic', () => {
  const text = `
material r25-batt "R-25 batt" laid batts
  insulates R-25
${wall('deep-25', 'stud 2x6 at 16" oc, filled with r25-batt')}
${wall('shallow-25', 'stud 2x6 at 16" oc, filled with r20-batt', '  layer xps-board 1"\n')}`;
  expect(amount(figures(text, 'deep-25').resistance, 'R')).toBeCloseTo(18.6, 1);
  expect(amount(figures(text, 'shallow-25').resistance, 'R')).toBeCloseTo(22.4, 1);
});

test('a wall that does not say its framing has the share of walls as usually built: 25% (Building America Solution Center)', () => {
  const wall = (studs: string, kind = 'wall') => `
assembly lazy for ${kind}
  layer drywall 1/2"
  layer ${studs}
  layer osb 7/16"
  layer lap-siding, 7" to the weather
`;
  const batts = 'stud 2x6 at 16" oc, filled with r20-batt';
  const u = (text: string) => 1 / amount(figures(text, 'lazy').resistance, 'R');
  // 0.75 / 22.54 + 0.25 / 9.415, which the 2021 code's U of 0.060 for R-20 agrees with (from memory: N1102.1.2).
  expect(u(wall(batts))).toBeCloseTo(0.0598, 4);
  expect(u(wall(`${batts}\n  framing 25%`))).toBe(u(wall(batts)));
  // Said otherwise, that counts; framing of a ceiling goes by its spacing.
  expect(u(wall(`${batts}\n  framing 14%`))).toBeLessThan(u(wall(batts)));
  expect(u(wall(batts, 'ceiling'))).toBeLessThan(u(wall(`${batts}\n  framing 25%`, 'ceiling')));
});

test('ASHRAE 90.1-2010, Table A3.4.3.1, from memory: 2x4 at 16 in with R-13 is U-0.089; its own layers, stucco outside', () => {
  // 0.17, stucco 0.08, board 0.56 twice, 13 or 4.38, 0.68: 15.05 and 6.43; a quarter of it framing.
  const text = `
material stucco "Stucco" laid coats
  insulates R-0.08
material board-56 "Board" laid sheets
  insulates R-0.56
assembly table-wall for wall
  layer board-56
  layer stud 2x4 at 16" oc, filled with r13-batt
  layer board-56
  layer stucco
  framing 25%
`;
  const { between, through, resistance } = figures(text, 'table-wall');
  expect(amount(between, 'R')).toBeCloseTo(15.05, 2);
  expect(amount(through, 'R')).toBeCloseTo(6.43, 2);
  expect(1 / amount(resistance, 'R')).toBeCloseTo(0.0887, 4);
});

test('ASHRAE Handbook of Fundamentals, 2001 to 2005, from memory: 2x4 wall with an inch of foam, 21% studs and 4% headers', () => {
  const text = `
material siding-81 "Siding" laid courses
  insulates R-0.81
material foam-4 "Foam" laid sheets
  insulates R-4
assembly foam-wall for wall
  layer drywall 1/2"
  layer stud 2x4 at 16" oc, filled with r13-batt
  layer foam-4
  layer siding-81
  framing 25%
`;
  const { between, through, resistance } = figures(text, 'foam-wall');
  expect(amount(between, 'R')).toBeCloseTo(19.11, 2);
  // Headers lie a little better than studs there; taken as studs the wall is R 15.8 against about 15.9.
  expect(amount(through, 'R')).toBeCloseTo(10.49, 1);
  expect(amount(resistance, 'R')).toBeCloseTo(15.9, 0);
  expect(1 / amount(resistance, 'R')).toBeCloseTo(0.063, 3);
});
