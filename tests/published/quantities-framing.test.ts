// Worked examples of framing: studs, plates, sills, rafters, floor boards. Each gives the stock and the waste of its source.
import { describe, expect, test } from 'vitest';
import { INCH } from '#kit/dimension';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const studs = `
material stud "Stud" laid framing
  sold by piece of 8'
  size 2x4 actual 1 1/2" x 3 1/2"
  size 2x6 actual 1 1/2" x 5 1/2"
material plate "Plate" laid framing
  sold by piece of 14'
  waste   10% added
  size 2x4 actual 1 1/2" x 3 1/2"
assembly wall-2x4 "Wall" for wall
  layer stud 2x4 at 16" oc
work frame "Frame"
  scope    on level
  installs stud by wall-stud-count, partition-stud-count
  installs plate by wall-plate-length, partition-plate-length
`;

describe('Dagostino & Peterson, Estimating in Building Construction, 7th ed., the house of 24 x 50 ft', () => {
  test('pp. 157, examples 13-11 and 13-12: exterior studs at 16 in, and those at the corners', () => {
    const plan = planOf(
      `
level main
  footprint 24' x 50'
  height    8'
  walls     wall-2x4
`,
      { library: [studs] },
    );
    const count = plan.line('wall-stud-count').net;
    const [spaced, corners, each] = count.inputs;
    // 148 ft is 111 spaces and 112 studs; four corners of 2x4 take two more each.
    expect(spaced?.value).toBe(112);
    expect((corners?.value ?? 0) * (each?.value ?? 0)).toBe(8);
    expect(count.value).toBe(120);
  });

  test('p. 160, example 13-15: gable-end studs cut from pieces of 10 ft', () => {
    const gable = `
material stud "Stud" laid framing
  sold by piece of 10'
  size 2x4 actual 1 1/2" x 3 1/2"
material rafter "Rafter" laid framing
  sold by piece of 16'
  size 2x6 actual 1 1/2" x 5 1/2"
assembly wall-2x4 "Wall" for wall
  layer stud 2x4 at 16" oc
work frame "Frame"
  scope    on level
  installs stud by wall-stud-count
`;
    const plan = planOf(
      `
level main
  footprint 24' x 50'
  walls     wall-2x4
roof top over main
  shape  gable 4:12, ridge north-south
  framed rafter 2x6 at 16" oc
`,
      { library: [gable] },
    );
    // 24 ft is 18 spaces, 19 studs to a gable; 2 ft long on average under a rise of 4 ft, five to a piece.
    expect(plan.line('wall-stud-count').net.value).toBe(2 * 19);
    // The same eight pieces come out where each stud is cut to its place: steps of 5 5/16 in, 4 ft under the ridge.
    const { bought, lines } = plan.purchase('stud');
    expect(bought.value).toBe(8);
    const lengths = lines.flatMap(({ pieces }) => pieces!.map(({ length }) => amount(length, 'in')));
    expect([lengths[0], lengths.at(-1)]).toEqual([expect.closeTo(48, 6), expect.closeTo(16 / 3, 6)]);
  });

  test('p. 148, example 13-3: sill, long walls full and short walls between, in stock lengths', () => {
    const sill = `
${studs}
material sill "Sill" laid framing
  sold by piece of 10'
  sold by piece of 12'
  sold by piece of 16'
  size 2x6 actual 1 1/2" x 5 1/2"
assembly wall-2x6 "Wall" for wall
  layer stud 2x6 at 16" oc
work place-sill "Sill"
  scope    per element
  installs sill by sill-length
`;
    const plan = planOf(
      `
level main
  footprint 24' x 50'
  walls     wall-2x6
foundation walls under main
  wall 8" x 8'
`,
      { library: [sill] },
    );
    expect(amount(plan.line('sill-length').net, 'ft')).toBeCloseTo(146.166, 2);
    const pieces = plan
      .purchase('sill 2x6')
      .sticks!.map(({ holds, bought }) => [amount(holds, 'ft'), bought.value])
      .sort();
    expect(pieces).toEqual([
      [10, 10],
      [12, 4],
    ]);
    // 148 ft, and as many board feet of 2x6.
    expect(pieces.reduce((sum, [feet, count]) => sum + feet! * count!, 0)).toBe(148);
  });

  test('p. 169, example 13-25: fascia and soffit', () => {
    const trim = `
material soffit-sheet "Soffit" laid sheets
  sold by sheet of 4' x 8'
material fascia "Fascia" laid strip
  sold by piece of 10'
  waste   6% added
work trim "Trim"
  scope    per element
  installs soffit-sheet by soffit-area
  installs fascia by fascia-length
`;
    const roof = (eaves: string) =>
      planOf(
        `
level main
  footprint 24' x 50'
roof top over main
  shape    gable 4:12, ridge north-south
  overhang ${eaves} eaves, 1' rakes
`,
        { library: [trim] },
      );
    // Two eaves of 52 ft and four rafters of 13.9 ft: 159.6 ft, and 6% more is 170 to order.
    const fascia = roof(`1'-2 1/4"`).line('fascia-length');
    expect(amount(fascia.net, 'ft')).toBeCloseTo(159.6, 1);
    expect(Math.ceil(amount(fascia.needed, 'ft'))).toBe(170);
    // The soffit of the eaves is 1 ft 6 in by 104 ft; the book leaves that of the rakes out.
    const [eaves] = roof(`1'-6"`).lines('soffit-area');
    expect(amount(eaves?.net, 'sf')).toBeCloseTo(156, 6);
    expect(Math.ceil(amount(eaves?.net, 'sf') / 32)).toBe(5);
  });

  test('p. 169, example 13-25: base along the outside walls and both faces of the inside ones, less the doors', () => {
    const base = `
material base "Base" laid strip
  sold by piece of 10'
  waste   4.5% added
work run-base "Base"
  scope    in room
  installs base by base-length
`;
    // Doors of 25 ft in all.
    const plan = planOf(
      `
level main
  height 8'
door d-2668 2'-6" x 6'-8"
room all on main
  wall-lengths 148', 2 * 149'
  base         base
  doors        10 d-2668
`,
      { library: [base] },
    );
    expect(amount(plan.line('base-length').net, 'ft')).toBeCloseTo(421, 6);
    // 440 ft to order.
    expect(plan.purchase('base').bought.value).toBe(44);
  });
});

test('Modern Carpentry, Goodheart-Willcox, 2022 ed., p. 269: plates and studs of 240 ft of walls', () => {
  const doors = Array.from({ length: 20 }, () => '1 d-2868').join(', ');
  const plan = planOf(
    `
plan house
  counts studs by modern-carpentry
level main
  height     8'
  partitions wall-2x4, 240' long, 12 corners, 10 intersections
door d-2868 2'-8" x 6'-8"
room all on main
  doors ${doors}
`,
    { library: [studs.replace('for wall', 'for partition')] },
  );
  const plates = plan.line('partition-plate-length');
  expect(amount(plates.needed, 'ft')).toBeCloseTo(792, 6);
  expect(plan.purchase('plate').bought.value).toBe(57);
  // The book counts spaces only, 240 × 3/4, and two for each of 42 corners, crossings and openings.
  const [spaced] = plan.line('partition-stud-count').net.inputs;
  expect(spaced?.value).toBe(180);
  expect(plan.line('partition-stud-count').net.value).toBe(264);
});

test('US Army subcourse EN01136, lesson 5, answers: floor boards, waste as a divisor', () => {
  const boards = `
material floor-board "Floor board" laid boards
  sold by piece of 12'
  waste   15% divided
  face    5 1/2"
work lay "Lay"
  scope    per element
  installs floor-board by deck-board-area
`;
  const plan = planOf(`deck floor\n  size 12' x 106"\n  boards floor-board\n`, { library: [boards] });
  const bought = plan.purchase('floor-board');
  expect(amount(bought.needed, 'ft') / 12).toBeCloseTo(22.67, 2);
  expect(bought.bought.value).toBe(23);
});

test('A builder’s calculation published at vbhomerepair.com: a wall of 14.5 ft at 16 in has 11 spaces, 12 studs', () => {
  const plan = planOf(`level main\n  height 8'\n  partitions wall-2x4, 14.5' long\n`, {
    library: [studs.replace('for wall', 'for partition')],
  });
  expect(plan.line('partition-stud-count').net.inputs[0]?.value).toBe(12);
});

describe('rafters', () => {
  const rafters = `
material rafter "Rafter" laid framing
  sold by piece of 16'
  size 2x6 actual 1 1/2" x 5 1/2"
work frame-roof "Rafters"
  scope    per element
  installs rafter by rafter-length
`;
  const rafter = (size: string, pitch: string, overhang = "0'") =>
    planOf(
      `roof top\n  size ${size}\n  shape gable ${pitch}, ridge north-south\n  overhang ${overhang}\n  framed rafter 2x6 at 16" oc\n`,
      { library: [rafters] },
    ).line('rafter-length').pieces?.[0]?.length;

  test('NAVEDTRA 14044, Builder, vol. 2, fig. 2-17: 7 in 12 over a span of 16 ft is 9 ft 3 1/8 in', () => {
    const eighths = Math.round((rafter("16' x 40'", '7:12')!.value / INCH) * 8);
    expect(eighths).toBe((9 * 12 + 3) * 8 + 1);
  });

  test('US Army subcourse EN0069 A, Frame Structures, fig. 2-17: 13 in 12 over 20 ft 8 in is 15 ft 3 in', () => {
    expect(Math.round(rafter(`20'-8" x 40'`, '13:12')!.value / INCH)).toBe(15 * 12 + 3);
  });

  test('Del Pico, Estimating Building Costs, 2nd ed., p. 187: 14 ft to the ridge, half of its 1 1/2 in off, 1 ft of overhang', () => {
    // The ridge board is taken off the plan here: 27 ft 10 1/2 in from wall to wall less its thickness.
    const length = rafter(`27'-10 1/2" x 40'`, '8:12', "1'")!;
    const [run, out] = length.inputs;
    expect(amount(run, 'ft') + amount(out, 'ft')).toBeCloseTo(14.94, 2);
    // The length itself is arithmetic on the printed run: 14.9375 ft × 1.2019.
    expect(amount(length, 'ft')).toBeCloseTo(17.95, 2);
  });
});

test('US Army subcourse EN0069 A, Frame Structures, table of the square: rafters of longer runs, to a sixth of an inch', () => {
  // The table stamped on a square prints twelfths of an inch and is up to two of them off.
  const printed: readonly (readonly [run: number, pitch: string, feet: number, twelfths: number])[] = [
    [12, '4:12', 12, 7 * 12 + 10],
    [12, '12:12', 16, 11 * 12 + 6],
    [27, '6:12', 30, 2 * 12 + 1],
  ];
  const rows = `material rafter "Rafter" laid framing\n  size 2x6\nwork frame-roof "Rafters"\n  scope per element\n  installs rafter by rafter-length\n`;
  for (const [run, pitch, feet, twelfths] of printed) {
    const plan = planOf(
      `roof top\n  size ${2 * run}' x 60'\n  shape gable ${pitch}, ridge north-south\n  framed rafter 2x6 at 24" oc\n`,
      { library: [rows] },
    );
    const length = amount(plan.line('rafter-length').pieces?.[0]?.length, 'in');
    expect(Math.abs(length - (feet * 12 + twelfths / 12))).toBeLessThan(0.2);
  }
});

test('US Army subcourse EN0069 A, Frame Structures: 2 in of rise in 5 in of run is 4 4/5 in 12', () => {
  // A rafter over a foot of run shows it.
  const rows = `material rafter "Rafter" laid framing\n  size 2x6\nwork frame-roof "Rafters"\n  scope per element\n  installs rafter by rafter-length\n`;
  const rafter = (pitch: string) => {
    const plan = planOf(`roof top\n  size 2' x 20'\n  shape gable ${pitch}, ridge north-south\n  framed rafter 2x6 at 24" oc\n`, {
      library: [rows],
    });
    return amount(plan.line('rafter-length').pieces?.[0]?.length, 'in');
  };
  expect(rafter('2:5')).toBeCloseTo(Math.sqrt(144 + 4.8 * 4.8), 6);
  expect(rafter('2:5')).toBeCloseTo(rafter('4.8:12'), 9);
});

describe('lumber counted by hand', () => {
  const lumber = `
material board "Board" laid framing
  sold by bf
  size 1x4 actual 3/4" x 3 1/2"
  size 2x4 actual 1 1/2" x 3 1/2"
  size 2x8 actual 1 1/2" x 7 1/4"
  size 2x10 actual 1 1/2" x 9 1/4"
`;
  const feet = (line: string) => amount(planOf(`extra pile ${line}\n`, { library: [lumber] }).purchase('board').needed, 'bf');

  test('US Army subcourse EN5155, Carpentry, p. 1-28: 8 pieces of 1x4, 14 ft, are 37 1/3 board feet', () => {
    expect(feet("8 board 1x4, each 14'")).toBeCloseTo(37 + 1 / 3, 9);
  });

  test('slides of the course CON 4003: a 2x4 of 8 ft is 5.33 board feet; handbook table: 2/3, 1 1/3 and 1 2/3 a foot', () => {
    expect(feet("1 board 2x4, each 8'")).toBeCloseTo(5 + 1 / 3, 9);
    expect(feet("12 board 2x8, each 1'")).toBeCloseTo(16, 9);
    expect(feet("12 board 2x10, each 1'")).toBeCloseTo(20, 9);
  });

  test('US Army subcourse EN0069 A, Frame Structures, cutting list: the shortest stock that gives most parts with least waste', () => {
    const stock = (lengths: readonly string[]) => `
material stick "Stick" laid framing
${lengths.map((length) => `  sold by piece of ${length}\n`).join('')}  size 2x4 actual 1 1/2" x 3 1/2"
`;
    const sticks = (line: string, ...lengths: readonly string[]) =>
      planOf(`extra parts ${line}\n`, { library: [stock(lengths)] })
        .takeOff.purchases()
        .map(({ bought: count, holds }) => `${count.value} of ${amount(holds, 'ft')}`);
    // Four from ten feet with 8 in left, five from twelve with 4 in left.
    expect(sticks(`4 stick 2x4, each 2'-4"`, "10'")).toEqual(['1 of 10']);
    expect(sticks(`5 stick 2x4, each 2'-4"`, "10'")).toEqual(['2 of 10']);
    expect(sticks(`5 stick 2x4, each 2'-4"`, "12'")).toEqual(['1 of 12']);
    expect(sticks(`4 stick 2x4, each 2'-4"`, "10'", "12'")).toEqual(['1 of 10']);
    // 10 in left of ten feet, 20 in of twenty.
    expect(sticks(`1 stick 2x4, each 9'-2"`, "10'", "20'")).toEqual(['1 of 10']);
  });
});

test('US Army subcourse EN0069 A, Frame Structures, lesson 4: 1,500 board feet of sheathing take 30 lb of 8d nails', () => {
  // 20 lb to 1,000 board feet; boards of an inch have as many board feet as square feet.
  const boards = `
material board "Board" laid boards
  sold by bf
  face 3 5/8"
  size 1x4 actual 3/4" x 3 5/8"
material nail-8d "8d nails" laid pieces
  sold by lb
work sheathe "Sheathe"
  scope    per element
  installs board by roof-deck-area
  uses     nail-8d 20 lb for each 1,000 sf by roof-deck-area
`;
  const plan = planOf(`roof top\n  size 50' x 30'\n  shape flat\n  deck board 1x4\n`, { library: [boards] });
  expect(amount(plan.purchase('nail-8d').bought, 'lb')).toBe(30);
});

test('Pratt, Fundamentals of Construction Estimating, 4th ed., p. 225: joists by the piece, by the board foot, and in hours', () => {
  const joists = (each: string) => `
material joist "Joist" laid framing
  sold by bf
  size 2x10 actual 1 1/2" x 9 1/4"
assembly floor for floor
  layer joist 2x10 at 16" oc
work frame-floor "Frame the floor"
  scope    on level
  installs joist by floor-frame-length
  labour   ${each} each by joist-count
`;
  const floor = (size: string, each: string) => {
    const plan = planOf(`level main\n  footprint ${size}\n  floor floor\n`, { library: [joists(each)] });
    const line = plan.lines('joist-count')[0];
    return { pieces: line?.net.value, feet: amount(plan.purchase('joist').needed, 'bf'), hours: amount(line?.hours, 'h') };
  };
  // Five joists of 20 ft an hour: 100 of them, 3,333 board feet, in 20 hours; seven of 14 ft: 140, 3,267 board feet.
  const long = floor("20' x 132'", '0.2 h');
  expect([long.pieces, Math.round(long.feet), long.hours]).toEqual([100, 3333, expect.closeTo(20, 6)]);
  const short = floor(`14' x 185'-4"`, '0.142857142857 h');
  expect([short.pieces, Math.round(short.feet), short.hours]).toEqual([140, 3267, expect.closeTo(20, 6)]);
  // Rates by the board foot fall while those by the piece rise: 167 and 163 board feet an hour.
  expect([Math.round(long.feet / long.hours), Math.round(short.feet / short.hours)]).toEqual([167, 163]);
});
