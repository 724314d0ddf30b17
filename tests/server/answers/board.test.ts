// The board of two houses that share trades, in the order of their days.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { boardOf } from '#answers/board';
import { boardAnswer } from '#answers/board-json';
import { boardTable, daysText } from '#answers/board-table';
import { viewOf } from '#answers/view';
import { dayOf } from '#kit/dates';
import { checked } from '#tests/support/checked';

const CREWS = 'trade framing "Framing"\ntrade roofing "Roofing"\ntrade paint "Painting" crews 2\n';
const plan = (name: string, start: string, tasks: string) =>
  viewOf(
    checked({
      [`${name}/plan.screed`]: `plan ${name} "House ${name}"\n  start ${start}\ninclude "../crews.screed"\n${tasks}`,
      'crews.screed': CREWS,
    }).plan,
  );
const one = plan(
  'one',
  '2027-05-03',
  'trade me\ntask clear takes 1d by me\ntask walls takes 6d by framing\ntask roof takes 2d by roofing after walls\n',
);
const two = plan('two', '2027-05-05', 'task frame takes 2d by framing\ntask roof takes 1d by roofing after frame\n');

test('weeks by trade, one column a house, and who is asked for twice', () => {
  const { rows, remarks, heading } = boardTable(boardOf([one, two]));
  expect(heading).toHaveLength(1);
  expect(rows).toEqual([
    'Framing, 1 crew',
    ['Mon 3 May 2027', 'walls Mon-Fri', 'frame Wed-Thu', 'Wed-Thu'],
    ['Mon 10 May 2027', 'walls Mon', '', ''],
    'Roofing, 1 crew',
    ['Mon 3 May 2027', '', 'roof Fri', ''],
    ['Mon 10 May 2027', 'roof Tue-Wed', '', ''],
  ]);
  expect(remarks).toEqual(['2 days asked for twice; each plan’s dates know only its own steps.']);
});

test('one plan: all its trades', () => {
  expect(boardTable(boardOf([one])).rows.filter((row) => typeof row === 'string')).toEqual([
    'Framing, 1 crew',
    'me, 1 crew',
    'Roofing, 1 crew',
  ]);
});

test('nothing shared is said, with what to do', () => {
  const own = viewOf(checked('plan p "Alone"\n  start 2027-05-03\ntrade framing\ntask a takes 1d by framing\n').plan);
  expect(boardTable(boardOf([one, own])).heading[1]).toContain('include "../crews.screed"');
});

test('JSON keeps to its schema', () => {
  const answer = boardAnswer(boardOf([one, two]));
  const schema = JSON.parse(
    readFileSync(join(import.meta.dirname, '../../../server/schemas/board.schema.json'), 'utf8'),
  ) as object;
  const valid = new Ajv2020().compile(schema);
  expect(valid(answer) ? [] : valid.errors).toEqual([]);
  expect(answer.trades[0]!.weeks[0]!.askedTwice).toEqual(['2027-05-05', '2027-05-06']);
});

test('days in runs', () => {
  const monday = dayOf(2027, 5, 3);
  expect(daysText([0, 1, 2, 4].map((more) => monday + more))).toBe('Mon-Wed, Fri');
  expect(daysText([])).toBe('');
});

test('a machine that both include has its rows, too', () => {
  const files = { 'crews.screed': 'trade pl "Pipes" crews 2\nmachine lift "Lift"\n' };
  const house = (name: string) =>
    viewOf(
      checked({
        [`${name}/plan.screed`]: `plan ${name} "House ${name}"\n  start 2027-05-03\ninclude "../crews.screed"\ntask pipes takes 2d by pl, needs lift\n`,
        ...files,
      }).plan,
    );
  const board = boardOf([house('one'), house('two')]);
  expect(boardTable(board).rows).toEqual([
    'Lift, 1 machine',
    ['Mon 3 May 2027', 'pipes Mon-Tue', 'pipes Mon-Tue', 'Mon-Tue'],
    'Pipes, 2 crews',
    ['Mon 3 May 2027', 'pipes Mon-Tue', 'pipes Mon-Tue', ''],
  ]);
});
