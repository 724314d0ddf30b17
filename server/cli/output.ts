// Where results go, and how: standard output or a file, with colour only where a person looks at a terminal that shows it.
import { writeFileSync } from 'node:fs';
import process from 'node:process';
import type { Table } from '#answers/table';
import { textTable } from '#kit/table';
import { misuse } from './faults.ts';

/** Options that every command has. */
export interface Common {
  readonly format?: string;
  readonly asOf?: string;
  readonly output?: string;
  readonly quiet?: true;
  readonly color?: boolean;
}

/** Text, or the bytes of a file: those do not go to a terminal. */
export function emit(text: string | Uint8Array, { output }: Common): void {
  if (output === undefined) {
    if (typeof text !== 'string' && process.stdout.isTTY === true)
      throw misuse('a spreadsheet is written to a file: give -o FILE');
    process.stdout.write(text);
    return;
  }
  try {
    writeFileSync(output, text);
  } catch (error) {
    throw misuse(`${output} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** To whoever sits at the terminal: not part of the result. */
export function remark(text: string, { quiet }: Common): void {
  if (quiet !== true) process.stderr.write(`${text}\n`);
}

export function jsonText(value: unknown): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}

/** A table as text: what it shows, the table, what to know. */
export function drawTable({ heading, columns, rows, totals, remarks }: Table, quiet?: true): string {
  const above = quiet === true || heading.length === 0 ? '' : `${heading.join('\n')}\n\n`;
  const below = quiet === true || remarks.length === 0 ? '' : `\n${remarks.join('\n')}\n`;
  const drawn = rows.length === 0 && totals.length === 0 ? '' : textTable(columns, rows, totals);
  return `${above}${drawn}${drawn === '' ? below.replace(/^\n/, '') : below}`;
}

export type Colour = 'red' | 'yellow' | 'blue' | 'bold' | 'faint';
export type Paint = (text: string, colour: Colour) => string;

const CODES: Readonly<Record<Colour, readonly [number, number]>> = {
  red: [31, 39],
  yellow: [33, 39],
  blue: [34, 39],
  bold: [1, 22],
  faint: [2, 22],
};

/** --color and --no-color decide, then NO_COLOR, then FORCE_COLOR, then whether the output is a terminal; a file gets none. */
export function painter(
  { color, output }: Common,
  environment: NodeJS.ProcessEnv = process.env,
  terminal = process.stdout.isTTY === true,
): Paint {
  const shows = wantsColour(color, output, environment, terminal);
  return (text, colour) => (shows && text !== '' ? `\u001b[${CODES[colour][0]}m${text}\u001b[${CODES[colour][1]}m` : text);
}

function wantsColour(
  color: boolean | undefined,
  output: string | undefined,
  environment: NodeJS.ProcessEnv,
  terminal: boolean,
): boolean {
  if (output !== undefined || color === false) return false;
  if (color === true) return true;
  if ((environment.NO_COLOR ?? '') !== '') return false;
  if ((environment.FORCE_COLOR ?? '') !== '') return environment.FORCE_COLOR !== '0';
  return terminal && environment.TERM !== 'dumb';
}

/** The format asked for, or the first. */
export function chosenFormat<F extends string>({ format }: Common, formats: readonly [F, ...F[]]): F {
  if (format === undefined) return formats[0];
  const found = formats.find((each) => each === format);
  if (found === undefined) throw misuse(`there is no format "${format}" here; there is ${formats.join(', ')}`);
  return found;
}
