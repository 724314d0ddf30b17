// A spreadsheet file, read back by another library than the one that writes it: texts, numbers, days and money are what they
// were, and the same sheet gives the same bytes.
import { readXlsx } from 'hucre/xlsx';
import { expect, test } from 'vitest';
import { buyAnswer, buySheet } from '#answers/buy-json';
import { day, money, number, type Sheet, sheetCells, text } from '#answers/sheet';
import { takeOffAnswer } from '#answers/takeoff-json';
import { takeOffSheet } from '#answers/takeoff-sheet';
import { xlsxBytes } from '#cli/xlsx';
import { readIsoDate } from '#kit/dates';
import { viewSample } from '../answers/plans.ts';

const read = async (sheet: Sheet) => (await readXlsx(await xlsxBytes(sheet), { readStyles: true })).sheets[0]!;
const iso = (cell: unknown): unknown => (cell instanceof Date ? cell.toISOString().slice(0, 10) : cell);

const small: Sheet = {
  name: 'Buy',
  currency: 'USD',
  columns: [text('item'), number('quantity'), day('order by'), money('cost')],
  rows: [
    ['=1+1 is a text', 2.5, readIsoDate('2027-04-05'), 123_456],
    ['joist 2x10', 50, readIsoDate('2028-02-29'), undefined],
  ],
};

test('texts are texts, numbers numbers, days days, money money', async () => {
  const sheet = await read(small);
  expect(sheet.name).toBe('Buy');
  expect(sheet.rows.map((row) => row.map(iso))).toEqual([
    ['item', 'quantity', 'order by', 'cost'],
    ['=1+1 is a text', 2.5, '2027-04-05', 1234.56],
    ['joist 2x10', 50, '2028-02-29', ...(sheet.rows[2]!.length > 3 ? [null] : [])],
  ]);
  const formats = ['1,1', '1,2', '1,3'].map((at) => sheet.cells?.get(at)?.style?.numFmt);
  expect(formats).toEqual([undefined, 'yyyy-mm-dd', '[$$]#,##0.00']);
});

test('the same sheet gives the same bytes', async () => {
  const once = await xlsxBytes(small);
  await new Promise((resolve) => setTimeout(resolve, 2100));
  expect(Buffer.compare(Buffer.from(await xlsxBytes(small)), Buffer.from(once))).toBe(0);
});

test('the cottage: every row of the list is there, and the money adds up', async () => {
  const view = viewSample('cottage');
  const sheet = buySheet(view);
  const { rows } = await read(sheet);
  expect(rows.length).toBe(sheet.rows.length + 1);
  const at = sheet.columns.findIndex(({ holds }) => holds === 'money');
  const cents = rows.slice(1).reduce((sum, row) => sum + Math.round(Number(row[at] ?? 0) * 100), 0);
  expect(cents).toBe(buyAnswer(view).cents);
});

test('the take-off: what is bought stands once for each item', async () => {
  const view = viewSample('cottage');
  const { rows } = await read(takeOffSheet(view));
  const [heading, ...lines] = rows;
  const bought = lines.filter((row) => typeof row[heading!.indexOf('bought')] === 'number');
  expect(bought.length).toBe(takeOffAnswer(view).purchases.length);
  expect(sheetCells(takeOffSheet(view)).length).toBe(rows.length);
});
