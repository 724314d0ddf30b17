// Conditions of library rows against a plan.
import { describe, expect, test } from 'vitest';
import { firesIn, holds } from '#checks/conditions';
import { checked } from '#tests/support/checked';

const house = `
plan p
  zone 5A
level main
  floor floor-2x10
trench water 62' long, 42" deep, 12" wide
trench sewer 58' long, 66" deep, 18" wide
foundation base
  bottom 32" below grade
room bed on main
  use sleeping
  size 10' x 12'
  floor plank
room bath on main
  use bathing
  size 5' x 8'
  floor porcelain-tile
roof main over main
  framed rafter 2x6 at 16" oc
`;

function fires(conditions: string, text = house): boolean {
  const { model } = checked(`${text}rule mine "Mine"\n  first glue\n  then clamp\n${conditions}`).plan;
  const rule = model.list('rule')[0]!;
  return firesIn(rule, model);
}

describe('when', () => {
  test.each([
    ['plan.zone is 5A', true],
    ['plan.zone is 4A', false],
    ['plan.zone is 4A, 5A', true],
    ['plan.zone is not 4A', true],
    ['trench.depth at least 60"', true],
    ['trench.depth at least 72"', false],
    ['every trench.depth at least 40"', true],
    ['every trench.depth at least 60"', false],
    ['no trench.depth over 72"', true],
    ['any room has floor plank', true],
    ['any room has floor sheet-vinyl', false],
    ['any room has floor sheet-vinyl, plank', true],
    ['every room has floor plank', false],
    ['no room has floor sheet-vinyl', true],
    ['any level has floor', true],
    ['any deck', false],
    ['any foundation', true],
    ['every roof has framed rafter, panels', true],
    ['every deck has boards', false],
    ['any room.use is sleeping', true],
    ['any room.floor-area under 50 sf', true],
  ])('%s: %s', (condition, expected) => expect(fires(`  when ${condition}\n`)).toBe(expected));

  test('lines add up', () => {
    expect(fires('  when plan.zone is 5A\n  when any deck\n')).toBe(false);
    expect(fires('  when plan.zone is 5A\n  when any room has floor plank\n')).toBe(true);
  });
});

describe('unless', () => {
  test.each([
    ['foundation.fill under 48"', false],
    ['foundation.fill under 24"', true],
    // Not every trench is shallow.
    ['trench.depth under 60"', true],
    ['trench.depth under 72"', false],
    ['no level has floor', true],
    ['every room has use sleeping', true],
  ])('%s: fires %s', (condition, expected) => expect(fires(`  unless ${condition}\n`)).toBe(expected));

  test('what nobody knows excuses nothing', () => {
    expect(fires('  unless foundation.fill under 48"\n', 'plan p\n')).toBe(true);
    expect(fires('  unless every roof has framed rafter\n', 'plan p\n')).toBe(true);
  });
});

test('a row that looks at things one by one asks each of itself', () => {
  const { model } = checked(`${house}rule mine "Mine"\n  when room.use is sleeping\n`).plan;
  const { value } = model.list('rule')[0]!.given.when[0]!;
  expect(model.list('room').map((room) => holds(value, model, room))).toEqual([true, false]);
});
