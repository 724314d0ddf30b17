// Dimension strings that close, and that do not.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'measures/does-not-close';

test('both sums and the difference are told, at the name of the string', () => {
  const plan = checked(`measure main.north 5 1/2" + 11'-2" + 5'-4" + 5 1/2" = 18'`);
  expect(plan.told).toEqual(['error measures/does-not-close 1']);
  expect(plan.messages(CODE)[0]).toMatch(
    /^The string "main\.north" does not close: its parts make 17'-5", the whole is 18'-0", 7" more\./,
  );
  expect(plan.marks(CODE)).toEqual(['line 1: main.north']);
});

test('a sixty-fourth of an inch is enough', () => {
  expect(checked(`measure 5 1/2" + 11'-2 1/64" = 11'-7 1/2"`).messages(CODE)).toHaveLength(1);
});

test('parts may be values with names and run in both units', () => {
  expect(checked(`let wall = 3 1/2"\nmeasure wall + 254 mm = 1'-1 1/2"`).loud).toEqual([]);
});
