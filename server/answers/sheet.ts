// A table for other programs: every column holds one sort of thing, so that a spreadsheet gets numbers, days and money as
// what they are. Comma-separated values are written from the same.
import { isoDate } from '#kit/dates';
import type { Cell } from '#kit/table';

/** Days are whole days from 1970-01-01; money is whole cents. */
export type SheetCell = string | number | undefined;

export interface SheetColumn {
  readonly heading: string;
  readonly holds: 'text' | 'number' | 'money' | 'day';
}

export interface Sheet {
  readonly name: string;
  /** What money is counted in: 'USD'. */
  readonly currency: string;
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly (readonly SheetCell[])[];
}

export const text = (heading: string): SheetColumn => ({ heading, holds: 'text' });
export const number = (heading: string): SheetColumn => ({ heading, holds: 'number' });
export const money = (heading: string): SheetColumn => ({ heading, holds: 'money' });
export const day = (heading: string): SheetColumn => ({ heading, holds: 'day' });

/** Headings and rows for comma-separated values: days as 2027-04-05, money in units of its currency. */
export function sheetCells({ columns, rows }: Sheet): readonly (readonly Cell[])[] {
  return [
    columns.map(({ heading }) => heading),
    ...rows.map((row) => row.map((cell, at) => (typeof cell === 'number' ? written(cell, columns[at]!) : cell))),
  ];
}

function written(value: number, { holds }: SheetColumn): Cell {
  switch (holds) {
    case 'day':
      return isoDate(value);
    case 'money':
      return value / 100;
    default:
      return value;
  }
}
