// The layout of a plan: what `screed layout` prints and `explain` says in a line; and a proof beside the quick rule. By hand.
import { expect, test } from 'vitest';
import { explain, explanationText } from '#answers/explain';
import { layoutTables } from '#answers/layout/layout';
import { layoutAnswer, layoutRows } from '#answers/layout/layout-json';
import { proofsOf } from '#answers/layout/proofs';
import { takeOffAnswer } from '#answers/takeoff-json';
import { loadSolver } from '#cli/solver';
import { viewText } from './plans.ts';

/** Walls of 12 and 20 ft, 8 ft high; a ceiling of 12 by 20 ft. */
const den = (counts = '') => `plan p
${counts}level main
  height 8'
  partitions inner
  ceiling lid
assembly inner for wall
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
  layer drywall 1/2"
assembly lid for ceiling
  layer joist 2x6 at 16" oc
  layer drywall 5/8"
room den on main
  size 12' x 20'
  floor carpet
`;
const text = (plan: string) =>
  layoutTables(viewText(plan))
    .flatMap(({ rows }) => rows)
    .map((row) =>
      typeof row === 'string'
        ? row
        : row
            .map((cell) => cell.trim())
            .join(' | ')
            .trim(),
    );

test('each wall with its courses, and the waste of the layout beside that of the area rule', () => {
  const rows = text(den());
  // 512 sf without waste: 4 x 48 and 8 x 40; joints 64 ft along the walls and four ends of 4 ft; by area 512 x 1.05 / 32 = 16.8, 17 sheets, 544 sf.
  expect(rows).toContain(
    `Drywall 1/2": 4 of 4' x 12', 8 of 4' x 10'; waste 0.0%; 80 feet of joints; by area 17 of 4' x 8', waste 6.3%`,
  );
  expect(rows).toContain(`den, north wall | 12'-0" x 8'-0" | along | 2 x 12'-0" |`);
  expect(rows).toContain(`den, east wall | 20'-0" x 8'-0" | along | 2 x 20'-0" |`);
  expect(rows).toContain(`den, floor | 12'-0" x 20'-0" | north-south | 1 | 20'-6" | none`);
});

test('explain says it in a line', () => {
  const told = explain('drywall 1/2"', viewText(den())).found.map(explanationText).join('');
  expect(told).toContain(`laid wall by wall  4 of 4' x 12', 8 of 4' x 10'; waste 0.0%`);
});

test('where the plan chooses it, programs are told the lengths', () => {
  const { purchases } = takeOffAnswer(viewText(den('  counts drywall by laid-board\n')));
  expect(purchases.find(({ item }) => item === 'drywall 1/2"')?.sticks).toEqual([
    { count: 4, length: { quantity: 12, unit: 'ft' } },
    { count: 8, length: { quantity: 10, unit: 'ft' } },
  ]);
});

test('a plan with nothing to lay says so', () => {
  expect(layoutTables(viewText('plan p\n')).map(({ remarks }) => remarks)).toEqual([
    ['Nothing is laid out: the plan has no concrete, lengths, sheets, panels, rolls or tile.'],
  ]);
});

test('the proven least stands beside the quick rule', async () => {
  const view = viewText(den());
  const proofs = proofsOf(view, await loadSolver(), 10);
  expect(proofs.get('drywall 1/2"')).toMatchObject({ kind: 'proven' });
  const rows = layoutTables(view, proofs).flatMap((table) => table.rows);
  expect(rows.filter((row) => typeof row === 'string').join('\n')).toContain('proven least 0.0%');
});

test('what nobody can lay is said, with its sheets by area', () => {
  const rows = text(`${den()}  wet 60 sf porcelain-tile 12x12 over backer-board 1/2"
`);
  expect(rows).toContain(`Tile backer board 1/2": not laid, by area: den, wet walls 60 sf: 5 of 3' x 5'`);
});

test('for programs: the same layout, and a row for each course, cut and floor', () => {
  const answer = layoutAnswer(viewText(den()));
  const [board] = answer.sheets;
  expect(board).toMatchObject({ item: 'drywall 1/2"', waste: 0, net: { quantity: 512, unit: 'sf' }, notLaid: [] });
  expect(board?.faces[0]).toEqual({
    where: 'den, south wall',
    length: { quantity: 12, unit: 'ft' },
    height: { quantity: 8, unit: 'ft' },
    way: 'along',
    courses: [{ count: 2, run: { quantity: 12, unit: 'ft' }, wide: { quantity: 4, unit: 'ft' } }],
  });
  const rows = layoutRows(answer);
  expect(rows).toContainEqual(['course', 'drywall 1/2"', 'Drywall 1/2"', 'den, east wall', 2, 20, 4, 'ft', 'along']);
  expect(rows).toContainEqual(['roll', 'carpet', 'Carpet', 'den, floor', 1, 20.5, 0, 'ft', 'north-south']);
});

test('what comes in lengths and has no pieces is said to go by its whole length', () => {
  const rows = text(`${den()}  base base-board 3 1/4"\n`);
  expect(rows).toContain('By their whole length, since nothing tells their pieces');
  // 64 ft of wall with 10 % is 70.4 ft: nine of 8 ft.
  expect(rows.some((row) => row.includes('Base 3 1/4"'))).toBe(true);
});
