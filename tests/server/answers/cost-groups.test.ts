// A cost has one total, whatever it is grouped by.
import { describe, expect, test } from 'vitest';
import { type CostGrouping, groupCosts } from '#answers/cost-groups';
import { costAnswer } from '#answers/cost-json';
import { costTable } from '#answers/cost-table';
import { replay } from '#kit/quantity';
import { viewSample, viewText } from './plans.ts';

const GROUPINGS: readonly CostGrouping[] = ['task', 'trade', 'room', 'element', 'part'];

describe.each([
  ['cottage', 'plan.screed'],
  ['shed', 'shed.screed'],
  ['panel-cabin', 'cabin.screed'],
])('%s', (sample, root) => {
  const view = viewSample(sample, root);

  test.each(GROUPINGS)('by %s it closes to the cent', (by) => {
    const groups = groupCosts(by, view);
    expect(groups.reduce((sum, { total }) => sum + total, 0)).toBe(view.plan.budget.net);
    for (const { cents, total } of groups) expect(Object.values(cents).reduce((a, b) => a + b, 0)).toBe(total);
    // By element a step's cost may stand in parts.
    if (by !== 'element')
      expect(groups.reduce((count, { lines }) => count + lines.length, 0)).toBe(view.plan.budget.lines.length);
  });

  test('the working of every cost replays', () => {
    for (const line of view.plan.budget.lines) {
      const working = line.working?.();
      if (working !== undefined) expect(replay(working), line.label).toBe(working.value);
    }
  });
});

test('a plan without prices says so instead of costing nothing', () => {
  const table = costTable('trade', viewText('task dig takes 2d\n'));
  expect(table.rows).toEqual([]);
  expect(table.totals).toEqual([]);
  expect(table.remarks.join()).toContain('no prices');
});

test('what has no price is named below the total, and to programs', () => {
  const view = viewText(`
    level main
      footprint 12' x 16'
      height 8'
      walls w
    assembly w for wall
      layer stud 2x4 at 16" oc
      layer osb 7/16"
    trade me crew of 2 at $10/h
    task walls does frame-walls, sheathe-walls by me
    price osb 7/16" $14.20/sheet
  `);
  expect(costTable('trade', view).remarks.join()).toMatch(/Left out, for want of a price: .*Stud 2x4/);
  expect(costAnswer(view).leavesOut.map(({ what }) => what)).toContain('Stud 2x4');
});

// A step that does two works stands under the elements of their lines, by the hours of each; what its step does not tell stands
// under none.
test('by element a step goes by the hours of its lines, and work that is not measured by itself', () => {
  const view = viewText(`
    level main
      footprint 12' x 16'
      height 8'
      walls w
    assembly w for wall
      layer stud 2x4 at 16" oc
    window w-3030 3' x 3'
    room a on main
      size 10' x 8'
      windows 1 w-3030
    trade me crew of 2 at $10/h
    trade town
    task up does frame-walls, set-windows by me costs $1,000
    task power does set-temp-power takes 1d by me
    task papers takes 1d by me
  `);
  const byCode = new Map(groupCosts('element', view).map(({ label, total }) => [label.split(' ')[0], total]));
  const hours = (work: string): number =>
    view.plan.takeOff.lines.reduce((sum, line) => sum + (line.work?.name === work ? (line.hours?.value ?? 0) : 0), 0);
  const outside = hours('frame-walls') / (hours('frame-walls') + hours('set-windows'));
  expect(byCode.get('B2010')).toBe(Math.round(100_000 * outside));
  expect(byCode.get('B2020')).toBe(100_000 - Math.round(100_000 * outside));
  const costs = costAnswer(view).lines.find(({ task }) => task === 'up');
  expect(costs?.uniformat?.map(({ code }) => code)).toEqual(['B2010', 'B2020']);
  expect(costs?.uniformat?.reduce((sum, { cents }) => sum + cents, 0)).toBe(100_000);
  // Nobody measures what a day of papers belongs to.
  expect(byCode.get('Not')).toBeGreaterThan(0);
});
