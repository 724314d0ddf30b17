// Ground that deliveries lie on at once, by the bundles of the library's rows, against what the site has.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'deliveries/no-room';

// A drive of 60 by 10 ft takes 600 ÷ 54 = 11.1 yards, with 10% 12.2, so 13 are ordered: two heaps of 12 yards, 16 by 16 ft each.
// Sheets of osb for 112 ft of wall 8 ft high are one lift of 60, 4 by 8 ft.
const plan = (storage: string, sheets: string) => `plan p
  start 2027-03-01
  workweek mon-fri 8h
site lot
  drive 60' x 10'
  ${storage}
level main
  footprint 24' x 32'
  height 8'
  walls timber
assembly timber for wall
  layer osb 7/16"
supplier yard
trade digger crew of 2
trade framing crew of 2
task strip takes 10d by digger
delivery stone brings road-base from yard, lead 1 day
delivery boards brings osb from yard, ${sheets}
task walls does sheathe-walls takes 3d by framing after strip, boards
task drive does gravel-drive takes 2d by digger after stone, strip
`;

test('says on which day, how much ground is wanted and what lies there', () => {
  expect(checked(plan('storage 500 sf', 'lead 3 days')).messages(CODE)).toEqual([
    'On 4 Mar what has been delivered takes about 544 sf, and there is ground for 500 sf: "stone" 512 sf, "boards" 32 sf. What lies where people dig or drive is moved twice, or run over. Let some come later, or find more ground.',
  ]);
});

test('what comes when the other is used up has its ground', () => {
  // Strip is done on 12 March; the drive begins on Monday, 15 March, and the sheets come then.
  expect(checked(plan('storage 520 sf', 'lead 2 weeks')).messages(CODE)).toEqual([]);
  expect(checked(plan('storage 544 sf', 'lead 3 days')).messages(CODE)).toEqual([]);
});

test('a site that does not say its ground is not asked', () =>
  expect(checked(plan('soil type-C', 'lead 3 days')).messages(CODE)).toEqual([]));
