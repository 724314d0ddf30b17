// Rooms that nobody can enter.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'rooms/no-way-in';
const doors = `level main\ndoor d-3068 3' x 6'-8", exterior\ndoor d-2868 2'-8" x 6'-8"\n`;

test('a door counts from either side', () => {
  expect(
    checked(`${doors}room living on main\n  doors 1 d-3068 in south\nroom bed on main\n  doors 1 d-2868 to living\n`).messages(
      CODE,
    ),
  ).toEqual([]);
});

test('cased openings and open sides are ways in, too', () => {
  expect(
    checked(`${doors}
room living on main
  doors 1 d-3068 in south
  open to kitchen
room kitchen on main
room hall on main
  cased 3' x 6'-8" to living
`).messages(CODE),
  ).toEqual([]);
});

test('rooms that open to each other alone are told as one', () => {
  const plan = checked(`${doors}
room living on main
  doors 1 d-3068 in south
room bed on main
  doors 1 d-2868 to closet
room closet on main
`);
  expect(plan.messages(CODE)).toEqual([
    '"bed" and "closet" open to each other, but nothing leads there from the rest of the house, so a door is missing. Add it: "doors 1 d-2868 to hall".',
  ]);
});

test('a level without an outside door may be reached by stairs', () => {
  expect(
    checked(
      `level upper\ndoor d-2868 2'-8" x 6'-8"\nroom bed on upper\n  doors 1 d-2868 to landing\nroom landing on upper\n`,
    ).messages(CODE),
  ).toEqual([]);
});

test('a plan that has no doors yet is not told so room by room', () => {
  expect(checked('level main\nroom bed on main\nroom bath on main\n').messages(CODE)).toEqual([]);
});
