// Work over what a visit is to see. Published: Washington State plan form quoting 2015 International Residential Code R109.1
// (nothing is covered before it is approved); which work hides which is common practice.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'inspections/covered';
const own = (visit: string, more = ''): string => `
plan p
  start 2027-05-03
trade masons crew of 2 at $50/h
trade city
work lath "Wire lath"
  scope per element
work stucco "Stucco"
  hides lath
task lath does lath takes 3d by masons
inspection lath-visit of lath ${visit}
task scratch does stucco takes 2d by masons ${more}, to the end
`;

test('held by name: silent', () => {
  expect(checked(own('before scratch by city')).told).toEqual([]);
});

test('begun before the visit by its date: an error that names both days', () => {
  const plan = checked(own('by city, not before 2027-05-10, to the end', 'after lath'));
  expect(plan.loud).toEqual([`error ${CODE} scratch`]);
  expect(plan.messages(CODE)).toEqual([
    '"scratch" begins on 6 May and hides "lath", before "lath-visit" has passed on 10 May: it would come out again for the inspector. Hold it until the visit has passed: name it under "before".',
  ]);
});

test('right by luck: a warning', () => {
  expect(checked(own('by city, to the end', 'not before 2027-05-20')).loud).toEqual([`warning ${CODE} scratch`]);
});

test('what was passed before the cover began is a fact', () => {
  const done = `${own('by city, to the end', 'after lath')}
progress 2027-05-10
  lath finished 2027-05-05
  lath-visit passed 2027-05-06
  scratch started 2027-05-07
`;
  expect(checked(done).loud).toEqual([]);
});

test('a cover in another room hides nothing', () => {
  const rooms = (where: string): readonly string[] =>
    checked(
      own('by city, not before 2027-05-10, to the end', `after lath in ${where}`)
        .replace('does lath takes', 'does lath in bath takes')
        .replace('plan p', 'level main\nroom bath on main\nroom hall on main\nplan p'),
    ).loud.filter((line) => line.includes(CODE));
  expect(rooms('hall')).toEqual([]);
  expect(rooms('bath')).toEqual([`error ${CODE} scratch`]);
});

// The library's visit of the wires is held before batts and board; a plan that holds only the board lets batts hide them.
test('a visit of the library that the plan holds less by', () => {
  const plan = (before: string): ReturnType<typeof checked> =>
    checked(`
      plan p
        start 2027-05-03
      trade us crew of 2 at $50/h
      trade city
      task wires does rough-wiring takes 2d by us
      inspection wiring-rough of wires ${before} by city, not before 2027-05-17
      task batts does place-batts takes 2d by us after wires, to the end
      task board does hang-board takes 2d by us after wires, wiring-rough, to the end
    `);
  expect(plan('before board').loud.filter((line) => line.includes(CODE))).toEqual([`error ${CODE} batts`]);
  expect(plan('').loud.filter((line) => line.includes(CODE))).toEqual([]);
});

test('what a rule of order tells is told once', () => {
  const plan = checked(`
    plan p
      start 2027-05-03
    trade us crew of 2 at $50/h
    trade city
    task batts does place-batts takes 2d by us
    inspection insulation-check of batts before tape by city, not before 2027-05-17
    task board does hang-board takes 2d by us after batts
    task tape does tape-board takes 2d by us after board, to the end
  `);
  expect(plan.loud.filter((line) => line.endsWith(' board'))).toEqual(['error sequence/board-before-insulation-check board']);
});

test('what is covered in another house hides nothing of this one', () => {
  const plan = (house: string): ReturnType<typeof checked> =>
    checked(`
      plan p
        start 2027-05-03
      level one
      level two
      room den on one
        size 12' x 10'
      trade us crew of 2 at $50/h
      trade city
      task wires does rough-wiring takes 2d in den by us
      inspection look of wires by city, not before 2027-05-17, to the end
      task batts does place-batts takes 2d on ${house} by us, to the end
    `);
  expect(plan('one').loud.filter((line) => line.includes(CODE))).toEqual([`error ${CODE} batts`]);
  expect(plan('two').loud.filter((line) => line.includes(CODE))).toEqual([]);
});

// "Board goes up, before the wiring is seen: so much of board would come off again": the amount is the take-off's own,
// 2 walls of 12' and 2 of 10', 8' high, and the ceiling: 352 + 120 = 472 sf, by hand.
test('the amount that would come out again', () => {
  const plan = checked(`
    plan p
      start 2027-05-03
    level main
      footprint 13' x 11'
      height 8'
    room den on main
      size 12' x 10'
      walls drywall 1/2", paint
      ceiling drywall 1/2", paint
    trade us crew of 2 at $50/h
    trade city
    task batts does place-batts takes 2d by us
    inspection insulation-check of batts before tape by city, not before 2027-05-17
    task board does hang-board takes 2d by us after batts
    task tape does tape-board takes 2d by us after board, to the end
  `);
  expect(plan.messages('sequence/board-before-insulation-check')[0]).toMatch(
    /^"board" begins on 5 May, before "insulation-check" has passed on 17 May: 472 sf of Drywall 1\/2" would come out again\. /,
  );
});
