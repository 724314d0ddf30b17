// Weight of an assembly for each unit of its area, by plain arithmetic from weights of the test's own.
import { expect, test } from 'vitest';
import { assemblyFigures } from '#takeoff/assembly';
import { airFilms } from '#takeoff/conventions';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const weight = (layers: string) => {
  const { model } = planOf(`material board laid sheets
  weighs 2 lb/sf
material pole laid framing
  actual 1 1/2" x 6"
  weighs 2 lb/lf
material beam laid framing
  actual 1 1/2" x 6"
  density 32 lb/cf
material wool laid batts
  weighs 1 lb/cf
material silent laid sheets
assembly a for wall
${layers}`);
  const { weight: all, unknown } = assemblyFigures(model.list('assembly')[0]!, airFilms(model));
  return { all: amount(all, 'lb/sf'), unknown: unknown.weight };
};

test('a board, a pole of 2 pounds a foot every 24 inches, half a foot of wool at a pound a cubic foot', () => {
  expect(weight('  layer board 1/2"\n').all).toBeCloseTo(2, 9);
  expect(weight('  layer pole 2x6 at 24" oc\n').all).toBeCloseTo(1, 9);
  expect(weight('  layer board 1/2"\n  layer pole 2x6 at 24" oc, filled with wool\n').all).toBeCloseTo(2 + 1 + 0.5, 9);
});

test('pieces by the weight of their volume: 1 1/2 by 6 inches of 32 pounds a cubic foot every 24 inches weigh a pound', () => {
  expect(weight('  layer beam 2x6 at 24" oc\n').all).toBeCloseTo(1, 9);
});

test('what tells no weight is named', () => {
  expect(weight('  layer board 1/2"\n  layer silent 1/2"\n')).toEqual({ all: expect.closeTo(2, 9), unknown: ['silent'] });
  expect(weight('  layer pole 2x6 at 24" oc, filled with silent\n').unknown).toEqual(['silent']);
});
