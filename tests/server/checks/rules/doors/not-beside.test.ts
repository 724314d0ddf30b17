// Doors to rooms that lie elsewhere in the plan.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'doors/not-beside';
const plan = (way: string, at: string): string => `
level main
level upper
door d-2868 2'-8" x 6'-8"
room bed on main at 0', 0'
  size 10' x 10'
  ${way}
room bath on main at ${at}
  size 5' x 8'
room loft on upper
`;

test('rooms on two sides of a wall share it', () => {
  expect(checked(plan('doors 1 d-2868 to bath', `10'-3 1/2", 0'`)).messages(CODE)).toEqual([]);
});

test.each([
  ['doors 1 d-2868 to bath', '"d-2868" leads from "bed" to "bath", but the two share no wall'],
  [`cased 3' x 6'-8" to bath`, 'The cased opening leads from "bed" to "bath", but the two share no wall'],
  ['open to bath', 'The open side leads from "bed" to "bath", but the two share no wall'],
])('%s, when that is elsewhere', (way, sentence) => {
  expect(checked(plan(way, `15', 12'`)).messages(CODE)[0]).toContain(sentence);
});

test('a room of another level, and the room itself', () => {
  expect(checked(plan('doors 1 d-2868 to loft', `15', 12'`)).messages(CODE)[0]).toMatch(/to "loft", which is on "upper"/);
  expect(checked(plan('doors 1 d-2868 to bed', `15', 12'`)).messages(CODE)[0]).toMatch(/leads from "bed" to itself/);
});

test('rooms without a place may touch', () => {
  expect(checked(plan('doors 1 d-2868 to bath', `15', 12'`).replace(` at 0', 0'`, '')).messages(CODE)).toEqual([]);
});
