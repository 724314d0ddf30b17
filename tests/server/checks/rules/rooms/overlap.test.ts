// Rooms of one level that lie on one another.
import fc from 'fast-check';
import polygonClipping from 'polygon-clipping';
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'rooms/overlap';

test('the later room is told, with the area they share', () => {
  const plan = checked(`
    level main
      footprint 20' x 24'
    room bed on main at 0', 0'
      size 10' x 10'
    room bath on main at 9'-6", 4'
      size 6' x 8'
  `);
  expect(plan.messages(CODE)).toEqual([
    '"bath" and "bed" share 3 sf of floor: both cannot be built, and the floor is counted twice. Move or shrink one of them.',
  ]);
  expect(plan.marks(CODE)).toEqual([`line 5: 9'-6", 4'`]);
});

test('rooms of two levels may lie over each other, and rooms may touch', () => {
  const plan = checked(`
    level main
    level upper
    room bed on main at 0', 0'
      size 10' x 10'
    room bath on main at 10', 0'
      size 6' x 8'
    room loft on upper at 0', 0'
      size 10' x 10'
  `);
  expect(plan.messages(CODE)).toEqual([]);
});

const room = fc.record({
  x: fc.integer({ min: 0, max: 30 }),
  y: fc.integer({ min: 0, max: 30 }),
  width: fc.integer({ min: 1, max: 12 }),
  depth: fc.integer({ min: 1, max: 12 }),
});

test('pairs and areas are those that polygon-clipping finds', () => {
  fc.assert(
    fc.property(fc.array(room, { minLength: 2, maxLength: 12 }), (rooms) => {
      const text = rooms.map(
        ({ x, y, width, depth }, at) => `room place${at} on main at ${x}', ${y}'\n  size ${width}' x ${depth}'\n`,
      );
      const found = checked(`level main\n${text.join('')}`)
        .plan.findings.filter(({ code }) => code === CODE)
        .map(({ details }) => details.join(' '));
      const ring = ({ x, y, width, depth }: (typeof rooms)[number]): [number, number][] => [
        [x, y],
        [x + width, y],
        [x + width, y + depth],
        [x, y + depth],
      ];
      const expected = rooms.flatMap((one, at) =>
        rooms.slice(0, at).flatMap((other, under) => {
          const shared = polygonClipping.intersection([ring(one)], [ring(other)]);
          const area = shared.reduce((sum, [outer]) => sum + areaOf(outer ?? []), 0);
          return area > 0 ? [`place${at} place${under} ${area} sf`] : [];
        }),
      );
      expect(found).toEqual(expected);
    }),
    { seed: 7, numRuns: 60 },
  );
});

function areaOf(ring: readonly (readonly [number, number])[]): number {
  let twice = 0;
  ring.forEach(([x, y], at) => {
    const [nextX, nextY] = ring[(at + 1) % ring.length]!;
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}
