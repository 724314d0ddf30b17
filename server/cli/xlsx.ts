// A sheet as a spreadsheet file (Office Open XML, ECMA-376): numbers as numbers, days as days, money as money. The package
// that writes it stamps the parts of the file with the present time; they get a fixed one, so that the same plan gives the
// same bytes.
import { unzipSync, zipSync } from 'fflate';
import writeExcelFile from 'write-excel-file/node';
import type { Sheet, SheetCell, SheetColumn } from '#answers/sheet';
import { formatMoney } from '#kit/money';

type WrittenCell =
  | { readonly value: string; readonly type: StringConstructor; readonly fontWeight?: 'bold' }
  | { readonly value: number; readonly type: NumberConstructor; readonly format?: string }
  | null;

export async function xlsxBytes(sheet: Sheet): Promise<Uint8Array> {
  const heading = sheet.columns.map(({ heading }): WrittenCell => ({ value: heading, type: String, fontWeight: 'bold' }));
  const rows = sheet.rows.map((row) => row.map((cell, at) => written(cell, sheet.columns[at]!, sheet.currency)));
  const buffer = await writeExcelFile([heading, ...rows], {
    sheet: sheet.name,
    columns: sheet.columns.map((column, at) => ({ width: widthOf(column, sheet.rows, at) })),
    stickyRowsCount: 1,
  }).toBuffer();
  return zipSync(unzipSync(new Uint8Array(buffer)), { mtime: new Date(1980, 0, 1) });
}

/** Days count from 30 December 1899 in a spreadsheet, ours from 1970-01-01. */
const FIRST_DAY = 25_569;

function written(cell: SheetCell, { holds }: SheetColumn, currency: string): WrittenCell {
  if (cell === undefined) return null;
  if (typeof cell === 'string') return { value: cell, type: String };
  switch (holds) {
    case 'day':
      return { value: cell + FIRST_DAY, type: Number, format: 'yyyy-mm-dd' };
    case 'money':
      return { value: cell / 100, type: Number, format: `[$${formatMoney(0, currency).replace('0.00', '')}]#,##0.00` };
    default:
      return { value: cell, type: Number };
  }
}

const NARROW = 11;
const WIDE = 48;

/** In letters: as wide as the longest text, within reason. */
function widthOf({ heading }: SheetColumn, rows: Sheet['rows'], at: number): number {
  let width = Math.max(NARROW, heading.length + 1);
  for (const row of rows) {
    const cell = row[at];
    if (typeof cell === 'string') width = Math.max(width, cell.length + 1);
  }
  return Math.min(WIDE, width);
}
