// Tables as plain text: columns that line up in a terminal, and comma-separated values (RFC 4180).

export interface Column {
  readonly heading: string;
  /** Numbers stand right, so that their digits line up. Left if not said. */
  readonly align?: 'left' | 'right';
}

/** Cells of a row; or a text that stands across all columns, as a heading of the rows below it. */
export type TextRow = readonly string[] | string;

/**
 * Rows under their headings, two blanks between columns, a line of dashes below the headings, and, where there are
 * `totals`, another above them. No blanks at line ends. A table without rows gives the headings alone.
 */
export function textTable(
  columns: readonly Column[],
  rows: readonly TextRow[],
  totals: readonly (readonly string[])[] = [],
): string {
  const shown = [...rows.filter((row) => typeof row !== 'string'), ...totals];
  const widths = columns.map(({ heading }, index) =>
    shown.reduce((widest, row) => Math.max(widest, displayWidth(row[index] ?? '')), displayWidth(heading)),
  );
  const write = (cells: readonly string[]) => writeRow(columns, widths, cells);
  const dashes = write(widths.map((width) => '-'.repeat(width)));
  const lines = [
    write(columns.map(({ heading }) => heading)),
    dashes,
    ...rows.map((row) => (typeof row === 'string' ? row : write(row))),
  ];
  if (totals.length > 0) lines.push(dashes, ...totals.map(write));
  return `${lines.join('\n')}\n`;
}

export type Cell = string | number | undefined;

/**
 * Comma-separated values by RFC 4180: CRLF after every record, quotes only where needed and doubled inside. A text that
 * a spreadsheet would take for a formula gets an apostrophe in front: a plan never makes another program compute.
 */
export function writeCsv(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(csvField).join(',')}\r\n`).join('');
}

/** How many columns of a terminal a text takes: 0 for marks that join the letter before, 2 for wide characters. */
export function displayWidth(text: string): number {
  // Nearly every cell is plain ASCII.
  if (/^[\x20-\x7e]*$/.test(text)) return text.length;
  let width = 0;
  for (const character of text) {
    if (/[\p{Mn}\p{Me}\p{Cf}\p{Cc}]/u.test(character)) continue;
    width +=
      /[\p{Emoji_Presentation}\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]/u.test(
        character,
      )
        ? 2
        : 1;
  }
  return width;
}

function writeRow(columns: readonly Column[], widths: readonly number[], cells: readonly string[]): string {
  const padded = columns.map((column, index) => {
    const cell = cells[index] ?? '';
    const blanks = ' '.repeat(widths[index]! - displayWidth(cell));
    return column.align === 'right' ? blanks + cell : cell + blanks;
  });
  return padded.join('  ').trimEnd();
}

function csvField(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const text = looksLikeFormula(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function looksLikeFormula(text: string): boolean {
  return /^[=@\t\r]/.test(text) || (/^[+-]/.test(text) && !/^[+-][\d.,]+%?$/.test(text));
}
