// Counted goods in listings by room, trade and element: no half screw, and the groups add up to the whole of the plan.
import { expect, test } from 'vitest';
import { takeOffTable } from '#answers/takeoff-table';
import { viewText } from './plans.ts';

// A passage latch for each of two doors; shims 12 to a door, with waste: shared by rooms, trades and elements they stay whole.
const HOUSE = `plan p
  units feet
level main
  footprint 24' x 32'
  height 8'
  partitions int-2x4
door d-in 2'-8" x 6'-8"
window w-a 3' x 4'
room one on main
  size 10' x 13'
  walls paint
  ceiling paint
  doors 1 d-in
  windows 1 w-a in south
room two on main
  size 9' x 11'
  walls paint
  ceiling paint
  doors 1 d-in
`;

test.each(['element', 'room', 'part'] as const)('by %s', (by) => {
  const view = viewText(HOUSE);
  const net = (row: readonly string[]) => row.map((cell) => cell.trim());
  const rows = takeOffTable(by, view).rows.flatMap((row) => (typeof row === 'string' ? [] : [net(row)]));
  const items = takeOffTable('item', view).rows.flatMap((row) => (typeof row === 'string' ? [] : [net(row)]));
  const counted = items.filter(([, amount]) => /^[\d,]+$/.test(amount ?? ''));
  expect(counted.length).toBeGreaterThan(2);
  for (const [label, amount] of counted) {
    const own = rows.filter((row) => row.includes(label!)).map((row) => row[row.indexOf(label!) + 1]!);
    expect(
      own.every((each) => /^[\d,]+$/.test(each)),
      `${label}: ${own.join(' ')}`,
    ).toBe(true);
    expect(
      own.reduce((sum, each) => sum + Number(each.replace(',', '')), 0),
      label,
    ).toBe(Number(amount!.replace(',', '')));
  }
});
