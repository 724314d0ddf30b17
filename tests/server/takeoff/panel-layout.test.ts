// Panels along walls, worked out by hand; joints of a 40-ft wall of 8-ft panels: five panels, four joints (plain arithmetic).
import { expect, test } from 'vitest';
import { layoutTables } from '#answers/layout/layout';
import { fromBase } from '#kit/units';
import { levelShape } from '#model/facts/level';
import { panelWalls } from '#takeoff/measure/panel-layout';
import { planOf } from '#tests/support/plan';
import { viewText } from '../answers/plans.ts';

/** 40 by 24 ft of panels 6 1/2 in thick: long walls full, those between 22 ft 11 in. */
const house = (rooms = '') => `plan p
level main
  footprint 40' x 24'
  height 8'
  walls shell
assembly shell for wall
  layer sip 6 1/2"
panels laid for main
  width 8'
  joint surface-spline, 4 beads of panel-sealant
  beads 2 at plates
door front "Door" 3' x 7', exterior
window side "Window" 4' x 5', sill 24"
${rooms}`;
const PLACED = `room hall on main at 6 1/2", 6 1/2"
  size 38'-11" x 22'-11"
`;
const rows = (text: string) =>
  layoutTables(viewText(text))
    .filter(({ columns }) => columns[0]?.heading === 'Panel')
    .flatMap((table) => table.rows)
    .map((row) => (typeof row === 'string' ? row : row.map((cell) => cell.trim()).join(' | ')));

const whole = (wall: string, count: number): readonly string[] =>
  Array.from({ length: count }, (_, nth) => `${wall} ${nth + 1} | 8'-0" | ${nth === 0 ? '0"' : `${8 * nth}'-0"`}`);

test('whole panels, and what is left at the right end', () => {
  expect(rows(house())).toEqual([
    `level main: 16 panels: 14 of 8'-0", 2 of 6'-11"`,
    ...whole('south', 5),
    ...whole('east', 2),
    `east 3 | 6'-11" | 16'-0"`,
    ...whole('north', 5),
    ...whole('west', 2),
    `west 3 | 6'-11" | 16'-0"`,
  ]);
});

// Seen from inside, the left end of the south wall lies east. The door begins 7 ft from the room's corner, 7 ft 6 1/2 in from
// the end of the wall: across the joint at 8 ft. The window at 10 ft lies within the second panel.
test('an opening is cut from the panels that it lies in, and takes the spline where it lies across a joint', () => {
  const text = house(`${PLACED}  doors 1 front in south at 7'\n  windows 1 side in north at 10'\n`);
  const listed = rows(text);
  expect(listed.filter((row) => row.includes('Door'))).toEqual([`south 1 | 8'-0" | 0" | Door`, `south 2 | 8'-0" | 8'-0" | Door`]);
  expect(listed.filter((row) => row.includes('Window'))).toEqual([`north 2 | 8'-0" | 8'-0" | Window`]);
  const plan = planOf(text, { library: 'built-in' });
  // 16 panels, less one a wall, and a joint a corner: 16 joints of 8 ft, less the door's 7 ft.
  expect(fromBase(plan.line('panel-spline-length', 'surface-spline').net.value, 'ft')).toBeCloseTo(16 * 8 - 7, 6);
  expect(fromBase(plan.line('panel-sealant-length').net.value, 'ft')).toBeCloseTo(2 * 2 * 128 + 4 * (16 * 8 - 7), 6);
});

test('nobody says where it stands: it is told, and nothing is taken off', () => {
  const text = house(`${PLACED}  doors 1 front in south\n`);
  expect(rows(text).find((row) => row.includes('Door'))).toBe('south |  |  | Door, nobody says where');
  const plan = planOf(text, { library: 'built-in' });
  expect(fromBase(plan.line('panel-spline-length', 'surface-spline').net.value, 'ft')).toBeCloseTo(16 * 8, 6);
});

test('an outline with a corner inward: its sides of one way are numbered', () => {
  const plan = planOf("plan p\nlevel main\n  footprint 40' x 24', less 16' x 8' at 24', 16'\n", { library: 'built-in' });
  const level = plan.model.list('level')[0]!;
  const width = { ...levelShape(level)!.width, value: levelShape(level)!.width.value / 5 };
  const walls = panelWalls(levelShape(level)!, width, undefined, []);
  expect(walls.map(({ label, panels }) => `${label}: ${panels.length}`)).toEqual([
    'east: 2',
    'north: 2',
    'east 2: 1',
    'north 2: 3',
    'west: 3',
    'south: 5',
  ]);
});
