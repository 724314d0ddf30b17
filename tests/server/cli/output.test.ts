// Colour, formats, and tables as text.
import { expect, test } from 'vitest';
import { left, right } from '#answers/table';
import { isMisuse, misuse } from '#cli/faults';
import { chosenFormat, drawTable, painter } from '#cli/output';

test.each([
  ['a terminal', {}, {}, true, true],
  ['no terminal', {}, {}, false, false],
  ['--no-color on a terminal', { color: false }, {}, true, false],
  ['--color without one', { color: true }, {}, false, true],
  ['--color beats NO_COLOR', { color: true }, { NO_COLOR: '1' }, true, true],
  ['NO_COLOR', {}, { NO_COLOR: '1' }, true, false],
  ['an empty NO_COLOR says nothing', {}, { NO_COLOR: '' }, true, true],
  ['NO_COLOR beats FORCE_COLOR', {}, { NO_COLOR: '1', FORCE_COLOR: '1' }, true, false],
  ['FORCE_COLOR', {}, { FORCE_COLOR: '1' }, false, true],
  ['FORCE_COLOR=0', {}, { FORCE_COLOR: '0' }, true, false],
  ['a terminal that shows none', {}, { TERM: 'dumb' }, true, false],
  ['never into a file', { color: true, output: 'x.txt' }, {}, true, false],
])('colour with %s', (_, options, environment, terminal, shows) => {
  const painted = painter(options, environment, terminal)('error', 'red');
  expect(painted).toBe(shows ? '\u001b[31merror\u001b[39m' : 'error');
});

test('a format that is not there is misuse, and says what there is', () => {
  expect(chosenFormat({}, ['text', 'json'])).toBe('text');
  expect(chosenFormat({ format: 'json' }, ['text', 'json'])).toBe('json');
  expect(() => chosenFormat({ format: 'xml' }, ['text', 'json'])).toThrow('there is text, json');
});

test('misuse is told from faults', () => {
  expect(isMisuse(misuse('x'))).toBe(true);
  expect(isMisuse(new Error('x'))).toBe(false);
  expect(isMisuse('x')).toBe(false);
});

test('a table: what it shows, the columns, what to know; quiet leaves the table alone', () => {
  const table = {
    heading: ['Quantities.'],
    columns: [left('Item'), right('Net')],
    rows: [['stud', '57']],
    totals: [],
    remarks: ['Nothing else.'],
  };
  expect(drawTable(table)).toBe('Quantities.\n\nItem  Net\n----  ---\nstud   57\n\nNothing else.\n');
  expect(drawTable(table, true)).toBe('Item  Net\n----  ---\nstud   57\n');
  expect(drawTable({ ...table, rows: [] })).toBe('Quantities.\n\nNothing else.\n');
});
