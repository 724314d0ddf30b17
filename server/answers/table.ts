// What a table is before anybody draws it: lines above, columns, rows, totals, remarks below. Cells are texts already
// written in the plan's units.
import type { Column, TextRow } from '#kit/table';

export interface Table {
  /** What the table shows, and what its numbers mean. */
  readonly heading: readonly string[];
  readonly columns: readonly Column[];
  readonly rows: readonly TextRow[];
  readonly totals: readonly (readonly string[])[];
  /** What to know when reading it. */
  readonly remarks: readonly string[];
}

export const left = (heading: string): Column => ({ heading });
export const right = (heading: string): Column => ({ heading, align: 'right' });

/** Columns all of whose cells are empty go. */
export function withoutEmpty(table: Table): Table {
  const kept = table.columns.flatMap((_, at) =>
    [...table.rows, ...table.totals].some((row) => typeof row !== 'string' && (row[at] ?? '') !== '') ? [at] : [],
  );
  const cut = (row: readonly string[]): readonly string[] => kept.map((at) => row[at] ?? '');
  const rows = table.rows.map((row) => (typeof row === 'string' ? row : cut(row)));
  return { ...table, columns: kept.map((at) => table.columns[at]!), rows, totals: table.totals.map(cut) };
}

/** '1 note', '3 notes'. */
export function counted(count: number, word: string, many = `${word}s`): string {
  return `${count === 0 ? 'no' : count} ${count === 1 ? word : many}`;
}

/** 'a', 'a and b', 'a, b and c'. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}
