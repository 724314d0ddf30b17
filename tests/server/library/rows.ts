// Reads the rows of the built-in library by a plain scan of its text, without the parser: kind, name, place and the lines below.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Row {
  readonly kind: string;
  readonly name: string;
  /** File and line, for messages. */
  readonly place: string;
  readonly lines: readonly string[];
}

const folder = join(import.meta.dirname, '../../../server/library');

/** Every row of every `.screed` file, files in the order of their names. */
export function libraryRows(): readonly Row[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.screed'))
    .sort()
    .flatMap((file) => rowsOf(file, readFileSync(join(folder, file), 'utf8')));
}

/** What stands after `word` on each line below a row that begins with it. */
export function valuesOf(row: Row, word: string): readonly string[] {
  return row.lines.filter((line) => line.startsWith(`${word} `)).map((line) => line.slice(word.length).trim());
}

/** A row's source, without its quotes. */
export function sourceOf(row: Row): string | undefined {
  return valuesOf(row, 'source')[0]?.replace(/^"|"$/g, '');
}

export function listOf(value: string): readonly string[] {
  return value.split(',').map((one) => one.trim());
}

function rowsOf(file: string, text: string): readonly Row[] {
  const rows: { kind: string; name: string; place: string; lines: string[] }[] = [];
  for (const [index, line] of text.split('\n').entries()) {
    if (line.trim() === '' || /^\s*#( |$)/.test(line)) continue;
    const head = /^([a-z-]+)\s+([\w.-]+)/.exec(line);
    if (head !== null) rows.push({ kind: head[1] ?? '', name: head[2] ?? '', place: `${file}:${index + 1}`, lines: [] });
    else rows.at(-1)?.lines.push(line.trim());
  }
  return rows;
}
