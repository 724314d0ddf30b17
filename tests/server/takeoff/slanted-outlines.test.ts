// Walls, footings, slabs and floors of outlines with slanted sides, and bays. The referee for what lies within and around
// is the npm package polygon-clipping: the half-planes along all sides of a convex outline, cut with each other.
import * as fc from 'fast-check';
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { replay } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Measure } from '#takeoff/lines';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const WALL = 8 / 12;
const FOOTING = 2;
const AROUND = 3;

/** A rectangle with corners cut off, in feet. */
const cutRectangle = fc
  .record({
    width: fc.integer({ min: 24, max: 60 }),
    depth: fc.integer({ min: 24, max: 60 }),
    cuts: fc.array(fc.option(fc.tuple(fc.integer({ min: 3, max: 11 }), fc.integer({ min: 3, max: 11 }))), {
      minLength: 4,
      maxLength: 4,
    }),
  })
  .map(({ width, depth, cuts }) => {
    const corners: readonly (readonly [number, number])[] = [
      [0, 0],
      [width, 0],
      [width, depth],
      [0, depth],
    ];
    return corners.flatMap(([x, y], index): readonly (readonly [number, number])[] => {
      const cut = cuts[index];
      if (cut === null || cut === undefined) return [[x, y]];
      const [level, upright]: readonly [number, number][] = [
        [x === 0 ? cut[0] : x - cut[0], y],
        [x, y === 0 ? cut[1] : y - cut[1]],
      ];
      return index % 2 === 0 ? [upright!, level!] : [level!, upright!];
    });
  });

test('strip, footing, wall and slab of convex outlines are what half-planes along their sides leave', () => {
  fc.assert(
    fc.property(cutRectangle, (outline) => {
      const corners = outline.map(([x, y]) => `${x}' x ${y}'`).join(', ');
      const plan = planOf(
        `level main
  footprint corners ${corners}
site
  clear ${AROUND}' around
foundation under main
  footing 24" x 12"
  wall    8" x 1'
  slab    12"
room all on main
  outline corners ${corners}
  floor   plank
`,
        { library: 'built-in' },
      );
      const moved = (out: number) => areaOf(within(outline, out));
      const projection = (FOOTING - WALL) / 2;
      const close = (ours: number, theirs: number) => expect(Math.abs(ours - theirs)).toBeLessThan(1e-3 * Math.max(1, theirs));
      close(amount(plan.line('stem-wall-volume').net, 'cf'), moved(0) - moved(-WALL));
      close(amount(plan.line('footing-volume').net, 'cf'), moved(projection) - moved(-WALL - projection));
      close(amount(plan.line('slab-volume').net, 'cf'), moved(-WALL));
      close(amount(plan.line('floor-finish-area', 'plank').net, 'sf'), moved(0));
      expect(plan.messages.filter((message) => message.startsWith('takeoff/outline'))).toEqual([]);
    }),
    { numRuns: 25 },
  );
});

const walls = `  height 8'
  walls  cabin-wall
  floor  cabin-floor
assembly cabin-wall for wall
  layer drywall 1/2"
  layer stud 2x6 at 16" oc, filled with r21-batt
  layer osb 7/16"
  layer housewrap
assembly cabin-floor for floor
  layer subfloor 23/32"
  layer joist 2x10 at 16" oc
`;
const built = (text: string) => planOf(text, { library: 'built-in' });

describe('a house of 28 by 32 ft with a bay 8 ft wide and 2 ft deep, its sides at 45 degrees', () => {
  const plan = built(`level main
  footprint 28' x 32'
  bay 8' x 2' in south at 6'
${walls}`);
  const facts = factsOf(plan.model.list('level')[0]!);
  // Its front is 8 - 2 x 2 = 4 ft, its sides 2 x 1.41421 ft.
  const round = 120 - 8 + 4 + 4 * Math.sqrt(2);

  test('floor (8 + 4) / 2 x 2 = 12 sf more, and once round', () => {
    expect(amount(facts['floor-area'], 'sf')).toBeCloseTo(896 + 12, 9);
    expect(amount(facts.perimeter, 'ft')).toBeCloseTo(round, 4);
    expect(amount(facts['slanted-length'], 'ft')).toBeCloseTo(4 * Math.sqrt(2), 4);
    expect(amount(facts['south-length'], 'ft')).toBeCloseTo(28 - 8 + 4, 9);
    expect(facts.corners?.value).toBe(8);
    expect(replay(facts['floor-area']!)).toBe(facts['floor-area']!.value);
    expect(replay(facts.perimeter!)).toBe(facts.perimeter!.value);
  });

  test('walls, plates and rim follow', () => {
    expect(amount(plan.lines('wall-gross-area')[0]!.net, 'sf')).toBeCloseTo(round * 8, 3);
    // Corners take the tangent of half their turn: four square ones 1, two outward and two inward of 45 degrees cancel out.
    expect(amount(plan.line('wall-plate-length', 'plate 2x6').net, 'ft')).toBeCloseTo(3 * (round - (4 * 5.5) / 12), 3);
    // The first and last joist, 28 ft long, close two sides.
    expect(amount(plan.line('rim-length', 'rim-board 2x10').net, 'ft')).toBeCloseTo(round - 2 * 28, 4);
    expect(amount(plan.line('floor-deck-area', 'subfloor 23/32"').net, 'sf')).toBeCloseTo(908, 6);
  });

  test('studs: one a space and one, and two more at each of the eight corners, square or not', () => {
    const along = Math.ceil((round - (4 * 5.5) / 12) / (16 / 12)) + 1;
    expect(plan.line('wall-stud-count', 'stud 2x6').net.value).toBe(along + 8 * 2);
  });

  test('a book that adds nothing at corners adds nothing at slanted ones', () => {
    const simple = built(`plan bay
  counts studs by simple-studs
level main
  footprint 28' x 32'
  bay 8' x 2' in south at 6'
${walls}`);
    expect(simple.line('wall-stud-count', 'stud 2x6').net.value).toBe(Math.ceil((round - (4 * 5.5) / 12) / (16 / 12)) + 1);
  });

  test('joists of the house as without the bay; in the bay they run out from the wall', () => {
    const joists = (bay: string) =>
      built(`level main\n  footprint 28' x 32'\n  bay ${bay}\n${walls}`)
        .line('floor-frame-length', 'joist 2x10')
        .pieces?.map(({ count, length }) => [count.value, amount(length, 'in')]);
    // Across 32 ft at 16 in: 25 of 28 ft. Across the bay at 16, 32, 48, 64 and 80 in it is 16, 24, 24, 24 and 16 in deep.
    expect(joists("8' x 2' in north at 6'")).toEqual([
      [25, 28 * 12],
      [3, 24],
      [2, 16],
    ]);
    // Where they carry the bay they reach back twice as far.
    expect(joists("8' x 2' in north at 6', hung")).toEqual([
      [25, 28 * 12],
      [3, 72],
      [2, 48],
    ]);
  });

  test('a footprint with slanted sides has joists at the spacing, each as long as the floor is there', () => {
    // 20 x 20 ft with 4 ft cut off: 13 up to 16 ft from the start, then 1 ft 4 in less at each space, 16 ft at the end.
    const plan = built(`level main\n  footprint corners 0 x 0, 20' x 0, 20' x 16', 16' x 20', 0 x 20'\n${walls}`);
    expect(
      plan.line('floor-frame-length', 'joist 2x10').pieces?.map(({ count, length }) => [count.value, amount(length, 'in')]),
    ).toEqual([
      [13, 240],
      [1, 224],
      [1, 208],
      [1, 192],
    ]);
  });

  test('the same by its corners, and walked', () => {
    const others = [
      "corners 0 x 0, 6' x 0, 8' x -2', 12' x -2', 14' x 0, 28' x 0, 28' x 32', 0 x 32'",
      `east 6', southeast 2'-9 15/16", east 4', northeast 2'-9 15/16", east 14', north 32', west 28', south 32'`,
    ];
    for (const footprint of others) {
      const other = factsOf(built(`level main\n  footprint ${footprint}\n${walls}`).model.list('level')[0]!);
      expect(amount(other['floor-area'], 'sf')).toBeCloseTo(908, 1);
      expect(amount(other.perimeter, 'ft')).toBeCloseTo(round, 2);
    }
  });
});

test('on every side, and at 30 degrees: 2 ft deep its sides go 2 x 1.73205 ft back', () => {
  for (const side of ['north', 'east', 'south', 'west']) {
    const level = built(`level main\n  footprint 28' x 32'\n  bay 10' x 2' in ${side} at 4', 30 degrees\n`).model.list(
      'level',
    )[0]!;
    const back = 2 * Math.sqrt(3);
    expect(amount(factsOf(level)['floor-area'], 'sf')).toBeCloseTo(896 + (10 - back) * 2, 2);
    expect(amount(factsOf(level).perimeter, 'ft')).toBeCloseTo(120 - 2 * back + 2 * 4, 2);
  }
});

test('a bay that hangs on the joists has no foundation, and a soffit under it', () => {
  const of = (hung: string) =>
    built(`level main
  footprint 28' x 32'
  bay 8' x 2' in south at 6'${hung}
${walls}foundation under main
  footing 16" x 8"
  wall 8" x 4'
`);
  const [standing, hanging] = [of(''), of(', hung')];
  const length = (plan: typeof standing) => amount(plan.line('stem-wall-volume').net, 'cf') / ((8 / 12) * 4);
  expect(length(hanging)).toBeCloseTo(120 - (4 * 8) / 12, 4);
  expect(length(standing)).toBeCloseTo(120 - 4 + 4 * Math.sqrt(2) - (4 * 8) / 12, 3);
  expect(standing.lines('soffit-area')).toEqual([]);
  expect(amount(hanging.line('soffit-area').net, 'sf')).toBeCloseTo(12, 6);
});

describe('what fits nowhere is told', () => {
  test.each([
    ["bay 8' x 2' in south at 22'", ['takeoff/bay-misfit']],
    ["bay 4' x 2' in south at 6'", ['takeoff/bay-misfit']],
    ["bay 8' x 2' in east at 26'", ['takeoff/bay-misfit']],
    ["bay 8' x 2' in south at 20'", []],
  ])('%s', (bay, codes) => {
    const plan = built(`level main\n  footprint 28' x 32'\n  ${bay}\n`);
    expect(plan.messages.map((message) => message.split(':')[0])).toEqual(codes);
  });
});

describe('a window in a slanted wall less: the wall closes by its 10 sf, its trim by 14 ft', () => {
  const of = (windows: string) =>
    built(`window w-2050 2'-0" x 5'-0", sill 24"
level main
  footprint 28' x 32'
  bay 8' x 2' in south at 6'
${walls}room all on main
  size 27'-1" x 31'-1"
  bay 7'-7" x 2' in south at 5'-9"
  floor plank
  walls paint
  base base
${windows}`);
  const with_ = of('  windows 1 w-2050 in southeast, 1 w-2050 in southwest\n');
  const less = of('  windows 1 w-2050 in southeast\n');
  const sum = (plan: typeof with_, measure: Measure, item: string, unit: string) =>
    plan.lines(measure, item).reduce((so, { net }) => so + amount(net, unit), 0);
  test.each<[Measure, string, string, number]>([
    ['wall-sheathing-area', 'osb 7/16"', 'sf', 10],
    ['wall-barrier-area', 'housewrap', 'sf', 10],
    ['wall-insulation-area', 'r21-batt', 'sf', 10],
    ['board-area', 'drywall 1/2"', 'sf', 10],
    ['painted-wall-area', 'paint', 'sf', 10],
    ['opening-trim-length', 'casing', 'ft', -14],
    ['flashing-length', 'flashing-tape', 'ft', -14],
  ])('%s', (measure, item, unit, change) => {
    expect(sum(less, measure, item, unit) - sum(with_, measure, item, unit)).toBeCloseTo(change, 4);
  });

  test('its floor, base and walls go into the bay: (7 ft 7 in + 3 ft 7 in) / 2 x 2 ft', () => {
    const round = 2 * (27 + 1 / 12 + 31 + 1 / 12) - 4 + 4 * Math.sqrt(2);
    expect(amount(with_.line('floor-finish-area', 'plank').net, 'sf')).toBeCloseTo((27 + 1 / 12) * (31 + 1 / 12) + 67 / 6, 3);
    expect(sum(with_, 'base-length', 'base', 'ft')).toBeCloseTo(round, 3);
    expect(sum(with_, 'painted-wall-area', 'paint', 'sf')).toBeCloseTo(round * 8 - 20, 3);
  });
});

/** A convex outline with its sides moved out (or in, below nothing): big half-planes, cut with each other. */
function within(outline: readonly (readonly [number, number])[], out: number): MultiPolygon {
  const halves = outline.map(([x, y], index): Polygon => {
    const [toX, toY] = outline[(index + 1) % outline.length]!;
    const length = Math.hypot(toX - x, toY - y);
    const [alongX, alongY] = [(toX - x) / length, (toY - y) / length];
    const [startX, startY] = [x + alongY * out, y - alongX * out];
    const FAR = 500;
    const at = (along: number, left: number): [number, number] => [
      startX + alongX * along - alongY * left,
      startY + alongY * along + alongX * left,
    ];
    return [[at(-FAR, 0), at(FAR, 0), at(FAR, FAR), at(-FAR, FAR)]];
  });
  const [first, ...others] = halves;
  return polygonClipping.intersection(first!, ...others);
}

function areaOf(shape: MultiPolygon): number {
  return shape.reduce(
    (sum, rings) =>
      sum +
      rings.reduce((so, ring) => {
        let twice = 0;
        for (let index = 0; index + 1 < ring.length; index++)
          twice += ring[index]![0] * ring[index + 1]![1] - ring[index + 1]![0] * ring[index]![1];
        return so + twice / 2;
      }, 0),
    0,
  );
}
