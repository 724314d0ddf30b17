// Foundations, trenches, dry wells, floors, panels, roofs and decks by hand arithmetic, with the built-in library's rows.
import { describe, expect, test } from 'vitest';
import { dryWellDepth } from '#takeoff/measure/dry-well';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const house = `
level main
  footprint 28' x 32'
  height    8'
  walls     ext-2x6
`;
const built = (text: string) => planOf(house + text, { library: 'built-in' });

describe('a footing and stem wall, dug by trench', () => {
  const plan = built(`
foundation perimeter under main
  footing 20" x 8", 2 #4
  wall    8" x 32", #4 at 48" oc
  bottom  32" below grade
  working-space 1'
  drain   4" in 12" gravel
  bolts   1/2" at 6' oc
  damp-proof to grade
`);
  const centre = 120 - 4 * (8 / 12);

  test('concrete and bars on the centre line', () => {
    expect(amount(plan.line('footing-volume').net, 'cf')).toBeCloseTo((centre * 20 * 8) / 144, 6);
    expect(amount(plan.line('stem-wall-volume').net, 'cf')).toBeCloseTo((centre * 8 * 32) / 144, 6);
    expect(amount(plan.line('footing-bar-length', 'rebar').net, 'ft')).toBeCloseTo(2 * centre, 6);
    // 117 ft 4 in at 4 ft is 30 spaces, and as many bars where it closes.
    expect(amount(plan.line('stem-wall-bar-length', 'rebar').net, 'ft')).toBeCloseTo((30 * 32) / 12, 6);
  });

  test('dug, filled, hauled: nothing is lost', () => {
    const dug = amount(plan.line('excavation-volume', 'excavation').net, 'cf');
    const fill = amount(plan.line('backfill-volume').net, 'cf');
    // Shallower than five feet: upright sides.
    expect(dug).toBeCloseTo(centre * (20 / 12 + 2) * (32 / 12), 6);
    const stone = (120 + 8 * 0.5) * 1;
    expect(dug - fill).toBeCloseTo((centre * 20 * 8) / 144 + centre * (8 / 12) * 2 + stone, 6);
    expect(amount(plan.line('haul-volume').net, 'cf')).toBeCloseTo(dug - fill, 6);
  });

  test('from memory, IRC R403.1.6: bolts 6 ft apart and within 12 in of each end of each piece of plate', () => {
    // Plates of 16 ft at most: 28 ft is 16 and 12, which take (16 - 2) / 6 = 3 spaces and 4 bolts, and (12 - 2) / 6 = 2 and 3;
    // 32 ft is two of 16.
    expect(plan.line('anchor-bolt-count').net.value).toBe(2 * (4 + 3) + 2 * (4 + 4));
    const bolts = (line: string) =>
      built(`foundation base under main\n  wall 8" x 32"\n  bolts 1/2" at ${line}\n`).line('anchor-bolt-count').net.value;
    // 4 ft apart and 6 in from the ends: 15 / 4 is 4 and 5 bolts, 11 / 4 is 3 and 4.
    expect(bolts(`4' oc, 6" from ends`)).toBe(2 * (5 + 4) + 2 * (5 + 5));
    // The pieces that the plan tells: never less than two.
    expect(bolts(`6' oc\n  plates 16', 1'`)).toBe(4 + 2);
  });

  test('drain round the footing, coat to grade and over the footing', () => {
    expect(amount(plan.line('foundation-drain-length', 'drain-pipe').net, 'ft')).toBeCloseTo(124, 6);
    expect(amount(plan.line('damp-proof-area', 'damp-proofing').net, 'sf')).toBeCloseTo(120 * (2 + 0.5) + 4 * 0.25, 6);
  });
});

describe('a basement is dug out, not only a trench along its walls', () => {
  // An L of 1,056 sf and 144 ft round, 8 ft 10 in less 6 in of topsoil deep in type B (1:1), footing 4 in out and 2 ft to
  // work in: on average 2.333 + 8.333 / 2 = 6.5 ft beyond the wall.
  const outline = "footprint east 44', north 12', west 22', north 16', west 22', south 28'";
  const area = 44 * 12 + 22 * 16;
  const dug = (level: string, foundation: string) => {
    const plan = planOf(
      `site lot\n  soil type-B\n  topsoil 6"\nlevel cellar ${level}\n  ${outline}\n  height 8'\nfoundation base under cellar\n  footing 16" x 8"\n  bottom 8'-10" below grade\n  working-space 2'\n${foundation}`,
      { library: 'built-in' },
    );
    return {
      dug: amount(plan.line('excavation-volume', 'excavation').net, 'cf'),
      fill: amount(plan.line('backfill-volume').net, 'cf'),
      haul: amount(plan.line('haul-volume').net, 'cf'),
    };
  };
  const deep = 8 + 10 / 12 - 0.5;
  const out = 2 + 4 / 12 + deep / 2;
  const whole = (area + 144 * out + 4 * out * out) * deep;

  test.each([
    ['under a level that says basement', 'basement', `  wall 8" x 8'\n`],
    ['with a slab inside walls as high as a room', '', `  wall 8" x 8'\n  slab 4"\n`],
    ['said', '', `  wall 8" x 8'\n  dig all\n`],
  ])('%s', (_, level, foundation) => {
    const all = dug(level, foundation);
    expect(all.dug).toBeCloseTo(whole, 6);
    // House and footing stand in it; the room below is not filled again.
    const built = area * deep + (144 + 8 * (2 / 12)) * (4 / 12) * (8 / 12);
    expect(all.haul).toBeGreaterThanOrEqual(area * deep);
    expect(all.haul - built).toBeCloseTo(0, 0);
    expect(all.fill).toBeCloseTo(all.dug - all.haul, 6);
  });

  test.each([
    ['a trench where the plan says so', 'basement', `  wall 8" x 8'\n  slab 4"\n  dig trench\n`],
    ['walls lower than a room', '', `  wall 8" x 6'\n  slab 4"\n`],
    ['a crawl space', '', `  wall 8" x 8'\n`],
  ])('%s', (_, level, foundation) => {
    expect(dug(level, foundation).dug).toBeCloseTo((144 - 4 * (8 / 12)) * (16 / 12 + 4 + deep) * deep, 6);
  });
});

test('topsoil stripped before is not dug again', () => {
  const bottom = `foundation perimeter under main\n  wall 8" x 4'\n  bottom 4' below grade\n`;
  const without = built(bottom);
  const stripped = built(`site lot\n  topsoil 6"\n${bottom}`);
  const ratio =
    amount(stripped.line('excavation-volume', 'excavation').net, 'cf') /
    amount(without.line('excavation-volume', 'excavation').net, 'cf');
  expect(ratio).toBeCloseTo(3.5 / 4, 9);
});

test('deep sides slope as the soil may stand, from the row of what is dug', () => {
  const deep = (soil: string) => {
    const plan = built(
      `site lot\n  soil ${soil}\nfoundation cellar under main\n  wall 8" x 8'\n  bottom 8' below grade\n  dig all\n`,
    );
    return { volume: amount(plan.line('excavation-volume', 'excavation').net, 'cf'), messages: plan.messages };
  };
  expect(deep('type-C').volume).toBeCloseTo((28 + 12) * (32 + 12) * 8, 6);
  expect(deep('type-A').volume).toBeCloseTo((28 + 6) * (32 + 6) * 8, 6);
  expect(deep('loess').messages.map((message) => message.split(':')[0])).toEqual(['takeoff/slope-missing']);
});

test('a dry well: 600 sf of roof, 2 in of rain, 40% voids is 250 cf of stone, 3.91 ft deep in a pit of 8 by 8 ft', () => {
  const plan = planOf(
    `roof shed-roof\n  size 20' x 30'\n  shape flat\ndry-well pit for roof shed-roof\n  storm 2"\n  voids 40%\n  size 8' x 8'\n`,
    { library: 'built-in' },
  );
  expect(amount(plan.line('dry-well-stone-volume', 'washed-stone').net, 'cf')).toBeCloseTo(250, 6);
  expect(amount(dryWellDepth(plan.model.list('dry-well')[0]!), 'ft')).toBeCloseTo(3.91, 2);
  // Fabric on all sides: bottom and top of 64 sf, and 32 ft round by 250 / 64 ft.
  expect(amount(plan.line('dry-well-fabric-area', 'filter-fabric').net, 'sf')).toBeCloseTo(128 + 32 * (250 / 64), 6);
  const noSize = planOf(
    `roof shed-roof\n  size 20' x 30'\n  shape flat\ndry-well pit for roof shed-roof\n  storm 2"\n  voids 40%\n`,
    { library: 'built-in' },
  );
  // A cube of 250 cf is 6.30 ft each way.
  expect(amount(noSize.line('dry-well-fabric-area', 'filter-fabric').net, 'sf')).toBeCloseTo(6 * 250 ** (2 / 3), 4);
});

test('piers: round ones hold π ÷ 4 × diameter² × depth each, pads their three sizes', () => {
  const round = planOf(`foundation piers\n  piers 4 by 3, 12" x 30"\n`, { library: 'built-in' });
  expect(round.line('pier-count', 'tube-form').net.value).toBe(12);
  expect(amount(round.line('pier-volume').net, 'cf')).toBeCloseTo((12 * Math.PI * 2.5) / 4, 6);
  const pads = planOf(`foundation pads\n  piers 3, 24" x 24" x 10"\n`, { library: 'built-in' });
  expect(amount(pads.line('pad-volume').net, 'cf')).toBeCloseTo((3 * 4 * 10) / 12, 6);
});

describe('a gable roof of 6 in 12 over 28 by 32 ft, ridge along the longer side, 18 and 12 in out', () => {
  const plan = built(`
roof main over main
  shape    gable 6:12
  overhang 18" eaves, 12" rakes
  framed   truss at 24" oc
  deck     osb 7/16"
  roofing  standing-seam over felt
  gutters  east
`);
  const rafter = 15.5 * Math.sqrt(1.25);

  test('surface, edges and gutters', () => {
    expect(amount(plan.line('roof-cover-area', 'standing-seam').net, 'sf')).toBeCloseTo(2 * 34 * rafter, 6);
    expect(amount(plan.line('ridge-length').net, 'ft')).toBeCloseTo(34, 6);
    expect(amount(plan.line('drip-edge-length').net, 'ft')).toBeCloseTo(2 * 34 + 4 * rafter, 6);
    expect(amount(plan.line('gutter-length', 'gutter').net, 'ft')).toBeCloseTo(34, 6);
    expect(plan.line('truss-count', 'truss').net.value).toBe(17);
  });

  test('its gables carry what the walls carry outside, and trusses bring their own studs', () => {
    const gables = plan.lines('wall-sheathing-area', 'osb').filter(({ where }) => where.part === 'gables');
    expect(gables.map(({ net }) => amount(net, 'sf'))).toEqual([expect.closeTo(28 * 7, 6)]);
    expect(plan.lines('wall-stud-count', 'stud').map(({ where }) => where.part)).toEqual(['walls']);
  });
});

test('walls of panels: count by wall, joints at panels and corners, splines and sealant', () => {
  const plan = planOf(
    `
level main
  footprint 24' x 32'
  height    8'
  walls     ext-sip
panels shell for main
  width 8'
  joint surface-spline, 4 beads of panel-sealant
  beads 2 at plates
`,
    { library: 'built-in' },
  );
  expect(plan.line('panel-count', 'panel-lift').net.value).toBe(3 + 3 + 4 + 4);
  // Ten joints between panels and four at corners, eight feet each.
  expect(amount(plan.line('panel-spline-length', 'surface-spline').net, 'ft')).toBeCloseTo(14 * 8, 6);
  // Common practice: a strip under either skin, and 5% more.
  expect(amount(plan.line('panel-spline-length', 'surface-spline').needed, 'ft')).toBeCloseTo(14 * 8 * 2 * 1.05, 6);
  expect(amount(plan.line('panel-sealant-length').net, 'ft')).toBeCloseTo(2 * 2 * 112 + 4 * 14 * 8, 6);
});

test('a deck: a hanger to each joist at the ledger', () => {
  const plan = planOf("deck porch\n  size 8' x 6'\n  joists 2x8 at 16\" oc\n", { library: 'built-in' });
  expect(plan.purchase('joist-hanger').bought.value).toBe(7);
});

test('foam under a roof that is open below: by volume, with its hours', () => {
  const plan = planOf("level main\n  footprint 27' x 20'\n  ceiling lid\nassembly lid for ceiling\n  layer spray-foam 6\"\n", {
    library: 'built-in',
  });
  const line = plan.line('ceiling-insulation-volume');
  expect([line.work?.name, amount(line.net, 'cy')]).toEqual(['spray-insulation', 10]);
  expect(amount(line.hours, 'h')).toBeCloseTo(7, 9);
});

test('a floor: joists over the short way, one more than the spaces, with rim, deck and batts', () => {
  const plan = planOf(`level main\n  footprint 28' x 32'\n  floor floor-2x10\n`, { library: 'built-in' });
  const joists = plan.line('floor-frame-length', 'joist');
  expect([amount(joists.net, 'ft'), joists.pieces?.[0]?.count.value]).toEqual([25 * 28, 25]);
  // Across the ends of the joists only: the first and last of the 25 close the two sides of 28 ft.
  expect(amount(plan.line('rim-length').net, 'ft')).toBe(2 * 32);
  expect(amount(plan.line('floor-deck-area', 'subfloor').net, 'sf')).toBe(896);
  expect(plan.line('floor-insulation-area').item).toBe('r30-batt 15"');
  const across = planOf(`level main\n  footprint 28' x 32'\n  floor floor-2x10\n  joists run north-south\n`, {
    library: 'built-in',
  });
  expect(amount(across.line('floor-frame-length', 'joist').net, 'ft')).toBe(22 * 32);
});

test('attic insulation by R: depth from R for each inch, weight by density, bags', () => {
  const plan = planOf(`level main\n  footprint 28' x 32'\n  ceiling flat-lid\n`, { library: 'built-in' });
  const line = plan.line('ceiling-insulation-volume');
  expect(amount(line.net, 'cf')).toBeCloseTo((896 * 60) / 3.4 / 12, 4);
  expect(amount(line.needed, 'lb')).toBeCloseTo(((896 * 60) / 3.4 / 12 / 27) * 43 * 1.05, 3);
});

// 29 CFR 1926 subpart P, appendix B: 34 degrees are 1 1/2 level to 1 upright, 45 degrees 1 to 1.
test('a trench with sloped sides, by the slope or by the angle that its sides stand at', () => {
  const dug = (slope: string): number =>
    amount(built(`trench sewer 40' long, 8' deep, 3' wide${slope}\n`).line('trench-volume').net, 'cf');
  expect(dug('')).toBeCloseTo(40 * 8 * 3, 6);
  expect(dug(', slope 1.5:1')).toBeCloseTo(40 * 8 * (3 + 1.5 * 8), 6);
  expect(dug(', slope 45 deg')).toBeCloseTo(40 * 8 * (3 + 8), 6);
});
