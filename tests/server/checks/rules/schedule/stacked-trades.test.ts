// Two trades in one room at once.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'schedule/stacked-trades';
const plan = (room = '', after = ''): string => `plan p
  start 2027-04-05
room bath
${room}trade tile "Tile" crew of 2
trade plumbing "Plumbing" crew of 2
task tile-bath takes 2d by tile in bath
task tub takes 1d by plumbing in bath${after}
`;

test('both named for the same room, at once', () => {
  expect(checked(plan()).messages(CODE)).toEqual([
    '"tile-bath" (Tile) and "tub" (Plumbing) are both in "bath" from 5 Apr: they stand in each other’s way, and who comes second waits or goes home. Let one wait for the other, or write in the room how many crews it has room for: "crews 1" keeps them apart, "crews 2" lets both in.',
  ]);
});

test('one after the other, or a room that says how many it has room for', () => {
  expect(checked(plan('', ', after tile-bath')).messages(CODE)).toEqual([]);
  expect(checked(plan('  crews 1\n')).messages(CODE)).toEqual([]);
  expect(checked(plan('  crews 2\n')).messages(CODE)).toEqual([]);
});

test('other rooms, and one trade with two crews, are no matter', () => {
  expect(checked(plan().replace('plumbing in bath', 'plumbing')).messages(CODE)).toEqual([]);
  const same = plan()
    .replace('by plumbing', 'by tile')
    .replace('crew of 2\ntrade plumbing', 'crew of 2, crews 2\ntrade plumbing');
  expect(checked(same).messages(CODE)).toEqual([]);
});
