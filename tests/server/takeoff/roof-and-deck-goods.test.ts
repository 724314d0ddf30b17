// What goes with a roof and a deck beside their main goods: ridge board and ties, the small parts of gutters, paint of fascia
// and soffit, a deck's beam and its piers; and what a roof without a covering does not get. Figures by hand.
import { describe, expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

// 24 ft wide, 30 ft along the ridge, a foot of overhang all round, 6 in 12.
const roof = (lines: string) => `plan p
  units feet
level main
  footprint 24' x 30'
  height 8'
roof top over main
  shape gable 6:12, ridge north-south
  overhang 12" eaves, 12" rakes
${lines}trade us crew of 2 at $50/h
task paint does paint-outside by us
`;
const taken = (text: string) => planOf(text, { library: 'built-in' });

describe('a roof of rafters', () => {
  // The ridge is 30 + 2 × 1 = 32 ft.
  test('has a ridge board as long as its ridge, of the size that the plan says', () => {
    const bare = taken(roof('  framed rafter 2x8 at 24" oc\n')).line('ridge-board-length');
    expect([bare.item, amount(bare.net, 'ft')]).toEqual(['ridge-board', 32]);
    const sized = taken(roof('  framed rafter 2x8 at 24" oc\n  ridge-board 2x10\n')).line('ridge-board-length');
    expect(sized.item).toBe('ridge-board 2x10');
  });
  test('has collar ties where the plan names them: 30 ft at 4 ft is 8 spaces and one, 9 of 8 ft', () => {
    expect(taken(roof('  framed rafter 2x8 at 24" oc\n')).lines('collar-tie-length')).toEqual([]);
    const ties = taken(roof('  framed rafter 2x8 at 24" oc\n  collar-ties 2x4 at 48" oc, 8\' long\n')).line('collar-tie-length');
    expect([ties.item, amount(ties.net, 'ft')]).toEqual(['collar-tie 2x4', 72]);
  });
  test('of trusses there is none', () => {
    expect(taken(roof('  framed truss at 24" oc\n')).lines('ridge-board-length')).toEqual([]);
  });
});

describe('gutters', () => {
  // Two of 32 ft: a hanger to every 2 ft is 32, two ends each; a leader in a pipe wants no splash block.
  test('bring hangers, ends, an outlet to each leader, and splash blocks where no pipe takes them', () => {
    const plan = taken(roof(`  gutters east, west, size 5"\n  leaders 4, size 2x3, 2 piped\n`));
    const count = (item: string) => plan.takeOff.lines.filter((line) => line.item === item).map(({ net }) => net.value);
    expect(count('gutter-hanger')).toEqual([32]);
    expect(count('gutter-end 5"')).toEqual([4]);
    expect(count('gutter-outlet')).toEqual([4]);
    expect(count('splash-block')).toEqual([2]);
  });
  test('of a hip roof go on round the corners', () => {
    const hip = (on: string) =>
      taken(roof(`  gutters ${on}\n`).replace('shape gable', 'shape hip'))
        .lines('gutter-end-count')
        .map(({ net }) => net.value);
    expect(hip('eaves')).toEqual([]);
    expect(hip('east, north')).toEqual([2]);
    expect(hip('east, west')).toEqual([4]);
  });
});

describe('fascia and soffit', () => {
  // Edges: 2 × 32 + 4 × 13 × √1.25 = 122.138 ft; fascia of a nominal 6 in 61.07 sf, soffit a foot wide 122.14 sf.
  const painted = (more: string) =>
    taken(roof(`  fascia 1x6\n  soffit soffit-board 3/8"\n${more}`))
      .lines('eaves-paint-area', 'outside-paint')
      .map(({ net }) => Number(amount(net, 'sf').toFixed(2)));
  test('take the paint of the walls, unless they come finished', () => {
    expect(painted('')).toEqual([183.21]);
    expect(painted('  unpainted\n')).toEqual([]);
  });
});

describe('what goes with a covering', () => {
  const edges = (lines: string) =>
    taken(roof(lines))
      .takeOff.lines.map(({ item }) => item)
      .filter((item) => /^(starter-strip|ridge-cap|drip-edge)/.test(item));
  test('is not bought for a roof that nothing covers', () => expect(edges('  framed truss at 24" oc\n')).toEqual([]));
  test('is a starter strip only under courses', () => {
    expect(edges('  roofing standing-seam over roof-underlay\n')).toEqual(['ridge-cap', 'drip-edge']);
    expect(edges('  roofing strip-shingle over felt\n')).toEqual(['ridge-cap', 'starter-strip', 'drip-edge']);
  });
});

describe('a deck', () => {
  const deck = taken(`plan p
  units feet
deck d
  size 12' x 8'
  beam 2-ply 2x10
  piers 4, 12" x 36"
`);
  test('has a beam of its plies, as long as it is: two of 12 ft', () => {
    const beam = deck.line('deck-beam-length');
    expect([beam.item, amount(beam.needed, 'ft')]).toEqual(['deck-beam 2x10', 24]);
  });
  // 4 × π/4 × 1 × 3 = 9.425 cf, 5 % more is 9.896: 16.5 bags of 0.6 cf.
  test('stands on piers of a tube and bagged concrete', () => {
    expect(deck.line('deck-pier-count', 'tube-form').net.value).toBe(4);
    expect(amount(deck.line('deck-pier-volume', 'bag-concrete').net, 'cf')).toBeCloseTo(9.425, 3);
    expect(deck.purchase('bag-concrete').bought.value).toBe(17);
  });
});

test('a stone entrance brings its stone and fabric before anybody is named for it: 600 sf are 11.1 cy', () => {
  const plan = taken(`plan p\n  units feet\nsite lot\n  size 80' x 140'\n  entrance 50' x 12'\n`);
  const nets = plan.takeOff.lines.filter(({ item }) => item === 'coarse-stone' || item === 'filter-fabric');
  expect(nets.map(({ item, net }) => [item, Number(amount(net, item === 'coarse-stone' ? 'cy' : 'sf').toFixed(2))])).toEqual([
    ['coarse-stone', 11.11],
    ['filter-fabric', 600],
  ]);
});
