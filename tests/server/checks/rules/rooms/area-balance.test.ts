// Rooms and walls against the floor they stand on.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'rooms/area-balance';
const level = `level main\n  footprint 20' x 24'\n  walls ext-2x6\n  partitions int-2x4`;

test('rooms without a place that need more floor than there is cannot be built', () => {
  // Inside the walls 19'-1" x 23'-1", 440.5 sf; 40 ft of partition stand on 11.7 sf of it.
  const plan = checked(`${level}, 40' long\nroom living on main\n  size 19'-1" x 12'\nroom bed on main\n  size 19'-1" x 11'\n`);
  expect(plan.told).toContain('error rooms/area-balance main');
  expect(plan.messages(CODE)[0]).toMatch(
    /^The rooms of "main" have 438\.9 sf and its partitions stand on 11\.7 sf, but inside its outside walls there are 440\.5 sf: 10\.1 sf too much\./,
  );
  expect(plan.marks(CODE)).toEqual([`line 2: 20' x 24'`]);
});

test('floor that belongs to no room is a note, once it is more than walls take', () => {
  const plan = checked(`${level}\nroom living on main\n  size 19'-1" x 15'\n`);
  expect(plan.told).toContain('note rooms/area-balance main');
  expect(plan.messages(CODE)[0]).toMatch(/154\.3 sf belong to no room/);
  expect(checked(`${level}\nroom living on main\n  size 19'-1" x 20'-6"\n`).messages(CODE)).toEqual([]);
});

test('of placed rooms the walls are seen between them', () => {
  const rooms = (north: string): string => `
room living on main at 5 1/2", 5 1/2"
  size 19'-1" x 12'
room bed on main at 5 1/2", ${north}
  size 19'-1" x 10'-9 1/2"
`;
  expect(checked(`${level}${rooms(`12'-9"`)}`).messages(CODE)).toEqual([]);
});

test('a room without a size leaves open what is left', () => {
  expect(checked(`${level}\nroom living on main\n  size 10' x 10'\nroom bed on main\n`).messages(CODE)).toEqual([]);
});
