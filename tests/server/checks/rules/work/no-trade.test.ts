// Tasks that no trade is told to do.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'work/no-trade';

test('once a plan has trades, each task needs one', () => {
  const plan = checked('trade crew crew of 2 at $50/h\ntask frame takes 5d by crew\ntask sweep takes 1d after frame\n');
  expect(plan.told).toContain('warning work/no-trade sweep');
});

test('before it has any, one note says so for all', () => {
  const plan = checked('task frame takes 5d\ntask sweep takes 1d after frame\n');
  expect(plan.told).toContain('note work/no-trade frame');
  expect(plan.messages(CODE)[0]).toMatch(/nobody is to do "frame" and 1 more/);
});

test('a misspelled trade is one finding, not two', () => {
  const plan = checked('trade framing crew of 2 at $50/h\ntask a takes 1d by framing\ntask b takes 1d by framng after a\n');
  expect(plan.loud).toEqual(['error names/unknown b']);
});

test('what stands from one step to another is hired, and needs nobody', () => {
  const plan = `trade siding crew of 2
task lap takes 2d by siding
task paint takes 1d by siding after lap
task scaffold stands from lap to paint
`;
  expect(checked(plan).messages('work/no-trade')).toEqual([]);
});
