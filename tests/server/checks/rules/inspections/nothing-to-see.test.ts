// Visits that look at nothing.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'inspections/nothing-to-see';
const plan = (line: string): string => `
trade framing crew of 3 at $52/h
task walls does frame-walls takes 2d by framing
task sheets does sheathe-walls takes 1d by framing after walls
${line}
`;

test('a kind of work that no task does holds nothing', () => {
  const found = checked(plan('inspection frame-check of walls, set-trusses'));
  expect(found.told).toContain('warning inspections/nothing-to-see frame-check');
  expect(found.messages(CODE)[0]).toMatch(/^"frame-check" is to look at "set-trusses", but no task does that/);
  expect(found.marks(CODE)).toEqual(['line 4: set-trusses']);
  expect(checked(plan('inspection frame-check of walls before set-trusses')).messages(CODE)[0]).toMatch(/it holds nothing back/);
});

test('a visit that waits for nothing is dated to the first day', () => {
  const found = checked(plan('inspection final'));
  expect(found.told).toContain('note inspections/nothing-to-see final');
  expect(checked(plan('inspection final after walls')).messages(CODE)).toEqual([]);
});

test('what only the library’s row says is no promise of the plan', () => {
  expect(checked(plan('inspection footing-check after walls')).messages(CODE)).toEqual([]);
});
