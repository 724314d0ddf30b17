// Tables for the terminal and comma-separated values.
import { expect, test } from 'vitest';
import { displayWidth, textTable, writeCsv } from '#kit/table';

test('words stand left, numbers right, totals below a line', () => {
  const columns = [{ heading: 'item' }, { heading: 'quantity', align: 'right' }, { heading: 'unit' }] as const;
  const rows = [
    ['stud 2x6', '128', 'each'],
    ['drywall ½"', '1,940.5', ''],
  ];
  expect(`\n${textTable(columns, rows, [['all', '2,068.5', '']])}`).toBe(`
item        quantity  unit
----------  --------  ----
stud 2x6         128  each
drywall ½"   1,940.5
----------  --------  ----
all          2,068.5
`);
});

test('no rows: the headings alone; short rows are filled with blanks', () => {
  expect(textTable([{ heading: 'item' }], [])).toBe('item\n----\n');
  expect(textTable([{ heading: 'a' }, { heading: 'b', align: 'right' }], [['x']])).toBe('a  b\n-  -\nx\n');
});

test('the width of accents, emoji and wide letters', () => {
  expect(['ab', 'é', 'e\u0301', '木', '😀', '½″'].map(displayWidth)).toEqual([2, 1, 1, 2, 2, 2]);
});

test('RFC 4180 (Common Format and MIME Type for Comma-Separated Values, 2005), section 2', () => {
  expect(
    writeCsv([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['b"bb', 'x,y', ''],
      [1.5, undefined, -2],
    ]),
  ).toBe('aaa,"b\r\nbb",ccc\r\n"b""bb","x,y",\r\n1.5,,-2\r\n');
  expect(writeCsv([])).toBe('');
});

test('a text is never a formula', () => {
  expect(writeCsv([['=1+1', '@a', '+a', '-12.5', '-a', '+5%']])).toBe("'=1+1,'@a,'+a,-12.5,'-a,+5%\r\n");
  expect(writeCsv([['=A1,"x"']])).toBe('"\'=A1,""x"""\r\n');
  expect(writeCsv([[Number.NaN]])).toBe('\r\n');
});
