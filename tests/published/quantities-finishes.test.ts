// Worked examples of wall covering, drywall and tile, and of hours by a rate. Each gives the rates and packages of its source.
import { describe, expect, test } from 'vitest';
import { DAY_MINUTES, isoDate } from '#kit/dates';
import { amount } from '#tests/support/amounts';
import { checked } from '#tests/support/checked';
import { planOf } from '#tests/support/plan';

test('International Library of Technology, Building Construction, vol. 4, Carpentry and framing work: wood-shingled walls', () => {
  const shingles = `
material shingle-siding "Shingles" laid courses
  sold by each
  covers  0.1388889 sf per each
  waste   5% added
material stud "Stud" laid framing
  size 2x4 actual 1 1/2" x 3 1/2"
assembly shingled for wall
  layer stud 2x4
  layer shingle-siding
work shingle-walls "Shingle"
  scope    on level
  installs shingle-siding by wall-cladding-area
`;
  // The book counts 2,417 sf as 24.2 squares, so 2,420 sf here: 242 ft of wall, 10 ft high. 720 shingles to the square.
  const plan = planOf(
    `
level main
  footprint 100' x 21'
  height    10'
  walls     shingled
`,
    { library: [shingles] },
  );
  const { net, needed } = plan.line('wall-cladding-area');
  expect(amount(net, 'square')).toBeCloseTo(24.2, 6);
  expect(Math.round(needed!.value / 1.05)).toBe(17_424);
  expect(Math.round(needed!.value)).toBe(18_295);
});

const board = `
material drywall "Drywall" laid sheets
  sold by sheet of 4' x 8'
  waste   5% added
  deducts openings over 32 sf
  serves as board
  size 1/2"
  size 5/8"
material joint-tape "Tape" laid strip
  sold by roll of 50'
  waste   10% added
material joint-compound "Compound" laid bulk
  sold by gal
material drywall-screw "Screws" laid pieces
  sold by each
work hang "Hang"
  scope    in room
  installs drywall by board-area
  labour   0.035 h/sf
  uses     drywall-screw 1,000 each for each 1,000 sf by board-area
  uses     joint-tape 380 ft for each 1,000 sf by board-area
  uses     joint-compound 5 gal for each 1,000 sf by board-area
assembly faced for wall
  layer drywall 1/2"
assembly lid for ceiling
  layer drywall 5/8"
`;

describe('Dagostino & Peterson, Estimating in Building Construction, 7th ed., p. 203: 346 ft of partition, 10 ft high, two faces', () => {
  const faces = (long: string, height = "10'") =>
    planOf(
      `
level main
  height ${height}
  walls  faced
room face on main
  size    ${long} x 0.001'
  ceiling bare
`,
      { library: [board.replace("4' x 8'", "4' x 10'")] },
    );

  test('surface of both faces', () => {
    expect(Math.round(amount(faces("346'").line('board-area', 'drywall').net, 'sf'))).toBe(6920);
  });

  test('tape, compound and screws at rates for 1,000 sf, on the area rounded up to whole thousands as the book does', () => {
    const plan = faces("350'");
    expect(Math.round(amount(plan.line('board-area', 'drywall').net, 'sf'))).toBe(7000);
    const tape = plan.purchase('joint-tape');
    expect(Math.round(amount(tape.net, 'ft'))).toBe(2660);
    expect(tape.bought.value).toBe(59);
    expect(amount(plan.purchase('joint-compound').needed, 'gal')).toBeCloseTo(35, 3);
    expect(Math.round(plan.purchase('drywall-screw').needed.value)).toBe(7000);
  });

  test('sheets of 10 ft set upright: 86.5 along the wall are 87, and 5% more on both faces is 183', () => {
    // Whole sheets along the wall first: 87 sheets of 4 ft are 348 ft.
    expect(faces("348'").purchase('drywall').bought.value).toBe(183);
    // Rounded up once only, from the area, it would be one sheet less.
    expect(faces("346'").purchase('drywall').bought.value).toBe(182);
  });
});

test('Dagostino & Peterson, Estimating in Building Construction, 7th ed., example 16-3: board of the 24 x 50 ft house', () => {
  const plan = planOf(
    `
level main
  height  8'
  walls   faced
  ceiling lid
room outside-walls on main
  size 24' x 50'
room inside-walls on main
  size    149' x 0.001'
  ceiling bare
`,
    { library: [board] },
  );
  const [outer, inner] = plan.lines('board-area', 'drywall 1/2"');
  expect(amount(outer?.net, 'sf')).toBeCloseTo(1184, 6);
  expect(Math.round(amount(inner?.net, 'sf'))).toBe(2384);
  // The book rounds 37, 75 and 38 sheets before the waste and again after it; once is enough to come to the same.
  expect(plan.purchase('drywall 1/2"').bought.value).toBe(118);
  expect(plan.purchase('drywall 5/8"').bought.value).toBe(40);
});

test('The Builder Depot, 2010, mosaic tile of 3/8 in with joints of 1/16 in: grout for 96 sf', () => {
  const grout = `
material mosaic "Mosaic" laid tiles
  sold by sheet of 12" x 12"
material grout "Grout" laid coats
  sold by bag of 25 lb
work set "Set tile"
  scope    in room
  installs mosaic by tile-area
  uses     grout 0.94 lb for each 1 sf by tile-area
`;
  const plan = planOf(`room shower\n  size 8' x 12'\n  floor mosaic\n`, { library: [grout] });
  const { needed, bought } = plan.purchase('grout');
  // 0.94 lb to the square foot has its 10% of waste in it.
  expect(amount(needed, 'lb')).toBeCloseTo(90, 0);
  expect(bought.value).toBe(4);
});

test('NAVEDTRA 14045, Builder Advanced, p. 2-29: 16,000 sf of drywall at 35 hours to 1,000 sf, 70 man-days, 9 workdays', () => {
  // A crew of twelve with three quarters of them at hand is nine; of eight hours they work seven and a half.
  const { plan } = checked(`
    plan barracks
      start    2027-03-01
      workweek mon-fri 8h
    work hang-board
      labour 0.035 h/sf
    level main
      height 10'
      walls  faced
    assembly faced for wall
      layer drywall 1/2"
    room all on main
      size    800' x 0.001'
      ceiling bare
    trade board crew of 9
      works mon-fri 7.5h
    task hang does hang-board by board
  `);
  const lines = plan.takeOff.byWork.get('hang-board') ?? [];
  const hours = lines.reduce((sum, line) => sum + (line.hours === undefined ? 0 : amount(line.hours, 'h')), 0);
  expect(Math.round(hours)).toBe(560);
  expect(Math.round(hours / 8)).toBe(70);
  const { timing, crews } = plan.timeline;
  const days = timing.durations[0]! / 60 / 7.5;
  expect(days).toBeCloseTo(8.296, 2);
  // From Monday the first, done on the ninth workday: Thursday the eleventh.
  expect(isoDate(Math.floor(crews.finish[0]! / DAY_MINUTES))).toBe('2027-03-11');
});

test('Craftsman, Build Smarter with Alternative Materials, ch. 4: framing of 20 door openings', () => {
  const { plan } = checked(`
    plan openings
      start    2027-03-01
      workweek mon-fri 8h
    work frame-openings "Frame openings"
      scope    for house
      labour   0.83 h each by inside-door-count
    door d-2868 2'-8" x 6'-8"
    room all
      doors 20 d-2868
    trade framing crew of 2
    task openings does frame-openings by framing
  `);
  const hours = plan.takeOff.byWork.get('frame-openings')?.map((line) => amount(line.hours, 'h'));
  expect(hours).toEqual([expect.closeTo(16.6, 6)]);
  // 1.0375 days of a crew of two, eight hours a day.
  expect(plan.timeline.timing.durations[0]! / 60 / 8).toBeCloseTo(1.0375, 6);
});
