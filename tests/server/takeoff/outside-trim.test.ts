// Trim boards outside, by hand: round windows, legs and heads of doors, corner boards; on siding only.
import { expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const house = (outline: string, siding: string, openings: string) =>
  planOf(
    `level main
  footprint ${outline}
  height    8'
  walls     sided
assembly sided for wall
  layer stud 2x4 at 16" oc
  layer osb 7/16"
${siding}window w-3050 3'-0" x 5'-0"
door d-3068 3'-0" x 6'-8", exterior
room den on main
  size 12' x 10'
${openings}trade siders crew of 2
task siding does side-walls by siders
`,
    { library: 'built-in' },
  );
const LAP = '  layer lap-siding 8 1/4"\n';
const trim = (plan: ReturnType<typeof house>) =>
  plan.lines('outside-trim-length', 'outside-trim').map(({ net }) => amount(net, 'ft'));

test('two windows of 3 by 5 ft, a door of 3 ft by 6 ft 8 in, four corners', () => {
  const openings = '  windows 2 w-3050 in north\n  doors d-3068 in south\n';
  expect(trim(house("20' x 30'", LAP, openings))).toEqual([expect.closeTo(2 * 16 + 3 + 2 * (6 + 8 / 12) + 4 * 2 * 8, 6)]);
  expect(trim(house("20' x 30'", LAP, ''))).toEqual([expect.closeTo(64, 6)]);
});

test('an L has five corners that stand out, and one that does not', () => {
  expect(trim(house("20' x 30', plus 10' x 10' at 20', 0", LAP, ''))).toEqual([expect.closeTo(5 * 2 * 8, 6)]);
});

test('none on masonry', () => {
  expect(trim(house("20' x 30'", '  layer face-brick\n', ''))).toEqual([]);
});
