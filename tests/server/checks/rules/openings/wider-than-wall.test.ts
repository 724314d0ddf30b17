// Openings along their wall.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'openings/wider-than-wall';
const types = `window w-3050 3' x 5'\nwindow w-rough 3' x 5', rough 3'-1" x 5'-1"\ndoor d-2868 2'-8" x 6'-8"\n`;

test('the rough opening must fit where it is known', () => {
  expect(checked(`${types}room a\n  size 3' x 8'\n  windows 1 w-3050 in south\n`).messages(CODE)).toEqual([]);
  expect(checked(`${types}room a\n  size 3' x 8'\n  windows 1 w-rough in south\n`).messages(CODE)[0]).toMatch(
    /"w-rough" is 3'-1" wide, 1" more than the south wall of "a" has/,
  );
});

test('without a side any wall will do', () => {
  expect(checked(`${types}room a\n  size 2' x 8'\n  windows 1 w-3050\n`).messages(CODE)).toEqual([]);
});

test('from its place along the wall it must not run past the end', () => {
  const plan = checked(`${types}room a\n  size 10' x 8'\n  windows 2 w-3050 in south at 1', 7'-6"\n`);
  expect(plan.messages(CODE)[0]).toMatch(
    /stands at 7'-6" from the left corner and would end at 10'-6", but the south wall of "a" is 10'-0" long/,
  );
  expect(plan.marks(CODE)).toEqual([`line 6: 2 w-3050 in south at 1', 7'-6"`]);
});

test('all openings of a wall together must fit', () => {
  const plan = checked(`${types}room a\n  size 10' x 8'\n  windows 3 w-3050 in south\n  doors 1 d-2868 in south\n`);
  expect(plan.messages(CODE)[0]).toMatch(/^4 openings of together 11'-8" stand in the south wall of "a", which is 10'-0" long/);
});

test('a door must fit into the stretch that two rooms share', () => {
  const plan = (north: string): string => `${types}level main
room bed on main at 0', 0'
  size 10' x 10'
  doors 1 d-2868 to bath
room bath on main at 10'-3 1/2", ${north}
  size 5' x 8'
`;
  expect(checked(plan(`7'`)).messages(CODE)).toEqual([]);
  expect(checked(plan(`8'`)).messages(CODE)[0]).toMatch(
    /"d-2868" is 2'-8" wide, 8" more than the wall it shares with "bath" of "bed" has/,
  );
});
