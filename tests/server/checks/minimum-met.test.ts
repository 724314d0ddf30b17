// What a thing meets of the model code, with what it has: only rows looked up in the plan's edition, one line a fact.
import { describe, expect, test } from 'vitest';
import { minimumsMet } from '#checks/minimum-met';
import { checked } from '#tests/support/checked';

function met(kind: string, lines: string, code = 'irc-2021') {
  const { model } = checked(`plan p\n  code ${code}\n${lines}`).plan;
  const values = minimumsMet(model.list(kind as 'room')[0]!, model);
  return {
    missed: values?.missed,
    lines: values?.met.map(({ what, has, limits, sections }) =>
      `${what} ${has}: ${limits.join(', ')} ${sections.join(', ')}`.trim(),
    ),
  };
}

describe('stairs (2018 International Residential Code R311.7, Jefferson County, Colorado, sheet 2095)', () => {
  const stair = 'stair s\n  rise 109 1/4"\n  risers 15\n  tread 10"\n  width 36"\n';

  test('what it has beside each limit, and what is met to the hair', () => {
    expect(met('stair', stair)).toEqual({
      missed: 0,
      lines: ['risers 15: at least 15 R311.7.5.1', 'tread 10": at least 10" R311.7.5.2', 'width 36": at least 36" R311.7.1'],
    });
  });

  test('what it misses is counted, not listed', () => {
    const { missed, lines } = met('stair', stair.replace('width 36"', 'width 35"'));
    expect(missed).toBe(1);
    expect(lines).not.toContainEqual(expect.stringContaining('width'));
  });

  test('headroom that only its opening tells: 11 ft at 7.283 over 10 in, less the floor, is 84.26 in', () => {
    const { lines } = met('stair', `${stair}  opening 11', 11 7/8" floor\n`);
    expect(lines).toContain(`headroom 7'-0 1/4": at least 6'-8" R311.7.2`);
  });

  test('of an edition in which nothing was looked up, and without one, nothing is met', () => {
    expect(met('stair', stair, 'irc-2030').lines).toEqual(undefined);
    const { model } = checked(stair).plan;
    expect(minimumsMet(model.list('stair')[0]!, model)).toBe(undefined);
  });
});

test('both bounds of one fact stand together, the strictest of several', () => {
  const lines = '  frost 30"\nfoundation f\n  bottom 36" below grade\n  bolts 1/2" at 4\' oc, 10" from ends\n';
  expect(met('foundation', lines).lines).toEqual([
    'bottom 36": at least 30" R403.1.4',
    'bolt size 1/2": at least 1/2" R403.1.6',
    'bolt spacing 4\'-0": at most 6\'-0" R403.1.6',
    'bolt end 10": at most 12", at least 3 1/2" R403.1.6',
  ]);
});

describe('openings', () => {
  const bed = (clear: string) =>
    `window w-bed 3' x 5', sill 24"${clear}\nroom bed\n  use sleeping\n  size 7' x 10'\n  windows w-bed\n`;

  test('a room tells the opening that meets all rows at once, by its clear size only', () => {
    expect(met('room', bed(', clear 31" x 55"')).lines).toContain('escape area 11.8 sf: at least 5.7 sf R310.2.1');
    expect(met('room', bed('')).lines?.join()).not.toContain('escape');
    expect(met('room', bed(', clear 24" x 34"')).lines?.join()).not.toContain('escape');
  });

  test('a window tells its own, a door whether it will do as the exit', () => {
    expect(met('window', bed(', clear 31" x 55"')).lines).toContain('escape width 31": at least 20" R310.2');
    const door = `door d-out 3' x 6'-8", exterior, clear 33" x 79"\nroom hall\n  doors d-out\n`;
    expect(met('door', door).lines).toEqual(['exit width 33": at least 32" R311.2', 'exit height 79": at least 78" R311.2']);
  });
});

test('a town’s own value has no section of the model code', () => {
  const town = `minimum hall-width\n  at least 42"\n  local "Town rules 3.2"\nroom hall\n  use passage\n  size 4' x 12'\n`;
  expect(met('room', town).lines).toEqual(['least width 48": at least 42"']);
});
