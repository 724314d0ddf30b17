// Least and greatest values of the model code. The numbers are the library's rows, which name their sources; here they are
// only held against plans on either side of them.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const plan = (things: string, code = 'irc-2021', units = 'feet'): ReturnType<typeof checked> =>
  checked(`plan p\n  code ${code}\n  units ${units}\n  frost 30"\n${things}`);
/** Without what reminds of things that a plan as short as these never says. */
const told = (things: string): readonly string[] =>
  plan(things).told.filter((line) => line.includes(' minimum/') && !/-unsaid|-designer/.test(line));

describe('rooms', () => {
  test('a bedroom of 70 square feet is large enough, one of a hair less is not', () => {
    expect(
      told(`room bed\n  use sleeping\n  size 7' x 10'\n  windows 1 glass\nwindow glass 4' x 5', clear 3' x 4', sill 24"\n`),
    ).toEqual([]);
    expect(told(`room den\n  use living\n  size 7' x 9'-11 63/64"\n  windows 1 glass\nwindow glass 4' x 5'\n`)).toEqual([
      'error minimum/habitable-area den',
    ]);
  });

  test('each use has its own rows', () => {
    expect(told(`room store\n  use storage\n  size 3' x 3'\n`)).toEqual([]);
    expect(told(`room hall\n  use passage\n  size 2'-11" x 10'\n`)).toEqual(['error minimum/hall-width hall']);
  });

  test('the best way out counts, by the maker’s clear opening', () => {
    const bed = (window: string): readonly string[] =>
      told(`${window}\nroom bed\n  use sleeping\n  size 10' x 12'\n  windows 1 glass\n`).map((line) => line.split(' ')[1] ?? '');
    expect(bed(`window glass 3' x 5', sill 24", clear 31" x 55"`)).toEqual([]);
    expect(bed(`window glass 3' x 5', sill 48", clear 31" x 55"`)).toEqual(['minimum/escape-sill']);
    expect(bed(`window glass 3' x 5', sill 24", clear 19" x 55"`)).toEqual(['minimum/escape-width']);
    expect(bed(`window glass 3' x 5', sill 24", clear 20" x 24"`)).toEqual(['minimum/escape-area']);
    // Nobody gave the clear opening: a nominal size is never taken for it.
    expect(bed(`window glass 3' x 5', sill 24"`)).toEqual([]);
  });

  test('a bedroom without any window or outside door has no way out', () => {
    expect(plan(`room bed\n  use sleeping\n  size 10' x 12'\n`).messages('minimum/escape-area')).toEqual([
      'Fire: a person in gear must get in and a sleeper out. Least clear area of an escape opening: at least 5.7 sf, or escape to grade at most 44" and escape area at least 5 sf in the model code (irc-2021 R310.2.1), and "bed" has 0 sf. Choose a window whose maker states 5.7 square feet clear; where the ground outside is within 44 inches of the sill, 5.0 will do, and the level says where the ground is. Local code and the inspector decide.',
    ]);
  });

  test('a limit that hangs on the room itself', () => {
    const den = (size: string): readonly string[] =>
      told(`window glass 2' x 4'-9 1/2"\nroom den\n  use living\n  size ${size}\n  windows 1 glass\n`);
    // Eight percent of 120 square feet are 9.6.
    expect(den(`10' x 12'`)).toEqual(['note minimum/daylight den']);
    expect(den(`10' x 11'-11"`)).toEqual([]);
  });

  test('fans by what they move, or a window instead', () => {
    const bath = (more: string): readonly string[] => told(`room bath\n  use bathing\n  size 5' x 8'\n${more}`);
    expect(bath('  fixtures 1 toilet, 1 bath-fan 30 cfm\n')).toEqual(['error minimum/bath-fan bath']);
    expect(bath('  fixtures 1 toilet, 1 bath-fan 80 cfm\n')).toEqual([]);
    expect(bath(`  fixtures 1 toilet\n  windows 1 glass\nwindow glass 2' x 3'\n`)).toEqual([]);
    expect(bath('')).toEqual([]);
  });

  test('outlets along the walls, only where a room says any', () => {
    const spacing = (devices: string) =>
      plan(`room den\n  use living\n  size 14' x 12'\n${devices}`).told.filter((line) => line.includes('outlet-spacing'));
    expect(spacing('')).toEqual([]);
    expect(spacing('  devices 3 light, 1 smoke-alarm\n')).toEqual([]);
    expect(spacing('  devices 4 outlet, 3 light\n')).toEqual(['warning minimum/outlet-spacing den']);
    expect(spacing('  devices 5 outlet, 3 light\n')).toEqual([]);
  });
});

describe('the ground and the house', () => {
  test('footings below the plan’s own frost', () => {
    const footing = (bottom: string): readonly string[] =>
      told(`foundation f\n  footing 20" x 8"\n  wall 8" x 40"\n  bottom ${bottom} below grade\n`);
    expect(footing('30"')).toEqual([]);
    expect(footing('29"')).toEqual(['error minimum/frost-depth f']);
  });

  test('the widest outside door that swings is the way out', () => {
    const door = (clear: string): readonly string[] =>
      told(`door gate 3' x 6'-8", exterior, clear ${clear}\nroom den\n  doors 1 gate\n`);
    expect(door('33" x 79"')).toEqual([]);
    expect(door('31" x 79"')).toEqual(['error minimum/exit-width p']);
  });

  test('a high deck has a guard', () => {
    expect(told('deck porch\n  high 31"\n')).toEqual(['error minimum/deck-guard porch']);
    expect(told(`deck porch\n  high 31"\n  rails 20'\n`)).toEqual([]);
    expect(told('deck porch\n  high 22"\n')).toEqual([]);
  });

  test('a drain has a fall; water beside it, rain and footing drains are no such drain', () => {
    const trench = (pipes: string) => told(`trench ditch\n${pipes}  falls 1/16" per foot\n`);
    const [sewer, waste] = ['  pipe sewer-pipe 4"\n', '  pipe waste-pipe 2"\n'];
    expect(trench(sewer)).toEqual(['error minimum/drain-fall ditch']);
    expect(trench(sewer + waste)).toEqual(['error minimum/drain-fall-small ditch']);
    expect(trench(`${sewer}  pipe poly-pipe 1"\n`)).toEqual([]);
    expect(trench('  pipe storm-pipe 4"\n')).toEqual([]);
    expect(trench('  pipe drain-pipe 4"\n')).toEqual([]);
  });

  test('a dry well takes the plan of its roof, by the roof’s own size or the level below', () => {
    const well = (roof: string) => told(`${roof}dry-well pit for roof lid\n`);
    expect(well(`roof lid\n  size 25' x 40'\n`)).toEqual([]);
    expect(well(`roof lid\n  size 26' x 40'\n`)).toEqual(['note minimum/dry-well-area pit']);
    expect(well(`level main\n  footprint 26' x 40'\nroof lid over main\n`)).toEqual(['note minimum/dry-well-area pit']);
  });
});

test('what has no name goes by its kind', () => {
  expect(plan('crawl\n  vents 1/200\n').messages('minimum/crawl-vents')[0]).toContain('and the crawl has 1/200.');
});

test('of an edition that no row was read in, a row is only a note without a section', () => {
  const other = plan(`room den\n  use living\n  size 6' x 12'\n  windows 1 glass\nwindow glass 4' x 5'\n`, 'irc-2030');
  expect(other.told.filter((line) => line.includes('minimum/'))).toEqual(['note minimum/habitable-width den']);
  expect(other.messages('minimum/habitable-width')[0]).toContain(
    `at least 7'-0" in other editions of the model code (irc-2030 was not looked up), and "den" has 6'-0"`,
  );
});

test('a plan without a code is not held to one', () => {
  expect(checked(`room bed\n  use sleeping\n  size 5' x 5'\n`).told.filter((line) => line.includes('minimum/'))).toEqual([]);
});

test('limits keep their feet in a metric plan', () => {
  const metric = plan(
    'room den\n  use living\n  size 2000 x 5000\n  windows 1 glass\nwindow glass 1500 x 1500\n',
    'irc-2021',
    'mm',
  );
  expect(metric.messages('minimum/habitable-width')[0]).toContain(
    'at least 2,133.6 mm in the model code (irc-2021 R304.2), and "den" has 2,000 mm',
  );
});

describe('heat that passes through', () => {
  const zoned = (things: string, units = 'feet'): ReturnType<typeof checked> => plan(`  zone 5A\n${things}`, 'irc-2021', units);

  test('a bare U in a row is the US unit, whatever the plan’s', () => {
    const glass = (u: string, units: string): readonly string[] =>
      zoned(`window glass 3' x 5', U ${u}\n`, units).messages('minimum/window-2021-zones-3-8');
    expect(glass('0.30', 'feet')).toEqual([]);
    expect(glass('0.31', 'feet')[0]).toContain('at most U 0.3 in the model code (irc-2021 N1102.1.3), and "glass" has U 0.31.');
    // U 0.30 is 1.70 W/m2K.
    expect(glass('1.70', 'metric')).toEqual([]);
    expect(glass('1.71', 'metric')).toHaveLength(1);
  });

  test('a wall that no R between or outside is enough of may do by its U over all', () => {
    const wall = (fill: string): readonly string[] =>
      zoned(
        `level main\n  footprint 24' x 30'\n  height 8'\n  walls outer\nassembly outer for wall\n  layer drywall 1/2"\n` +
          `  layer stud 2x6 at 16" oc, filled with ${fill}\n  layer osb 7/16"\n  layer xps-board 1 1/2"\n  framing 25%\n`,
      ).messages('minimum/wall-2021-zones-4-8');
    // Between: 0.85 + 0.45 + 0.62 + 7.5 + 19 = 28.42; through: 9.42 + 5.5 x 1.25 = 16.30; 0.75 / 28.42 + 0.25 / 16.30 = 0.0417.
    expect(wall('r19-batt')).toEqual([]);
    // 24.42 between: 0.75 / 24.42 + 0.25 / 16.30 = 0.0461.
    expect(wall('r15-batt')[0]).toContain('or wall u at most U 0.045 in the model code');
  });
});

test('a plan may set its town’s value beside the model code’s', () => {
  const town = plan(
    `minimum habitable-width\n  at least 6'\nroom den\n  use living\n  size 6'-6" x 12'\n  windows 1 glass\nwindow glass 4' x 5'\n`,
  );
  expect(town.told.filter((line) => line.includes('minimum/'))).toEqual([]);
});

test('of one wall too near the ground one row speaks: the concrete, and from 6 inches on the wood', () => {
  // 6 inches: International Residential Code R404.1.6; 8 inches: Los Angeles County 2017 wood-frame sheet.
  const rows = (wall: string): readonly string[] =>
    checked(`plan p\n  code irc-2018\nfoundation perimeter\n  footing 16" x 8"\n  bottom 34" below grade\n  wall 8" x ${wall}\n`)
      .told.filter((line) => /wall-above-grade|wood-above-soil/.test(line))
      .map((line) => line.split(' ')[1]!);
  expect(rows('31 63/64"')).toEqual(['minimum/wall-above-grade']);
  expect(rows('32"')).toEqual(['minimum/wood-above-soil']);
  expect(rows('33 63/64"')).toEqual(['minimum/wood-above-soil']);
  expect(rows('34"')).toEqual([]);
});

test('behind masonry veneer four inches of wall above the ground will do', () => {
  // International Residential Code R404.1.6 by evstudio.com (2009) and Concrete Facts Magazine, September 2016 (2015).
  const rows = (outermost: string, wall: string): readonly string[] =>
    checked(
      `plan p\n  code irc-2015\nmaterial brick "Brick" laid courses\n  serves as masonry veneer\nassembly outer for wall\n` +
        `  layer stud 2x6 at 16" oc, filled with r21-batt\n  layer ${outermost}\nlevel main\n  walls outer\n` +
        `foundation perimeter under main\n  footing 20" x 8"\n  bottom 34" below grade\n  wall 12" x ${wall}\n`,
    )
      .told.filter((line) => line.includes('wall-above-grade'))
      .map((line) => line.split(' ')[1]!);
  expect(rows('brick 3 5/8"', '30"')).toEqual([]);
  expect(rows('brick 3 5/8"', '29 63/64"')).toEqual(['minimum/wall-above-grade-veneer']);
  expect(rows('lap-siding 8 1/4", 7" to the weather', '30"')).toEqual(['minimum/wall-above-grade']);
});

test('a trap arm falls by its own size at most, exactly', () => {
  // International Residential Code P3105.2 by The Building Code Forum, thread 1770.
  const arm = (text: string): readonly string[] =>
    plan(`room bath\n  use bathing\n  trap-arm ${text}\n`).messages('minimum/trap-fall');
  expect(arm(`1 1/2", 6' long, falls 1/4" per foot`)).toEqual([]);
  expect(arm(`3", 12' long, falls 1/4" per foot`)).toEqual([]);
  expect(arm(`1 1/4", 5'-1" long, falls 1/4" per foot`)).toHaveLength(1);
  expect(arm(`1 1/2", 6' long`)).toEqual([]);
});

test('a heated slab needs R-5 more, at its edge or under it', () => {
  // From memory: footnote on heated slabs to International Residential Code N1102.1.3.
  const slab = (text: string): readonly string[] =>
    plan(`  zone 5A\nfoundation pad\n  ${text}\n`)
      .told.filter((line) => line.includes('slab-'))
      .map((line) => line.split(' ')[1]!);
  expect(slab('slab 4"\n  edge R-10, 48" deep')).toEqual([]);
  expect(slab('slab 4", heated\n  edge R-10, 48" deep')).toEqual(['minimum/slab-heated-2021-zones-3-8']);
  expect(slab('slab 4", over xps-board 1", heated\n  edge R-10, 48" deep')).toEqual([]);
});

test('less on the ceiling will do where raised heels let it keep its depth', () => {
  // US Department of Energy, Building America Solution Center: R-49 in place of R-60 (2021 code, R402.2.1).
  const lid = (ceiling: string, insulation: string): readonly string[] =>
    plan(
      `  zone 5A\nlevel main\n  ceiling ${ceiling}\nassembly lid for ceiling\n  layer blown-cellulose ${insulation}\n`,
    ).messages('minimum/ceiling-2021-zones-4-8');
  expect(lid('lid', 'R-49')).toHaveLength(1);
  expect(lid('lid, raised heels', 'R-49')).toEqual([]);
  expect(lid('lid, raised heels', 'R-45')).toHaveLength(1);
});

test('light borrowed from a sunroom needs an opening of 20 square feet, from another room 25', () => {
  // Washington WAC 51-51-0303: half of the wall, a tenth of the inner floor, 25 square feet, 20 where it is a sunroom.
  const rooms = (width: string, next: string): readonly string[] =>
    plan(
      `window glass 6' x 5'\nroom inner\n  use living\n  size 7' x 10'\n  height 6'-8"\n  cased ${width} x 6' to porch\n` +
        `room porch\n${next}  size 6' x 5'\n  height 8'\n  windows 2 glass\n`,
    )
      .told.filter((line) => /minimum\/(daylight|openable) inner/.test(line))
      .map((line) => line.split(' ')[1]!);
  expect(rooms(`3'-4"`, '  sunroom\n')).toEqual([]);
  expect(rooms(`3'-4"`, '')).not.toEqual([]);
  expect(rooms(`3'-3 63/64"`, '  sunroom\n')).not.toEqual([]);
});

describe('alarms under a high ceiling', () => {
  // From memory: 2021 International Residential Code R314.3.
  const hall = (more: string, code = 'irc-2021'): readonly string[] =>
    plan(
      `door d 2'-6" x 6'-8"\nroom bed\n  use sleeping\n  doors d to hall\n` +
        `room hall\n  use passage\n  height 8'\n  cased 4' x 7' to living\nroom living\n  use living\n${more}`,
      code,
    ).messages('minimum/high-room-alarm');

  test('a room two feet higher than the hall needs its own', () => {
    expect(hall(`  height 10'\n  devices 1 outlet\n`)).toHaveLength(1);
    expect(hall(`  height 9'-11"\n  devices 1 outlet\n`)).toEqual([]);
    expect(hall(`  height 10'\n  devices 1 smoke-alarm\n`)).toEqual([]);
    expect(hall(`  sloped 8' in west, 11' in east\n  devices 1 outlet\n`)).toHaveLength(1);
    expect(hall(`  height 10'\n`)).toEqual([]);
  });

  test('not by earlier editions', () => expect(hall(`  height 10'\n  devices 1 outlet\n`, 'irc-2018')).toEqual([]));
});

test('outlets of islands by the edition, circuits where a room lists them', () => {
  // Page on receptacle rules (2017: 24 by 12 inches); 2020 by area, from memory; NEC Handbook, Annex D, example D1(a).
  const kitchen = (lines: string, code: string): readonly string[] =>
    plan(`room kitchen\n  use cooking\n  devices 4 gfci-outlet\n${lines}`, code)
      .told.filter((line) => /island|circuits/.test(line))
      .map((line) => line.split(' ')[1]!);
  expect(kitchen(`  island 24" x 12"\n`, 'irc-2018')).toEqual(['minimum/island-outlet']);
  expect(kitchen(`  island 24" x 11 1/2"\n`, 'irc-2018')).toEqual([]);
  expect(kitchen(`  island 3' x 3', 1 outlets\n`, 'irc-2021')).toEqual([]);
  expect(kitchen(`  island 3' x 3'-1", 1 outlets\n`, 'irc-2021')).toEqual(['minimum/island-outlet-2021']);
  expect(kitchen(`  island 3' x 3'\n`, 'irc-2024')).toEqual([]);
  expect(kitchen('', 'irc-2021')).toEqual([]);
  expect(kitchen(`  circuits 1 at 20 A\n  circuits 1 at 50 A\n`, 'irc-2021')).toEqual(['minimum/kitchen-circuits']);
  expect(kitchen(`  circuits 2 at 20 A, 1 at 50 A\n`, 'irc-2021')).toEqual([]);
});

describe('no insulation at all', () => {
  // Tables N1102.1.2 (2018: City of Philadelphia; City of Boise) and N1102.1.3 (2021: US Department of Energy, Building America).
  const found = (lines: string, code = 'irc-2021', zone = '5A'): readonly string[] =>
    plan(`  zone ${zone}\n${lines}`, code)
      .told.filter((line) => /minimum\/(wall|mass|floor|basement|crawl|ceiling)-/.test(line) && /-20(18|21)-/.test(line))
      .map((line) => line.split(' ')[1]!);
  const den = (level: string, use = 'living'): string => `room den on ${level}\n  use ${use}\n`;
  const studs = 'assembly outer for wall\n  layer drywall 1/2"\n  layer stud 2x6 at 16" oc\n  layer osb 7/16"\n';
  const main = (more: string): string => `level main\n  footprint 24' x 30'\n${more}`;

  test('bare studs around a storey that is lived on, not around a garage or one whose rooms nobody named', () => {
    const outer = main('  walls outer\n') + studs;
    expect(found(outer + den('main'))).toEqual(['minimum/wall-2021-zones-4-8']);
    expect(found(outer + den('main', 'garage'))).toEqual([]);
    expect(found(outer)).toEqual([]);
    expect(found(outer + den('main'), 'irc-2018')).toEqual(['minimum/wall-2018-zones-3-5']);
    expect(found(outer + den('main'), 'irc-2018', '6A')).toEqual(['minimum/wall-bare-2018-zones-6-8']);
    expect(
      plan(`  zone 5A\n${outer}${den('main')}`)
        .messages('minimum/wall-2021-zones-4-8')[0]
        ?.includes('and "main" has R-0'),
    ).toBe(true);
  });

  test('bare block, by the rows for heavy walls', () => {
    const block = 'material block "Concrete block" laid courses\n  mass\n  insulates R-0.2 per inch\n';
    const outer = `${main('  walls outer\n')}${den('main')}${block}assembly outer for wall\n  layer block 8"\n`;
    expect(found(outer)).toEqual(['minimum/mass-wall-out-2021-zone-5']);
    expect(found(outer, 'irc-2018', '6A')).toEqual(['minimum/mass-wall-out-2018-zone-6']);
  });

  test('brick that only faces studs makes no heavy wall of them', () => {
    const wall = (serves: string): string =>
      `${main('  walls outer\n')}material brick "Brick" laid courses\n  mass\n${serves}assembly outer for wall\n` +
      `  layer stud 2x6 at 16" oc, filled with r15-batt\n  layer brick 3 5/8"\n`;
    expect(found(wall('  serves as masonry veneer\n'))).toEqual(['minimum/wall-2021-zones-4-8']);
    expect(found(wall(''))).toEqual(['minimum/mass-wall-in-2021-zone-5']);
  });

  test('not where nobody knows what a layer is, nor the ceiling under the next storey', () => {
    const strange = 'assembly outer for wall\n  layer stud 2x6 at 16" oc\n  layer hemp-block 8"\n';
    expect(found(main('  walls outer\n') + strange + den('main'))).toEqual([]);
    const two = 'assembly outer for wall\n  layer stud 2x4 at 16" oc, filled with r13-batt\n  layer stud 2x6 at 16" oc\n';
    expect(found(main('  walls outer\n') + two + den('main'))).toEqual([]);
    const lid = 'assembly lid for ceiling\n  layer drywall 1/2"\n';
    expect(found(main('  ceiling lid\n') + lid + den('main'))).toEqual([]);
  });

  test('the wall of a lived-in basement, under its own level or the one above it', () => {
    const cellar = `level cellar "Basement" basement\n  footprint 24' x 30'\n`;
    const walls = 'foundation f under cellar\n  wall 8" x 8\'\n';
    expect(found(cellar + walls + den('cellar'))).toEqual(['minimum/basement-2021-zones-5-8']);
    expect(found(cellar + walls + den('cellar', 'storage'))).toEqual([]);
    expect(found(`${cellar}${walls}  insulated R-15\n${den('cellar')}`)).toEqual([]);
    expect(found(cellar + walls + den('cellar'), 'irc-2021', '2A')).toEqual([]);
    const above = `${cellar}level main on cellar\n  footprint 24' x 30'\nfoundation f under main\n  wall 8" x 8'\n`;
    expect(found(above + den('cellar'))).toEqual(['minimum/basement-2021-zones-5-8']);
    expect(found(above + den('main'))).toEqual([]);
  });

  test('a crawl space: the floor over its vents, else its walls, where neither has any', () => {
    const floor = (fill: string): string =>
      `${main('  floor deck\n')}assembly deck for floor\n  layer subfloor 23/32"\n  layer joist 2x10 at 16" oc${fill}\n${den('main')}`;
    expect(found(`${floor('')}crawl under main\n`)).toEqual(['minimum/crawl-2021-zones-5-8']);
    expect(found(`${floor(', filled with r30-batt')}crawl under main\n`)).toEqual([]);
    expect(found(`${floor('')}crawl under main\n  insulated R-15\n`)).toEqual([]);
    expect(found(`${floor('')}crawl under main\n  vents 1/150\n`)).toEqual(['minimum/floor-2021-zones-5-6']);
  });
});

describe('an attic without a way in', () => {
  // Summaries of 2012 International Residential Code R807.1: more than 30 square feet, 30 inches high.
  const attic = (roof: string, ceiling = 'flat-lid', footprint = `24' x 30'`): readonly string[] =>
    plan(
      `level main\n  footprint ${footprint}\n  ceiling ${ceiling}\nroof main over main\n${roof}` +
        'assembly slope for roof\n  layer osb 7/16"\n  layer rafter 2x10 at 16" oc, filled with r30-batt\n  layer drywall 1/2"\n',
    ).messages('minimum/attic-no-way-in');

  test('is told where a flat ceiling lies under a roof that is high enough', () => {
    expect(attic('  shape gable 6:12\n')).toHaveLength(1);
    expect(attic('  shape gable 6:12\n  access 22" x 30"\n')).toEqual([]);
    // 12 feet by 2 1/2 in 12 are 30 inches exactly.
    expect(attic('  shape gable 2.5:12\n')).toHaveLength(1);
    expect(attic('  shape gable 2.4:12\n')).toEqual([]);
    // Rafters and ceiling joists of 9 1/4 inches leave 29 1/2 of 48.
    expect(attic('  shape gable 4:12\n  framed rafter 2x10 at 16" oc\n')).toEqual([]);
    expect(attic('  shape shed 2:12, high east\n')).toHaveLength(1);
  });

  test('not where the ceiling follows the slope, there is none, the roof runs into another, or the space is small', () => {
    expect(attic('  shape gable 6:12\n', 'slope')).toEqual([]);
    expect(attic('  shape gable 6:12\n', 'bare-lid')).toEqual([]);
    expect(attic('  shape gable 24:12\n', 'flat-lid', `5' x 6'`)).toEqual([]);
    expect(attic('  shape flat\n')).toEqual([]);
    const wing = `roof wing into main in south\n  size 12' x 12'\n  shape gable 12:12\n  vents 1/150\n`;
    expect(attic(`  shape gable 6:12\n  access 22" x 30"\n${wing}`)).toEqual([]);
  });
});
