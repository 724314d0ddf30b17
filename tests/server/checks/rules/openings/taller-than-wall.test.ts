// Openings whose head would stand above the ceiling.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'openings/taller-than-wall';
const types = `window w-3050 3' x 5', sill 24"\ndoor d-2868 2'-8" x 6'-8", rough 2'-10" x 6'-10"\n`;

test('sill and height together, against the room’s own height before its level’s', () => {
  const room = (own: string): string => `${types}level main\n  height 8'\nroom bed on main\n${own}  windows 1 w-3050\n`;
  expect(checked(room('')).messages(CODE)).toEqual([]);
  const low = checked(room(`  height 6'-6"\n`));
  expect(low.messages(CODE)[0]).toMatch(
    /^The head of "w-3050" is 7'-0" above the floor \(its sill is at 2'-0"\), and "bed" is 6'-6" high\./,
  );
  expect(low.marks(CODE)).toEqual(['line 7: 1 w-3050']);
});

test('exactly as high is not too high', () => {
  expect(checked(`${types}room bed\n  height 7'\n  windows 1 w-3050\n`).messages(CODE)).toEqual([]);
});

test('the rough height of a door counts', () => {
  expect(checked(`${types}room bed\n  height 6'-9"\n  doors 1 d-2868\n`).messages(CODE)[0]).toMatch(
    /"d-2868" is 6'-10" above the floor, and/,
  );
});

test('under a sloped ceiling the high side counts', () => {
  const room = (own: string): string =>
    `window tall 3' x 8', sill 24"\nlevel main\n  height 8'\nroom hall on main\n  size 16' x 20'\n${own}  windows 1 tall in east\n`;
  expect(checked(room('')).messages(CODE)).toHaveLength(1);
  expect(checked(room("  sloped 8' in west, 12' in east\n")).messages(CODE)).toEqual([]);
});
