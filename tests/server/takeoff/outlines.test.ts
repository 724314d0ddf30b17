// Walls, footings, slabs and strips round right-angled outlines of any shape. The referee is the npm package
// polygon-clipping: bands along the sides, united with the outline or taken from it.
import * as fc from 'fast-check';
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping';
import { expect, test } from 'vitest';
import type { Outline } from '#kit/shapes/outline';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';
import { randomOutline } from '../kit/shapes/random-outline.ts';

/** One unit of a random outline is ten feet, so that no bay is narrower than two walls. */
const UNIT = 10;
/** Feet. */
const WALL = 8 / 12;
const FOOTING = 2;
const AROUND = 2;

const rows = `
item stripping by area
item concrete by volume
material plank laid boards
material joist laid framing
  size 2x10 actual 1 1/2" x 9 1/4"
assembly joists for floor
  layer joist 2x10 at 16" oc
work all
  installs stripping by strip-area
  installs concrete by stem-wall-volume, footing-volume, slab-volume
  installs plank by floor-finish-area
  installs joist by floor-frame-length
`;

test('strip, footing, wall and slab of any outline are what the bands along its sides cover', () => {
  fc.assert(
    fc.property(randomOutline, (outline) => {
      const feet = inFeet(outline);
      const plan = planOf(
        `
level main
  footprint ${walk(feet)}
site
  clear ${AROUND}' around
foundation under main
  footing 24" x 12"
  wall    8" x 1'
  slab    12"
room all on main
  outline ${walk(feet)}
  floor   plank
`,
        { library: [rows] },
      );
      const out = (distance: number) => areaOf(polygonClipping.union(polygon(feet), ...bands(feet, distance)));
      const inside = (distance: number) => areaOf(polygonClipping.difference(polygon(feet), ...bands(feet, distance)));
      const projection = (FOOTING - WALL) / 2;
      close(amount(plan.line('strip-area', 'stripping').net, 'sf'), out(AROUND));
      close(amount(plan.line('stem-wall-volume').net, 'cf'), out(0) - inside(WALL));
      close(amount(plan.line('footing-volume').net, 'cf'), out(projection) - inside(WALL + projection));
      close(amount(plan.line('slab-volume').net, 'cf'), inside(WALL));
      close(amount(plan.line('floor-finish-area', 'plank').net, 'sf'), out(0));
      expect(plan.messages.filter((message) => message.startsWith('takeoff/outline'))).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

test('joists of any outline cover it: their length by the spacing is the area, and at most a space more to each part', () => {
  fc.assert(
    fc.property(randomOutline, (outline) => {
      const feet = inFeet(outline);
      const plan = planOf(`level main\n  footprint ${walk(feet)}\n  floor joists\n`, { library: [rows] });
      const [frame] = plan.lines('floor-frame-length', 'joist');
      const spacing = 16 / 12;
      const covered = amount(frame?.net, 'ft') * spacing;
      const area = areaOf(polygonClipping.union(polygon(feet)));
      const slack = (frame?.pieces ?? []).reduce((sum, { length }) => sum + 2 * amount(length, 'ft') * spacing, 0);
      expect(covered).toBeGreaterThanOrEqual(area - 1e-6);
      expect(covered).toBeLessThanOrEqual(area + slack + 1e-6);
    }),
    { numRuns: 60 },
  );
});

test('the parts of an L have their joists the short way of each: 16 ft across the bar, 14 ft beyond it', () => {
  const plan = planOf("level main\n  footprint 40' x 16', plus 20' x 14' at 0, 16'\n  floor joists\n", { library: [rows] });
  const { pieces } = plan.line('floor-frame-length', 'joist');
  expect(pieces?.map(({ count, length }) => [count.value, amount(length, 'ft')])).toEqual([
    [31, 16],
    [16, 14],
  ]);
});

test('sides that do not close are told with what is missing', () => {
  const plan = planOf(`room odd\n  outline east 10', north 4', west 9', south 4'\n`);
  expect(plan.messages).toEqual([
    'takeoff/outline-open: The sides of "odd" do not close: the walk ends 1\'-0" short of where it began, to the west. Nothing of it can be counted; correct a side.',
  ]);
});

function close(ours: number, theirs: number): void {
  expect(Math.abs(ours - theirs)).toBeLessThan(1e-4 * Math.max(1, theirs));
}

function inFeet(outline: Outline): Outline {
  // The random outline's own scale is undone by its smallest step.
  const steps = outline.flatMap(({ x, y }, index) => {
    const next = outline[(index + 1) % outline.length]!;
    return [Math.abs(next.x - x), Math.abs(next.y - y)].filter((step) => step > 0);
  });
  const scale = steps.every((step) => step % 8128 === 0) ? 8128 : steps.every((step) => step % 127 === 0) ? 127 : 1;
  const west = Math.min(...outline.map(({ x }) => x));
  const south = Math.min(...outline.map(({ y }) => y));
  return outline.map(({ x, y }) => ({ x: ((x - west) / scale) * UNIT, y: ((y - south) / scale) * UNIT }));
}

function walk(outline: Outline): string {
  return outline
    .map((from, index) => {
      const to = outline[(index + 1) % outline.length]!;
      if (to.x !== from.x) return `${to.x > from.x ? 'east' : 'west'} ${Math.abs(to.x - from.x)}'`;
      return `${to.y > from.y ? 'north' : 'south'} ${Math.abs(to.y - from.y)}'`;
    })
    .join(', ');
}

function polygon(outline: Outline): Polygon {
  const ring = outline.map(({ x, y }) => [x, y] as [number, number]);
  return [[...ring, ring[0]!]];
}

/** A rectangle round each side, so far beyond it in every direction. */
function bands(outline: Outline, distance: number): Polygon[] {
  if (distance === 0) return [];
  return outline.map((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    const west = Math.min(from.x, to.x) - distance;
    const east = Math.max(from.x, to.x) + distance;
    const south = Math.min(from.y, to.y) - distance;
    const north = Math.max(from.y, to.y) + distance;
    return [
      [
        [west, south],
        [east, south],
        [east, north],
        [west, north],
        [west, south],
      ],
    ];
  });
}

function areaOf(shape: MultiPolygon): number {
  return shape.reduce(
    (sum, [outer, ...holes]) => sum + ringArea(outer!) - holes.reduce((holed, hole) => holed + ringArea(hole), 0),
    0,
  );
}

function ringArea(ring: readonly (readonly [number, number])[]): number {
  const twice = ring.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = ring[(index + 1) % ring.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}
