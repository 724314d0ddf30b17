// Visits before the work is done. Published: county list of required inspections, item 3 (foundation wall: forms, steel,
// sleeves, openings must be there to be seen).
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'inspections/too-soon';
const wall = (steel: string, of: string): ReturnType<typeof checked> =>
  checked(`
    plan p
      start 2027-05-03
    trade concrete crew of 2 at $50/h
    trade city
    task wall-forms does form-stem-walls takes 2d by concrete
    task wall-steel does tie-stem-wall-steel takes 3d by concrete ${steel}
    inspection wall-check ${of} by city, to the end
  `);
const told = (plan: ReturnType<typeof checked>): readonly string[] => plan.told.filter((line) => line.includes(CODE));

test('what the plan names under "of" is waited for', () => {
  expect(told(wall(', not before 2027-05-20', 'of wall-forms, wall-steel'))).toEqual([]);
});

test('what only the library names is waited for, too, where the plan names nothing', () => {
  expect(told(wall(', not before 2027-05-20', ''))).toEqual([]);
});

test('a visit called before the steel is tied fails', () => {
  const plan = wall(', not before 2027-05-20, to the end', 'of wall-forms');
  expect(told(plan)).toEqual([`error ${CODE} wall-check`]);
  expect(plan.messages(CODE)).toEqual([
    '"wall-check" comes on 5 May, but "wall-steel", which such a visit looks at, is done on 24 May: it fails, and often costs a fee. Name the step under "of", or call later.',
  ]);
});

test('in time only by luck', () => {
  expect(told(wall('to the end', 'of wall-forms, not before 2027-06-01'))).toEqual([`warning ${CODE} wall-check`]);
});

test('what another visit looks at is left to that one', () => {
  const plan = checked(`
    plan p
      start 2027-05-03
    trade concrete crew of 2 at $50/h
    trade city
    task wall-forms does form-stem-walls takes 2d by concrete
    task wall-steel does tie-stem-wall-steel takes 3d by concrete, not before 2027-05-20
    inspection wall-check of wall-forms by city, to the end
    inspection steel-visit of wall-steel by city, to the end
  `);
  expect(told(plan)).toEqual([]);
});

test('of a work that it looks at in one place the plan has said which part', () => {
  const plan = checked(`
    plan p
      start 2027-05-03
    trench water 10' long, 2' deep, 1' wide
    trench storm 10' long, 2' deep, 1' wide
    trade digging crew of 2 at $50/h
    trade city
    task first does trench-and-lay of water takes 1d by digging
    task later does trench-and-lay of storm takes 1d by digging, not before 2027-07-01, to the end
    inspection sewer-check of first by city, to the end
  `);
  expect(told(plan)).toEqual([]);
});
