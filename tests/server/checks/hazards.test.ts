// Hazards: where the plan itself says something dangerous, where its work carries one, what sees to it, and how often it is
// told. Each test names the published source that the library's row goes by.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

/** What is told of hazards alone. */
function told(text: string, options: Parameters<typeof checked>[1] = {}): readonly string[] {
  return checked(text, options).told.filter((line) => line.includes(' safety/'));
}
const loud = (text: string): readonly string[] => told(text).filter((line) => !line.startsWith('note '));

describe('trenches', () => {
  const trench = (words: string, soil = 'type-C'): string =>
    `plan p\nsite lot\n  soil ${soil}\ntrench sewer "Sewer" 40' long, 30" wide, ${words}\n`;

  // NIOSH FACE report 04MI160: a worker dies in a house sewer excavation, 8 ft deep in sand and gravel, faces of 60 to 80
  // degrees. 29 CFR 1926 subpart P, appendix B, table B-1: type C soil may stand at 1 1/2 to 1, 34 degrees.
  test.each(['60 deg', '80 deg', '0.5:1', '1:1'])('8 feet deep with sides at %s in type C soil', (slope) => {
    expect(loud(trench(`8' deep, slope ${slope}`))).toEqual(['error safety/trench-too-steep sewer']);
  });

  test('the finding says how deep, how steep, and what the soil allows; it stands at the depth', () => {
    const plan = checked(trench(`8' deep, slope 60 deg`));
    expect(plan.messages('safety/trench-too-steep')).toEqual([
      'Cave-in: sides that stand steeper than the soil can hold break off without warning. "sewer": depth 8\'-0", side slope 0.58:1 (60 degrees), soil slope 1.5:1 (34 degrees). No step of the plan sees to it. Slope it as flat as the soil allows, bench it, shore it or set a shield; soil that nobody has classified counts as type C. A competent person decides, with local rules.',
    ]);
    expect(plan.marks('safety/trench-too-steep')).toEqual([`line 4: 8'`]);
  });

  // Table B-1: type A 3/4 to 1 (53 degrees), type B 1 to 1 (45), type C 1 1/2 to 1 (34), stable rock upright.
  test.each([
    ['type-C', '1.5:1'],
    ['type-C', '34 deg'],
    ['type-B', '1:1'],
    ['type-B', '45 deg'],
    ['type-A', '0.75:1'],
    ['type-A', '53 deg'],
    ['rock', '80 deg'],
  ])('%s may stand at %s', (soil, slope) => expect(loud(trench(`8' deep, slope ${slope}`, soil))).toEqual([]));

  test.each([
    ['type-C', '35 deg'],
    ['type-C', '1.49:1'],
    ['type-B', '46 deg'],
    ['type-A', '54 deg'],
  ])('%s may not stand at %s', (soil, slope) =>
    expect(loud(trench(`8' deep, slope ${slope}`, soil))).toEqual(['error safety/trench-too-steep sewer']),
  );

  // 29 CFR 1926.652(b)(1): 34 degrees where the soil is not classified.
  test('soil that nobody classified is the loosest', () => {
    const plain = (slope: string): string => `plan p\ntrench sewer 40' long, 8' deep, 30" wide, slope ${slope}\n`;
    expect(loud(plain('1:1'))).toEqual(['error safety/trench-too-steep sewer']);
    expect(loud(plain('1.5:1'))).toEqual([]);
  });

  // 29 CFR 1926.652(a)(1): protection from 5 ft, but in stable rock.
  test('from 5 feet without a slope or a protection', () => {
    expect(loud(trench(`5' deep`))).toEqual(['error safety/trench-unprotected sewer']);
    expect(loud(trench(`4'-11 3/4" deep`))).toEqual([]);
    expect(loud(trench(`5' deep`, 'rock'))).toEqual([]);
    expect(loud(trench(`5' deep, protection shield`))).toEqual([]);
    expect(loud(trench(`5' deep, slope 0:1`))).toContain('error safety/trench-unprotected sewer');
  });

  test('a step that shores it sees to it, of the trench that it shores', () => {
    const two = (of: string): string =>
      `plan p\ntrench sewer 40' long, 8' deep, 30" wide\ntrench water 40' long, 8' deep, 30" wide\ntask shore does shore-trench${of}\n`;
    expect(loud(two(''))).toEqual([]);
    expect(loud(two(' of sewer'))).toEqual(['error safety/trench-unprotected water']);
  });

  // Over 20 ft: a registered professional engineer (29 CFR 1926.652(b) and (c)).
  test('deeper than 20 feet is an engineer’s', () => {
    expect(loud(trench(`20'-1" deep, slope 1.5:1`))).toEqual(['error safety/trench-over-20 sewer']);
    expect(loud(trench(`20'-1" deep, slope 1.5:1, protection engineer`))).toEqual([]);
    expect(loud(trench(`20' deep, slope 1.5:1`))).toEqual([]);
  });

  // 29 CFR 1926.651(c)(2): from 4 ft a way out within 25 ft.
  test('from 4 feet a ladder, told once for all', () => {
    expect(told(trench(`4' deep`))).toEqual(['note safety/trench-ladder sewer']);
    expect(told(trench(`47" deep`))).toEqual([]);
    expect(told(`${trench(`4' deep`)}task ladder does set-trench-ladder\n`)).toEqual([]);
    const both = checked(`${trench(`4' deep`)}trench water 40' long, 50" deep, 12" wide\n`);
    expect(both.messages('safety/trench-ladder')).toHaveLength(1);
    expect(both.messages('safety/trench-ladder')[0]).toContain('The same of "water".');
  });
});

test('a foundation pit that is given a slope too steep for its soil', () => {
  // 29 CFR 1926 subpart P, appendix B, table B-1.
  const pit = (slope: string): string =>
    `plan p\nsite lot\n  soil type-B\nlevel main\n  footprint 30' x 40'\nfoundation cellar under main\n  wall 10" x 8'\n  footing 20" x 10"\n  bottom 7' below grade\n  dig all\n  slope ${slope}\ntask dig does dig-foundation\n`;
  expect(loud(pit('70 deg'))).toEqual(['error safety/pit-too-steep dig']);
  expect(loud(pit('1:1'))).toEqual([]);
});

// A pit of 8 x 8 ft for the rain of a 30 x 40 ft roof, 3 in at 40 % voids: 1,200 x 0.25 / 0.4 / 64 = 11.7 ft.
test('a deep pit for a dry well', () => {
  const well = (size: string): string =>
    `plan p\nroof main\n  size 30' x 40'\n  shape flat\ndry-well pit for roof main\n  storm 3"\n  voids 40%\n  size ${size}\n`;
  expect(loud(well(`8' x 8'`))).toEqual(['error safety/well-unprotected pit']);
  expect(loud(well(`14' x 14'`))).toEqual([]);
  expect(loud(`${well(`8' x 8'`)}  protection shoring\n`)).toEqual([]);
});

// Fill against a wall: National Concrete Masonry Association, August 2019, and Ontario Regulation 332/12 (wall held at the
// top); ToolBase (NAHB Research Center): not needed for 48 inches of fill or less; from memory, IRC R404.1.7.
describe('fill against foundation walls', () => {
  const house = `plan p
  start 2027-05-03
level main
  footprint 30' x 40'
  floor floor-2x10
foundation deep under main
  footing 20" x 10"
  wall 10" x 8'
  bottom 82" below grade
  dig all
foundation stepped
  long 16'
  footing 20" x 10"
  wall 10" x 4'
  bottom 46" below grade
`.replace("  long 16'\n", "  16' long\n");
  const FILL = 'sequence/backfill-before-braced';
  const steps = (fill: string, rest = ''): string =>
    `${house}trade us crew of 2\ntrade them crew of 2\n${rest}task fill does backfill-foundation ${fill} by us takes 1d\n`;
  const found = (text: string): readonly string[] =>
    checked(text).told.filter((line) => / safety\/wall-unbraced| sequence\/backfill-before-braced/.test(line));

  test('6 feet against a wall that no step braces or decks', () => {
    expect(found(steps('of deep'))).toEqual(['error safety/wall-unbraced fill']);
    expect(checked(steps('of deep')).messages('safety/wall-unbraced')[0]).toContain(
      `"deep": fill 6'-0", wall height 8'-0". "fill" carries it, and no step of the plan sees to it.`,
    );
  });

  test('3 feet against the stepped wall beside it', () => expect(found(steps('of stepped'))).toEqual([]));

  test('an engineer’s braces, as a word or as a step', () => {
    expect(found(steps('of deep').replace('  dig all\n', '  dig all\n  braced "Shores as drawn"\n'))).toEqual([]);
    expect(found(steps('of deep', 'task brace does brace-foundation of deep by them takes 1d\n'))).toEqual([]);
  });

  test('a floor that comes too late, in time by luck, and held', () => {
    const deck = 'task deck does lay-subfloor by them takes 2d\n';
    expect(found(steps('of deep', deck))).toEqual([`error ${FILL} fill`]);
    // A wall is not left to luck.
    expect(found(steps('of deep, not before 2027-06-07', deck))).toEqual([`error ${FILL} fill`]);
    expect(checked(steps('of deep, not before 2027-06-07', deck)).messages(FILL)[0]).toContain('only by luck');
    expect(found(steps('of deep after deck', deck))).toEqual([]);
    // Nothing needs to hold the shallow one.
    expect(found(steps('of stepped', deck))).toEqual([]);
  });

  test('earth that stands as high inside pushes nothing', () => {
    const slab = steps('of deep').replace('  dig all\n', '  slab 4"\n  dig trench\n');
    expect(found(slab)).toEqual([]);
    expect(found(steps('of deep').replace('  dig all\n', "  fill 2'\n"))).toEqual([]);
  });
});

describe('heights', () => {
  const house = (steps: string, wall = `8'`): string => `plan p
level main
  footprint 28' x 32'
  height 8'
  floor floor-2x10
foundation base under main
  footing 20" x 8"
  wall 8" x ${wall}
  bottom 32" below grade
roof main over main
  shape gable 6:12
${steps}`;

  // 29 CFR 1926.501(b)(1): 6 feet. The hole beside the wall counts until it is filled.
  test('an open floor: over a cellar, on an upper storey, not over a low crawl space', () => {
    const framing = 'task walls does frame-walls, brace-walls\n';
    expect(told(house(framing, '32"'))).toEqual([]);
    expect(told(house(framing, `6'`))).toEqual(['note safety/open-edge walls']);
    const upper = house(`level upper\n  footprint 28' x 32'\n  height 8'\n  floor floor-2x10\n${framing}`, '32"');
    expect(checked(upper).messages('safety/open-edge')[0]).toContain(`"upper": drop 8'-8".`);
    expect(told(house(`${framing}task rail does set-guardrails\n`, `6'`))).toEqual([]);
  });

  // 29 CFR 1926.501(b)(1)-(2), and 1926.451(g)(1) for scaffolds above 10 feet.
  test('a roof, and its gable', () => {
    const roofing = 'task roof does sheathe-roof\n';
    expect(checked(house(roofing, '32"')).messages('safety/roof-edge')[0]).toContain(`"main": eaves height 8'-8", pitch 6:12.`);
    expect(told(house(`${roofing}task tie does set-roof-anchors\n`, '32"'))).toEqual([]);
    const siding = 'task side does side-walls\n';
    // 8 ft 8 in and a rise of half of 14 ft.
    expect(checked(house(siding, '32"')).messages('safety/scaffold')[0]).toContain(`"main": wall top 15'-8".`);
    expect(told(house(siding, '32"').replace('gable 6:12', 'hip 6:12'))).toEqual([]);
    expect(told(house(`${siding}task up does set-scaffold\n`, '32"'))).toEqual([]);
  });

  test('a plan of tasks alone is reminded of its roof', () => {
    expect(told('task felt does lay-underlayment takes 1d\n')).toEqual(['note safety/roof-edge felt']);
  });

  test('a deck 6 feet up', () => {
    expect(told(`deck porch\n  high 6'\ntask frame does frame-deck\n`)).toEqual(['note safety/high-deck frame']);
    expect(told(`deck porch\n  high 5'-11"\ntask frame does frame-deck\n`)).toEqual([]);
  });

  // 29 CFR 1926.706: masonry over 8 feet.
  test('high masonry', () => {
    const wall = (height: string): string => `level main\n  footprint 20' x 20'\n  height ${height}\ntask lay does lay-masonry\n`;
    expect(told(wall(`8'-1"`))).toEqual(['note safety/masonry-wall lay']);
    expect(told(wall(`8'`))).toEqual([]);
  });
});

describe('what the work carries', () => {
  test.each([
    // 29 CFR 1926.651(b): lines are laid bare.
    [
      'lines-covered',
      'dig does dig-foundation takes 1d\ntask call does call-before-dig takes 1d',
      'bare does expose-lines takes 1d',
    ],
    // 29 CFR 1926.404(b)(1).
    [
      'site-power',
      'walls does frame-walls, brace-walls takes 1d\ntask wires does rough-wiring takes 1d\nfirm volt\n  licensed until 2028-01-31',
      'pole does set-temp-power takes 1d',
    ],
    // From memory: 29 CFR 1926.1425.
    ['lift', 'up does set-trusses, brace-trusses takes 1d', 'plan does plan-lift takes 1d'],
    ['walls-loose', 'up does frame-walls takes 1d', 'brace does brace-walls takes 1d'],
    ['trusses-loose', 'up does set-trusses, plan-lift takes 1d', 'brace does brace-trusses takes 1d'],
    ['panels-loose', 'up does set-wall-panels, plan-lift takes 1d', 'brace does brace-panels takes 1d'],
    // 29 CFR 1926.701(b).
    ['bar-ends', 'tie does tie-stem-wall-steel takes 1d', 'caps does cap-bars takes 1d'],
    // 29 CFR 1926.651(i).
    ['footing-undermined', 'dig does dig-beside-footing takes 1d', 'ask does have-engineered takes 1d'],
    ['bearing-wall', 'out does remove-bearing-wall takes 1d', 'ask does have-engineered takes 1d'],
    ['trusses-cut', 'cut does alter-trusses takes 1d', 'ask does have-engineered takes 1d'],
  ])('%s: told where no step sees to it, silent where one does', (name, carrier, answer) => {
    const [step = ''] = carrier.split(' ');
    const steps = `task ${carrier}\n`;
    expect(told(steps).map((line) => line.replace(/^\w+ /, ''))).toEqual([`safety/${name} ${step}`]);
    expect(told(`${steps}task ${answer}\n`)).toEqual([]);
  });

  test.each([
    // 29 CFR 1926.1153, Table 1.
    ['silica-dust', 'saw does saw-joints takes 1d'],
    // From memory: 29 CFR 1926.154; subpart AA.
    ['carbon-monoxide', 'warm does heat-house takes 1d'],
    ['closed-place', 'rake does clean-crawl takes 1d'],
  ])('%s: answered by whoever accepts it, with a reason', (name, carrier) => {
    const [step = ''] = carrier.split(' ');
    expect(told(`task ${carrier}\n`)).toEqual([`note safety/${name} ${step}`]);
    expect(
      checked(`task ${carrier}\n  accept safety/${name} "Seen to"\n`).told.filter((line) => /safety|accept/.test(line)),
    ).toEqual([]);
  });

  test('licensed work, until a firm with a licence stands in the plan', () => {
    const wires = 'task wires does rough-wiring takes 1d\n';
    expect(told(wires)).toEqual(['note safety/licensed-work wires']);
    expect(told(`${wires}firm volt\n  licensed until 2028-01-31\n`)).toEqual([]);
  });

  test('taking out what carries is an error until an engineer is asked', () => {
    expect(loud('task out does remove-bearing-wall takes 1d\n')).toEqual(['error safety/bearing-wall out']);
  });

  test('once for the plan, with the other steps', () => {
    const plan = checked('task a does set-tile takes 1d\ntask b does set-tile takes 1d\ntask c does saw-joints takes 1d\n');
    expect(plan.messages('safety/silica-dust')).toHaveLength(1);
    expect(plan.messages('safety/silica-dust')[0]).toContain('"a", "b" and "c" carry it.');
  });

  test('no longer, once the work is done', () => {
    const work = 'task a does saw-joints takes 1d\ntask b does heat-house takes 1d\n';
    const diary = 'progress 2027-05-10\n  a finished 2027-05-07\n';
    expect(told(`plan p\n  start 2027-05-03\n${work}${diary}`)).toEqual(['note safety/carbon-monoxide b']);
  });
});

describe('old houses', () => {
  // 73 FR 21692, 40 CFR 745.80 to .92: built before 1978. From memory: 29 CFR 1926.1101, buildings of 1980 and before.
  test('lead and asbestos by the year the house was built', () => {
    const house = (built: number, steps = ''): string => `plan p\n  built ${built}\n${steps}`;
    expect(told(house(1962))).toEqual(['note safety/asbestos p', 'warning safety/lead-paint p']);
    expect(told(house(1978))).toEqual(['note safety/asbestos p']);
    expect(told(house(1981))).toEqual([]);
    expect(told(house(1962, 'task look does test-lead takes 1d\ntask sample does sample-asbestos takes 1d\n'))).toEqual([]);
    expect(checked(house(1962)).messages('safety/lead-paint')[0]).toContain('Built 1962. No step of the plan sees to it.');
    expect(checked(house(1962)).marks('safety/lead-paint')).toEqual(['line 2: 1962']);
  });
});

describe('many reminders', () => {
  const steps = ['saw does saw-joints', 'warm does heat-house', 'rake does clean-crawl', 'tie does tie-stem-wall-steel'];
  const plan = (count: number, more = ''): string =>
    `${steps
      .slice(0, count)
      .map((step) => `task ${step} takes 1d\n`)
      .join('')}${more}`;

  test('above three, one stands for all and names each with its code', () => {
    expect(told(plan(3))).toHaveLength(3);
    const four = checked(plan(4));
    expect(told(plan(4))).toEqual(['note safety/silica-dust saw']);
    expect(four.messages('safety/silica-dust')[0]).toContain(
      'The work carries more that nothing in the plan sees to: carbon monoxide at "warm" (safety/carbon-monoxide), bad air and heat at "rake" (safety/closed-place), impalement at "tie" (safety/bar-ends).',
    );
  });

  test('each is accepted by its own code', () => {
    expect(told(plan(4, 'accept safety/carbon-monoxide everywhere "Vented"\n'))).toHaveLength(3);
  });

  test('what the plan itself says stands apart', () => {
    expect(loud(plan(4, `trench sewer 40' long, 8' deep, 30" wide\n`))).toEqual(['error safety/trench-unprotected sewer']);
  });
});

test('a plan may bring hazards of its own, and change those of the library', () => {
  const own = `hazard dogs "A dog on the lot"
  during survey-site
  because "Bites: the neighbour's dog is loose until noon."
  remedy "Ring first; the neighbour decides."
hazard carbon-monoxide
  severity error
task look does survey-site takes 1d
task warm does heat-house takes 1d
`;
  expect(told(own)).toEqual(['note safety/dogs look', 'error safety/carbon-monoxide warm']);
});
