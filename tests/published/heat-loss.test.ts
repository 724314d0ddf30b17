// Heat loss by U × area × difference, against published sums: a teaching sheet on heat loss (studylib.net 8966346), a room
// sheet (diydata.com), the air-change formula of the US Department of Housing and Urban Development (0.018), and F-factors of
// slab edges (Washington WAC 51-11C-61061). U of assemblies is given by a layer whose R and air films make it up.
import { describe, expect, test } from 'vitest';
import { type HeatLoss, heatLossOf, heatLossOfHouse } from '#takeoff/heat/heat-loss';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

/** Air films: wall 0.17 + 0.68, floor 0.92 twice, ceiling 0.61 twice. */
const FILMS = { wall: 0.85, floor: 1.84, ceiling: 1.22 };

function assembly(kind: keyof typeof FILMS, u: number): string {
  return `material ${kind}-stuff laid sheets
  insulates R-${1 / u - FILMS[kind]}
assembly a-${kind} for ${kind}
  layer ${kind}-stuff
`;
}

function heat(text: string): HeatLoss {
  const { model, messages } = planOf(text);
  expect(messages).toEqual([]);
  return heatLossOf(model.list('level')[0]!, model)!;
}

const part = (loss: HeatLoss, label: string): number => {
  const found = loss.ua.inputs.find(({ form }) => form.label === label);
  return amount(found, 'Btu/hF');
};

describe('studylib.net 8966346, heat loss through 6 square feet from 70 to 30 degrees', () => {
  // The sheet rounds R 0.9 to U 1.1, and R 14 to U 0.07.
  const plan = (window: string) => `plan p
  units feet
  indoors 70 F
  outdoors 30 F
level main
  footprint 1' x 1'
  height 1'-6"
  walls a-wall
foundation under main
  footing 1' x 1'
crawl under main
  insulated R-10
${assembly('wall', 0.07)}window glass 2' x 3', U 1.1
room r on main
  size 1' x 1'
${window}`;
  test('a window: 264 Btu/h', () => {
    expect(part(heat(plan('  windows 1 glass\n')), 'glass') * 40).toBeCloseTo(264, 3);
  });
  test('the same area of wall: 16.8 Btu/h', () => {
    expect(part(heat(plan('')), 'outside wall') * 40).toBeCloseTo(16.8, 3);
  });
});

test('diydata.com, a room of 238 square feet from 70 to 30 degrees: wall 518, window 816, floor 1,142 Btu/h', () => {
  const room = heat(`plan p
  units feet
  indoors 70 F
  outdoors 30 F
level main
  footprint 14' x 17'
  height 112 sf / 62'
  walls a-wall
  floor a-floor
${assembly('wall', 0.18)}${assembly('floor', 0.12)}window glass 5' x 8', U 0.51
room r on main
  size 13' x 16'
  windows 1 glass
`);
  expect(Math.round(part(room, 'outside wall') * 40)).toBe(518);
  expect(Math.round(part(room, 'glass') * 40)).toBe(816);
  expect(Math.round(part(room, 'floor') * 40)).toBe(1142);
  // Nobody said what the ceiling is made of: it is named, and not in the sum.
  expect(room.without).toEqual(['ceiling (made of nothing yet)', 'air through cracks']);
  expect(amount(room.loss, 'Btu/h')).toBeCloseTo(518.4 + 816 + 1142.4, 4);
});

describe('a house of 40 by 30 feet with 9-foot walls, 180 square feet of windows and 40 of doors: plain arithmetic', () => {
  interface House {
    readonly ceiling: number;
    readonly wall: number;
    readonly window: number;
    readonly door: number;
    readonly windows?: number;
  }
  const text = ({ ceiling, wall, window, door, windows = 12 }: House): string => `plan p
  units feet
  indoors 70 F
  outdoors 5 F
  infiltration 0.35
level main
  footprint 40' x 30'
  height 9'
  walls a-wall
  floor a-floor
  ceiling a-ceiling
${assembly('wall', wall)}${assembly('ceiling', ceiling)}${assembly('floor', 0.033)}window w-1 3' x 5', U ${window}
door d-1 4' x 5', exterior, U ${door}
room all on main
  size 39' x 29'
  windows ${windows} w-1
  doors 2 d-1
`;
  const code = { ceiling: 0.024, wall: 0.045, window: 0.3, door: 0.3 };
  const ua = (house: House) => amount(heat(text(house)).ua, 'Btu/hF');

  test('UA by the U-factors of the model code in zone 5 is 181.2; thicker walls elsewhere may miss or better it', () => {
    expect(ua(code)).toBeCloseTo(181.2, 3);
    expect(ua({ ceiling: 0.024, wall: 0.06, window: 0.25, door: 0.2 })).toBeCloseTo(183.8, 3);
    expect(ua({ ceiling: 0.02, wall: 0.05, window: 0.26, door: 0.25 })).toBeCloseTo(172.4, 3);
  });

  test('HUD formula: 181.2 × 65 + 0.018 × 0.35 × 10,800 × 65 is 16,200 Btu/h, 4.7 kW', () => {
    const { ua: through, air, loss, without } = heat(text(code));
    expect(amount(through, 'Btu/hF') * 65).toBeCloseTo(11778, 3);
    expect(amount(air, 'Btu/hF') * 65).toBeCloseTo(4422.6, 3);
    expect(amount(loss, 'Btu/h')).toBeCloseTo(16200.6, 3);
    expect(amount(loss, 'kW')).toBeCloseTo(4.75, 2);
    expect(without).toEqual([]);
  });

  test('a window less loses 15 × (0.30 − 0.045) × 65 = 248.6 Btu/h less', () => {
    const before = amount(heat(text(code)).loss, 'Btu/h');
    const after = amount(heat(text({ ...code, windows: 11 })).loss, 'Btu/h');
    expect(before - after).toBeCloseTo(248.625, 3);
  });

  test('where air leakage at 50 Pa is given, a twentieth of it', () => {
    const tested = heat(text(code).replace('infiltration 0.35', 'air-leakage 7'));
    expect(amount(tested.loss, 'Btu/h')).toBeCloseTo(16200.6, 3);
  });

  test('without temperatures there is UA and no loss', () => {
    const { loss, ua: through } = heat(text(code).replace(/ {2}(in|out)doors.*\n/g, ''));
    expect(loss).toBeUndefined();
    expect(amount(through, 'Btu/hF')).toBeCloseTo(181.2, 3);
  });

  test('all storeys together', () => {
    const { model } = planOf(text(code));
    expect(amount(heatLossOfHouse(model)?.loss, 'Btu/h')).toBeCloseTo(16200.6, 3);
  });
});

describe('WAC 51-11C-61061, F-factors: the edge of a slab of 140 feet', () => {
  const edge = (line: string) =>
    part(
      heat(`level main
  footprint 40' x 30'
  height 9'
foundation under main
  slab 4"
${line}`),
      'edge of the slab',
    ) / 140;
  test.each([
    ['', 0.73],
    [`  edge R-5, 24" deep\n`, 0.58],
    [`  edge R-10, 24" deep\n`, 0.54],
    [`  edge R-15, 24" deep\n`, 0.52],
    [`  edge R-10, 48" deep\n`, 0.48],
    // What the table does not hold counts as the next lesser.
    [`  edge R-12, 36" deep\n`, 0.54],
    [`  edge R-10, 12" deep\n`, 0.73],
  ])('%s: %s', (line, factor) => {
    expect(edge(line)).toBeCloseTo(factor, 9);
  });
});
