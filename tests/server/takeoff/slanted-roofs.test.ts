// Roofs over slanted outlines and over bays: surface by the plan, hips and ridge by hand. That a roof of one pitch has the
// surface of its plan by the pitch: Dagostino & Peterson, Estimating in Building Construction, 7th ed., p. 181.
import { describe, expect, test } from 'vitest';
import { replay } from '#kit/quantity';
import { roofFigures } from '#takeoff/measure/roof-figures';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const built = (text: string) => planOf(text, { library: 'built-in' });
const figures = (footprint: string, roof: string) =>
  roofFigures(built(`level main\n  footprint ${footprint}\nroof top over main\n  ${roof}\n`).model.list('roof')[0]!);
const feet = (quantity: Parameters<typeof amount>[0]) => amount(quantity, 'ft');
const codes = (text: string) => built(text).messages.map((message) => message.split(':')[0]);

describe('a hip roof of 6 in 12 over a regular octagon with sides of 10 ft, without overhang', () => {
  const side = 10;
  const octagon = `corners ${[0, 1, 2, 3, 4, 5, 6, 7]
    .map((at) => {
      const far = side / 2 / Math.sin(Math.PI / 8);
      const angle = (at * Math.PI) / 4 + Math.PI / 8;
      return `${(far * Math.cos(angle)).toFixed(6)}' x ${(far * Math.sin(angle)).toFixed(6)}'`;
    })
    .join(', ')}`;
  const roof = figures(octagon, 'shape hip 6:12')!;
  const inner = side / 2 / Math.tan(Math.PI / 8);
  const outer = side / 2 / Math.sin(Math.PI / 8);

  test('a pyramid: its plan by √1.25; eight hips from the corners to the middle, no ridge', () => {
    expect(amount(roof.area, 'sf')).toBeCloseTo(8 * 0.5 * side * inner * Math.sqrt(1.25), 2);
    expect(feet(roof.eaves)).toBeCloseTo(80, 3);
    expect(feet(roof.rise)).toBeCloseTo(inner / 2, 3);
    expect(feet(roof.hips)).toBeCloseTo(8 * Math.sqrt(outer ** 2 + (inner / 2) ** 2), 1);
    expect(feet(roof.ridge)).toBeCloseTo(0, 1);
    for (const each of [roof.area, roof.eaves, roof.hips!, roof.ridge!]) expect(replay(each)).toBe(each.value);
  });
});

test('over a rectangle with a corner cut off plan and edges are less by the triangle, the ridge as long', () => {
  const [cut, whole] = [
    figures("corners 0 x 0, 40' x 0, 40' x 20', 36' x 24', 0 x 24'", 'shape hip 6:12\n  overhang 18"')!,
    figures("40' x 24'", 'shape hip 6:12\n  overhang 18"')!,
  ];
  // Both edges move out by 1.5 ft, the cut by as much at 45 degrees: it takes a triangle of 4 + 1.5 x (2 - √2) = 4.879 ft.
  const legs = 4 + 1.5 * (2 - Math.sqrt(2));
  expect(amount(whole.plan, 'sf') - amount(cut.plan, 'sf')).toBeCloseTo((legs * legs) / 2, 2);
  expect(feet(whole.eaves) - feet(cut.eaves)).toBeCloseTo(legs * (2 - Math.sqrt(2)), 2);
  expect(feet(cut.rafter)).toBeCloseTo((12 + 1.5) * Math.sqrt(1.25), 3);
  expect(feet(cut.ridge)).toBeCloseTo(feet(whole.ridge), 1);
});

test('a flat roof over it: its plan with overhangs, and edges all round', () => {
  const roof = figures("corners 0 x 0, 20' x 0, 20' x 17', 17' x 20', 0 x 20'", 'shape flat\n  overhang 12"')!;
  const cut = 3 * Math.sqrt(2);
  const round = 20 + 17 + cut + 17 + 20;
  const turns = 3 + 2 * (Math.sqrt(2) - 1);
  expect(amount(roof.area, 'sf')).toBeCloseTo(400 - 4.5 + round + turns, 2);
  expect(feet(roof.eaves)).toBeCloseTo(round + 2 * turns, 2);
});

test('a single slope of 3 in 12 over it, high in the north: its edges along the slope', () => {
  const roof = figures("corners 0 x 0, 20' x 0, 20' x 17', 17' x 20', 0 x 20'", 'shape shed 3:12, high north')!;
  expect(amount(roof.area, 'sf')).toBeCloseTo(395.5 * Math.sqrt(1 + 1 / 16), 3);
  expect(feet(roof.eaves)).toBeCloseTo(20, 6);
  const up = Math.sqrt(1 + 1 / 16);
  // West and east on the slope, the cut corner √(3² + 3² + 0.75²), the high edge level.
  expect(feet(roof.rakes)).toBeCloseTo(20 * up + 17 * up + Math.sqrt(18 + 0.75 ** 2) + 17, 3);
});

describe('what is not counted over slanted sides is told, with what to do', () => {
  const cut = "footprint corners 0 x 0, 20' x 0, 20' x 17', 17' x 20', 0 x 20'";
  const notch = "footprint corners 0 x 0, 20' x 0, 20' x 20', 14' x 20', 10' x 16', 6' x 20', 0 x 20'";
  test.each([
    [cut, 'shape gable 6:12', ['takeoff/size-missing']],
    [notch, 'shape hip 6:12', ['takeoff/size-missing']],
    [cut, 'shape hip 6:12', []],
    [cut, 'shape hip 6:12\n  framed truss at 24" oc', ['takeoff/slanted-trusses']],
    [notch, 'shape flat', []],
  ])('%s: %s', (footprint, roof, expected) => {
    expect(codes(`level main\n  ${footprint}\nroof top over main\n  ${roof}\n`)).toEqual(expected);
  });
});

describe('a roof of 6 in 12 over a bay 8 ft wide, 2 ft deep, its sides at 45 degrees, with 6 in of overhang', () => {
  const plan = built(`level main
  footprint 28' x 32'
  bay 8' x 2' in south at 6'
roof top over main
  shape gable 6:12, ridge north-south
  overhang 12"
roof bay-top over bays of main
  shape hip 6:12
  overhang 6"
  framed rafter 2x4 at 16" oc
  deck osb 7/16"
  roofing strip-shingle
  gutters south
`);
  // With the overhang 2.5 ft deep; each side moves 6 in x √2 = 0.7071 ft out along the wall.
  const back = 8 + 2 * 0.5 * Math.sqrt(2);
  const front = back - 2 * 2.5;
  const surface = ((back + front) / 2) * 2.5 * Math.sqrt(1.25);
  const line = (measure: Parameters<typeof plan.line>[0]) => plan.lines(measure).find(({ id }) => id.includes('bay-top'))!;

  test('three slopes: (width at the wall + in front) / 2 x depth, by √1.25', () => {
    expect(amount(line('roof-deck-area').net, 'sf')).toBeCloseTo(surface, 4);
    expect(surface).toBeCloseTo(19.33, 2);
  });

  test('edges round it; hips that go in 2.5 ft; flashing up both slopes and level between', () => {
    const half = Math.sqrt(2) - 1;
    const hips = 2 * 2.5 * Math.sqrt(1 + half ** 2 + 0.25);
    expect(feet(line('hip-length').net)).toBeCloseTo(hips, 4);
    expect(feet(line('fascia-length').net)).toBeCloseTo(front + 2 * 2.5 * Math.sqrt(2), 4);
    const up = 2.5 * Math.sqrt(2);
    expect(feet(line('roof-wall-length').net)).toBeCloseTo(2 * Math.sqrt(up ** 2 + 1.25 ** 2) + back - 2 * up, 4);
    expect(feet(line('gutter-length').net)).toBeCloseTo(front, 4);
    expect(feet(line('rafter-length').net)).toBeCloseTo(surface / (16 / 12) + hips, 4);
  });

  test('the roof of the house covers its rectangle alone', () => {
    const [top] = plan.model.list('roof');
    expect(amount(roofFigures(top!)!.plan, 'sf')).toBeCloseTo(30 * 34, 6);
  });
});

describe('bays without a roof', () => {
  const house = (more: string) => `level main
  footprint 28' x 32'
  bay 8' x 2' in south at 6'
roof top over main
  shape gable 6:12
${more}`;
  test('are told once, and not where one covers them', () => {
    expect(codes(house(''))).toEqual(['takeoff/bay-without-roof']);
    expect(codes(house('roof bay-top over bays of main\n  shape hip 6:12\n'))).toEqual([]);
    expect(codes(house('roof bay-top over bays of main\n  shape gable 6:12\n'))).toEqual(['takeoff/size-missing']);
    expect(codes(house('roof bay-top over bays of main\n  shape hip\n'))).toEqual(['takeoff/pitch-missing']);
  });

  test('under a storey they are told too, unless they go on in it', () => {
    const two = (bay: string) =>
      house('').replace('roof top over main', `level upper on main\n  footprint 28' x 32'\n${bay}roof top over upper`);
    expect(codes(two(''))).toEqual(['takeoff/bay-without-roof']);
    expect(codes(two("  bay 8' x 2' in south at 6'\n"))).toEqual(['takeoff/bay-without-roof']);
    expect(built(two("  bay 8' x 2' in south at 6'\n")).messages[0]).toContain('over bays of upper');
    expect(built(two('')).messages[0]).toContain('over bays of main');
  });
});
